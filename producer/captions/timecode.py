"""Timecode: frames counted as hh:mm:ss:ff, exactly, drop-frame included.

SMPTE ST 12-1 (from memory): at 30000/1001 frames a second the first two numbers of every minute are left out, but for
every tenth minute, so that the count keeps up with the clock: frame = 30 (60 M + s) + f - 2 (M - floor(M / 10)), M
being minutes from zero. 60000/1001 leaves out four in the same places. No other rate drops. Drop-frame is written with
a semicolon before the frames.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

_TIMECODE = re.compile(r"([0-9]{2}):([0-9]{2}):([0-9]{2})([:;])([0-9]{2,3})")
_DROPPED = {30: 2, 60: 4}
_RATES = {
    "24000/1001": ("23.976", "23.98"),
    "24": (),
    "25": (),
    "30000/1001": ("29.97",),
    "30": (),
    "48": (),
    "50": (),
    "60000/1001": ("59.94",),
    "60": (),
}


@dataclass(frozen=True, slots=True)
class FrameRate:
    """Frames a second, exact. `drop` says that timecode leaves numbers out; only two rates have it.

    Raises ValueError for a rate below zero, or where there is no drop-frame.
    """

    frames: Fraction
    drop: bool = False

    def __post_init__(self) -> None:
        if self.frames <= 0:
            raise ValueError("a video has more than zero frames a second")
        if self.drop and (self.frames.denominator != 1001 or self.nominal not in _DROPPED):
            raise ValueError(f"{self.frames} frames a second have no drop-frame timecode")

    @property
    def nominal(self) -> int:
        """The whole number of frames that timecode counts in a second: 30 for 30000/1001."""
        return -(-self.frames.numerator // self.frames.denominator)

    @property
    def dropped(self) -> int:
        """Numbers left out in a minute that drops; 0 without drop-frame."""
        return _DROPPED[self.nominal] if self.drop else 0


def frame_rate(text: str) -> FrameRate:
    """A rate as `channel.yaml` writes it: `30000/1001` or `29.97`, `25`. Drop-frame where the rate has it.

    Raises ValueError, with a sentence for the author, for any other.
    """
    given = text.strip()
    for exact, names in _RATES.items():
        if given == exact or given in names:
            rate = Fraction(exact)
            return FrameRate(rate, drop=rate in {Fraction(30000, 1001), Fraction(60000, 1001)})
    raise ValueError(f"'{given[:20]}' is not a frame rate: {', '.join(_RATES)}")


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
