"""The direction a reason states is the way its figures go.

Raising is the larger number in the garage (a camber from -3.5 to -4 is lowered). A reason compares with what
`compared_with` names, else with the setup it is based on, else with the garage's default. A viewer who is told that
something was raised and reads a smaller number on the card trusts neither. For a page or a whole parameter it is
enough that something moves that way and nothing the other; a setting that is named must itself have moved.
`check --fix` turns the direction round where all went the other way and the reason's words do not agree with it.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - for: spring.rf
            direction: raise
                       ^^^^^
            because: It takes a set sooner.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50, cross_weight: 52 }
        reasons:
          - for: [cross_weight, front_weight]
            direction: raise
                       ^^^^^
            because: It waits for me.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
      - setup: long
        name: Long run
        based_on: short
        changes: { spring: { rr: 275 } }
        reasons:
          - { for: spring.rear_split, direction: raise, because: It gives up last. }
                                                 ^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5, camber: { lf: 3, rf: -4 }, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - { for: spring.rf, direction: lower, because: It takes a set sooner. }
          - { for: spring.rf, compared_with: 700, direction: raise, because: More than last year. }
          - { for: camber, direction: lower, because: The edge was cold. }
          - { for: front_weight, because: It goes in straight. }
      - setup: long
        name: Long run
        based_on: short
        changes: { spring: { rr: 275 } }
        reasons:
          - { for: [spring.rr, spring.rear_split], direction: lower, because: It gives up last. }
          - { for: front_weight, compared_with: default, direction: raise, because: It goes in straight. }
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Fix, Severity
from producer.checks.mending import agrees_with_prose, held, repair
from producer.checks.written import listed
from producer.model.garage import Garage
from producer.model.library import Case
from producer.model.sheet import Movement, SheetReason

CODES = {"direction-against-sign": Severity.ERROR}


def check_episode(case: Case) -> Iterator[Finding]:
    """Each reason that states a direction, in the setup that wrote it."""
    for sheet in case.sheets:
        for one in sheet.reasons:
            if one.reason.direction is not None and not one.inherited:
                yield from _reason(one, sheet.garage, case)


def _reason(one: SheetReason, garage: Garage, case: Case) -> Iterator[Finding]:
    reason, said = one.reason, one.reason.direction
    wrong = [move for move in one.movements if move.direction not in (said, None)]
    still = [move for move in one.movements if move.direction is None]
    if not wrong and not any(move.direction == said for move in one.movements):
        wrong = still
    elif not wrong:
        wrong = [move for move in still if move.address in reason.for_]
    if not wrong:
        return
    message = f"the reason says {said}, but {listed([_moved(move, garage) for move in wrong])}"
    place, where = reason.place("direction"), reason.where("direction")
    yield Finding("direction-against-sign", Severity.ERROR, place, message, _hint(wrong), where, fix=_fix(one, case))


def _fix(one: SheetReason, case: Case) -> Fix | None:
    """The way that all went; None where they did not go one way, or the words agree with what is written."""
    ways = {move.direction for move in one.movements}
    way = ways.pop() if len(ways) == 1 else None
    if way is None or agrees_with_prose(case, one, way=one.reason.direction):
        return None
    return repair(one.reason, ("direction",), 0, len(held(one.reason, "direction")), way)


def _moved(move: Movement, garage: Garage) -> str:
    start, end = garage.shown(move.address, move.start), garage.shown(move.address, move.end)
    if move.direction is None:
        return f"{move.address} stays at {end} ({_against(move)})"
    return f"{move.address} goes from {start} ({_against(move)}) to {end}"


def _against(move: Movement) -> str:
    if move.against == "default":
        return "the garage's default"
    return "compared_with" if move.against == "number" else f"setup '{move.against}'"


def _hint(wrong: list[Movement]) -> str:
    ways = {move.direction for move in wrong}
    if len(ways) == 1 and None not in ways:
        return f"write 'direction: {ways.pop()}', leave it out, or say with 'compared_with' what you compare with"
    return "leave the direction out, look at the value, or say with 'compared_with' what you compare with"
