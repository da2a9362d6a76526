"""WebVTT by the parsing steps: cues, and complaints by line about what those steps throw away."""

from __future__ import annotations

import pytest

from producer.captions.complaints import Complaints
from producer.captions.vtt_reading import vtt_blocks

T1, T2 = "00:01.000 --> 00:02.000", "00:02.000 --> 00:03.000"
Told = list[tuple[str, int]]


def read(text: str) -> tuple[list[str], Told]:
    complaints = Complaints("x.vtt")
    payloads = [block.raw for block in vtt_blocks(text, complaints)]
    return payloads, [(one.code, one.place.line) for one in complaints.findings()]


SILENT = [
    ("plain", f"WEBVTT\n\n{T1}\na\nb\n\n{T2}\nc\n", ["a\nb", "c"]),
    ("names of cues", f"WEBVTT\n\nfirst\n{T1}\na\n\n2\n{T2}\nc", ["a", "c"]),
    ("header lines", f"WEBVTT - a title\nKind: captions\nLanguage: en\n\n{T1}\na\n", ["a"]),
    ("comments", f"WEBVTT\n\nNOTE\nabout\nthis\n\n{T1}\na\n\nNOTE and that\n\n{T2}\nc\n", ["a", "c"]),
    ("styles ahead of all", f"WEBVTT\n\nSTYLE\n::cue {{}}\n\nREGION\nid:x\n\n{T1}\na\n", ["a"]),
    ("settings", f"WEBVTT\n\n{T1} align:start position:0%\na\n", ["a"]),
    ("a line of one blank", f"WEBVTT\n\n{T1}\n \na\n\n{T2}\na\n \n", [" \na", "a\n "]),
    ("CR LF", f"WEBVTT\r\n\r\n{T1}\r\na\r\n\r\n{T2}\r\nc\r\n", ["a", "c"]),
    ("no text", f"WEBVTT\n\n{T1}\n\n{T2}\nc\n", ["", "c"]),
    ("straight below the signature", f"WEBVTT\n{T1}\na\n", ["a"]),
    ("no signature", f"{T1}\na\n", []),
    ("only the signature", "WEBVTT", []),
]
TOLD = [
    ("a comma", "WEBVTT\n\n00:00:01,000 --> 00:00:02,000\na\n", [], [("cue-times-unreadable", 3)]),
    ("an arrow in the text", f"WEBVTT\n\n{T1}\na\n750 --> 725\nlost\n\n{T2}\nc\n", ["a", "c"], [("arrow-in-text", 5)]),
    ("no blank line", f"WEBVTT\n\n{T1}\na\n{T2}\nc\n", ["a", "c"], [("missing-blank-line", 5)]),
    ("no blank line, a number", f"WEBVTT\n\n1\n{T1}\na\n2\n{T2}\nc\n", ["a\n2", "c"], [("missing-blank-line", 7)]),
    ("a blank line in the text", f"WEBVTT\n\n{T1}\na\n\nlost\n\n{T2}\nc\n", ["a", "c"], [("text-left-out", 6)]),
    ("a style too late", f"WEBVTT\n\n{T1}\na\n\nSTYLE\n::cue {{}}\n", ["a"], [("text-left-out", 6)]),
    ("a long name of a cue", f"WEBVTT\n\none\ntwo\n{T1}\na\n", ["a"], [("text-left-out", 3)]),
    ("text behind the times", f"WEBVTT\n\n{T1} hello\na\n", ["a"], [("text-left-out", 3)]),
]


@pytest.mark.parametrize(("text", "payloads"), [row[1:] for row in SILENT], ids=[row[0] for row in SILENT])
def test_nothing_to_complain_of(text: str, payloads: list[str]) -> None:
    assert read(text) == (payloads, [])


@pytest.mark.parametrize(("text", "payloads", "told"), [row[1:] for row in TOLD], ids=[row[0] for row in TOLD])
def test_complaints_by_line(text: str, payloads: list[str], told: Told) -> None:
    assert read(text) == (payloads, told)


def test_a_number_stuck_above_the_times_is_named() -> None:
    complaints = Complaints("x.vtt")
    vtt_blocks(f"WEBVTT\n\n{T1}\na\n2\n{T2}\nc\n", complaints)
    assert "'2' is taken for text" in complaints.findings()[0].message
