"""How the chassis model reads a setting: which part of the car it is, and a figure of it in SI units.

A part whose role the model knows but whose unit it cannot read (a bar in clicks) is not read: its size stays a range,
and the model has no opinion about the setting. It is silent by design on pressures, camber, toe, tape, stagger, caster
and ride height.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from producer.basics.units import convert, unit
from producer.handling.ranges import FRONT_DAMPER, REAR_DAMPER
from producer.model.garage import Garage, Setting
from producer.model.words import CORNERS, ENDS

# A whole-car figure on its slot; the figure is None where no car can have it.
_Read = Callable[[Decimal], float | None]


@dataclass(frozen=True, slots=True)
class Slot:
    """Parts of the car that a setting is: their names in the model, and how a figure of the setting is read.

    Names: `front`, `left`, `cross`, `bias` (shares 0..1), `spring.rf` ... (N/m), `front_bar_size`, `rear_bar_size`
    (times its rate at the default diameter), `front_bar`, `rear_bar` (N/m at the wheels), `track_bar.left`,
    `track_bar.right` (m), `compression.rf` ..., `rebound.rf` ... (N s/m), `final` (the final drive's ratio).
    """

    names: tuple[str, ...]
    read: _Read


def slots(garage: Garage) -> dict[str, Slot]:
    """The settings that the model reads, by address in the garage's order; of two for one part, the first."""
    found: dict[str, Slot] = {}
    taken: set[str] = set()
    for address, setting in garage.settings.items():
        slot = _slot(setting)
        if slot is not None and taken.isdisjoint(slot.names):
            found[address] = slot
            taken.update(slot.names)
    return found


def figures(known: Mapping[str, Slot], values: Mapping[str, Decimal]) -> dict[str, float]:
    """The parts of the car that these values state."""
    return dict(_figures(known, values))


def _figures(known: Mapping[str, Slot], values: Mapping[str, Decimal]) -> Iterator[tuple[str, float]]:
    for address, slot in known.items():
        value = slot.read(values[address]) if address in values else None
        if value is not None:
            yield from ((name, value) for name in slot.names)


def _slot(setting: Setting) -> Slot | None:
    kind, _, part = setting.role.partition(".")
    if kind in ("spring", "shock_compression", "shock_rebound"):
        return _at_corner(setting, kind, part)
    if kind == "track_bar":
        ends = (part,) if part in ENDS else ENDS if not part else ()
        return (
            Slot(tuple(f"track_bar.{end}" for end in ends), _in(setting, "m")) if ends and _is(setting, "m") else None
        )
    if kind == "bar":
        return _bar(setting, part)
    if setting.role == "gear.final":
        return Slot(("final",), lambda value: float(value) if value > 0 else None)
    share = {"weight.front": "front", "weight.left": "left", "weight.cross": "cross", "brake.front_bias": "bias"}
    return Slot((share[setting.role],), _share) if setting.role in share and setting.unit in ("%", "") else None


def _at_corner(setting: Setting, kind: str, corner: str) -> Slot | None:
    if corner not in CORNERS:
        return None
    if kind == "spring":
        return Slot((f"spring.{corner}",), _in(setting, "N/m")) if _is(setting, "N/mm") else None
    at_default = setting.default if setting.default is not None else setting.grid.at(setting.grid.last // 2)
    if setting.unit not in ("clicks", "") or not at_default or at_default <= 0:
        return None
    per_click = (FRONT_DAMPER if corner in ("lf", "rf") else REAR_DAMPER) / float(at_default)
    name = kind.removeprefix("shock_")
    return Slot((f"{name}.{corner}",), lambda value: per_click * float(value) if value >= 0 else None)


def _bar(setting: Setting, place: str) -> Slot | None:
    """A bar by its diameter (its rate goes with the fourth power), or by its rate at the wheels as stated."""
    if place not in ("front", "rear"):
        return None
    if _is(setting, "N/mm"):
        return Slot((f"{place}_bar",), _in(setting, "N/m"))
    like = setting.default if setting.default is not None else setting.grid.at(setting.grid.last // 2)
    if not _is(setting, "m") or not like or like <= 0:
        return None
    usual = float(like)
    return Slot((f"{place}_bar_size",), lambda value: (float(value) / usual) ** 4 if value > 0 else None)


def _is(setting: Setting, measure: str) -> bool:
    """Whether a setting's unit measures the same thing as another unit."""
    own, like = unit(setting.unit) if setting.unit else None, unit(measure)
    return own is not None and like is not None and own.dimension == like.dimension


def _in(setting: Setting, measure: str) -> _Read:
    to, times = ("N/mm", 1000.0) if measure == "N/m" else (measure, 1.0)
    return lambda value: float(convert(value, setting.unit, to)) * times if value > 0 else None


def _share(value: Decimal) -> float | None:
    return float(value) / 100 if 0 < value < 100 else None
