"""Straight lines through lap times: by least squares, and the robust one of Theil and Sen.

Sources: Draper & Smith, Applied Regression Analysis (1998), chapter 1 (from memory), held against NIST StRD in tests;
Theil (1950); Sen, Estimates of the regression coefficient based on Kendall's tau, JASA 63 (1968), whose example is a
test.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import fsum, sqrt
from statistics import NormalDist, median

from producer.model.stints import Interval, Line
from producer.stints.student import LEVEL, quantile

FEWEST = 3  # points that leave a line something to scatter by
_FEWEST_ROBUST = 5  # below, not even all of the pairwise slopes hold the truth 95 times in 100
_MOST_ROBUST = 1_500  # points whose pairs are looked at; of more, evenly spaced ones


@dataclass(frozen=True, slots=True)
class Fit:
    """A least-squares line with what its errors are made of.

    `mean_x`, `mean_y` of `count` points; `sxx` the sum of squares of x about its mean; `sse` that of what remains.
    """

    count: int
    mean_x: float
    mean_y: float
    sxx: float
    slope: float
    sse: float

    @property
    def intercept(self) -> float:
        """The line at x = 0."""
        return self.mean_y - self.slope * self.mean_x

    @property
    def freedom(self) -> int:
        """Degrees of freedom."""
        return self.count - 2

    @property
    def variance(self) -> float:
        """Of one point about the line; needs at least three points."""
        return self.sse / self.freedom

    @property
    def slope_weight(self) -> float:
        """Variance of the slope in units of `variance`."""
        return 1 / self.sxx

    def at(self, x: float) -> float:
        """The line at x."""
        return self.mean_y + self.slope * (x - self.mean_x)

    def weight(self, x: float) -> float:
        """Variance of the line at x in units of `variance`."""
        return 1 / self.count + (x - self.mean_x) ** 2 / self.sxx

    def interval(self, x: float, level: float = LEVEL) -> Interval:
        """Of the line's height at x."""
        half = quantile(self.freedom, level) * sqrt(self.variance * self.weight(x))
        return Interval(self.at(x) - half, self.at(x) + half)

    def line(self, level: float = LEVEL) -> Line:
        """The line with its standard errors and the interval of its slope."""
        slope_error = sqrt(self.variance * self.slope_weight)
        half = quantile(self.freedom, level) * slope_error
        return Line(
            "least squares",
            self.slope,
            self.intercept,
            Interval(self.slope - half, self.slope + half),
            slope_error,
            sqrt(self.variance * self.weight(0)),
            sqrt(self.variance),
        )


def least_squares(x: Sequence[float], y: Sequence[float]) -> Fit:
    """The line that leaves the least sum of squares. Raises ValueError below three points, or all at one x."""
    count = len(x)
    if count < FEWEST or len(set(x)) < 2:
        raise ValueError(f"{FEWEST} points at different x are wanted for a line, not {count}")
    mean_x, mean_y = fsum(x) / count, fsum(y) / count
    sxx = fsum((one - mean_x) ** 2 for one in x)
    slope = fsum((one - mean_x) * (other - mean_y) for one, other in zip(x, y, strict=True)) / sxx
    rest = (other - mean_y - slope * (one - mean_x) for one, other in zip(x, y, strict=True))
    return Fit(count, mean_x, mean_y, sxx, slope, fsum(one * one for one in rest))


def theil_sen(x: Sequence[float], y: Sequence[float], level: float = LEVEL) -> Line:
    """The median of the slopes of all pairs, with Sen's interval; the intercept is the median of what remains.

    The interval is None below five points. Of more than 1,500 points evenly spaced ones are looked at. Raises
    ValueError where no two points differ in x.
    """
    step = -(-len(x) // _MOST_ROBUST)
    xs, ys = x[::step], y[::step]
    slopes = sorted(_slopes(xs, ys))
    if not slopes:
        raise ValueError("two points at different x are wanted for a slope")
    slope = _middle(slopes)
    intercept = median(other - slope * one for one, other in zip(xs, ys, strict=True))
    return Line("Theil-Sen", slope, intercept, _sen_interval(slopes, xs, ys, level))


def _slopes(x: Sequence[float], y: Sequence[float]) -> Iterable[float]:
    for index, (one, height) in enumerate(zip(x, y, strict=True)):
        for other, its in zip(x[index + 1 :], y[index + 1 :], strict=True):
            if other != one:
                yield (its - height) / (other - one)


def _middle(ordered: Sequence[float]) -> float:
    half, odd = divmod(len(ordered), 2)
    return ordered[half] if odd else (ordered[half - 1] + ordered[half]) / 2


def _sen_interval(slopes: Sequence[float], x: Sequence[float], y: Sequence[float], level: float) -> Interval | None:
    """Between the slopes whose ranks stand as far from the middle as Kendall's S may by chance (ties counted)."""
    if len(x) < _FEWEST_ROBUST:
        return None
    far = NormalDist().inv_cdf((1 + level) / 2) * sqrt(_kendall_variance(x, y))
    low = max(round((len(slopes) - far) / 2) - 1, 0)
    high = min(round((len(slopes) + far) / 2), len(slopes) - 1)
    return Interval(slopes[low], slopes[high])


def _kendall_variance(x: Sequence[float], y: Sequence[float]) -> float:
    ties = sum(_spread(times) for values in (x, y) for times in Counter(values).values() if times > 1)
    return max(0.0, (_spread(len(x)) - ties) / 18)


def _spread(count: int) -> int:
    return count * (count - 1) * (2 * count + 5)
