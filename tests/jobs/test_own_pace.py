"""The rate of estimates: the channel's word first, then the author's takes, then the usual."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from producer.jobs.own_pace import OwnPace, measured_from
from producer.library.load import load
from producer.model.script import Pace

Run = Callable[..., Any]
TAKEN, OTHER, THIRD = "marrow-creek-grand-sedan", "lantern-flats-club-coupe", "gannet-bowl-grand-sedan"


@pytest.fixture
def open_rate(library: Path) -> Path:
    """The demo with no rate in its channel.yaml."""
    channel = library / "channel.yaml"
    text = channel.read_text(encoding="utf-8")
    channel.write_text(re.sub(r"  words_per_minute:.*\n", "", text), encoding="utf-8")
    return library


def pace(root: Path) -> Pace:
    return OwnPace().of(load(root)[0])


def spoken(root: Path, episode: str, rate: int, *, name: str = "take.srt", words: int = 300) -> None:
    """Captions of plain words at a rate, one word a cue."""
    step = 60_000 // rate
    stamps = [divmod(at * step, 1000) for at in range(words + 1)]
    times = [f"00:{s // 60:02d}:{s % 60:02d},{ms:03d}" for s, ms in stamps]
    cues = (f"{at + 1}\n{times[at]} --> {times[at + 1]}\nbar\n" for at in range(words))
    # Two different words in turn: captions with a word twice are taken for a slip of the program that made them.
    text = "\n".join(cue.replace("bar", "car") if at % 2 else cue for at, cue in enumerate(cues))
    (root / episode / name).write_text(text, encoding="utf-8")


def test_the_channel_s_own_word_holds(demo: Path) -> None:
    assert pace(demo) == Pace(Decimal(150), "channel")
    assert measured_from(load(demo)[0]) == ()


def test_after_one_take_the_author_s_own_rate(open_rate: Path) -> None:
    found = pace(open_rate)
    assert (found.source, found.takes) == ("takes", 1)
    assert 140 <= found.words_per_minute <= 150
    assert found.told == "measured in your last take"


def test_before_the_first_take_the_usual_one(open_rate: Path) -> None:
    (open_rate / TAKEN / "take.srt").unlink()
    assert pace(open_rate) == Pace(Decimal(150), "usual")


def test_the_middle_one_of_several(open_rate: Path) -> None:
    spoken(open_rate, OTHER, 200)
    spoken(open_rate, THIRD, 120)
    found = pace(open_rate)
    assert 140 <= found.words_per_minute <= 150
    assert found.told == "measured in your last 3 takes"


def test_only_the_last_three_episodes(open_rate: Path) -> None:
    spoken(open_rate, OTHER, 200)
    spoken(open_rate, THIRD, 120)
    spoken(open_rate, "lantern-flats-grand-sedan", 120)
    assert [one.file.split("/")[0] for one in measured_from(load(open_rate)[0])] == sorted(
        (TAKEN, OTHER, THIRD, "lantern-flats-grand-sedan"),
        key=lambda one: int(
            re.findall(r"^number: (\d+)", (open_rate / one / "episode.yaml").read_text("utf-8"), re.M)[0]
        ),
    )[-3:]


def test_the_cut_counts_where_there_is_one(open_rate: Path) -> None:
    spoken(open_rate, TAKEN, 200, name="cut.srt")
    assert pace(open_rate).words_per_minute == 200


@pytest.mark.parametrize(("rate", "words"), [(400, 400), (40, 60), (150, 30)])
def test_what_is_no_rate_of_reading_is_left_out(open_rate: Path, rate: int, words: int) -> None:
    spoken(open_rate, TAKEN, rate, words=words)
    assert pace(open_rate) == Pace(Decimal(150), "usual")


def test_the_library_is_measured_once(open_rate: Path) -> None:
    library, _ = load(open_rate)
    own = OwnPace()
    assert own.of(library) is own.of(library)


def test_estimates_use_it_and_say_so(producer: Run, open_rate: Path, tmp_path: Path) -> None:
    spoken(open_rate, TAKEN, 200)
    out = tmp_path / "out"
    outline = producer("outline", THIRD, "-l", open_rate, "-o", out).out
    assert "at 200 words a minute, measured in your last take; " in outline
    script = producer("script", THIRD, "--print", "-l", open_rate, "-o", out).out
    assert "at 200 words a minute, measured in your last take; " in script
    assert "OWN_PACE = 200" in (out / THIRD / "script.html").read_text(encoding="utf-8")
    channel = open_rate / "channel.yaml"
    text = channel.read_text(encoding="utf-8")
    channel.write_text(text.replace("voice:\n", "voice:\n  words_per_minute: 150\n"), encoding="utf-8")
    other = producer("outline", THIRD, "-l", open_rate, "-o", out).out
    assert "at 150 words a minute, from channel.yaml; " in other
    lasts = [re.search(r"\*\*About (\d+):(\d\d)\*\*", text) for text in (outline, other)]
    fast, slow = (int(one[1]) * 60 + int(one[2]) for one in lasts if one is not None)
    assert 0.72 < fast / slow < 0.8


def test_a_take_tells_whether_estimates_differ(producer: Run, library: Path, open_rate: Path) -> None:
    assert "estimates are made with" not in producer("take", TAKEN, "-l", open_rate).out
    channel = library / "channel.yaml"
    text = channel.read_text(encoding="utf-8")
    channel.write_text(text.replace("voice:\n", "voice:\n  words_per_minute: 165\n"), encoding="utf-8")
    assert "estimates are made with 165 words a minute, from channel.yaml" in producer("take", TAKEN, "-l", library).out


def test_a_new_take_builds_every_estimate_again_only_where_it_counts(
    producer: Run, open_rate: Path, demo: Path, tmp_path: Path
) -> None:
    out = tmp_path / "out"
    producer("build", THIRD, "-l", open_rate, "-o", out)
    assert "1 unchanged" in producer("build", THIRD, "-l", open_rate, "-o", out).out
    spoken(open_rate, TAKEN, 200)
    assert "1 episode built" in producer("build", THIRD, "-l", open_rate, "-o", out).out
    given = tmp_path / "given"
    shutil.copytree(demo, given)
    producer("build", THIRD, "-l", given, "-o", tmp_path / "two")
    spoken(given, TAKEN, 200)
    assert "1 unchanged" in producer("build", THIRD, "-l", given, "-o", tmp_path / "two").out


def test_a_new_library_leaves_it_open(producer: Run, tmp_path: Path) -> None:
    producer("new", "library", tmp_path / "mine")
    library, findings = load(tmp_path / "mine")
    assert [one for one in findings if "words_per_minute" in one.where] == []
    assert OwnPace().of(library).source == "usual"
