"""Texts that end at a ` #`: what looks like a lost end of a sentence, and what is a comment."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from producer.basics.finding import Severity
from producer.checks import text_cut_short
from producer.library.load import load

BASE = Path(__file__).parent / "base"
FILE = "marrow-creek-grand-sedan/episode.yaml"
CLOSING = "closing: Start with the short run, and change a single thing at a time."


def cut(tmp_path: Path, line: str) -> list[tuple[Severity, str]]:
    """Severity and what is marked, with `line` in place of the closing words."""
    root = tmp_path / "library"
    shutil.copytree(BASE, root)
    text = (root / FILE).read_text(encoding="utf-8")
    assert CLOSING in text
    (root / FILE).write_text(text.replace(CLOSING, line), encoding="utf-8", newline="\n")
    library, found = load(root)
    assert not found
    rows = (root / FILE).read_text(encoding="utf-8").splitlines()
    findings = text_cut_short.check_episode(library.case(next(iter(library.episodes.values()))))
    return [(one.severity, rows[one.place.line - 1][one.place.column - 1 :][: one.place.width]) for one in findings]


@pytest.mark.parametrize(
    ("line", "severity", "marked"),
    [
        ("closing: Start with #1 and go.", Severity.WARNING, "#1 and go."),
        ("closing: Start with the #one car", Severity.WARNING, "#one car"),
        ("closing: Start\n    with  #2   ", Severity.WARNING, "#2"),
        ("closing: That is it. #3 is next.", Severity.WARNING, "#3 is next."),
        ("closing: That is it. #todo", Severity.NOTE, "#todo"),
        ("closing: See you there! #ovals", Severity.NOTE, "#ovals"),
    ],
)
def test_a_lost_end_is_found(tmp_path: Path, line: str, severity: Severity, marked: str) -> None:
    assert cut(tmp_path, line) == [(severity, marked)]


@pytest.mark.parametrize(
    "line",
    [
        "closing: Start with the short run. # so",
        "closing: Start with the short run # 1 of 2",
        "closing: Start with the short run ## 1",
        "closing: Start with the short run #- later",
        "closing: Start with#1 and go.",
        'closing: "Start with #1 and go." #1',
        "closing: 'Start with #1' #2",
        "closing: |\n    Start with #1 and go.",
        "closing: > #1\n    Start with #1 and go.",
        "closing: Start with the short run.\n  #1 is next",
    ],
)
def test_a_comment_is_silent(tmp_path: Path, line: str) -> None:
    assert cut(tmp_path, line) == []
