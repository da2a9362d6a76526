"""An advice is not written for a part of the corner where, by the garage's own word, its setting does nothing.

"If it is tight on exit, raise the left end of the track bar" helps nobody in a simulation whose garage file says that
this end does nothing on exit. Such advice is left out wherever changes are offered, in the guide and in replies; the
author should know. Only the word `none` of the garage's `handling` block counts: where a rule is merely silent, the
author's word stands. An advice for no part in particular is named if its setting does nothing in any of them, and one
that moves several settings only if none of them does anything. Source: the garage's handling block.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { track_bar: { left: 9.5 } }
        reasons:
          - for: track_bar.left
            because: It is for the way in.
            if:
              - feels: tight exit
                       ^^^^^^^^^^
                direction: raise

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { track_bar: { left: 9.5 } }
        reasons:
          - for: track_bar.left
            because: It is for the way in.
            if:
              - feels: very loose exit
                       ^^^^^^^^^^^^^^^
                to: [9.25, 9]

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { track_bar: { left: 9.5, right: 9.5 }, tape: 40 }
        reasons:
          - for: track_bar.left
            because: It is for the way in.
            if:
              - feels: tight entry
                direction: raise
              - feels: tight
                to: [9.75]
              - feels: tight exit
                say: Wait for it.
          - for: track_bar
            because: Both ends.
            if:
              - feels: tight exit
                direction: raise
          - for: tape
            because: For the engine.
            if:
              - feels: tight exit
                to: [45]
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.handling.advised import Walk, settled, walks, written_advice
from producer.handling.changes import movement, way_of
from producer.handling.wording import DOING, PLACES, the
from producer.model.episode import Advice
from producer.model.library import Case
from producer.model.sheet import Sheet
from producer.model.words import Direction

CODES = {"advice-does-nothing": Severity.WARNING}


def check_episode(case: Case) -> Iterator[Finding]:
    """Every advice that moves something, against what the garage says of the phase that it is for."""
    for sheet, reason, advice in written_advice(case):
        moved = [(walk, way) for walk in walks(sheet, reason, advice) if (way := _way(walk))]
        if moved and all(_nothing(case, sheet, walk, way, advice) for walk, way in moved):
            yield _finding(sheet, advice, *moved[0])


def _way(walk: Walk) -> Direction | None:
    return way_of(walk.present, walk.stops[0]) if walk.present is not None and walk.stops else None


def _nothing(case: Case, sheet: Sheet, walk: Walk, way: Direction, advice: Advice) -> bool:
    return settled(movement(sheet.garage, case.track, walk.moves, way, walk.split), advice.feels.where)


def _finding(sheet: Sheet, advice: Advice, walk: Walk, way: Direction) -> Finding:
    garage, where = sheet.garage, advice.feels.where
    place = PLACES[where] if where else "anywhere in the corner"
    message = (
        f"{DOING[way]} {the(garage, walk.moves)} does nothing {place} by the handling block of {garage.name}, "
        "so the guide and replies leave this advice out"
    )
    hint = "advise another setting, or right the handling block if you did feel it"
    return Finding("advice-does-nothing", Severity.WARNING, advice.place("feels"), message, hint, advice.where("feels"))
