"""Frames a second as a channel writes them."""

from __future__ import annotations

from fractions import Fraction

import pytest

from producer.basics.frame_rate import FrameRate, frame_rate


@pytest.mark.parametrize(
    ("text", "frames", "nominal", "drop"),
    [
        ("30000/1001", Fraction(30000, 1001), 30, True),
        (" 29.97 ", Fraction(30000, 1001), 30, True),
        ("60000/1001", Fraction(60000, 1001), 60, True),
        ("59.94", Fraction(60000, 1001), 60, True),
        ("23.976", Fraction(24000, 1001), 24, False),
        ("23.98", Fraction(24000, 1001), 24, False),
        ("25", Fraction(25), 25, False),
        ("60", Fraction(60), 60, False),
    ],
)
def test_a_rate(text: str, frames: Fraction, nominal: int, drop: bool) -> None:
    rate = frame_rate(text)
    assert (rate.frames, rate.nominal, rate.drop) == (frames, nominal, drop)


@pytest.mark.parametrize("text", ["", "0", "-25", "29.9", "30000/1000", "fast", "25 fps", "1e3"])
def test_what_is_no_rate(text: str) -> None:
    with pytest.raises(ValueError, match="is not a frame rate: 24000/1001, 24"):
        frame_rate(text)


@pytest.mark.parametrize("frames", [Fraction(24000, 1001), Fraction(25), Fraction(30), Fraction(60), Fraction(50)])
def test_no_other_rate_drops(frames: Fraction) -> None:
    with pytest.raises(ValueError, match="no drop-frame"):
        FrameRate(frames, drop=True)


@pytest.mark.parametrize("frames", [Fraction(0), Fraction(-25)])
def test_a_rate_is_above_zero(frames: Fraction) -> None:
    with pytest.raises(ValueError, match="more than zero"):
        FrameRate(frames)
