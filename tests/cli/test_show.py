"""Findings as they are printed."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from producer.basics.finding import Finding, Severity
from producer.basics.located import Places
from producer.basics.place import Place
from producer.cli.show import build_text, clean_text, counts_text, exit_code, findings_json, findings_text
from producer.jobs.report import Report

TEXT = "format: 1\nvalues:\n  front_weight: 50.3\n"


def finding(severity: Severity = Severity.ERROR, line: int = 3, column: int = 17, width: int = 4) -> Finding:
    place = Place("a/episode.yaml", line, column, width)
    return Finding(
        "off-step", severity, place, "50.3 % is not on the grid", "the nearest are 50 and 50.5", "values.front_weight"
    )


def shown(*findings: Finding, text: str = TEXT, every_note: bool = False) -> str:
    return findings_text(
        findings, {"a/episode.yaml": Places("a/episode.yaml", text)}, every_note=every_note, colour=False
    )


def test_place_message_excerpt_hint_and_count() -> None:
    assert shown(finding()) == (
        "a/episode.yaml:3:17: error[off-step]\n"
        "  50.3 % is not on the grid\n"
        "  3 |   front_weight: 50.3\n"
        "    |                 ^^^^\n"
        "  hint: the nearest are 50 and 50.5\n\n"
        "1 error"
    )


def test_nothing_is_said_when_all_is_well() -> None:
    assert shown() == ""


def test_a_long_line_is_cut_around_the_span() -> None:
    text = "because: " + "word " * 60 + "WRONG " + "word " * 60
    out = shown(finding(line=1, column=text.index("WRONG") + 1, width=5), text=text)
    source, marks = (line for line in out.splitlines() if " | " in line)
    assert len(source) <= 100
    assert source[marks.index("^") : marks.rindex("^") + 1] == "WRONG"


def test_control_characters_never_reach_the_terminal() -> None:
    out = shown(finding(), text="a\n\nfront\x1b[31m_weight: 50.3")
    assert "\x1b" not in out


def test_notes_never_nag() -> None:
    notes = [finding(Severity.NOTE, column=n) for n in range(1, 8)]
    assert shown(*notes).count("note[off-step]") == 3
    assert "4 more notes not shown" in shown(*notes)
    assert shown(*notes, every_note=True).count("note[off-step]") == 7


@pytest.mark.parametrize(
    ("severity", "strict", "code"),
    [
        (Severity.ERROR, False, 1),
        (Severity.WARNING, False, 0),
        (Severity.WARNING, True, 1),
        (Severity.NOTE, True, 0),
    ],
)
def test_what_fails_a_check(severity: Severity, strict: bool, code: int) -> None:
    assert exit_code([finding(severity)], strict=strict) == code


def test_counts_are_plain_words() -> None:
    two = [finding(), finding(line=2, column=1, width=1), finding(Severity.WARNING)]
    assert counts_text(two) == "2 errors, 1 warning"
    assert json.loads(findings_json(two))["counts"] == {"error": 2, "warning": 1, "note": 0}


@pytest.mark.parametrize(
    ("before", "after", "starts", "ends"),
    [("", "", False, False), ("word " * 60, "", True, False), ("", " word" * 60, False, True),
     ("word " * 60, " word" * 60, True, True)],
)  # fmt: skip
def test_each_cut_is_marked(before: str, after: str, starts: bool, ends: bool) -> None:
    text = f"{before}WRONG{after}"
    out = shown(finding(line=1, column=len(before) + 1, width=5), text=text)
    source, marks = (line for line in out.splitlines() if " | " in line)
    shown_part = source.removeprefix("  1 | ")
    assert (shown_part.startswith("\u2026"), shown_part.endswith("\u2026")) == (starts, ends)
    assert shown_part.strip("\u2026") in text
    assert source[marks.index("^") : marks.rindex("^") + 1] == "WRONG"
    assert len(source) <= 100


@pytest.mark.parametrize(
    ("episodes", "said"),
    [(0, "no episodes yet"), (1, "nothing to mend in 1 episode"), (5, "nothing to mend in 5 episodes")],
)
def test_a_clean_check_says_so(episodes: int, said: str) -> None:
    assert clean_text(episodes).startswith(said)


def test_a_build_without_episodes_says_what_an_episode_is(tmp_path: Path) -> None:
    assert "episode.yaml" in build_text(Report({}, (), {}, (), {}), tmp_path)
    assert build_text(Report({}, ("a",), {}, (), {}), tmp_path).splitlines()[1] == "  a: unchanged"


def test_a_build_tells_what_a_take_gives_it(tmp_path: Path) -> None:
    files = (tmp_path / "a" / "notes.txt",)
    told = build_text(Report({"a": files, "b": files}, (), {}, (), {}, {"a": "times of the cut", "b": ""}), tmp_path)
    assert told.splitlines()[1:] == [
        f"  a: 1 file in {tmp_path / 'a'}", "    times of the cut", f"  b: 1 file in {tmp_path / 'b'}"
    ]  # fmt: skip
