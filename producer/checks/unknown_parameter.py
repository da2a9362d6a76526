"""A value or a reason is about something that the garage can adjust.

A parameter that the garage does not have cannot be typed in by a viewer, so nothing of it may reach a card. A corner
or an end is wanted where the parameter has them, and not where it is one figure for the whole car. The nearest name
of the garage is suggested; a renamed parameter (`was:`) is named as what it is now.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_wieght: 50.5, cross_weight: 52 }
                  ^^^^^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          spring: { lf: 700, lx: 725 }
                             ^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          front_weight: { lf: 50 }
          ^^^^^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          spring: 700
          ^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5 }
        reasons:
          - for: [front_weight, spring.xx]
                                ^^^^^^^^^
            because: It goes in better.

Found:

    # garages/grand-sedan.yaml
    parameters:
      nose_weight: { page: ballast, name: Nose weight, was: front_weight, min: 46, max: 56, step: 0.5 }
    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5 }
                  ^^^^^^^^^^^^
        reasons:
          - for: []
            ^^^
            because: It goes in better.

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          front_weight: 50.5
          spring: { lf: 700, rf: 725, lr: 225, rr: 300 }
          track_bar: { left: 9.5, right: 9.5 }
        reasons:
          - for: [front_weight, spring.rear_split, track_bar.left, camber, dampers]
            because: It goes in better.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from typing import Any

from producer.basics.finding import Finding, Severity
from producer.model.episode import Setup
from producer.model.garage import Garage, Parameter
from producer.model.library import Case

CODES = {"unknown-parameter": Severity.ERROR}


def check_episode(case: Case) -> Iterator[Finding]:
    """Values, changes and what reasons are for, against the garage."""
    if case.garage is None:
        return
    for setup in case.episode.setups:
        for key, values in (("values", setup.values), ("changes", setup.changes)):
            for name, value in values.items():
                yield from _value(setup, (key, name), value, case.garage)
        yield from _reasons(setup, case.garage)


def _value(setup: Setup, path: tuple[str, str], value: Any, garage: Garage) -> Iterator[Finding]:
    name = path[1]
    parameter = garage.parameters.get(name)
    if parameter is None:
        yield _finding(setup, path, f"the garage '{garage.garage}' has no parameter '{name}'", _nearest(name, garage))
    elif isinstance(value, Mapping):
        yield from _parts(setup, path, value, parameter)
    elif parameter.parts:
        parts = ", ".join(f"{part}: {value}" for part in parameter.parts)
        yield _finding(
            setup, path, f"'{name}' has a value for each of {', '.join(parameter.parts)}", f"write {{ {parts} }}"
        )


def _parts(setup: Setup, path: tuple[str, str], value: Mapping[str, Any], parameter: Parameter) -> Iterator[Finding]:
    name = path[1]
    if not parameter.parts:
        message = f"'{name}' is one figure for the whole car, not one for each corner"
        yield _finding(setup, path, message, f"write {name}: {next(iter(value.values()), '...')}")
        return
    for part in value:
        if part not in parameter.parts:
            message = f"'{name}' has no '{part}'"
            yield _finding(setup, (*path, str(part)), message, f"it has {', '.join(parameter.parts)}")


def _reasons(setup: Setup, garage: Garage) -> Iterator[Finding]:
    for reason in setup.reasons:
        if not reason.for_:
            place, where = reason.key_place("for"), reason.where("for")
            message, hint = "this reason is for nothing", "name a setting, a split, a parameter or a page"
            yield Finding("unknown-parameter", Severity.ERROR, place, message, hint, where)
        for index, target in enumerate(reason.for_):
            if garage.expand(target):
                continue
            path: tuple[str | int, ...] = ("for", index) if reason.written("for", index) else ("for",)
            message = f"'{target}' names nothing in the garage '{garage.garage}'"
            place, where = reason.place(*path), reason.where(*path)
            yield Finding("unknown-parameter", Severity.ERROR, place, message, _nearest(target, garage), where)


def _finding(setup: Setup, path: tuple[str, ...], message: str, hint: str) -> Finding:
    place, where = setup.key_place(*path), setup.where(*path)
    return Finding("unknown-parameter", Severity.ERROR, place, message, hint, where)


def _nearest(name: str, garage: Garage) -> str:
    renamed = next((now for now, one in garage.parameters.items() if one.was == name.partition(".")[0]), None)
    if renamed is not None:
        return f"it is called '{renamed}' now"
    known = [*garage.parameters, *garage.settings, *garage.splits, *garage.pages]
    near = get_close_matches(name, known, 1, 0.6)
    return f"did you mean '{near[0]}'?" if near else f"the garage has {', '.join(garage.parameters)}"
