"""The difference of two estimates: a pooled t where both scatter alike, else Welch's, whatever is estimated.

Two stints of one driver scatter alike more often than not, and pooling makes the most of few laps. Where one scatters
half as much again as the other (assumption: textbooks say anything from a third more to twice), pooling would call
the worse one better than it is. Source: NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.3, two-sample t for
equal and for unequal variances (from memory; worked examples and SciPy are tests).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import copysign, inf, sqrt

from producer.model.stints import Interval
from producer.stints.lines import Fit
from producer.stints.student import LEVEL, quantile, two_sided

_ALIKE = 1.5  # times the smaller scatter (standard deviation): up to there two stints scatter alike


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
    """Second - first, with the scatter of both."""
    one, other, freedom = scatters(first, second)
    return Difference(second.value - first.value, sqrt(one * first.weight + other * second.weight), freedom)


def scatters(first: Estimate, second: Estimate) -> tuple[float, float, int]:
    """The variance of one observation of either, pooled where they are alike, and the degrees of freedom of both.

    Of variances that stay apart the freedom is Welch's and Satterthwaite's, rounded down.
    """
    low, high = sorted((first.variance, second.variance))
    if high <= low * _ALIKE**2:
        freedom = first.freedom + second.freedom
        pooled = (first.variance * first.freedom + second.variance * second.freedom) / freedom
        return pooled, pooled, freedom
    one, other = first.variance * first.weight, second.variance * second.weight
    share = one / (one + other)
    parts = share * share / first.freedom + (1 - share) ** 2 / second.freedom
    return first.variance, second.variance, max(1, int(1 / parts + 1e-9))


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
