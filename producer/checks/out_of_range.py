"""A value lies within the limits that the garage has for it.

The simulation would not take it: what a viewer cannot type in must not stand on a card. Both limits belong to the
range. For a list of choices the limits are the smallest and the largest. The garage's own defaults are held to its
limits as well. Limits are read off the simulation's garage screens into the garage file: when the simulation has
changed, change the file.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 56.5, cross_weight: 52 }
                                ^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          spring: { lf: 700, rf: 725, lr: 75, rr: 300 }
                                          ^^
      - setup: long
        name: Long run
        based_on: short
        changes: { final_drive: 4.56 }
                                ^^^^

Found:

    # garages/grand-sedan.yaml
    parameters:
      tape: { page: driveline, name: Grille tape, unit: "%", min: 0, max: 100, step: 5, default: 105 }
                                                                                                 ^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 56, cross_weight: 46, final_drive: 4.11, camber: { lf: -2, rf: -6 } }
      - setup: long
        name: Long run
        based_on: short
        changes: { front_weight: 46, cross_weight: 56, final_drive: 3.70 }

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lf: 700, rf: 127 N/mm, lr: 225, rr: 300 } }

Silent:

    # garages/grand-sedan.yaml
    parameters:
      tape: { page: driveline, name: Grille tape, unit: "%", min: 0, max: 100, step: 5, default: 100 }
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from producer.basics.figures import figure, with_unit
from producer.basics.finding import Finding, Severity
from producer.checks.written import default_path, written
from producer.model.garage import Garage, Setting
from producer.model.library import Case, Library

CODES = {"out-of-range": Severity.ERROR}


def check_episode(case: Case) -> Iterator[Finding]:
    """Figures of the setups against the limits."""
    for one in written(case):
        setting = one.setting
        if not setting.grid.inside(one.value) and not one.foreign:
            given = f"{setting.name} is {_shown(setting, one.value)}"
            hint = f"{_shown(setting, one.value, nearest=True)} is nearest; or the garage file's limits are old"
            yield one.finding("out-of-range", Severity.ERROR, f"{given}; {_limits(setting)}", hint)


def check_garage(_library: Library, garage: Garage) -> Iterator[Finding]:
    """Defaults against the garage's own limits."""
    for setting in garage.settings.values():
        if setting.default is None or setting.grid.inside(setting.default):
            continue
        parameter = setting.parameter
        path = default_path(setting)
        message = f"the default {_shown(setting, setting.default)} of {setting.name} is past its own limits"
        place, where = parameter.place(*path), parameter.where(*path)
        yield Finding("out-of-range", Severity.ERROR, place, f"{message}; {_limits(setting)}", "read both again", where)


def _limits(setting: Setting) -> str:
    low, high = setting.grid.low, setting.grid.high
    return f"the garage goes from {setting.figure(low)} to {setting.shown(high)}"


def _shown(setting: Setting, value: Decimal, *, nearest: bool = False) -> str:
    if nearest:
        return setting.shown(min(max(value, setting.grid.low), setting.grid.high))
    return with_unit(figure(value), "" if setting.unit == "clicks" else setting.unit)
