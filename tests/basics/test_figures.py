"""Figures for people and for machines."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.basics.figures import MINUS, NO_BREAK, decimals_of, figure, give_or_take, plain, signed, with_unit

figures = st.decimals(allow_nan=False, allow_infinity=False, min_value=-99999, max_value=99999, places=4)


@pytest.mark.parametrize(
    ("written", "decimals", "text"),
    [
        ("750", 0, "750"),
        ("750.00", 0, "750"),
        ("51.5", 1, "51.5"),
        ("51.5", 2, "51.50"),
        ("-3.5", 2, "−3.50"),
        ("-0.004", 2, "0.00"),
        ("-0", 0, "0"),
        ("0.0625", 4, "0.0625"),
        ("0.125", 2, "0.12"),  # halves go to the even neighbour
        ("1E+3", 0, "1000"),
        ("3.90", None, "3.90"),
        ("4", None, "4"),
    ],
)
def test_for_people(written: str, decimals: int | None, text: str) -> None:
    assert figure(Decimal(written), decimals) == text


def test_for_machines() -> None:
    assert plain(Decimal("-3.5"), 2) == "-3.50"
    assert plain(Decimal("1E-7"), 7) == "0.0000001"


@pytest.mark.parametrize(("value", "text"), [("25", "+25"), ("-0.5", "−0.5"), ("0", "0"), ("0.001", "0.0")])
def test_differences(value: str, text: str) -> None:
    assert signed(Decimal(value), 1 if "." in text else 0) == text


@pytest.mark.parametrize(
    ("value", "half", "figures"),
    [
        (-1.44, 0.52, ("1.4", "0.5")),
        (1.44, 0.02, ("1.44", "0.02")),
        (1.44, 0.001, ("1.44", "0.01")),
        (1.44, 0.0, ("1.44", "0.01")),
        (0.04, 1.0, ("0.0", "1.0")),
        (-2.0, None, ("2.0", "")),
    ],
)
def test_a_figure_is_no_finer_than_its_doubt(value: float, half: float | None, figures: tuple[str, str]) -> None:
    assert give_or_take(value, half) == figures


@pytest.mark.parametrize(
    ("unit", "text"), [("lb/in", f"750{NO_BREAK}lb/in"), (":1", "750:1"), ("", "750"), ("%", f"750{NO_BREAK}%")]
)
def test_a_figure_and_its_unit_are_never_broken_apart(unit: str, text: str) -> None:
    assert with_unit("750", unit) == text


@pytest.mark.parametrize(("written", "count"), [("0.25", 2), ("25", 0), ("3.90", 2), ("1E+3", 0)])
def test_decimals(written: str, count: int) -> None:
    assert decimals_of(Decimal(written)) == count


@given(figures)
def test_a_figure_reads_back(value: Decimal) -> None:
    assert Decimal(figure(value, 4).replace(MINUS, "-")) == value
    assert Decimal(signed(value, 4).replace(MINUS, "-")) == value
    assert ("-" in figure(value, 4)) is False
