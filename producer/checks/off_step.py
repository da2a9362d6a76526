"""A value is one that the garage stops at.

A setting moves in steps counted from its smallest value, or has a list of choices; what lies between two of them
cannot be typed in. The arithmetic is exact (51.3 is not 51.25 rounded), and the one or two nearest values are named.
The garage's own defaults are held to its steps as well; a value past the limits is out-of-range instead.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.3, cross_weight: 52 }
                                ^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          spring: { lf: 700, rf: 730, lr: 225, rr: 300 }
                                 ^^^
          final_drive: 3.85
                       ^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - for: spring.rf
            compared_with: 740
                           ^^^
            because: It takes a set sooner.

Found:

    # garages/grand-sedan.yaml
    parameters:
      tape: { page: driveline, name: Grille tape, unit: "%", min: 0, max: 100, step: 5, default: 42 }
                                                                                                 ^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          front_weight: 50.50
          front_toe: 0.0625
          camber: { lf: 3.25, rf: -3.75 }
          spring: { lf: 700, rf: 725, lr: 225, rr: 300 }
          final_drive: 4.00

Silent:

    # garages/grand-sedan.yaml
    parameters:
      spring:
        page: suspension
        name: spring
        unit: lb/in
        corners:
          lf: { min: 250, max: 690, step: 20, default: 410 }
          rf: { min: 250, max: 690, step: 20, default: 450 }
    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lf: 410, rf: 450 } }
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from producer.basics.figures import figure
from producer.basics.finding import Finding, Severity
from producer.checks.written import default_path, listed, written
from producer.model.garage import Garage, Setting
from producer.model.library import Case, Library

CODES = {"off-step": Severity.ERROR}


def check_episode(case: Case) -> Iterator[Finding]:
    """Figures of the setups against the steps."""
    for one in written(case):
        if _between(one.setting, one.value) and not one.foreign:
            message = f"{one.setting.name} does not stop at {figure(one.value)}; {_steps(one.setting)}"
            yield one.finding("off-step", Severity.ERROR, message, _nearest(one.setting, one.value))


def check_garage(_library: Library, garage: Garage) -> Iterator[Finding]:
    """Defaults against the garage's own steps."""
    for setting in garage.settings.values():
        if setting.default is not None and _between(setting, setting.default):
            parameter, path = setting.parameter, default_path(setting)
            message = f"{setting.name} does not stop at its default {figure(setting.default)}; {_steps(setting)}"
            hint = _nearest(setting, setting.default)
            place, where = parameter.place(*path), parameter.where(*path)
            yield Finding("off-step", Severity.ERROR, place, message, hint, where)


def _between(setting: Setting, value: Decimal) -> bool:
    return setting.grid.inside(value) and setting.grid.index(value) is None


def _steps(setting: Setting) -> str:
    grid = setting.grid
    if grid.choices:
        return f"it can be {', '.join(figure(one) for one in grid.choices)}"
    return f"its steps are {figure(grid.step or Decimal(0))}, counted from {setting.figure(grid.low)}"


def _nearest(setting: Setting, value: Decimal) -> str:
    near = [setting.shown(one) for one in setting.grid.nearest(value)]
    return f"{listed(near)} {'is' if len(near) == 1 else 'are'} nearest"
