"""How fast captions are read and written: run by hand with `pytest -m benchmark -s`; nothing is asserted about time."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from random import Random
from time import perf_counter

import pytest

from producer.basics.frame_rate import FrameRate
from producer.captions.payload import time_stamp
from producer.captions.reading import read_captions
from producer.captions.speech import speech_captions
from producer.captions.timecode import from_timecode, to_timecode
from producer.model.cue import ReadingProfile

pytestmark = pytest.mark.benchmark
WORDS = (
    "so",
    "the",
    "right",
    "front",
    "spring",
    "goes",
    "from",
    "seven",
    "fifty",
    "down",
    "to",
    "725",
    "tight",
    "in",
    "off",
)


def timed(what: str, work: Callable[[], object], times: int = 3) -> None:
    best = min(_once(work) for _ in range(times))
    print(f"\n{what}: {best:.3f} s (best of {times})")


def _once(work: Callable[[], object]) -> float:
    start = perf_counter()
    work()
    return perf_counter() - start


def automatic(words: int) -> bytes:
    """Rolling captions of so many words, about 150 a minute."""
    dice, now, before = Random(7), 0, " "
    rows = ["WEBVTT", "Kind: captions", ""]
    for _ in range(words // 7):
        said = [dice.choice(WORDS) for _ in range(7)]
        start, line = now, said[0]
        for word in said[1:]:
            now += dice.randint(250, 550)
            line += f"<{time_stamp(now, '.')}><c> {word}</c>"
        now += 400
        rows += [f"{time_stamp(start, '.')} --> {time_stamp(now, '.')} align:start", before, line, ""]
        before = " ".join(said)
        rows += [f"{time_stamp(now, '.')} --> {time_stamp(now + 10, '.')} align:start", before, " ", ""]
        now += 10
    return "\n".join(rows).encode()


@pytest.mark.parametrize(("words", "what"), [(4500, "30 minutes"), (27_000, "3 hours")])
def test_a_take(words: int, what: str) -> None:
    data = automatic(words)
    timed(f"{what} of rolling captions read, {len(data) // 1024} KiB", lambda: read_captions(data, "take.vtt"))
    said = read_captions(data, "take.vtt").said
    timed(f"{what} broken anew", lambda: speech_captions(said, ReadingProfile()))


def test_a_file_of_complaints() -> None:
    data = ("WEBVTT\n\n" + "00:00:01,000 --> 00:00:02,000\na <b\n\n" * 50_000).encode()
    timed("50,000 cues that cannot be read", lambda: read_captions(data, "x.vtt"), 1)


@pytest.mark.parametrize(
    "data", [b"<" * 200_000, b"1" * 1_000_000, b"-->" * 300_000, b"\n" * 1_000_000, b"<x>a " * 200_000]
)
def test_files_made_to_be_slow(data: bytes) -> None:
    cue = b"00:00:01.000 --> 00:00:02.000\n"
    timed(f"{data[:3]!r} again and again", lambda: read_captions(cue + data, "x.srt"), 1)
    timed(f"{data[:3]!r} again and again, WebVTT", lambda: read_captions(b"WEBVTT\n\n" + cue + data, "x.vtt"), 1)


def test_timecode() -> None:
    rate = FrameRate(Fraction(30000, 1001), drop=True)
    timed("10,000 timecodes there and back", lambda: [from_timecode(to_timecode(n, rate), rate) for n in range(10_000)])
