"""Lines of times."""

from __future__ import annotations

import pytest

from producer.captions.stamps import Times, looks_like_times, srt_times, vtt_stamp, vtt_times, vtt_trouble

VTT = [
    ("00:00:01.000 --> 00:00:02.500", (1000, 2500)),
    ("00:01.000 --> 00:02.500", (1000, 2500)),
    ("0:00:01.000 --> 1:02:17.167", (1000, 3_737_167)),
    ("100:00:00.000 --> 00:00:00.000", (360_000_000, 0)),
    ("\t00:01.000-->00:02.500", (1000, 2500)),
    (" \f00:01.000 \t--> 00:02.500 align:start position:0%", (1000, 2500)),
]
NO_VTT = [
    ("00:00:01,000 --> 00:00:02,000", "not a comma"),
    ("00:00:01.00 --> 00:00:02.000", "three digits"),
    ("00:00:01.0000 --> 00:00:02.000", "three digits"),
    ("00:00:01 --> 00:00:02", "three digits"),
    ("0:01.000 --> 00:02.000", "two digits each"),
    ("00:60.000 --> 01:00.000", "end at 59"),
    ("00:60:00.000 --> 01:00:00.000", "end at 59"),
    ("00:00:01.000 -->", "is written"),
    ("--> 00:00:01.000", "is written"),
    ("00:00:01.000 -> 00:00:02.000", "is written"),
    ("00:00:01.000 ---> 00:00:02.000", "is written"),
    ("\v00:00:01.000 --> 00:00:02.000", "is written"),
    ("9999999999:00:00.000 --> 00:00:02.000", "is written"),
]


@pytest.mark.parametrize(("line", "times"), VTT)
def test_webvtt_by_the_letter(line: str, times: tuple[int, int]) -> None:
    assert vtt_times(line) == Times(*times)


@pytest.mark.parametrize(("line", "why"), NO_VTT)
def test_what_webvtt_does_not_take_and_why(line: str, why: str) -> None:
    assert vtt_times(line) is None
    assert why in vtt_trouble(line)


@pytest.mark.parametrize(("text", "ms"), [("00:00:01.250", 1250), ("00:01.250", 1250), ("c.red", None), ("1.2", None)])
def test_a_time_of_a_word(text: str, ms: int | None) -> None:
    assert vtt_stamp(text) == ms


SRT = [
    ("00:00:01,000 --> 00:00:02,500", Times(1000, 2500)),
    ("00:00:01.000 --> 00:00:02.500", Times(1000, 2500)),
    ("00:00:01:000 --> 00:00:02:500", Times(1000, 2500)),
    ("  0:0:1,000  -->  0:0:2,500  ", Times(1000, 2500)),
    ("00:01,000-->00:02,500", Times(1000, 2500)),
    ("20:05,000 --> 75:00,000", Times(1_205_000, 4_500_000)),
    ("00:00:01 --> 00:00:02", Times(1000, 2000)),
    ("00:00:01,000 ----> 00:00:02,500", Times(1000, 2500)),
    ("00:00:01,000 --> 00:00:02,500 X1:40 X2:600 Y1:20 Y2:50", Times(1000, 2500)),
    ("00:00:01,000 --> 00:00:02,500 align:start line:0%", Times(1000, 2500)),
    ("00:00:01,000 --> 00:00:02,500 hello", Times(1000, 2500, rest="hello")),
    ("00:00:01,5 --> 00:00:02,50", Times(1005, 2050, short="',5' is taken as 5 ms")),
    ("00:00:01,000 --> 00:00:02.50", Times(1000, 2050, short="'.50' is taken as 50 ms")),
    ("00:00:01,000000 --> 00:00:02,000", Times(1000, 2000, odd="digits after the third are left out")),
    ("-00:00:01,000 --> 00:00:02,000", Times(0, 2000, odd="a time before zero is taken as zero")),
    ("00:00:60,000 --> 00:61:00,000", Times(60_000, 3_660_000, odd="minutes or seconds above 59 are carried over")),
]


@pytest.mark.parametrize(("line", "times"), SRT)
def test_subrip_as_files_have_it(line: str, times: Times) -> None:
    assert srt_times(line) == times


@pytest.mark.parametrize(
    "line",
    [
        "750 --> 725",
        "-->",
        "a --> b",
        "00:00:01:12 --> 00:00:02:05",
        "00:00:01,000 -> 00:00:02,000",
        "1 --> 00:00:02,0",
    ],
)
def test_what_is_no_line_of_times(line: str) -> None:
    assert srt_times(line) is None


@pytest.mark.parametrize(
    ("line", "meant"),
    [
        ("00:00:xx --> 00:00:02,000", True),
        ("00:01 --> soon", True),
        ("-->", True),
        ("750 --> 725", False),
        ("At 12:30 --> go", False),
        ("00:00:01,000 -> 00:00:02,000", False),
    ],
)
def test_what_was_meant_as_times(line: str, meant: bool) -> None:
    assert looks_like_times(line) is meant


@pytest.mark.parametrize(
    "line", ["1" * 100_000, "a:" * 50_000, "00:00:01,000 --> 00:00:02,000 " + "a:a" * 30_000 + " x"]
)
def test_a_long_line_costs_no_time(line: str) -> None:
    assert not looks_like_times(line) or srt_times(line) is not None
    assert vtt_times(line) is None
