"""The statistics of test laps against published figures (tests/data/checks.csv names the source of each).

Norris, NIST StRD (public domain): calibration of ozone monitors. Ezekiel (1930): stopping distances of cars. Sen
(1968): the example of his paper. NIST/SEMATECH e-Handbook 1.3.5.17: eight masses with one outlier.
"""

from __future__ import annotations

import csv
from math import sqrt
from pathlib import Path
from statistics import median

import pytest

from producer.stints.crossing import crossing
from producer.stints.differences import Estimate, difference
from producer.stints.lines import least_squares, theil_sen
from producer.stints.outliers import grubbs, modified_z

DATA = Path(__file__).parents[1] / "data" / "checks.csv"
NORRIS = """
0.1 0.2, 338.8 337.4, 118.1 118.2, 888.0 884.6, 9.2 10.1, 228.1 226.5, 668.5 666.3, 998.5 996.3, 449.1 448.6,
778.9 777.0, 559.2 558.2, 0.3 0.4, 0.1 0.6, 778.1 775.5, 668.8 666.9, 339.3 338.0, 448.9 447.5, 10.8 11.6,
557.7 556.0, 228.3 228.1, 998.0 995.8, 888.8 887.6, 119.6 120.2, 0.3 0.3, 0.6 0.3, 557.6 556.8, 339.3 339.1,
888.0 887.2, 998.5 999.0, 778.9 779.0, 10.2 11.1, 117.6 118.3, 228.9 229.2, 668.4 669.1, 449.2 448.9, 0.2 0.5
"""  # y x
CARS = """
2 4, 10 4, 4 7, 22 7, 16 8, 10 9, 18 10, 26 10, 34 10, 17 11, 28 11, 14 12, 20 12, 24 12, 28 12, 26 13, 34 13, 34 13,
46 13, 26 14, 36 14, 60 14, 80 14, 20 15, 26 15, 54 15, 32 16, 40 16, 32 17, 40 17, 50 17, 42 18, 56 18, 76 18, 84 18,
36 19, 46 19, 68 19, 32 20, 48 20, 52 20, 56 20, 64 20, 66 22, 54 23, 70 24, 92 24, 93 24, 120 24, 85 25
"""  # distance (ft) speed (mph)
SEN = ([1.0, 2, 3, 4, 10, 12, 18], [9.0, 15, 19, 20, 45, 55, 78])
MASSES = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]


def row(name: str) -> tuple[float, float]:
    """Expected value and tolerance."""
    with DATA.open(encoding="utf-8", newline="") as file:
        found = next(one for one in csv.DictReader(file) if one["name"] == name)
    return float(found["expected"]), float(found["tolerance"])


def points(text: str) -> tuple[list[float], list[float]]:
    """x and y of `y x, y x, ...`."""
    pairs = [one.split() for one in text.replace("\n", " ").split(",")]
    return [float(x) for _, x in pairs], [float(y) for y, _ in pairs]


def _cases() -> dict[str, float]:
    norris, cars = least_squares(*points(NORRIS)), least_squares(*points(CARS))
    line, of_cars, sen = norris.line(), cars.line(), theil_sen(*SEN, level=0.93)
    assert line.slope_interval is not None
    assert sen.slope_interval is not None
    total = sum((y - norris.mean_y) ** 2 for y in points(NORRIS)[1])
    # The mean of a sample is an estimate like a slope: variance of one observation times 1/n.
    apart = difference(Estimate(12.0, 1 / 11, 39.0, 10), Estimate(15.0, 1 / 13, 87.5, 12))
    laps = [float(lap) for lap in range(1, 31)]
    met = crossing(
        least_squares(laps, [30.00 + 0.050 * lap for lap in laps]),
        least_squares(laps, [30.30 + 0.030 * lap for lap in laps]),
    )
    assert met is not None
    largest, critical = grubbs(MASSES)
    return {
        "norris_slope": line.slope,
        "norris_intercept": line.intercept,
        "norris_se_slope": line.slope_error or 0,
        "norris_se_intercept": line.intercept_error or 0,
        "norris_residual_sd": line.scatter or 0,
        "norris_r2": 1 - norris.sse / total,
        "norris_slope_ci95_low": line.slope_interval.low,
        "ezekiel_cars_slope": of_cars.slope,
        "ezekiel_cars_se_slope": of_cars.slope_error or 0,
        "ezekiel_cars_intercept": of_cars.intercept,
        "theil_sen_slope": sen.slope,
        "theil_sen_ci_low": sen.slope_interval.low,
        "theil_sen_ci_high": sen.slope_interval.high,
        # The row's intercept lets the line pass through the medians; ours is the median of what remains, its "joint" 6.
        "theil_sen_intercept": median(SEN[1]) - sen.slope * median(SEN[0]),
        "two_sample_t_pooled": apart.t,
        "two_sample_p_pooled": apart.chance,
        "grubbs_G": largest,
        "grubbs_critical": critical,
        "modified_z_max": max(modified_z(MASSES)),
        "crossover_lap": met.lap,
    }


CASES = _cases()


@pytest.mark.parametrize("name", CASES)
def test_published_figure(name: str) -> None:
    expected, tolerance = row(name)
    assert abs(CASES[name] - expected) <= tolerance


def test_our_robust_line_leaves_as_many_points_above_as_below() -> None:
    line = theil_sen(*SEN)
    assert line.intercept == 6.0
    assert sorted(y - line.at(x) for x, y in zip(*SEN, strict=True))[3] == 0.0


def test_every_row_about_laps_is_held() -> None:
    """All but Longley's, whose six regressors no lap has."""
    with DATA.open(encoding="utf-8", newline="") as file:
        names = [one["name"] for one in csv.DictReader(file)]
    about = ("norris_", "theil_sen_", "ezekiel_", "two_sample_", "grubbs_", "modified_z_", "crossover_")
    assert {one for one in names if one.startswith(about)} == set(CASES)


@pytest.mark.parametrize(
    ("freedom", "expected"), [(1, 12.706), (2, 4.303), (3, 3.182), (5, 2.571), (10, 2.228), (30, 2.042), (120, 1.980)]
)
def test_t_as_it_is_printed_in_every_table(freedom: int, expected: float) -> None:
    """Two-sided 95 %: Fisher & Yates' table (1938), from memory."""
    from producer.stints.student import quantile

    assert quantile(freedom) == pytest.approx(expected, abs=5e-4)


def test_norris_s_certified_sum_of_squares() -> None:
    assert least_squares(*points(NORRIS)).sse == pytest.approx(26.6173985294224, rel=1e-11)
    assert sqrt(0.782864662630069) == pytest.approx(least_squares(*points(NORRIS)).line().scatter, rel=1e-11)
