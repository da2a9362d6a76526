"""Units of the trade, exact conversion between the two systems, and quantities as people write them.

Factors are exact rationals built from the international definitions (yard and pound agreement of 1959;
NIST Special Publication 811 (2008), appendix B): 1 in = 25.4 mm, 1 lb = 0.45359237 kg,
standard gravity 9.80665 m/s^2, 1 gal (US) = 231 in^3.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import floor, log10

_INCH = Fraction(254, 10_000)
_POUND = Fraction(45_359_237, 100_000_000)
_LBF = _POUND * Fraction(980_665, 100_000)


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit: value in SI = (value + `offset`) x `factor`.

    `other` is its counterpart in the other system ("" if none).
    """

    symbol: str
    dimension: str
    factor: Fraction
    system: str = ""
    other: str = ""
    offset: Fraction = Fraction(0)


def _units() -> dict[str, Unit]:
    one = Fraction(1)
    listed = (
        Unit("in", "length", _INCH, "us", "mm"),
        Unit("mm", "length", Fraction(1, 1000), "metric", "in"),
        Unit("cm", "length", Fraction(1, 100), "metric", "in"),
        Unit("ft", "length", 12 * _INCH, "us", "m"),
        Unit("m", "length", one, "metric", "ft"),
        Unit("mi", "length", 63_360 * _INCH, "us", "km"),
        Unit("km", "length", Fraction(1000), "metric", "mi"),
        Unit("lb", "mass", _POUND, "us", "kg"),
        Unit("kg", "mass", one, "metric", "lb"),
        Unit("lbf", "force", _LBF, "us", "N"),
        Unit("N", "force", one, "metric", "lbf"),
        Unit("lb/in", "spring rate", _LBF / _INCH, "us", "N/mm"),
        Unit("N/mm", "spring rate", Fraction(1000), "metric", "lb/in"),
        Unit("psi", "pressure", _LBF / _INCH**2, "us", "kPa"),
        Unit("kPa", "pressure", Fraction(1000), "metric", "psi"),
        Unit("bar", "pressure", Fraction(100_000), "metric", "psi"),
        Unit("lbf ft", "torque", _LBF * 12 * _INCH, "us", "N m"),
        Unit("N m", "torque", one, "metric", "lbf ft"),
        Unit("mph", "speed", 63_360 * _INCH / 3600, "us", "km/h"),
        Unit("km/h", "speed", Fraction(1000, 3600), "metric", "mph"),
        Unit("m/s", "speed", one, "metric", "mph"),
        Unit("gal", "volume", 231 * _INCH**3, "us", "L"),
        Unit("L", "volume", Fraction(1, 1000), "metric", "gal"),
        Unit("°F", "temperature", Fraction(5, 9), "us", "°C", Fraction(45_967, 100)),
        Unit("°C", "temperature", one, "metric", "°F", Fraction(27_315, 100)),
        Unit("s", "time", one),
        Unit("rpm", "engine speed", one),
        Unit("deg", "angle", one),
        Unit("%", "share", one),
        Unit(":1", "ratio", one),
        Unit("clicks", "clicks", one),
    )
    return {unit.symbol: unit for unit in listed}


UNITS: dict[str, Unit] = _units()  # never written to after import
_WRITTEN = {
    "inch": "in", "inches": "in", '"': "in", "feet": "ft", "foot": "ft", "mile": "mi", "miles": "mi",
    "lbs": "lb", "pounds": "lb", "lbs/in": "lb/in", "lbf/in": "lb/in", "n/mm": "N/mm", "kpa": "kPa",
    "kph": "km/h", "kmh": "km/h", "l": "L", "litres": "L", "liters": "L", "gallons": "gal", "gallon": "gal",
    "f": "°F", "degf": "°F", "deg f": "°F", "c": "°C", "degc": "°C", "deg c": "°C", "°": "deg", "degrees": "deg",
    "sec": "s", "percent": "%", "click": "clicks",
}  # fmt: skip
_QUANTITY = re.compile(r"\s*([-+]?(?:\d{1,9}(?:\.\d{0,9})?|\.\d{1,9}))\s*(\S.*?)?\s*")


def unit(symbol: str) -> Unit | None:
    """The unit of that symbol, also as people write it (`inches`, `lbs`); None if we do not know it."""
    written = symbol.strip()
    return UNITS.get(written) or UNITS.get(_WRITTEN.get(written.lower(), ""))


@dataclass(frozen=True, slots=True)
class Quantity:
    """An exact number and its unit's symbol ("" for a bare number)."""

    value: Decimal
    unit: str

    def into(self, symbol: str) -> Decimal:
        """The same quantity in another unit of its dimension (temperatures as points on the scale)."""
        return convert(self.value, self.unit, symbol)


def quantity(text: str) -> Quantity:
    """Read `560 ft`, `1.10 mi`, `31`. Raises ValueError with a sentence for the author."""
    match = _QUANTITY.fullmatch(text)
    if match is None:
        raise ValueError(f"'{text[:40]}' is not a number with its unit")
    written = match.group(2) or ""
    known = unit(written) if written else None
    if written and known is None:
        raise ValueError(f"the unit '{written[:20]}' is not one of {', '.join(sorted(UNITS))}")
    return Quantity(Decimal(match.group(1)), known.symbol if known else "")


def convert(value: Decimal, start: str, to: str) -> Decimal:
    """`value` in unit `start` as a Decimal in unit `to`, to 15 significant digits.

    Raises ValueError where the two do not measure the same thing or are unknown.
    """
    return _decimal((Fraction(value) + _known(start).offset) * _ratio(start, to) - _known(to).offset)


def convert_interval(value: Decimal, start: str, to: str) -> Decimal:
    """A difference converted: as `convert`, without the zero points (10 °F apart are 5.56 °C apart)."""
    return _decimal(Fraction(value) * _ratio(start, to))


def _known(symbol: str) -> Unit:
    known = unit(symbol)
    if known is None:
        raise ValueError(f"'{symbol}' is not a unit we know")
    return known


def _ratio(start: str, to: str) -> Fraction:
    one, other = _known(start), _known(to)
    if one.dimension != other.dimension:
        raise ValueError(f"{one.symbol} measures {one.dimension}, {other.symbol} measures {other.dimension}")
    return one.factor / other.factor


def _decimal(value: Fraction) -> Decimal:
    exact = Decimal(value.numerator) / Decimal(value.denominator)
    return +exact.normalize() if exact else Decimal(0)


def counterpart(symbol: str) -> str:
    """The unit of the other system that stands beside this one on a card; "" where both systems share it."""
    known = unit(symbol)
    return known.other if known else ""


def counterpart_decimals(step: Decimal, symbol: str) -> int:
    """Decimals for a converted value so that rounding never hides more than a tenth of one step (`step` > 0)."""
    other = counterpart(symbol)
    if not other or step <= 0:
        return 0
    return max(0, -floor(log10(float(convert_interval(step, symbol, other)) / 5)))
