"""What the lighter car gives back: falloff with and without the fuel that is burned on the way.

A car that burns fuel gets quicker, so that what the tyres lose is more than the clock shows. How much a lap's fuel is
worth the author may say (`lap_of_fuel`, seconds). Otherwise it is an assumption, stated wherever it is used: a lap
shortens by a fifth of the share of the car's mass that is burned (common practice, no source), fuel weighing
0.74 kg a litre (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from producer.basics.units import UNITS, Quantity
from producer.model.stints import FuelFalloff, Interval, Lap, Line
from producer.stints.lines import theil_sen
from producer.stints.wording import thousandths

SHARE = 0.2
DENSITY = 0.74  # kg a litre
_LEAST_LAPS = 5


def burned(laps: Sequence[Lap]) -> float | None:
    """Fuel a lap, in the unit of the laps; None where it was not noted for five laps or does not go down."""
    known = [(float(one.number), float(one.fuel)) for one in laps if one.fuel is not None]
    if len(known) < _LEAST_LAPS or len({lap for lap, _ in known}) < 2:
        return None
    used = -theil_sen([lap for lap, _ in known], [fuel for _, fuel in known]).slope
    return used if used > 0 else None


def fuel_falloff(
    laps: Sequence[Lap], unit: str, robust: Line, lap_time: float, mass: Quantity | None, own: Decimal | None
) -> FuelFalloff | None:
    """Falloff with the fuel's gain put back; None where neither fuel nor the author's figure says enough.

    `unit` is that of the laps' fuel (gal, L or kg, lb), `lap_time` in seconds, `mass` the car's.
    """
    if own is not None:
        gain, basis = float(own), f"by the author's {thousandths(float(own))} a lap of fuel"
        return FuelFalloff(gain, robust.slope + gain, _moved(robust.slope_interval, gain), True, basis)
    used = burned(laps)
    weight = _kilograms(used, unit) if used is not None else None
    if weight is None or mass is None or mass.unit not in UNITS or UNITS[mass.unit].dimension != "mass":
        return None
    gain = SHARE * weight / float(mass.into("kg")) * lap_time
    basis = "assuming that a lap shortens by a fifth of the share of the car's mass that is burned"
    return FuelFalloff(gain, robust.slope + gain, _moved(robust.slope_interval, gain), False, basis)


def _kilograms(used: float, unit: str) -> float | None:
    known = UNITS.get(unit)
    if known is None or known.dimension not in ("volume", "mass"):
        return None
    base = used * float(known.factor)
    return base * 1000 * DENSITY if known.dimension == "volume" else base


def _moved(interval: Interval | None, gain: float) -> Interval | None:
    return Interval(interval.low + gain, interval.high + gain) if interval else None
