"""The values a setting can have: a range with a step anchored at its minimum, or a list of choices."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass
from decimal import Decimal
from math import floor

from producer.basics.figures import decimals_of


@dataclass(frozen=True, slots=True)
class Grid:
    """Exact decimals: `low`, `low + step`, ... `high`; or `choices` (ascending), a click being one place."""

    low: Decimal
    high: Decimal
    step: Decimal | None = None
    choices: tuple[Decimal, ...] = ()

    @property
    def decimals(self) -> int:
        """Decimals a value is written with: those of the step and the minimum, or of the choices."""
        written = self.choices or tuple(x for x in (self.low, self.step) if x is not None)
        return max(decimals_of(_shortest(x) if not self.choices else x) for x in written)

    @property
    def last(self) -> int:
        """The index of the highest place; places count from 0."""
        if self.choices:
            return len(self.choices) - 1
        return floor((self.high - self.low) / self.step) if self.step else 0

    def inside(self, value: Decimal) -> bool:
        """Within the limits, both included; on the grid or not."""
        return self.low <= value <= self.high

    def index(self, value: Decimal) -> int | None:
        """The place of a value on the grid, continued past the limits for a range; None between two places."""
        if self.choices:
            at = bisect_left(self.choices, value)
            return at if at < len(self.choices) and self.choices[at] == value else None
        if not self.step:
            return 0 if value == self.low else None
        clicks, rest = divmod(value - self.low, self.step)
        return int(clicks) if rest == 0 else None

    def at(self, index: int) -> Decimal | None:
        """The value of a place, None outside the limits."""
        if not 0 <= index <= self.last:
            return None
        return self.choices[index] if self.choices else self.low + (self.step or 0) * index

    def clicks(self, start: Decimal, to: Decimal) -> int | None:
        """Signed clicks from `start` to `to`; None where either is off the grid."""
        one, other = self.index(start), self.index(to)
        return None if one is None or other is None else other - one

    def moved(self, value: Decimal, clicks: int) -> Decimal | None:
        """`value` moved by whole clicks; None off the grid or past a limit."""
        index = self.index(value)
        return None if index is None else self.at(index + clicks)

    def headroom(self, value: Decimal, way: int) -> int:
        """Clicks left from `value` upwards (`way` > 0) or downwards; 0 off the grid."""
        index = self.index(value)
        if index is None:
            return 0
        return max(0, self.last - index if way > 0 else index)

    def nearest(self, value: Decimal) -> tuple[Decimal, ...]:
        """The one or two places of the grid around `value`, within the limits, ascending."""
        if self.choices:
            at = bisect_left(self.choices, value)
            return self.choices[max(0, at - 1) : at + 1] if value not in self.choices else (value,)
        if not self.step or value <= self.low:
            return (self.low,)
        index = floor((min(value, self.high) - self.low) / self.step)
        found = (self.at(index), self.at(index + 1))
        if found[0] == value:
            return (value,)
        return tuple(x for x in found if x is not None)


def _shortest(number: Decimal) -> Decimal:
    """A step of 0.50 written as 0.5 asks for no more decimals than it needs."""
    short = number.normalize()
    return short if decimals_of(short) else number.to_integral_value()
