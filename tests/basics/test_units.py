"""Quantities as written, exact conversion, and the counterpart beside them."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from producer.basics.units import (
    UNITS,
    Quantity,
    convert,
    convert_interval,
    counterpart,
    counterpart_decimals,
    quantity,
    unit,
)

numbers = st.decimals(allow_nan=False, allow_infinity=False, min_value=-9999, max_value=9999, places=3)
symbols = st.sampled_from(sorted(UNITS))


@pytest.mark.parametrize(
    ("text", "value", "symbol"),
    [
        ("560 ft", "560", "ft"),
        ("1.10 mi", "1.10", "mi"),
        ("1500kg", "1500", "kg"),
        (" 86.5  in ", "86.5", "in"),
        ("86.5 inches", "86.5", "in"),
        ("700 lbs/in", "700", "lb/in"),
        ("31", "31", ""),
        ("-3.5 deg", "-3.5", "deg"),
        (".5 psi", "0.5", "psi"),
        ("3.90:1", "3.90", ":1"),
        ("60 °F", "60", "°F"),
        ("60 F", "60", "°F"),
        ("12 clicks", "12", "clicks"),
        ("45 lbf ft", "45", "lbf ft"),
    ],
)
def test_reads(text: str, value: str, symbol: str) -> None:
    assert quantity(text) == Quantity(Decimal(value), symbol)


@pytest.mark.parametrize(
    "text", ["", "ft", "1,5 ft", "1 furlong", "1 ft 2 in", "1e5 ft", "nan ft", "inf", "1.2.3 ft", "9" * 20, "1 MI/H "]
)
def test_refuses(text: str) -> None:
    with pytest.raises(ValueError, match=r"not a number with its unit|is not one of"):
        quantity(text)


def test_capital_letters_count() -> None:
    # Only the ways people write it are small or large at will; a symbol is what it is.
    assert unit("Lbs") is UNITS["lb"]
    assert unit("KPA") is UNITS["kPa"]
    assert unit("n") is None


@pytest.mark.parametrize(
    ("value", "start", "to", "expected"),
    [
        ("1", "in", "mm", "25.4"),
        ("1", "mi", "ft", "5280"),
        ("1", "mi", "km", "1.609344"),
        ("212", "°F", "°C", "100"),
        ("-40", "°C", "°F", "-40"),
        ("1", "lb", "kg", "0.45359237"),
        ("100", "kPa", "bar", "1"),
        ("60", "mph", "m/s", "26.8224"),
        ("231", "gal", "gal", "231"),
    ],
)
def test_converts_exactly(value: str, start: str, to: str, expected: str) -> None:
    assert convert(Decimal(value), start, to) == Decimal(expected)
    assert Quantity(Decimal(value), start).into(to) == Decimal(expected)


def test_a_difference_has_no_zero_point() -> None:
    assert convert_interval(Decimal(18), "°F", "°C") == 10
    assert convert_interval(Decimal(10), "°C", "°F") == 18


@pytest.mark.parametrize(("start", "to"), [("mi", "psi"), ("lb", "lbf"), ("mph", "rpm"), ("", "ft"), ("ft", "fathom")])
def test_what_does_not_measure_the_same(start: str, to: str) -> None:
    with pytest.raises(ValueError, match=r"measures|not a unit"):
        convert(Decimal(1), start, to)


@given(numbers, symbols, symbols)
def test_there_and_back(value: Decimal, start: str, to: str) -> None:
    assume(UNITS[start].dimension == UNITS[to].dimension)
    back = convert(convert(value, start, to), to, start)
    assert abs(back - value) <= max(abs(value), Decimal(1000)) * Decimal("1e-14") * 10
    back = convert_interval(convert_interval(value, start, to), to, start)
    assert abs(back - value) <= max(abs(value), Decimal(1)) * Decimal("1e-14") * 10


@given(numbers, numbers, symbols)
def test_larger_stays_larger(one: Decimal, other: Decimal, symbol: str) -> None:
    assume(counterpart(symbol) and one < other)
    assert convert(one, symbol, counterpart(symbol)) < convert(other, symbol, counterpart(symbol))


@given(symbols)
def test_a_counterpart_measures_the_same_in_the_other_system(symbol: str) -> None:
    other = counterpart(symbol)
    if other:
        assert UNITS[other].dimension == UNITS[symbol].dimension
        assert {UNITS[other].system, UNITS[symbol].system} == {"us", "metric"}


def test_what_both_systems_share_has_none() -> None:
    shared = [one for one in UNITS if not counterpart(one)]
    assert {"%", ":1", "clicks", "deg", "rpm"} <= set(shared)
    assert [one for one in shared if UNITS[one].system] == []
    assert counterpart("parsec") == ""


@pytest.mark.parametrize(
    ("step", "symbol", "decimals"),
    [("25", "lb/in", 1), ("0.5", "psi", 1), ("0.25", "in", 0), ("0.0625", "in", 1), ("1", "ft", 2), ("1", "clicks", 0)],
)
def test_decimals_of_the_counterpart(step: str, symbol: str, decimals: int) -> None:
    assert counterpart_decimals(Decimal(step), symbol) == decimals


@given(st.decimals(min_value="0.001", max_value=1000, places=3), symbols)
def test_rounding_hides_no_more_than_a_tenth_of_a_step(step: Decimal, symbol: str) -> None:
    assume(counterpart(symbol) and step > 0)
    half = Decimal(1).scaleb(-counterpart_decimals(step, symbol)) / 2
    assert half <= convert_interval(step, symbol, counterpart(symbol)) / 10
