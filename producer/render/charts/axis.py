"""An axis with a zero line somewhere in it, so that bars to both sides and the words at them have room."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

_HALVINGS = 60
_NOTHING = 1e-9  # of the measure; what is shorter sets no scale


@dataclass(frozen=True, slots=True)
class Need:
    """What one bar asks for: its signed length, the room of the words at its end, and of those on its other side."""

    length: float
    ahead: float
    behind: float = 0.0


@dataclass(frozen=True, slots=True)
class Axis:
    """`scale` is how many units of the drawing one of the measure is; `start` and `end` are the edges of the plot."""

    start: float
    end: float
    zero: float
    scale: float

    def at(self, length: float) -> float:
        """Where a signed length ends."""
        return self.zero + length * self.scale

    def moved(self, by: float) -> Axis:
        """The same axis further right."""
        return Axis(self.start + by, self.end + by, self.zero + by, self.scale)


def axis(needs: Sequence[Need], start: float, end: float, least: float) -> Axis:
    """The largest scale at which everything stands between `start` and `end`, by halving.

    `least` is wanted on either side of zero in any case. Without a bar of any length one of the measure fills a side.
    """
    longest = max((abs(one.length) for one in needs), default=0.0)
    if longest < _NOTHING:
        left, right = _room(needs, 0.0, least)
        return Axis(start, end, start + left, max(1.0, end - start - left - right))
    low, high = 0.0, (end - start) / longest
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if sum(_room(needs, middle, least)) <= end - start else (low, middle)
    left, right = _room(needs, low, least)
    # What is left over where the words alone need all the room goes to both sides alike.
    spare = end - start - left - right
    return Axis(start, end, start + left + spare / 2, low)


def _room(needs: Sequence[Need], scale: float, least: float) -> tuple[float, float]:
    """How far the words reach to the left and to the right of zero at a scale."""
    left = right = least
    for one in needs:
        ahead = abs(one.length) * scale + one.ahead
        if one.length < 0:
            left, right = max(left, ahead), max(right, one.behind)
        else:
            left, right = max(left, one.behind), max(right, ahead)
    return left, right
