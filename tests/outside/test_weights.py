"""The car on scales against worked examples (tests/data/checks.csv names the source of each)."""

from __future__ import annotations

import csv
from decimal import Decimal
from fractions import Fraction
from pathlib import Path

import pytest

from producer.handling.weights import Shares, behind_front_axle, corner_weights, even_cross, shares

DATA = Path(__file__).parents[1] / "data" / "checks.csv"
D = Decimal


def row(name: str) -> tuple[Fraction, Fraction]:
    """Expected value and tolerance."""
    with DATA.open(encoding="utf-8", newline="") as file:
        found = next(one for one in csv.DictReader(file) if one["name"] == name)
    return Fraction(found["expected"]), Fraction(found["tolerance"])


def scales(lf: int, rf: int, lr: int, rr: int) -> Shares:
    return shares({"lf": D(lf), "rf": D(rf), "lr": D(lr), "rr": D(rr)})


def target_lf(left_weight: Decimal, front: Decimal) -> Fraction:
    """The left front of a car without wedge: any left share will do, the left side's weight being given."""
    left = D(54)
    total = Fraction(left_weight) * 100 / Fraction(left)
    return corner_weights(total, front, left, even_cross(front, left))["lf"]


GROUND = scales(694, 606, 670, 585)
CASES = {
    "cross_weight_percent": scales(700, 600, 900, 600).cross,
    "corner_weight_diag_A": (100 - GROUND.cross) * 2555 / 100,
    "corner_weight_diag_B": GROUND.cross * 2555 / 100,
    "corner_weight_target_LF": target_lf(D(1364), D("50.9")),
    # From the rear axle: the wheelbase less the distance behind the front one.
    "cg_from_front_share": Fraction(25, 10) - behind_front_axle(D("2.5"), D(52)),
    "cg_from_axle_share": behind_front_axle(D("2.5"), D(55)),
    # Loads of one wheel at each axle; both sides alike.
    "cg_from_wheel_loads_a1": behind_front_axle(D("2.34"), scales(2000, 2000, 1800, 1800).front),
    "cg_from_wheel_loads_a2": Fraction(234, 100) - behind_front_axle(D("2.34"), scales(2000, 2000, 1800, 1800).front),
}


@pytest.mark.parametrize("name", CASES)
def test_worked_example(name: str) -> None:
    expected, tolerance = row(name)
    assert abs(CASES[name] - expected) <= tolerance
