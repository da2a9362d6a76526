"""`producer advise`: what a person and another program get to see."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from producer.model.words import FEELS, PHASES

Run = Callable[..., Any]
EPISODE = "gannet-bowl-grand-sedan"


def as_json(producer: Run, demo: Path, *arguments: str) -> dict[str, Any]:
    ran = producer("advise", EPISODE, "-l", demo, "--json", *arguments)
    assert (ran.code, ran.err) == (0, "")
    found: dict[str, Any] = json.loads(ran.out)
    return found


@pytest.mark.parametrize("where", PHASES)
@pytest.mark.parametrize("feel", FEELS)
@pytest.mark.parametrize("setup", ["short", "long"])
def test_each_feel_of_the_demo_is_answered(producer: Run, demo: Path, feel: str, where: str, setup: str) -> None:
    found = as_json(producer, demo, "--setup", setup, "--feels", f"{feel} {where}")
    assert {"format", "changes", "expected", "unanswered", "notes"} <= set(found)
    assert (found["format"], found["unanswered"], len(found["changes"])) == (1, [], 1)
    expected = found["expected"][where]
    assert expected is None or (expected < 0) == (feel == "tight")
    assert found["changes"][0]["effects"] == found["expected"]


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("loose off", "loose exit"),
        ("loose coming off", "loose exit"),
        ("Very Loose On Exit", "very loose exit"),
        ("tight in", "tight entry"),
        ("a little tight going in", "a little tight entry"),
        ("tight on entry", "tight entry"),
        ("tight center", "tight middle"),
        ("tight in the center", "tight middle"),
        ("slightly tight in the centre", "a little tight middle"),
        ("loose mid", "loose middle"),
        ("loose", "loose"),
    ],
)
def test_the_trade_s_words_for_a_part_of_the_corner(producer: Run, demo: Path, typed: str, meant: str) -> None:
    found = as_json(producer, demo, "--feels", typed)
    assert found["feels"] == [meant]
    assert found["changes"][0]["answers"] == [meant]


def test_mixed_feels_take_a_setting_each(producer: Run, demo: Path) -> None:
    found = as_json(producer, demo, "--feels", "tight entry", "--feels", "loose exit")
    assert found["unanswered"] == []
    assert [one["answers"] for one in found["changes"]] == [["tight entry"], ["loose exit"]]
    assert found["expected"]["entry"] < 0 < found["expected"]["exit"]
    for phase in PHASES:
        assert found["expected"][phase] == pytest.approx(sum(one["effects"][phase] for one in found["changes"]))


def test_the_terminal_says_what_to_do(producer: Run, demo: Path) -> None:
    ran = producer("advise", EPISODE, "-l", demo, "-f", "tight entry", "-f", "loose middle", "-f", "tight exit")
    lines = ran.out.splitlines()
    assert all(len(one) <= 80 for one in lines)
    assert lines[1:3] == ["Short run", "tight on entry, loose in the middle and tight on exit"]
    assert any(one.startswith("1. ") and " -> " in one and "click" in one for one in lines)
    assert any(one.startswith("   on entry       looser, about as much as ") for one in lines)
    assert any("tire pays" in one for one in lines)
    assert any("your own advice" in one for one in lines)
    assert "not answered: loose in the middle" in lines
    assert lines[-2:] == [
        "Change one thing at a time, then drive a few laps.",
        "Numbers for a simulation. Not advice for a real car.",
    ]


def test_a_feel_without_its_place_is_told_where_it_is_helped(producer: Run, demo: Path) -> None:
    ran = producer("advise", "marrow-creek-grand-sedan", "-l", demo, "-f", "tight", "-f", "loose exit")
    assert "- tight: what is changed helps on entry, but does nothing to speak of in the" in ran.out
    assert "nothing happens" in ran.out
    everywhere = producer("advise", "marrow-creek-grand-sedan", "-l", demo, "-f", "tight")
    assert "what is changed" not in everywhere.out


def test_where_no_car_is_plausible_that_is_said_instead_of_sizes(producer: Run, library: Path) -> None:
    path = next((library / "tracks").glob("gannet-bowl.yaml"))
    path.write_text(re.sub(r"banking: *[^,}\n]+", "banking: 89", path.read_text(encoding="utf-8")), encoding="utf-8")
    ran = producer("advise", EPISODE, "-l", library, "-f", "tight middle", "-f", "loose exit")
    said = " ".join(ran.out.split())
    assert ran.code == 0
    assert "too few plausible cars have such a setup at this track, so the chassis model gives no sizes" in said
    assert "how much: no size, as too few plausible cars have such a setup" in said
    assert "nobody knows" not in said
    explained = producer("guide", EPISODE, "-l", library, "--explain", "spring.rf")
    assert "no opinion: too few plausible cars have such a setup at this track" in " ".join(explained.out.split())


def test_where_nothing_is_changed_the_notes_say_why(producer: Run, demo: Path) -> None:
    ran = producer("advise", EPISODE, "-l", demo, "-f", "tight entry", "-f", "loose entry")
    assert ran.code == 0
    assert "not answered: tight on entry and loose on entry" in ran.out
    assert "pull against each other" in ran.out
    assert "one thing at a time" not in ran.out


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--feels", "loos entry"), "'loos entry' is not a feel like 'loose entry' or 'very tight exit'"),
        (("--feels", ""), "is not a feel"),
        (("--feels", "tight everywhere"), "is not a feel"),
        (("--feels", "loos off"), "'loos off' is not a feel like 'loose entry' or 'very tight exit'"),
        (("--feels", "off"), "'off' is not a feel"),
        (("--feels", "in the middle"), "'in the middle' is not a feel"),
        (("--feels", "tight entry exit"), "'tight entry exit' is not a feel"),
        ((), "Missing option '--feels'"),
        (("--feels", "tight entry", "--setup", "medium"), "has no setup 'medium'; there are: short, long"),
        (("--feels", "tight entry", "--tyres", "old"), "'old' is not one of new, worn"),
        (("--feels", "tight entry", "--device", "yoke"), "'yoke' is not one of wheel, pad, keyboard"),
    ],
)
def test_what_cannot_be_asked(producer: Run, demo: Path, arguments: tuple[str, ...], said: str) -> None:
    ran = producer("advise", EPISODE, "-l", demo, *arguments)
    assert (ran.code, ran.out) == (2, "")
    assert said in " ".join(ran.err.split())


def test_an_episode_that_is_not_there(producer: Run, demo: Path) -> None:
    ran = producer("advise", "nowhere", "-l", demo, "-f", "tight")
    assert (ran.code, ran.out) == (2, "")
    assert "nowhere" in ran.err


def test_nothing_is_advised_from_an_episode_with_errors(producer: Run, library: Path) -> None:
    path = library / EPISODE / "episode.yaml"
    path.write_text(path.read_text(encoding="utf-8").replace("cross_weight: 52", "cross_weight: 152"), encoding="utf-8")
    ran = producer("advise", EPISODE, "-l", library, "-f", "tight entry")
    assert (ran.code, ran.out) == (1, "")
    assert "out-of-range" in ran.err
