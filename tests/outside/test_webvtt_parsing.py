"""How many cues a WebVTT file has by the steps of W3C WebVTT, section 6.1.

Source of the counts: the project "web-platform-tests", folder webvtt/parsing/file-parsing, where each file's test names
the number of cues that a browser must find. The inputs here are our own, written to the same effect.
"""

from __future__ import annotations

import pytest

from producer.captions.reading import read_captions

T = "00:00:00.000 --> 00:00:01.000"


def bad_then(times: list[str], good: list[str]) -> str:
    blocks = [good[0], *times, good[1]]
    return "WEBVTT\n\n" + "\n\n".join(f"{one}\nwords" for one in blocks) + "\n"


TOO_LONG = [
    "00::00:01.000 --> 00:00:02.000", "00:001:00.000 --> 00:02:00.000", "00:00::01.000 --> 00:00:02.000",
    "00:00:001.000 --> 00:00:02.000", "00:00:01..000 --> 00:00:02.000", "00:00:01.0000 --> 00:00:02.000",
    "000:01.000 --> 00:02.000", "00:001.000 --> 00:02.000", "00:01.000 --> 000:02.000", "00:01.0000 --> 00:02.000",
]  # fmt: skip
TOO_SHORT = [
    "0000:01.000 --> 00:00:02.000", "00:0:01.000 --> 00:00:02.000", "00:00:1.000 --> 00:00:02.000",
    "00:00:01000 --> 00:00:02.000", "00:00:01.00 --> 00:00:02.000", "00:00:01.0 --> 00:00:02.000",
    "00:00:01. --> 00:00:02.000", "00:00:01 --> 00:00:02.000", "00:00: --> 00:00:02.000", "00:01 --> 00:02.000",
    "00: --> 00:02.000", "0 --> 00:02.000", " --> 00:02.000", "0:01.000 --> 00:02.000", "00:1.000 --> 00:02.000",
    ". --> 00:02.000", "00:01.000 --> 0:02.000", "00:01.000 -->", "00:01.000 --> 00:02.00",
]  # fmt: skip
GARBAGE = [
    "x00:00:01.000 --> 00:00:02.000", "00:x:01.000 --> 00:00:02.000", "00:00:01x000 --> 00:00:02.000",
    "00:00:01.000x --> 00:00:02.000", "00:00:01.000 -x-> 00:00:02.000", "00:00:01.000 --x> 00:00:02.000 -->",
    "00:00:01.000 --> x00:00:02.000", "00:00:01.000 --> 00-00-02.000", "00.00.01.000 --> 00:00:02.000",
    "\u0660\u0660:01.000 --> 00:02.000", "one --> two", "--> -->", "00:00:01,000 --> 00:00:02,000",
]  # fmt: skip

FILES = {
    "arrows": (6, "WEBVTT\n\n-->\n" + "".join(f"{T}\nwords\n{arrow}\n" for arrow in (
        "lap-->", "-->lap", "--->", "-->-->")) + f"{T}\nwords\n{T}\nwords\n\n00:00:00.000 -x -->\n\n00:00 - -->\n"),
    "ids": (5, "WEBVTT\n\n" + "\n\n".join(f"{name}\n{T}\nwords" for name in (" lap", "lap ", "-- >", "->", " "))),
    "newlines": (4, f"WEBVTT\n\ncr\r{T}\rwords\r\rlf\n{T}\nwords\n\r\ncrlf\r\n{T}\r\nwords\r\n\n\rlfcr\n{T}\nwords\n"),
    "nulls": (7, "WEBVTT\n\n" + "\n\n".join((
        f"{T}\nwords", f"\0\n{T}\nwords", f"a\0b\n{T}\nwords", f"{T}\n\0", f"{T}\nwo\0rds", f"{T} align:\0\nwords",
        f"{T} align:start\0\nwords", "00:00:00.000\0 --> 00:00:01.000\nwords", "00:00:00.000 --> \0" + "\nwords"))),
    "timings-60": (2, bad_then(["00:00:60.000 --> 00:01:01.000", "00:60:00.000 --> 01:00:01.000",
        "00:00:01.000 --> 00:00:60.000", "00:00:01.000 --> 00:60:00.000", "60:00.000 --> 61:00.000"],
        ["00:59.999 --> 01:00.000", "60:59:59.999 --> 61:00:00.000"])),
    "timings-eof": (0, "WEBVTT\n\n00:00:00.000 -->"),
    "timings-garbage": (0, "WEBVTT\n\n" + "\n\n".join(f"{one}\nwords" for one in GARBAGE)),
    "timings-negative": (4, "WEBVTT\n\n" + "\n\n".join(f"{one}\nwords" for one in (
        "00:02.000 --> 00:02.000", "00:02.000 --> 00:01.999", "00:01:00.000 --> 00:00:59.000",
        "01:00:00.000 --> 00:59:59.999"))),
    "omitted-hours": (3, "WEBVTT\n\n" + "\n\n".join(f"{one}\nwords" for one in (
        "00:00.000 --> 00:01.000", "00:00:00.000 --> 00:01.000", "00:00.000 --> 00:00:01.000"))),
    "too-long": (2, bad_then(TOO_LONG, ["000:00:00.000 --> 00:00:01.000", "00:00:00.000 --> 0000:00:01.000"])),
    "too-short": (2, bad_then(TOO_SHORT, ["0:00:00.000 --> 00:00:01.000", "00:00:00.000 --> 0:00:01.000"])),
    "whitespace-chars": (3, "WEBVTT\n\n" + "\n\n".join(
        f"name\n{blank}00:00:00.000{blank}-->{blank}00:00:01.000{blank}\nwords" for blank in ("  ", "\t", "\f", "\v"))),
    "header-garbage": (1, f"WEBVTT\nlap times\nand more\n\n{T}\nwords\n"),
    "header-timings": (1, f"WEBVTT\n{T}\nwords\n"),
    "signature-timings": (0, f"WEBVTT {T}\nwords\n"),
    "settings-multiple": (2, f"WEBVTT\n\na\n{T} align:start line:1%\nwords\n\nb\n{T} vertical:rl size:0%\nwords"),
    "signature-lowercase": (0, f"webvtt\n\n{T}\nwords\n"),
    "signature-bom": (1, f"\ufeffWEBVTT\n\n{T}\nwords\n"),
    "signature-two-boms": (0, f"\ufeff\ufeffWEBVTT\n\n{T}\nwords\n"),
    "signature-tab": (1, f"WEBVTT\tx\n\n{T}\nwords\n"),
    "signature-formfeed": (0, f"WEBVTT\f\n\n{T}\nwords\n"),
    "signature-missing": (0, f"\n\nWEBVTT\n\n{T}\nwords\n"),
}  # fmt: skip


@pytest.mark.parametrize("name", FILES)
def test_as_many_cues_as_a_browser_finds(name: str) -> None:
    count, text = FILES[name]
    read = read_captions(text.encode(), f"{name}.vtt")
    assert len(read.cues) == count
    assert count or [one.code for one in read.findings] == ["no-cues"]


@pytest.mark.parametrize(
    "name", ["omitted-hours", "signature-bom", "signature-tab", "header-garbage", "settings-multiple"]
)
def test_silent_where_nothing_is_lost(name: str) -> None:
    read = read_captions(FILES[name][1].encode(), "x.vtt")
    assert {one.code for one in read.findings} <= {"cues-overlap"}  # all cues of these files stand at the same time


@pytest.mark.parametrize("name", ["too-long", "too-short", "timings-60"])
def test_every_cue_left_out_is_complained_of(name: str) -> None:
    text = FILES[name][1]
    read = read_captions(text.encode(), "x.vtt")
    codes = [one.code for one in read.findings]
    assert codes.count("cue-times-unreadable") == text.count("-->") - len(read.cues)
