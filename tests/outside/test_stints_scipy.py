"""Lines, intervals and t against SciPy's own (linregress, theilslopes, the t distribution), as a second opinion."""

from __future__ import annotations

from random import Random

import pytest

from producer.stints.differences import Estimate, difference
from producer.stints.lines import least_squares, theil_sen
from producer.stints.student import quantile, two_sided, within

stats = pytest.importorskip("scipy.stats")
SEEDS = range(12)


def laps(seed: int) -> tuple[list[float], list[float]]:
    """Laps with gaps, and times to the hundredth, so that there are ties."""
    dice = Random(seed)
    count = dice.randint(5, 60)
    x = sorted(float(one) for one in dice.sample(range(1, 80), count))
    return x, [round(30 + 0.03 * one + dice.gauss(0, 0.1), 2) for one in x]


@pytest.mark.parametrize("seed", SEEDS)
def test_least_squares(seed: int) -> None:
    x, y = laps(seed)
    line, other = least_squares(x, y).line(), stats.linregress(x, y)
    assert (line.slope, line.intercept) == pytest.approx((other.slope, other.intercept), rel=1e-10)
    assert (line.slope_error, line.intercept_error) == pytest.approx((other.stderr, other.intercept_stderr), rel=1e-9)


@pytest.mark.parametrize("seed", SEEDS)
def test_theil_sen(seed: int) -> None:
    """Our intercept, the median of what remains, is what SciPy calls joint."""
    x, y = laps(seed)
    line, other = theil_sen(x, y), stats.theilslopes(y, x, 0.95)
    assert line.slope_interval is not None
    assert line.slope == pytest.approx(other.slope, abs=1e-12)
    assert tuple(line.slope_interval) == pytest.approx((other.low_slope, other.high_slope), abs=1e-12)
    joint = stats.theilslopes(y, x, 0.95, method="joint")
    assert line.intercept == pytest.approx(joint.intercept, abs=1e-10)


@pytest.mark.parametrize("freedom", [1, 2, 3, 4, 7, 20, 33, 34, 120, 1001])
def test_student(freedom: int) -> None:
    for t in (0.0, 0.1, 1.0, 2.5, 8.0, 40.0):
        assert within(t, freedom) == pytest.approx(1 - 2 * stats.t.sf(t, freedom), abs=1e-12)
        assert two_sided(-t, freedom) == pytest.approx(2 * stats.t.sf(t, freedom), abs=1e-12)
    for level in (0.5, 0.93, 0.95, 0.999):
        assert quantile(freedom, level) == pytest.approx(stats.t.ppf((1 + level) / 2, freedom), rel=1e-9)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_difference_of_means(seed: int) -> None:
    dice = Random(seed)
    one = [dice.gauss(30, 0.1) for _ in range(dice.randint(6, 30))]
    other = [30.1 + 1.2 * (value - 30) for value in one[dice.randint(0, 3) :]]
    apart = difference(mean(one), mean(other))
    theirs = stats.ttest_ind(other, one)
    assert apart.t == pytest.approx(theirs.statistic, rel=1e-9)
    assert apart.chance == pytest.approx(theirs.pvalue, abs=1e-12)
    low, high = theirs.confidence_interval(0.95)
    assert tuple(apart.interval()) == pytest.approx((low, high), rel=1e-9)


@pytest.mark.parametrize("seed", SEEDS)
def test_a_difference_of_means_that_scatter_differently(seed: int) -> None:
    """Welch's t; our degrees of freedom are whole ones, so that the interval is a little wider, never narrower."""
    dice = Random(seed)
    one = [dice.gauss(30, 0.1) for _ in range(dice.randint(20, 30))]
    other = [dice.gauss(30.1, 0.3) for _ in range(dice.randint(8, 30))]
    apart = difference(mean(one), mean(other))
    theirs = stats.ttest_ind(other, one, equal_var=False)
    assert apart.t == pytest.approx(theirs.statistic, rel=1e-9)
    assert apart.freedom == int(theirs.df)
    low, high = theirs.confidence_interval(0.95)
    assert apart.interval().low <= low
    assert apart.interval().high >= high
    assert tuple(apart.interval()) == pytest.approx((low, high), abs=0.02 * (high - low))


def mean(values: list[float]) -> Estimate:
    count = len(values)
    middle = sum(values) / count
    return Estimate(middle, 1 / count, sum((one - middle) ** 2 for one in values) / (count - 1), count - 1)
