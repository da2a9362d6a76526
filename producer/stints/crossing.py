"""Where two lines of lap times meet, and from which lap the total of one is ahead.

Source: Fieller, Some problems in interval estimation, J. R. Statist. Soc. B 16 (1954) (from memory; tests hold the
interval against simulated stints).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import floor, sqrt

from producer.model.stints import Interval
from producer.stints.differences import scatters, slope
from producer.stints.lines import Fit
from producer.stints.student import LEVEL, quantile

PARALLEL = 1e-9  # seconds a lap: slopes this near to each other are the same


@dataclass(frozen=True, slots=True)
class Crossing:
    """Equal pace at `lap` (a point on the lap axis, also between laps and outside those driven).

    `interval` is Fieller's; None where it has no end: then the lines may as well be parallel.
    """

    lap: float
    interval: Interval | None


def crossing(first: Fit, second: Fit, level: float = LEVEL) -> Crossing | None:
    """Where the two lines are equal; None where they are parallel."""
    steeper = second.slope - first.slope
    if abs(steeper) < PARALLEL:
        return None
    lap = (first.intercept - second.intercept) / steeper
    return Crossing(lap, _fieller(first, second, lap, level))


def ahead_from(first: Fit, second: Fit) -> int | None:
    """The first lap after which the second's total, summed from lap 1, is below the first's and stays below.

    Also past the laps driven; None where the second is never ahead for good.
    """
    steeper = second.slope - first.slope
    if abs(steeper) < PARALLEL:
        return 1 if second.at(1) < first.at(1) else None
    if steeper > 0:
        return None
    # The totals are level where the lines meet in the middle of the laps run: (n + 1) / 2 = lap of equal pace.
    level_at = 2 * (first.intercept - second.intercept) / steeper - 1
    return max(1, floor(level_at + 1e-9) + 1)


def ahead_up_to(first: Fit, second: Fit, laps: int) -> int | None:
    """The lap from which the second's total is ahead and still is after `laps`; None where it is not ahead then."""
    middle = (laps + 1) / 2
    if second.at(middle) >= first.at(middle):
        return None
    return 1 if second.at(1) < first.at(1) else ahead_from(first, second)


def _fieller(first: Fit, second: Fit, lap: float, level: float) -> Interval | None:
    """All laps at which the lines do not differ by more than their scatter allows, where that is one stretch.

    With z = lap - the estimate: (steeper z)^2 <= t^2 s^2 (w(z)), a quadratic in z; a stretch where its lead is above 0.
    Stints that scatter differently have an s^2 each.
    """
    one, other, freedom = scatters(slope(first), slope(second))
    t = quantile(freedom, level)
    noise, noise_other = t * t * one, t * t * other
    lead = (second.slope - first.slope) ** 2 - noise * first.slope_weight - noise_other * second.slope_weight
    if lead <= 0:
        return None
    half = -noise * (lap - first.mean_x) / first.sxx - noise_other * (lap - second.mean_x) / second.sxx
    rest = -noise * first.weight(lap) - noise_other * second.weight(lap)
    root = sqrt(max(0.0, half * half - lead * rest))
    return Interval(lap + (-half - root) / lead, lap + (-half + root) / lead)
