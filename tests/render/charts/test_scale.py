"""Steps and ticks that people count in."""

from __future__ import annotations

import math
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.render.charts.scale import step_of, ticks


@pytest.mark.parametrize(
    ("least", "step"),
    [(1, "1"), (1.01, "2"), (2, "2"), (3, "5"), (6, "10"), (0.03, "0.05"), (0.2, "0.2"), (740, "1000")],
)
def test_a_step(least: float, step: str) -> None:
    assert step_of(least) == Decimal(step)


@pytest.mark.parametrize("least", [0.0, -1.0, math.inf, math.nan])
def test_no_step(least: float) -> None:
    with pytest.raises(ValueError, match="no step is at least"):
        step_of(least)


@given(st.floats(1e-12, 1e12))
def test_a_step_is_neither_below_nor_far_above(least: float) -> None:
    step = float(step_of(least))
    assert least * (1 - 1e-9) <= step <= 2.51 * least
    assert step_of(least).as_tuple().digits[0] in {1, 2, 5}


def test_ticks_include_both_ends() -> None:
    assert ticks(-1, 1, Decimal("0.5")) == (
        Decimal("-1.0"),
        Decimal("-0.5"),
        Decimal(0),
        Decimal("0.5"),
        Decimal("1.0"),
    )
    assert ticks(0.1, 0.4, Decimal("0.5")) == ()
