"""Timecode: frames and times, drop-frame."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.basics.frame_rate import FrameRate, frame_rate
from producer.captions.timecode import frame_at, from_timecode, ms_of, to_timecode

NAMES = ["23.976", "24", "25", "29.97", "30", "48", "50", "59.94", "60"]
DAY = {
    name: from_timecode("24:00:00" + (";" if frame_rate(name).drop else ":") + "00", frame_rate(name)) for name in NAMES
}


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("00:01:00;00", "29.97"),
        ("00:01:00;01", "29.97"),
        ("00:59:00;01", "29.97"),
        ("00:01:00;03", "59.94"),
        ("00:00:00:00", "29.97"),
        ("00:00:00;00", "25"),
        ("00:00:00:25", "25"),
        ("00:00:60:00", "25"),
        ("00:60:00:00", "25"),
        ("0:00:00:00", "25"),
        ("00:00:00.00", "25"),
        ("\u0661\u0661:00:00:00", "25"),
        ("", "25"),
    ],
)
def test_what_is_no_timecode(text: str, name: str) -> None:
    with pytest.raises(ValueError, match=r"timecode|leaves it out"):
        from_timecode(text, frame_rate(name))


def test_a_frame_before_zero() -> None:
    with pytest.raises(ValueError, match="before zero"):
        to_timecode(-1, frame_rate("25"))


def test_the_same_rate_without_drop_frame() -> None:
    rate = FrameRate(Fraction(30000, 1001))
    assert to_timecode(107_892, rate) == "00:59:56:12"
    assert from_timecode("00:01:00:00", rate) == 1800


@pytest.mark.parametrize("name", NAMES)
@given(st.data())
def test_a_day_goes_round(name: str, data: st.DataObject) -> None:
    rate = frame_rate(name)
    frame = data.draw(st.integers(0, DAY[name]))
    assert from_timecode(to_timecode(frame, rate), rate) == frame
    assert frame_at(ms_of(frame, rate), rate) == frame
    assert ms_of(frame, rate) == 0 or frame_at(ms_of(frame, rate) - 1, rate) == frame - 1


@pytest.mark.parametrize("name", NAMES)
def test_every_minute_of_a_day_goes_round_and_counts_on(name: str) -> None:
    rate = frame_rate(name)
    for minute in range(24 * 60):
        edge = from_timecode(f"{minute // 60:02d}:{minute % 60:02d}:59{';' if rate.drop else ':'}00", rate)
        codes = [to_timecode(frame, rate) for frame in range(edge, edge + rate.nominal + 6)]
        assert codes == sorted(set(codes))
        assert [from_timecode(code, rate) for code in codes] == list(range(edge, edge + rate.nominal + 6))


@given(st.integers(0, 90_000_000))
def test_drop_frame_keeps_up_with_the_clock(ms: int) -> None:
    rate = frame_rate("29.97")
    hours, minutes, seconds = to_timecode(frame_at(ms, rate), rate)[:8].split(":")
    shown = (int(hours) * 60 + int(minutes)) * 60 + int(seconds)
    assert abs(shown - ms / 1000) < 1.2


@pytest.mark.long
@pytest.mark.parametrize("name", NAMES)
def test_every_frame_of_a_day_goes_round(name: str) -> None:
    rate = frame_rate(name)
    assert all(from_timecode(to_timecode(frame, rate), rate) == frame for frame in range(DAY[name]))
