"""Ticks that people count in: 1, 2 or 5 with zeros."""

from __future__ import annotations

from decimal import Decimal
from math import ceil, floor, isfinite, log10


def step_of(least: float) -> Decimal:
    """The smallest 1, 2 or 5 times a power of ten that is not below `least` (> 0, finite)."""
    if not isfinite(least) or least <= 0:
        raise ValueError(f"no step is at least {least}")
    power = floor(log10(least))
    steps = (Decimal(digit).scaleb(exponent) for exponent in (power, power + 1) for digit in (1, 2, 5))
    return next(one for one in steps if float(one) >= least * (1 - 1e-12))


def ticks(low: float, high: float, step: Decimal) -> tuple[Decimal, ...]:
    """The multiples of `step` from `low` to `high`, both included."""
    first, last = ceil(low / float(step) - 1e-9), floor(high / float(step) + 1e-9)
    return tuple(step * number for number in range(first, last + 1))
