"""Every setting of the garage has a value in every setup.

A viewer types in the whole garage: a card with a gap leaves them guessing. Values come through `based_on`, so only a
setup with values of its own can lack one. What is missing is reported at the key of the map that lacks it. Until the
episode is scripted it is a note: a setup grows while it is tested.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5, cross_weight: 52 }
        ^^^^^^
      - setup: long
        name: Long run
        based_on: short
        changes: { front_weight: 51 }

Found:

    # marrow-creek-grand-sedan/episode.yaml
    status: testing
    setups:
      - setup: short
        name: Short run
        values:
          spring: { lf: 700, rf: 725, lr: 225 }
          ^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    status: idea
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5 }
        ^^^^^^

Silent:

    # garages/grand-sedan.yaml
    pages: [ballast, suspension]
    parameters:
      front_weight: { page: ballast, name: Front weight, unit: "%", min: 46, max: 56, step: 0.5, default: 50 }
      track_bar:
        page: suspension
        name: Track bar
        unit: in
        ends: { left: { min: 6, max: 13, step: 0.25 }, right: { min: 6, max: 13, step: 0.25 } }
    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5, track_bar: { left: 9.5, right: 9.5 } }
      - setup: long
        name: Long run
        based_on: short
        changes: { front_weight: 51 }
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from producer.basics.figures import decimals_of, plain
from producer.basics.finding import Finding, Severity
from producer.checks.written import listed
from producer.model.episode import Setup
from producer.model.garage import Garage, Parameter, Setting
from producer.model.library import Case

CODES = {"missing-value": Severity.ERROR}


def check_episode(case: Case) -> Iterator[Finding]:
    """Setups that stand on their own, against the garage."""
    if case.garage is None:
        return
    scripted = case.episode.at_least("scripted")
    for sheet in case.sheets:
        if sheet.setup.based_on is None and len(sheet.values) < len(case.garage.settings):
            if not scripted:
                yield from _whole(sheet.setup, case.garage)
            for name, parameter in case.garage.parameters.items():
                if scripted or name in sheet.setup.values:
                    severity = Severity.ERROR if scripted else Severity.NOTE
                    yield from _parameter(sheet.setup, name, parameter, case.garage, severity)


def _whole(setup: Setup, garage: Garage) -> Iterator[Finding]:
    """One note for everything that is not there yet: a setup that is still growing is not nagged about."""
    lacking = [name for name in garage.parameters if name not in setup.values]
    if lacking:
        shown = listed(lacking if len(lacking) < 5 else [*lacking[:3], f"{len(lacking) - 3} more"])
        place, where = setup.key_place("values"), setup.where("values")
        message, hint = f"setup '{setup.setup}' has no value yet for {shown}", "the card needs every one of them"
        yield Finding("missing-value", Severity.NOTE, place, message, hint, where)


def _parameter(setup: Setup, name: str, parameter: Parameter, garage: Garage, severity: Severity) -> Iterator[Finding]:
    given = setup.values.get(name)
    parts = [part for part in parameter.parts if not isinstance(given, Mapping) or part not in given]
    if given is None:
        lacking = [garage.settings[f"{name}.{part}" if part else name] for part in parts or ("",)]
        hint = f"add '{name}: {_defaults(lacking)}'" if all(one.default is not None for one in lacking) else ""
        message = f"setup '{setup.setup}' has no value for {name}"
        place = setup.key_place("values")
    elif parts and isinstance(given, Mapping):
        lacking = [garage.settings[f"{name}.{part}"] for part in parts]
        hint = f"add {_defaults(lacking)}" if all(one.default is not None for one in lacking) else ""
        message = f"{name} has no value for {listed(parts)} in setup '{setup.setup}'"
        place = setup.key_place("values", name)
    else:
        return
    hint += ", the garage's default, or what you run" if hint else "write what you run"
    yield Finding("missing-value", severity, place, message, hint, setup.where("values", name))


def _defaults(lacking: list[Setting]) -> str:
    """`50`, or `{ lf: 700, rf: 750 }`."""
    figures = [plain(one.default, decimals_of(one.default)) for one in lacking if one.default is not None]
    if not lacking[0].part:
        return figures[0]
    return f"{{ {', '.join(f'{one.part}: {text}' for one, text in zip(lacking, figures, strict=True))} }}"
