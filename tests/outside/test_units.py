"""Conversion against the published factors and against another program.

Sources: NIST Special Publication 811 (2008), appendix B.8 and B.9, as copied with their tolerances to
tests/data/checks.csv (each row says what was opened); the definitions of 1959 (1 yd = 0.9144 m, 1 lb = 0.45359237 kg)
from memory. Referee: `pint`, whose unit definitions are its authors' own.
"""

from __future__ import annotations

import csv
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pint
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from producer.basics.units import UNITS, convert, convert_interval

ROWS = {
    row["name"]: row
    for row in csv.DictReader((Path(__file__).parent.parent / "data" / "checks.csv").read_text("utf-8").splitlines())
}
# Row of the table: value, from, to, and whether it is a difference.
TABLE = {
    "lbf_to_N": ("1", "lbf", "N", False),
    "lb_per_in_to_N_per_mm": ("1", "lb/in", "N/mm", False),
    "psi_to_kPa": ("1", "psi", "kPa", False),
    "inch_to_mm": ("1", "in", "mm", False),
    "mph_to_kmh": ("1", "mph", "km/h", False),
    "mph_to_mps": ("1", "mph", "m/s", False),
    "lb_to_kg": ("1", "lb", "kg", False),
    "lbfft_to_Nm": ("1", "lbf ft", "N m", False),
    "degF_to_degC_212": ("212", "°F", "°C", False),
    "degF_to_degC_minus40": ("-40", "°F", "°C", False),
    "degF_interval": ("10", "°F", "°C", True),
}
PINT = {
    "in": "inch", "mm": "millimeter", "cm": "centimeter", "ft": "foot", "m": "meter", "mi": "mile", "km": "kilometer",
    "lb": "pound", "kg": "kilogram", "lbf": "force_pound", "N": "newton", "lb/in": "force_pound / inch",
    "N/mm": "newton / millimeter", "psi": "psi", "kPa": "kilopascal", "bar": "bar", "lbf ft": "force_pound * foot",
    "N m": "newton * meter", "mph": "mile / hour", "km/h": "kilometer / hour", "m/s": "meter / second",
    "gal": "gallon", "L": "liter", "°F": "degF", "°C": "degC", "s": "second", "deg": "degree",
}  # fmt: skip
_FLOATS: Any = pint.UnitRegistry()


@pytest.fixture(scope="module")
def registry() -> Any:
    return pint.UnitRegistry(non_int_type=Fraction)


def test_every_published_factor_is_used() -> None:
    assert {name for name, row in ROWS.items() if "NIST SP 811" in row["source"]} == set(TABLE)


@pytest.mark.parametrize("name", TABLE)
def test_published_factors(name: str) -> None:
    value, start, to, interval = TABLE[name]
    row = ROWS[name]
    found = (convert_interval if interval else convert)(Decimal(value), start, to)
    assert abs(found - Decimal(row["expected"])) <= Decimal(row["tolerance"])


def test_the_definitions_are_exact() -> None:
    assert UNITS["in"].factor * 36 == Fraction(9144, 10_000)
    assert UNITS["lb"].factor == Fraction(45_359_237, 100_000_000)
    assert UNITS["gal"].factor == 231 * Fraction(254, 10_000) ** 3


def test_the_referee_knows_every_unit_that_measures() -> None:
    assert set(UNITS) - set(PINT) == {"rpm", "%", ":1", "clicks"}


@pytest.mark.parametrize("start", sorted(PINT))
def test_a_referee(registry: Any, start: str) -> None:
    for to, theirs in PINT.items():
        if UNITS[to].dimension != UNITS[start].dimension:
            with pytest.raises(pint.DimensionalityError):
                registry.Quantity(Fraction(1), PINT[start]).to(theirs)
            continue
        expected = registry.Quantity(Fraction(25, 2), PINT[start]).to(theirs).magnitude
        found = Fraction(convert(Decimal("12.5"), start, to))
        assert abs(found - Fraction(expected)) <= abs(Fraction(expected)) * Fraction(1, 10**13)


@given(
    st.decimals(min_value=-500, max_value=500, places=3), st.sampled_from(sorted(PINT)), st.sampled_from(sorted(PINT))
)
def test_a_referee_on_any_value(value: Decimal, start: str, to: str) -> None:
    assume(UNITS[start].dimension == UNITS[to].dimension)
    expected = _FLOATS.Quantity(float(value), PINT[start]).to(PINT[to]).magnitude
    assert float(convert(value, start, to)) == pytest.approx(expected, rel=1e-9, abs=1e-9)
