"""A stop of an advice lies within the limits of the garage.

A viewer who follows "go to 1325" and finds that the garage ends at 1300 stops trusting the card. Each stop is looked
at by itself; on a split it is the corner that moves which must stay inside its limits. An advice with a direction and
no stop means one click: at the limit there is none left. Source: the limits are the garage's own.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { rf: 1275 } }
        reasons:
          - for: spring.rf
            because: Stiff, so it stays off the ground.
            if:
              - feels: loose entry
                to: [1300, 1325]
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
              - feels: tight exit
                to: 300
                    ^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { final_drive: 4.11 }
        reasons:
          - for: final_drive
            because: It jumps off the corner.
            if:
              - feels: tight exit
                direction: raise
                           ^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { rf: 1250, lr: 225, rr: 300 }, final_drive: 4.11 }
        reasons:
          - for: spring.rf
            because: Stiff, so it stays off the ground.
            if:
              - feels: loose entry
                to: [1275, 1300]
          - for: spring.rear_split
            because: It helps the car turn.
            if:
              - feels: tight exit
                to: [100, 275]
          - for: final_drive
            because: It jumps off the corner.
            if:
              - feels: loose exit
                direction: lower
              - feels: tight exit
                say: Then it is the gas pedal.
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.figures import figure
from producer.basics.finding import Finding, Severity
from producer.handling.advised import Walk, walks, written_advice
from producer.handling.wording import the
from producer.model.episode import Advice
from producer.model.library import Case
from producer.model.sheet import Sheet

CODES = {"advice-past-limit": Severity.ERROR}


def check_episode(case: Case) -> Iterator[Finding]:
    """Every stop of every advice against the limits."""
    for sheet, reason, advice in written_advice(case):
        ways = walks(sheet, reason, advice)
        if not advice.to and ways and all(_no_click_left(sheet, one) for one in ways):
            message = f"{_names(sheet, ways)} cannot be {_moved(advice)} any further"
            yield _finding(advice, ("direction",), message, "advise something else here, or leave the direction out")
        for index in range(len(advice.to)):
            past = next((one for one in ways if _past(sheet, one, index)), None)
            if past is not None:
                yield _finding(advice, ("to", index), _message(sheet, past, index), _hint(sheet, past, index))


def _past(sheet: Sheet, walk: Walk, index: int) -> bool:
    return bool(walk.stops) and not sheet.setting(walk.moves).grid.inside(walk.stops[index])


def _no_click_left(sheet: Sheet, walk: Walk) -> bool:
    """A value that stands off the grid has no next click either, but that is another finding."""
    grid = sheet.setting(walk.moves).grid
    return not walk.stops and walk.present is not None and grid.index(walk.present) is not None


def _message(sheet: Sheet, walk: Walk, index: int) -> str:
    setting = sheet.setting(walk.moves)
    low, high = setting.figure(setting.grid.low), setting.shown(setting.grid.high)
    reach = f"{the(sheet.garage, walk.moves)} goes from {low} to {high}"
    if walk.split:
        split = f"{the(sheet.garage, walk.split)} of {figure(walk.figures[index])}"
        return f"for {split} the stop is {_stop(walk, index)}, and {reach}"
    return f"{_stop(walk, index)} is past the limit: {reach}"


def _hint(sheet: Sheet, walk: Walk, index: int) -> str:
    setting = sheet.setting(walk.moves)
    end = setting.grid.high if walk.stops[index] > setting.grid.high else setting.grid.low
    return f"the last stop that way is {setting.shown(end)}" + (f" ({setting.name})" if walk.split else "")


def _stop(walk: Walk, index: int) -> str:
    return figure(walk.stops[index])


def _moved(advice: Advice) -> str:
    return "raised" if advice.direction == "raise" else "lowered"


def _names(sheet: Sheet, ways: tuple[Walk, ...]) -> str:
    return ", ".join(the(sheet.garage, one.target) for one in ways)


def _finding(advice: Advice, path: tuple[str | int, ...], message: str, hint: str) -> Finding:
    place, where = advice.place(*path), advice.where(*path)
    return Finding("advice-past-limit", Severity.ERROR, place, message, hint, where)
