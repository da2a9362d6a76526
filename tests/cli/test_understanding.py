"""`claims` and `message` from a file and from standard input."""

from __future__ import annotations

import io
import json
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Run = Callable[..., Any]


class Typed:
    """Standard input with these bytes."""

    def __init__(self, text: str) -> None:
        self.buffer = io.BytesIO(text.encode("utf-8"))


@pytest.fixture
def typed(monkeypatch: pytest.MonkeyPatch) -> Callable[[str], None]:
    return lambda text: monkeypatch.setattr(sys, "stdin", Typed(text))


def test_claims_of_a_file(producer: Run, demo: Path, tmp_path: Path) -> None:
    (tmp_path / "talk.txt").write_text("The wedge is at 51.5.", encoding="utf-8")
    ran = producer("claims", tmp_path / "talk.txt", "--garage", "grand-sedan", "--json", "-l", demo)
    assert (ran.code, ran.err) == (0, "")
    assert [one["value"] for one in json.loads(ran.out)["claims"]] == [51.5]


def test_claims_by_line(producer: Run, demo: Path, typed: Callable[[str], None]) -> None:
    typed("wedge 51.5, tape 30\nlap 52\n")
    ran = producer("claims", "--garage", "grand-sedan", "--lines", "-l", demo)
    assert [len(json.loads(row)["claims"]) for row in ran.out.splitlines()] == [2, 0]


def test_a_message(producer: Run, demo: Path, typed: Callable[[str], None]) -> None:
    typed("way 2 loose off 4, wheel user, any ideas??")
    ran = producer("message", "--garage", "grand-sedan", "-l", demo)
    assert (ran.code, ran.out) == (0, "asks for help\nvery loose on exit\nplays with a wheel\n")


def test_messages_by_line(producer: Run, demo: Path, typed: Callable[[str], None]) -> None:
    typed("tight in the middle\nthanks jo\n")
    ran = producer("message", "--garage", "grand-sedan", "--lines", "--json", "-l", demo)
    assert [json.loads(row)["understood"]["asks"] for row in ran.out.splitlines()] == ["help", "thanks"]


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("claims", "nowhere.txt", "--garage", "grand-sedan"), "nowhere.txt cannot be read"),
        (("claims", "--garage", "nothing"), "there is no garage 'nothing'"),
        (("message", "--garage", "grand-sedan", "--track", "nowhere"), "there is no track 'nowhere'"),
        (("message", "--garage", "missing.yaml"), "missing.yaml cannot be read as a garage"),
    ],
)
def test_what_cannot_be_done_is_one_sentence(
    producer: Run, demo: Path, typed: Callable[[str], None], arguments: tuple[str, ...], said: str
) -> None:
    typed("x")
    ran = producer(*arguments, "-l", demo)
    assert (ran.code, ran.out) == (2, "")
    assert said in ran.err
    assert len(ran.err.splitlines()) == 1


def test_a_garage_is_needed(producer: Run) -> None:
    assert producer("claims").code == 2
