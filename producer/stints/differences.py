"""The difference of two estimates that share one scatter: a pooled t, whatever is estimated.

Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.3, two-sample t for equal variances (from memory; a
worked example is a test).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import copysign, inf, sqrt

from producer.model.stints import Interval
from producer.stints.lines import Fit
from producer.stints.student import LEVEL, quantile, two_sided


@dataclass(frozen=True, slots=True)
class Estimate:
    """A value whose variance is `weight` times the `variance` of one observation, known from `freedom` degrees."""

    value: float
    weight: float
    variance: float
    freedom: int


@dataclass(frozen=True, slots=True)
class Difference:
    """`value` is the second - the first, with its standard error and degrees of freedom."""

    value: float
    error: float
    freedom: int

    @property
    def t(self) -> float:
        """In standard errors; infinite for a difference without scatter."""
        if self.error == 0:
            return copysign(inf, self.value) if self.value else 0.0
        return self.value / self.error

    @property
    def chance(self) -> float:
        """The probability of a difference at least as large, either way, where there is none."""
        return two_sided(self.t, self.freedom)

    def interval(self, level: float = LEVEL) -> Interval:
        """Where the true difference lies."""
        half = quantile(self.freedom, level) * self.error
        return Interval(self.value - half, self.value + half)


def difference(first: Estimate, second: Estimate) -> Difference:
    """Second - first, the variance of one observation pooled over both."""
    freedom = first.freedom + second.freedom
    pooled = (first.variance * first.freedom + second.variance * second.freedom) / freedom
    return Difference(second.value - first.value, sqrt(pooled * (first.weight + second.weight)), freedom)


def slope(fit: Fit) -> Estimate:
    """The slope of a line as an estimate."""
    return Estimate(fit.slope, fit.slope_weight, fit.variance, fit.freedom)


def height(fit: Fit, x: float) -> Estimate:
    """The height of a line at x as an estimate."""
    return Estimate(fit.at(x), fit.weight(x), fit.variance, fit.freedom)


def total(fit: Fit, laps: int) -> Estimate:
    """The sum of a line over laps 1 to `laps`: as many times its height in their middle."""
    middle = (laps + 1) / 2
    return Estimate(laps * fit.at(middle), laps * laps * fit.weight(middle), fit.variance, fit.freedom)
