"""SubRip as real files hold it: cues, and complaints by line."""

from __future__ import annotations

import pytest

from producer.captions.complaints import Complaints
from producer.captions.srt_reading import srt_blocks

T1, T2, T3 = (f"00:00:0{second},000 --> 00:00:0{second + 1},000" for second in (1, 2, 3))
Told = list[tuple[str, int]]


def read(text: str) -> tuple[list[str], Told]:
    complaints = Complaints("x.srt")
    payloads = [block.raw for block in srt_blocks(text, complaints)]
    return payloads, [(one.code, one.place.line) for one in complaints.findings()]


SILENT = [
    ("plain", f"1\n{T1}\na\nb\n\n2\n{T2}\nc\n", ["a\nb", "c"]),
    ("no last line end", f"1\n{T1}\na\n\n2\n{T2}\nc", ["a", "c"]),
    ("CR LF", f"1\r\n{T1}\r\na\r\n\r\n2\r\n{T2}\r\nc\r\n", ["a", "c"]),
    ("CR", f"1\r{T1}\ra\r\r2\r{T2}\rc\r", ["a", "c"]),
    ("CR CR LF", f"1\r\r\n{T1}\r\r\na\r\r\n\r\r\n2\r\r\n{T2}\r\r\nc\r\r\n", ["a", "c"]),
    ("blank lines around", f"\n\n1\n{T1}\na\n\n\n\n2\n{T2}\nc\n\n\n", ["a", "c"]),
    ("a line of one blank between", f"1\n{T1}\na\n \n2\n{T2}\nc\n", ["a", "c"]),
    ("text is a number", f"1\n{T1}\nrate:\n350\n\n2\n{T2}\n12\n", ["rate:\n350", "12"]),
    ("text is the next number", f"1\n{T1}\n2\n\n2\n{T2}\nc\n", ["2", "c"]),
    ("blank after the number", f"1\n\n{T1}\na\n\n2\n\n{T2}\nc\n", ["a", "c"]),
    ("blanks around the number", f" 1 \n{T1}\na\n", ["a"]),
    ("an empty cue", f"1\n{T1}\n\n2\n{T2}\nc\n", ["", "c"]),
    ("text with an arrow of its own", f"1\n{T1}\n750 -> 725\n", ["750 -> 725"]),
    ("nothing", "", []),
]
TOLD = [
    ("stuck", f"1\n{T1}\na\n2\n{T2}\nc\n", ["a", "c"], [("missing-blank-line", 4)]),
    ("stuck and repeated", f"1\n{T1}\na\n1\n{T2}\nc\n", ["a", "c"], [("missing-blank-line", 4), ("cue-number-odd", 5)]),
    ("stuck to an empty cue", f"1\n{T1}\n2\n{T2}\nc\n", ["", "c"], [("missing-blank-line", 3)]),
    ("no numbers", f"{T1}\na\n\n{T2}\nc\n", ["a", "c"], [("cue-number-odd", 1)]),
    ("no numbers, stuck", f"{T1}\na\n{T2}\nc\n", ["a", "c"], [("cue-number-odd", 1)]),
    ("no numbers, text is one", f"{T1}\n350\n{T2}\nc\n", ["350", "c"], [("cue-number-odd", 1)]),
    ("no numbers, text is one, blank", f"{T1}\n350\n\n{T2}\nc\n", ["350", "c"], [("cue-number-odd", 1)]),
    ("one number missing", f"1\n{T1}\na\n\n{T2}\nb\n\n3\n{T3}\nc\n", ["a", "b", "c"], [("cue-number-odd", 5)]),
    ("from zero", f"0\n{T1}\na\n\n1\n{T2}\nc\n", ["a", "c"], [("cue-number-odd", 2)]),
    ("all the same", f"7\n{T1}\na\n\n7\n{T2}\nc\n\n7\n{T3}\nd\n", ["a", "c", "d"], [("cue-number-odd", 2)]),
    ("blank line in a cue", f"1\n{T1}\na\n\nb\n\n2\n{T2}\nc\n", ["a\nb", "c"], [("blank-line-in-cue", 5)]),
    ("a title above", f"Title\n\n1\n{T1}\na\n", ["a"], [("text-left-out", 1)]),
    ("times unreadable", f"1\n00:00:01 --> soon\nlost\n\n2\n{T2}\nc\n", ["c"], [
        ("cue-times-unreadable", 2), ("text-left-out", 3),
    ]),
    ("frames for milliseconds", "1\n00:00:01:12 --> 00:00:02:05\na\n", [], [
        ("cue-times-unreadable", 2), ("text-left-out", 3),
    ]),
    ("an arrow in the text", f"1\n{T1}\n750 --> 725\n", ["750 --> 725"], [("arrow-in-text", 3)]),
    ("text behind the times", f"1\n{T1} hello\na\n", ["a"], [("text-left-out", 2)]),
    ("two digits", "1\n00:00:01,50 --> 00:00:02,000\na\n", ["a"], [("cue-short-milliseconds", 2)]),
    ("seconds above 59", "1\n00:00:59,000 --> 00:00:60,000\na\n", ["a"], [("cue-times-odd", 2)]),
]  # fmt: skip


@pytest.mark.parametrize(("text", "payloads"), [row[1:] for row in SILENT], ids=[row[0] for row in SILENT])
def test_nothing_to_complain_of(text: str, payloads: list[str]) -> None:
    assert read(text) == (payloads, [])


@pytest.mark.parametrize(("text", "payloads", "told"), [row[1:] for row in TOLD], ids=[row[0] for row in TOLD])
def test_complaints_by_line(text: str, payloads: list[str], told: Told) -> None:
    assert read(text) == (payloads, told)
