"""Frames a second, exact: as a channel writes them, and as timecode counts them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

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
