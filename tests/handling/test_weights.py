from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.handling.weights import behind_front_axle, corner_weights, even_cross, shares

percent = st.decimals(40, 60, places=2)


@given(st.decimals(500, 4000, places=1), percent, percent, percent)
def test_there_and_back(total: Decimal, front: Decimal, left: Decimal, cross: Decimal) -> None:
    loads = corner_weights(total, front, left, cross)
    assert sum(loads.values()) == total
    found = shares(loads)
    assert (found.front, found.left, found.cross) == (Fraction(front), Fraction(left), Fraction(cross))


@given(percent, percent)
def test_even_cross_gives_both_axles_the_same_left_share(front: Decimal, left: Decimal) -> None:
    loads = corner_weights(Decimal(1000), front, left, even_cross(front, left))
    assert loads["lf"] * loads["rr"] == loads["rf"] * loads["lr"]


def test_more_cross_loads_the_right_front_and_the_left_rear() -> None:
    one, more = (corner_weights(Decimal(3000), Decimal(50), Decimal(54), Decimal(c)) for c in (50, 52))
    assert [more[x] - one[x] for x in ("lf", "rf", "lr", "rr")] == [-30, 30, 30, -30]


def test_shares_want_four_corners_and_weight() -> None:
    with pytest.raises(ValueError, match="all four"):
        shares({"lf": Decimal(1), "rf": Decimal(1), "lr": Decimal(1)})
    with pytest.raises(ValueError, match="all four"):
        shares({"lf": Decimal(0), "rf": Decimal(0), "lr": Decimal(0), "rr": Decimal(0)})


def test_behind_front_axle() -> None:
    assert behind_front_axle(Decimal("2.8"), Decimal(50)) == Fraction(14, 10)
