"""The effect that a reason states agrees with the tuning rule for that movement.

Only differences from common practice that are meant should reach a viewer: they are worth a sentence of their own.
The movement is what the reason compares (`compared_with`, else the setup it is based on, else the default). The
garage's `handling` block comes before the built-in table: `none` there asserts that nothing happens. Where neither has
an opinion, where nothing moved, or where the author claims no effect, nothing is said. A reason for several settings
is named only if no rule of theirs agrees. Source: the rule table; each finding names the row's.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { rf: 700 } }
        reasons:
          - for: spring.rf
            effect: { entry: tighter, middle: looser }
                             ^^^^^^^
            because: So the nose takes a set.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { track_bar: { left: 10 } }
        reasons:
          - for: track_bar.left
            effect: { entry: looser, exit: looser }
                                           ^^^^^^
            because: It frees the rear.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lr: 225, rr: 300 } }
        reasons:
          - for: spring.rear_split
            effect:
              middle: tighter
                      ^^^^^^^
            because: It is more than the default.

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          spring: { lf: 725, rf: 700, lr: 250, rr: 325 }
          track_bar: { left: 10, right: 10 }
          cross_weight: 50
          tape: 60
        reasons:
          - for: spring.rf
            effect: { entry: looser, middle: looser, exit: none }
            because: So the nose takes a set.
          - for: spring.lf
            effect: { entry: tighter }
            because: The two ends of this track are banked differently, so no rule holds.
          - for: spring.rear_split
            effect: { middle: looser, exit: looser }
            because: It is more than the default.
          - for: track_bar
            effect: { exit: looser }
            because: The right end does it.
          - for: cross_weight
            effect: { middle: looser }
            because: It is where the garage has it.
          - for: tape
            effect: { entry: looser }
            because: There is more air over the nose.
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.handling.rules import effect_of, rule
from producer.handling.wording import DOING, PLACES, differs, the
from producer.model.library import Case
from producer.model.sheet import Movement, Sheet, SheetReason
from producer.model.words import PHASES, Effect, Phase

CODES = {"effect-against-rule": Severity.WARNING}


def check_episode(case: Case) -> Iterator[Finding]:
    """Every stated effect, in the setup that wrote it."""
    for sheet in case.sheets:
        for reason in sheet.reasons:
            if not reason.inherited:
                yield from _reason(case, sheet, reason)


def _reason(case: Case, sheet: Sheet, reason: SheetReason) -> Iterator[Finding]:
    stated = reason.effect.stated()
    for phase in PHASES:
        claimed = stated.get(phase)
        if claimed is None or claimed == "none":
            continue
        said = [(one, says(case, sheet, one, phase)) for one in reason.movements]
        opinions = [(one, effect) for one, effect in said if effect is not None]
        if opinions and all(effect != claimed for _, effect in opinions):
            yield _finding(case, sheet, reason, phase, claimed, opinions[0])


def says(case: Case, sheet: Sheet, movement: Movement, phase: Phase) -> Effect | None:
    """What the rule says of a movement in that phase; None where it moved nothing or nobody has an opinion."""
    way = movement.direction
    return effect_of(sheet.garage, case.track, movement.address, way, phase) if way else None


def _finding(
    case: Case, sheet: Sheet, reason: SheetReason, phase: Phase, claimed: Effect, against: tuple[Movement, Effect]
) -> Finding:
    movement, effect = against
    verb = DOING[movement.direction or "raise"]
    name = the(sheet.garage, movement.address)
    figures = (sheet.garage.figure(movement.address, x) for x in (movement.start, movement.end))
    does = "does nothing" if effect == "none" else f"makes the car {effect}"
    message = f"by rule, {verb} {name} ({' to '.join(figures)}) {does} {PLACES[phase]}, not {claimed}"
    row = rule(sheet.garage, case.track, movement.address)
    hint = f"right the effect or the figure; {differs(row)}"
    place, where = reason.reason.place("effect", phase), reason.reason.where("effect", phase)
    return Finding("effect-against-rule", Severity.WARNING, place, message, hint, where)
