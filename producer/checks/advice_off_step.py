"""A stop of an advice is a value that the garage's steps reach.

The garage moves by whole steps from its lowest value, or along a list of choices; a figure between two of them cannot
be typed in. A stop on a split is on the grid if whole clicks of the corner that moves reach it: the advice's `corner`,
else the right one. A `corner` that is no part of the split reaches nothing. Source: the steps are the garage's own.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { rf: 700 } }
        reasons:
          - for: spring.rf
            because: So the nose takes a set.
            if:
              - feels: loose entry
                to: [725, 740]
                          ^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { final_drive: 3.90 }
        reasons:
          - for: final_drive
            because: It jumps off the corner.
            if:
              - feels: tight exit
                to: 3.95
                    ^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lr: 225, rr: 300 } }
        reasons:
          - for: spring.rear_split
            because: It helps the car turn.
            if:
              - feels: loose exit
                to: [60]
                     ^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lr: 225, rr: 300 } }
        reasons:
          - for: spring.rear_split
            because: It helps the car turn.
            if:
              - feels: loose exit
                to: [50]
                corner: rf
                        ^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { rf: 700, lr: 225, rr: 300 }, final_drive: 3.90, tyre_pressure: { rr: 41 } }
        reasons:
          - for: spring.rf
            because: So the nose takes a set.
            if:
              - feels: loose entry
                to: [725, 750]
              - feels: very loose entry
                to: [1325]
          - for: final_drive
            because: It jumps off the corner.
            if:
              - feels: tight exit
                to: [4.00, 4.11]
          - for: spring.rear_split
            because: It helps the car turn.
            if:
              - feels: loose exit
                to: [50, 25]
                corner: lr
          - for: tyre_pressure.rr
            because: It drives off better.
            if:
              - feels: loose exit
                to: [40.5, 40]
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.figures import figure
from producer.basics.finding import Finding, Severity
from producer.handling.advised import Walk, advised_targets, walks, written_advice
from producer.handling.changes import split_after
from producer.handling.wording import the
from producer.model.episode import Advice
from producer.model.library import Case
from producer.model.sheet import Sheet, SheetReason

CODES = {"advice-off-step": Severity.ERROR}


def check_episode(case: Case) -> Iterator[Finding]:
    """Every stop of every advice against the grid."""
    for sheet, reason, advice in written_advice(case):
        yield from _corner(sheet, reason, advice)
        ways = walks(sheet, reason, advice)
        for index in range(len(advice.to)):
            off = next((one for one in ways if _between(sheet, one, index)), None)
            if off is not None:
                yield _finding(advice, ("to", index), _message(sheet, off, index), _hint(sheet, off, index))


def _between(sheet: Sheet, walk: Walk, index: int) -> bool:
    """Inside the limits, but not on a step."""
    if not walk.stops:
        return False
    grid, stop = sheet.setting(walk.moves).grid, walk.stops[index]
    return grid.inside(stop) and grid.index(stop) is None


def _message(sheet: Sheet, walk: Walk, index: int) -> str:
    name = the(sheet.garage, walk.target)
    if not walk.split:
        return f"{figure(walk.figures[index])} is between two steps of {name}"
    moves, stop = the(sheet.garage, walk.moves), figure(walk.stops[index])
    return f"no whole click of {moves} makes {name} {figure(walk.figures[index])}: it would have to be {stop}"


def _hint(sheet: Sheet, walk: Walk, index: int) -> str:
    near = sheet.setting(walk.moves).grid.nearest(walk.stops[index])
    shown = [split_after(sheet, walk.split, walk.moves, one) if walk.split else one for one in near]
    figures = [sheet.garage.figure(walk.target, one) for one in shown if one is not None]
    return f"the nearest is {' or '.join(figures)}" if figures else ""


def _corner(sheet: Sheet, reason: SheetReason, advice: Advice) -> Iterator[Finding]:
    splits = [one for one in advised_targets(sheet, reason) if one in sheet.garage.splits]
    if advice.corner is None or not splits:
        return
    parts = [one.rpartition(".")[2] for one in sheet.garage.splits[splits[0]]]
    if advice.corner not in parts:
        message = f"{the(sheet.garage, splits[0])} does not move by its {advice.corner}"
        yield _finding(advice, ("corner",), message, f"it moves by {' or '.join(parts)}")


def _finding(advice: Advice, path: tuple[str | int, ...], message: str, hint: str) -> Finding:
    place, where = advice.place(*path), advice.where(*path)
    return Finding("advice-off-step", Severity.ERROR, place, message, hint, where)
