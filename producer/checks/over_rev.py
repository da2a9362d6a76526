"""The engine stays below its limiter at the top speed that was driven.

A setup whose final drive reaches the limiter at a stint's `top_speed` hits it on every straight; an advice that goes
there sends the viewer into it. Engine speed = road speed x top gear x final drive / tyre circumference, from the
garage's `car` block; where that does not say enough, or no stint notes a top speed, nothing is said. An advice is
looked at in every setup in which it holds. Source: definition, common practice, no source.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { final_drive: 4.11 }
                               ^^^^
    stints: [ { setup: short, file: stints/short-1.csv, top_speed: 164 mph } ]

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { final_drive: 4.00 }
        reasons:
          - for: final_drive
            because: It jumps off the corner.
            if:
              - feels: tight exit
                to: 4.11
                    ^^^^
    stints: [ { setup: short, file: stints/short-1.csv, top_speed: 264 km/h } ]

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { final_drive: 4.11 }
      - setup: long
        name: Long run
        based_on: short
        changes: { front_weight: 51 }
    stints: [ { setup: long, file: stints/short-1.csv, top_speed: 164 mph } ]
                                                                  ^^^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { final_drive: 4.00 }
        reasons:
          - for: final_drive
            because: It jumps off the corner.
            if:
              - feels: tight exit
                to: 4.11
              - feels: loose exit
                direction: lower
      - setup: long
        name: Long run
        based_on: short
        changes: { final_drive: 4.11 }
    stints: [ { setup: short, file: stints/short-1.csv, top_speed: 163 mph } ]
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from producer.basics.figures import figure, with_unit
from producer.basics.finding import Finding, Severity
from producer.basics.place import Place
from producer.basics.units import Quantity
from producer.handling.advised import walks
from producer.handling.gearing import final_drive, reaches_limiter, rpm_at, top_speed
from producer.model.episode import Advice, StintEntry
from producer.model.garage import Setting
from producer.model.library import Case
from producer.model.sheet import Sheet

CODES = {"over-rev": Severity.WARNING}


def check_episode(case: Case) -> Iterator[Finding]:
    """Setups and advice at the top speeds of the stints."""
    setting = final_drive(case.garage) if case.garage else None
    if setting is None:
        return
    said: set[Place] = set()
    for sheet in case.sheets:
        speed = top_speed(case, sheet.id)
        if speed is None:
            continue
        for finding in (*_setup(case, sheet, setting, speed), *_advice(sheet, setting, speed)):
            if finding.place not in said:
                said.add(finding.place)
                yield finding


def _setup(case: Case, sheet: Sheet, setting: Setting, speed: Quantity) -> Iterator[Finding]:
    final = sheet.values.get(setting.address)
    if final is None or not reaches_limiter(sheet.garage, speed, final):
        return
    message = f"the engine turns {_revs(sheet, speed, setting, final=final)}"
    lower = setting.grid.moved(final, -1)
    hint = f"a final drive of {setting.shown(lower)} or less turns slower" if lower is not None else ""
    for key in ("changes", "values"):
        if sheet.setup.written(key, setting.address):
            path = (key, setting.address)
            place, where = sheet.setup.place(*path), sheet.setup.where(*path)
            yield Finding("over-rev", Severity.WARNING, place, message, hint, where)
            return
    stint = _fastest(case, sheet, speed)
    yield Finding("over-rev", Severity.WARNING, stint.place("top_speed"), message, hint, stint.where("top_speed"))


def _fastest(case: Case, sheet: Sheet, speed: Quantity) -> StintEntry:
    """The stint in which that top speed was driven: the setup's gear is written in another setup."""
    own = [one for one in case.episode.stints if one.setup == sheet.id and one.top_speed is not None]
    return next(one for one in own if one.top_speed is not None and one.top_speed.value == speed.value)


def _advice(sheet: Sheet, setting: Setting, speed: Quantity) -> Iterator[Finding]:
    for reason in sheet.reasons:
        for advice in reason.advice:
            for walk in walks(sheet, reason, advice):
                if walk.moves == setting.address:
                    yield from _stops(sheet, setting, speed, advice, walk.stops)


def _stops(
    sheet: Sheet, setting: Setting, speed: Quantity, advice: Advice, stops: tuple[Decimal, ...]
) -> Iterator[Finding]:
    for index, stop in enumerate(stops):
        if reaches_limiter(sheet.garage, speed, stop):
            path: tuple[str | int, ...] = ("to", index) if advice.to else ("direction",)
            message = f"with that advice the engine turns {_revs(sheet, speed, setting, final=stop)}"
            hint = "stop a step earlier, or advise something else"
            yield Finding("over-rev", Severity.WARNING, advice.place(*path), message, hint, advice.where(*path))


def _revs(sheet: Sheet, speed: Quantity, setting: Setting, *, final: Decimal) -> str:
    turning, limit = rpm_at(sheet.garage, speed, final), sheet.garage.car.rev_limit
    at = with_unit(figure(speed.value), speed.unit)
    return f"{turning} rpm at {at} with {setting.shown(final)}: the limiter is at {limit}"
