"""Timecode: frames counted as hh:mm:ss:ff, exactly, drop-frame included.

SMPTE ST 12-1 (from memory): at 30000/1001 frames a second the first two numbers of every minute are left out, but for
every tenth minute, so that the count keeps up with the clock: frame = 30 (60 M + s) + f - 2 (M - floor(M / 10)), M
being minutes from zero. 60000/1001 leaves out four in the same places. No other rate drops. Drop-frame is written with
a semicolon before the frames.
"""

from __future__ import annotations

import re

from producer.basics.frame_rate import FrameRate

_TIMECODE = re.compile(r"([0-9]{2}):([0-9]{2}):([0-9]{2})([:;])([0-9]{2,3})")


def frame_at(ms: int, rate: FrameRate) -> int:
    """The frame (from 0) that is on screen at a time. `ms` >= 0."""
    return int(ms * rate.frames / 1000)


def ms_of(frame: int, rate: FrameRate) -> int:
    """The first whole millisecond at which a frame is on screen: `frame_at` gives the frame back."""
    return -int(-frame * 1000 // rate.frames)


def to_timecode(frame: int, rate: FrameRate) -> str:
    """`01:00:00:00`, with drop-frame `01:00:00;00`; hours have two digits or more. Raises ValueError below zero."""
    if frame < 0:
        raise ValueError(f"frame {frame} is before zero")
    nominal, dropped = rate.nominal, rate.dropped
    if dropped:
        tens, rest = divmod(frame, nominal * 600 - 9 * dropped)
        # The first minute of ten drops nothing, each of the others at its start.
        minutes = max(0, rest - dropped) // (nominal * 60 - dropped)
        frame += dropped * (9 * tens + minutes)
    seconds, frames = divmod(frame, nominal)
    minutes, seconds = divmod(seconds, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours:02d}:{minutes:02d}:{seconds:02d}{';' if dropped else ':'}{frames:02d}"


def from_timecode(text: str, rate: FrameRate) -> int:
    """The frame (from 0) of a timecode.

    Raises ValueError for one that is not written like `to_timecode` does, or that the count leaves out.
    """
    found = _TIMECODE.fullmatch(text)
    if found is None or (found[4] == ";") != rate.drop:
        raise ValueError(f"'{text[:20]}' is no timecode like {to_timecode(0, rate)}")
    hours, minutes, seconds, frames = (int(found[group]) for group in (1, 2, 3, 5))
    if minutes > 59 or seconds > 59 or frames >= rate.nominal:
        raise ValueError(f"'{text}' is no timecode: minutes and seconds end at 59, frames at {rate.nominal - 1}")
    if seconds == 0 and frames < rate.dropped and minutes % 10:
        raise ValueError(f"'{text}' does not exist: drop-frame leaves it out")
    whole = 60 * hours + minutes
    return rate.nominal * (60 * whole + seconds) + frames - rate.dropped * (whole - whole // 10)
