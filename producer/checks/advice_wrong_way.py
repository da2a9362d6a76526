"""The stops of an advice go one way: the way its direction says, each beyond the one before.

The first stop is counted from the value that the setup has now. "Raise it, to 675" from 700 sends the viewer the
wrong way; so does a list of stops that turns back, or a stop that is where the car already stands.
Source: arithmetic.

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
              - feels: tight entry
                direction: raise
                           ^^^^^
                to: [675, 650]

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
                to: [725, 750, 725]
                               ^^^

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
                direction: raise
                to: [700, 725]
                     ^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { rf: 700, lr: 225, rr: 300 }, final_drive: 3.90 }
        reasons:
          - for: spring.rf
            because: So the nose takes a set.
            if:
              - feels: loose entry
                direction: raise
                to: [725, 750]
              - feels: tight entry
                to: [675, 650]
          - for: spring.rear_split
            because: It helps the car turn.
            if:
              - feels: loose exit
                direction: lower
                to: [50, 25]
                corner: lr
          - for: final_drive
            because: It jumps off the corner.
            if:
              - feels: loose exit
                direction: lower
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from producer.basics.figures import figure
from producer.basics.finding import Finding, Severity
from producer.handling.advised import Walk, walks, written_advice
from producer.handling.changes import way_of
from producer.handling.wording import the
from producer.model.episode import Advice
from producer.model.library import Case
from producer.model.sheet import Sheet
from producer.model.words import Direction

CODES = {"advice-wrong-way": Severity.ERROR}


def check_episode(case: Case) -> Iterator[Finding]:
    """Every advice with stops, from the present value on."""
    for sheet, reason, advice in written_advice(case):
        seen: set[tuple[str | int, ...]] = set()
        for walk in walks(sheet, reason, advice):
            for path, message, hint in _turns(sheet, walk, advice):
                if path not in seen:
                    seen.add(path)
                    place, where = advice.place(*path), advice.where(*path)
                    yield Finding("advice-wrong-way", Severity.ERROR, place, message, hint, where)


def _turns(sheet: Sheet, walk: Walk, advice: Advice) -> Iterator[tuple[tuple[str | int, ...], str, str]]:
    """Path below the advice, message and hint of each stop that does not go on."""
    if walk.start is None or not walk.figures:
        return
    before, way = walk.start, advice.direction
    for index, stop in enumerate(walk.figures):
        went = way_of(before, stop)
        if went is None:
            yield ("to", index), _nowhere(sheet, walk, index), "leave this stop out, or name the next one"
        elif index == 0 and way is not None and went != way:
            yield ("direction",), _against(sheet, walk, way, stop), f"write 'direction: {went}', or other stops"
            way = went
        elif way is not None and went != way:
            yield ("to", index), _back(stop, before, way), "stops go one way, each beyond the one before"
        way = way or went
        before = stop


def _nowhere(sheet: Sheet, walk: Walk, index: int) -> str:
    stop, name = figure(walk.figures[index]), the(sheet.garage, walk.target)
    return f"{name} is at {stop} already" if index == 0 else f"{stop} is the stop before once more"


def _against(sheet: Sheet, walk: Walk, way: Direction, stop: Decimal) -> str:
    name, at = the(sheet.garage, walk.target), sheet.figure(walk.target)
    side = "above" if way == "lower" else "below"
    return f"the advice says {way}, but {figure(stop)} is {side} the {at} that {name} has"


def _back(stop: Decimal, before: Decimal, way: Direction) -> str:
    went = "up" if way == "raise" else "down"
    return f"{figure(stop)} turns back: the stops go {went}, and the one before is {figure(before)}"
