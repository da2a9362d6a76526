"""Engine speed against road speed: road speed = rpm x tyre circumference / (top gear x final drive).

Exact fractions of the figures as written; a speed of the engine is rounded once, at the end, to the nearest whole rpm
(halves to the even one). Definition, common practice, no source.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Literal

from producer.basics.units import UNITS, Quantity
from producer.model.garage import Garage, Setting
from producer.model.gearing import Gearing, GearStep
from producer.model.library import Case
from producer.model.sheet import Sheet

System = Literal["us", "metric"]
_ROAD_SPEED = {"us": "mph", "metric": "km/h"}


def rpm(speed: Quantity, circumference: Quantity, top_gear: Decimal, final: Decimal) -> Decimal:
    """Engine speed in rpm, unrounded, at a road speed.

    Raises ValueError where `speed` is no speed with its unit or `circumference` no length above zero.
    """
    found = _revolutions(speed, circumference, top_gear, final)
    return Decimal(found.numerator) / Decimal(found.denominator)


def gearing(garage: Garage, sheet: Sheet, top_speed: Quantity | None, units: System) -> Gearing | None:
    """The engine speeds of one setup.

    None where the garage has no final drive (role `gear.final`), or its car block lacks the tyre circumference or the
    top gear, or the setup has no value for it. A bare `top_speed` is in `units`: mph or km/h; one that is no speed is
    passed over.
    """
    setting = final_drive(garage)
    final = sheet.values.get(setting.address) if setting else None
    if setting is None or final is None or final <= 0 or not _known(garage):
        return None
    per_unit = _ROAD_SPEED[units]
    ten = _whole(garage, Quantity(Decimal(10), per_unit), final)
    speed = _with_unit(top_speed, units)
    if speed is None:
        return Gearing(setting.address, final, ten, per_unit, limit=_limit(garage))
    turning, limit = _whole(garage, speed, final), _limit(garage)
    return Gearing(
        setting.address,
        final,
        ten,
        per_unit,
        speed,
        turning,
        limit,
        None if limit is None else limit - turning,
        _step(garage, setting, speed, final, -1),
        _step(garage, setting, speed, final, 1),
    )


def final_drive(garage: Garage) -> Setting | None:
    """The setting whose role is `gear.final`, the first if there are several."""
    return next((one for one in garage.settings.values() if one.role == "gear.final"), None)


def top_speed(case: Case, setup: str) -> Quantity | None:
    """The highest top speed of a setup's stints, with its unit (a bare one in the channel's); None without one."""
    units: System = case.channel.units if case.channel else "us"
    given = (_with_unit(one.top_speed, units) for one in case.episode.stints if one.setup == setup)
    return max((one for one in given if one), key=lambda one: one.into("m/s"), default=None)


def reaches_limiter(garage: Garage, speed: Quantity | None, final: Decimal) -> bool:
    """Whether the engine reaches the limiter at that road speed with that final drive; False where it is not known."""
    limit = garage.car.rev_limit
    if speed is None or limit is None or final <= 0 or not _known(garage):
        return False
    return _at(garage, speed, final) >= Fraction(limit)


def rpm_at(garage: Garage, speed: Quantity, final: Decimal) -> int | None:
    """Whole rpm of this garage's car at a road speed; None where the car block does not say enough."""
    return _whole(garage, speed, final) if final > 0 and _known(garage) else None


def _step(garage: Garage, setting: Setting, speed: Quantity, final: Decimal, clicks: int) -> GearStep | None:
    value = setting.grid.moved(final, clicks)
    return None if value is None or value <= 0 else GearStep(value, _whole(garage, speed, value))


def _limit(garage: Garage) -> int | None:
    limit = garage.car.rev_limit
    return None if limit is None else round(limit)


def _whole(garage: Garage, speed: Quantity, final: Decimal) -> int:
    return round(_at(garage, speed, final))


def _at(garage: Garage, speed: Quantity, final: Decimal) -> Fraction:
    circumference, top_gear = garage.car.tyre_circumference, garage.car.top_gear
    if circumference is None or top_gear is None:
        raise ValueError("the car block lacks the tyre circumference or the top gear")
    return _revolutions(speed, circumference, top_gear, final)


def _known(garage: Garage) -> bool:
    circumference, top_gear = garage.car.tyre_circumference, garage.car.top_gear
    if circumference is None or top_gear is None or top_gear <= 0:
        return False
    return _is(circumference, "length") and circumference.value > 0


def _is(quantity: Quantity, dimension: str) -> bool:
    return quantity.unit in UNITS and UNITS[quantity.unit].dimension == dimension


def _with_unit(speed: Quantity | None, units: System) -> Quantity | None:
    if speed is None:
        return None
    whole = speed if speed.unit else Quantity(speed.value, _ROAD_SPEED[units])
    return whole if _is(whole, "speed") else None


def _revolutions(speed: Quantity, circumference: Quantity, top_gear: Decimal, final: Decimal) -> Fraction:
    if not _is(speed, "speed") or not _is(circumference, "length") or circumference.value <= 0:
        raise ValueError("a road speed and a tyre circumference above zero are wanted, each with its unit")
    metres_a_minute = Fraction(speed.value) * UNITS[speed.unit].factor * 60
    around = Fraction(circumference.value) * UNITS[circumference.unit].factor
    return metres_a_minute / around * Fraction(top_gear) * Fraction(final)
