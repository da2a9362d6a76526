"""From the log on disk to a reply: what is refused, the JSON shape, the author's own templates."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from producer.basics.errors import ProducerError
from producer.jobs.reply import reply_json, reply_to

Run = Callable[..., Any]
EPISODE = "gannet-bowl-grand-sedan"


def edit(path: Path, old: str, new: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8", newline="\n")


def test_the_command_prints_the_reply(producer: Run, demo: Path) -> None:
    ran = producer("reply", "req-103", "-l", demo)
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.startswith("Hi @torque_tilly,")
    assert "Cross weight: from 52.0 to 51.0 %." in ran.out


def test_the_setup_can_be_said(producer: Run, demo: Path) -> None:
    ran = producer("reply", "req-103", "--setup", "long", "-l", demo)
    assert "Right front spring: from 900 to 850 lb/in." in ran.out


def test_the_json_shape(producer: Run, demo: Path) -> None:
    shape = json.loads(producer("reply", "req-107", "--json", "-l", demo).out)
    assert list(shape) == ["format", "request", "episode", "setup", "understood", "text"]
    assert shape["format"] == 1
    assert (shape["request"], shape["episode"], shape["setup"]) == ("req-107", "lantern-flats-club-coupe", "short")
    assert shape["understood"]["track"] == "lantern-flats"
    assert shape["understood"]["garage"] == "club-coupe"
    assert shape["understood"]["missing"] == ["tyres"]
    assert [one["where"] for one in shape["understood"]["feels"]] == ["entry", "exit"]


def test_json_where_no_setup_answers(demo: Path) -> None:
    shape = json.loads(reply_json(reply_to(demo, "req-109", None)))
    assert (shape["episode"], shape["setup"]) == (None, None)


@pytest.mark.parametrize(
    ("request_id", "setup", "words"),
    [
        ("req-17", None, "there is no request 'req-17' in the log; did you mean 'req-107'"),
        ("zzzzz", None, "there is: req-101"),
        ("req-103", "shrt", "did you mean 'short'"),
        ("req-109", "short", "leave --setup out"),
    ],
)
def test_what_is_not_there(producer: Run, demo: Path, request_id: str, setup: str | None, words: str) -> None:
    more = ("--setup", setup) if setup else ()
    ran = producer("reply", request_id, *more, "-l", demo)
    assert ran.code == 2
    assert words in " ".join(ran.err.split())
    assert "Traceback" not in ran.err


def test_nothing_is_told_from_an_episode_with_errors(library: Path) -> None:
    edit(library / EPISODE / "episode.yaml", "front_weight: 51\n", "front_weight: 51.2\n")
    with pytest.raises(ProducerError, match=f"producer check {EPISODE}"):
        reply_to(library, "req-103", None)
    assert reply_to(library, "req-107", None).setup == "short"


def test_nothing_is_told_without_a_channel(library: Path) -> None:
    (library / "channel.yaml").write_text("format: 1\n", encoding="utf-8")
    with pytest.raises(ProducerError, match="channel"):
        reply_to(library, "req-103", None)


def test_a_library_without_a_log(library: Path) -> None:
    for path in (library / "requests").iterdir():
        path.unlink()
    with pytest.raises(ProducerError, match="none yet"):
        reply_to(library, "req-103", None)


def test_references_in_the_authors_words_are_figures(library: Path) -> None:
    old = "say: Take half a percent out, and if it still climbs the track, take the next one."
    new = 'say: "From {{ cross_weight | with_unit }} take *half* a percent out."'
    edit(library / EPISODE / "episode.yaml", old, new)
    text = reply_to(library, "req-103", None).text
    assert "From 52.0 % take half a percent out." in text


def test_words_that_name_another_viewer_are_left_out(library: Path) -> None:
    old = "say: Take half a percent out, and if it still climbs the track, take the next one."
    edit(library / EPISODE / "episode.yaml", old, 'say: "As @hairpin_hal said, take half a percent out."')
    text = reply_to(library, "req-103", None).text
    assert "hairpin" not in text
    assert "Cross weight: from 52.0 to 51.0 %." in text


def test_the_authors_own_template_wins_and_the_caution_stays(library: Path) -> None:
    (library / "templates").mkdir()
    (library / "templates" / "reply-thanks.txt.j2").write_text("Cheers {{ view.handle }}\n", encoding="utf-8")
    text = reply_to(library, "req-104", None).text
    assert text == "Cheers @slow_hands_sal\n\nNumbers for a simulation. Not advice for a real car."


def test_the_channels_limit_holds(library: Path) -> None:
    edit(library / "channel.yaml", "characters: 1500", "characters: 600")
    assert len(reply_to(library, "req-107", None).text) <= 600


def test_replies_are_never_written_to_disk(library: Path) -> None:
    before = sorted(library.rglob("*"))
    reply_to(library, "req-103", None)
    assert sorted(library.rglob("*")) == before


@pytest.mark.parametrize(("day", "told"), [(date(2026, 11, 6), True), (date(2026, 11, 7), False)])
def test_nobody_is_promised_a_day_that_has_passed(
    day: date, told: bool, demo: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("producer.jobs.reply.today", lambda: day)
    made = reply_to(demo, "req-105", None)
    assert ("the video is planned for November 6, 2026." in made.text) is told
    assert ("I will say when the date is set." in made.text) is not told
    assert (made.notes == ()) is told
