"""A quantity is written in a unit that measures what is meant.

Inside an episode the garage decides: its figures are typed in as the garage shows them, so a spring in N/mm stands
where lb/in is wanted only by mistake, and the figure in the garage's own unit is worked out. Elsewhere any unit of the
right kind will do (a length in miles or kilometers), but a track is not measured in psi, and without a unit nobody
can tell. In a garage the unit of a parameter is held against its role.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          spring: { lf: 700, rf: 127 N/mm, lr: 225, rr: 300 }
                                 ^^^^^^^^
          front_weight: 50.5 lb
                        ^^^^^^^
        reasons:
          - { for: spring.rr, is: 300 psi, compared_with: 52 kg, because: It turns. }
                                                          ^^^^^
                                  ^^^^^^^

Found:

    # tracks/marrow-creek.yaml
    length: 1.10 psi
            ^^^^^^^^
    corners:
      - { turns: [1, 2], radius: 520, banking: 10 }
                                 ^^^

Found:

    # garages/grand-sedan.yaml
    car: { mass: 1500 mph, tyre_circumference: 86.5 in }
                 ^^^^^^^^
    # marrow-creek-grand-sedan/episode.yaml
    stints:
      - { setup: short, file: stints/short-1.csv, top_speed: 142 lb, fuel: 18 gal }
                                                             ^^^^^^

Found:

    # garages/grand-sedan.yaml
    parameters:
      tyre_pressure:
        page: tyres
        name: pressure
        role: tyre_pressure
        unit: lb/in
              ^^^^^
        corners: { lf: { min: 15, max: 40, step: 0.5 }, rf: { min: 25, max: 60, step: 0.5 } }

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          spring: { lf: 700, rf: 725 lb/in, lr: 225 lbs/in, rr: 300 }
          front_weight: 50.5 %
          front_toe: 0.125 inches
          final_drive: "3.90:1"
    stints:
      - { setup: short, file: stints/short-1.csv, top_speed: 228 km/h, fuel: 68 L }
    # tracks/marrow-creek.yaml
    length: 1.77 km
    corners:
      - { turns: [1, 2], radius: 158 m, banking: 10 }
    # garages/grand-sedan.yaml
    car: { mass: 3300 lb, tyre_circumference: 2197 mm, wheelbase: 110 in }
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.figures import plain, with_unit
from producer.basics.finding import Finding, Severity
from producer.basics.units import Quantity, convert, counterpart, quantity, unit
from producer.checks.written import Written, advised, listed, stated, written
from producer.model.garage import Garage, Parameter
from producer.model.library import Case, Library
from producer.model.record import Record
from producer.model.track import Track

CODES = {"unit-mismatch": Severity.ERROR}
_CAR = {
    "mass": ("mass",), "tyre_circumference": ("length",), "wheelbase": ("length",), "track_width": ("length",),
    "cg_height": ("length",),
}  # fmt: skip
_STINT = {"top_speed": ("speed",), "fuel": ("volume", "mass")}
# What a role is measured in where it is measured at all: clicks, percent and bare figures say nothing of the kind.
_ROLES = {
    "spring": ("spring rate",), "tyre_pressure": ("pressure",), "camber": ("angle",), "caster": ("angle",),
    "gear.final": ("ratio",), "track_bar": ("length",), "stagger.rear": ("length",),
    "steering.toe_out": ("length", "angle"),
}  # fmt: skip
_COUNTED = frozenset({"clicks", "share", "ratio"})


def check_episode(case: Case) -> Iterator[Finding]:
    """Figures of the setups against the garage's units; readings of the stints against what they read."""
    for one in (*written(case), *stated(case), *advised(case)):
        if one.foreign:
            yield from _figure(one)
    for stint in case.episode.stints:
        for key, wanted in _STINT.items():
            yield from _quantity(stint, key, wanted)


def check_library(library: Library) -> Iterator[Finding]:
    """Lengths of the tracks."""
    for track in library.tracks.values():
        yield from _track(track)


def check_garage(_library: Library, garage: Garage) -> Iterator[Finding]:
    """What is known of the car, and the unit of each role."""
    for key, wanted in _CAR.items():
        yield from _quantity(garage.car, key, wanted)
    for parameter in garage.parameters.values():
        yield from _role(parameter)


def _track(track: Track) -> Iterator[Finding]:
    yield from _quantity(track, "length", ("length",))
    for corner in track.corners:
        yield from _quantity(corner, "radius", ("length",))


def _figure(one: Written) -> Iterator[Finding]:
    given, wanted = quantity(one.text), one.setting.unit
    name = one.setting.name
    if not wanted:
        yield one.finding("unit-mismatch", Severity.ERROR, f"{name} has no unit in the garage", "write the bare figure")
        return
    message = f"{name} is in {wanted} in the garage, not in {given.unit}"
    yield one.finding("unit-mismatch", Severity.ERROR, message, _converted(given, one))


def _converted(given: Quantity, one: Written) -> str:
    try:
        value = convert(given.value, given.unit, one.setting.unit)
    except ValueError:
        return "write the figure as the garage shows it"
    shown = plain(value, one.setting.decimals + 1)
    near = one.setting.grid.nearest(value)
    return (
        f"that is {with_unit(shown, one.setting.unit)}; the garage has {listed([one.setting.shown(x) for x in near])}"
    )


def _quantity(record: Record, key: str, wanted: tuple[str, ...]) -> Iterator[Finding]:
    given: Quantity | None = getattr(record, key)
    if given is None:
        return
    known = unit(given.unit) if given.unit else None
    kind = " or ".join(wanted)
    if known is None:
        yield _at(record, key, f"{key} has no unit", f"write it with one, like '{given.value} {_example(wanted)}'")
    elif known.dimension not in wanted:
        hint = f"write a {kind}, like '{given.value} {_example(wanted)}'"
        yield _at(record, key, f"{key} is a {kind}; {known.symbol} measures {known.dimension}", hint)


def _role(parameter: Parameter) -> Iterator[Finding]:
    wanted = _ROLES.get(parameter.role or "")
    known = unit(parameter.unit) if parameter.unit else None
    if wanted and known and known.dimension not in wanted and known.dimension not in _COUNTED:
        message = f"the role {parameter.role} is a {' or '.join(wanted)}; {known.symbol} measures {known.dimension}"
        yield _at(parameter, "unit", message, f"like '{_example(wanted)}', or another role")


def _example(wanted: tuple[str, ...]) -> str:
    """A unit of that kind as a presenter in either system would write it."""
    found = {"mass": "lb", "length": "ft", "speed": "mph", "volume": "gal", "spring rate": "lb/in", "pressure": "psi"}
    first = found.get(wanted[0], {"angle": "deg", "ratio": ":1"}.get(wanted[0], ""))
    other = counterpart(first)
    return f"{first}' or '{other}" if other else first


def _at(record: Record, key: str, message: str, hint: str) -> Finding:
    return Finding("unit-mismatch", Severity.ERROR, record.place(key), message, hint, record.where(key))
