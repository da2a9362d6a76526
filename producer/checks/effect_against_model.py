"""The effect that a reason states is not the opposite of what nearly every plausible car does.

The chassis model is a second opinion: it moves what the reason moved, the whole of it, in a thousand cars that fit the
garage, the setup and the track, and counts. Nobody outside knows the simulation's own car, so it speaks only where 85
of 100 cars or more do the opposite of what is stated. Where the tuning rule is on the author's side, or silent, this
is a note: keep what you felt. Where rule and model are both against the author, it is a warning.

Nothing is said where it depends on the car, where the author claims nothing or `none`, where the garage's `handling`
block settles that nothing happens in that phase, and about what the model does not read (pressures, camber, toe, tape,
stagger). To live with a finding, name it under `allow`. Source: the chassis model (quasi-steady, after Milliken and
Milliken, Race Car Vehicle Dynamics, 1995, from memory); its ranges of cars are an assumption.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          cross_weight: 50
          spring: { lf: 700, rf: 725, lr: 225, rr: 325 }
        reasons:
          - for: spring.rr
            effect: { entry: tighter }
                             ^^^^^^^
            because: It held the tail up on the way in.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          front_weight: 51
          cross_weight: 50
          spring: { lf: 700, rf: 750, lr: 225, rr: 275 }
        reasons:
          - for: front_weight
            effect: { entry: tighter, exit: looser }
                                            ^^^^^^
            because: No rule speaks of the exit here.

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values:
          tyre_pressure: { rf: 45 }
          cross_weight: 52
          left_weight: 55
          spring: { lf: 725, rf: 750, lr: 225, rr: 275 }
          track_bar: { left: 10 }
          brake_bias: 64
        reasons:
          - for: cross_weight
            effect: { entry: tighter, middle: none }
            because: It is what cross weight does, and of the middle I say nothing.
          - for: left_weight
            effect: { middle: tighter }
            because: The model does not know, it depends on the car.
          - for: track_bar.left
            effect: { exit: tighter }
            because: The garage settles that nothing happens there.
          - for: tyre_pressure.rf
            effect: { entry: looser }
            because: The model knows no pressures.
          - for: brake_bias
            effect: { exit: looser }
            because: Nothing happens on exit in the model, which is no opposite.
          - for: spring.rf
            effect: { entry: looser }
            because: It is where the garage has it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from producer.basics.finding import Finding, Severity
from producer.checks.effect_against_rule import says
from producer.handling.measure import in_words, measure, of_hundred
from producer.handling.saying import doing
from producer.handling.wording import PLACES, the
from producer.model.library import Case
from producer.model.opinion import Opinion, Opinions
from producer.model.sheet import Movement, Sheet, SheetReason
from producer.model.words import PHASES, Effect, Phase, turned

CODES = {"effect-against-model": Severity.WARNING}
COSTLY = True
_NAMED = 2  # settings that a message names; of more it says how many


def check_opinions(case: Case, opinions: Mapping[str, Opinions]) -> Iterator[Finding]:
    """Every stated effect, in the setup that wrote it, against what the model thinks of the whole movement."""
    for sheet in case.sheets:
        known = opinions.get(sheet.id)
        for place, reason in enumerate(sheet.reasons):
            opinion = known.reasons.get(place) if known else None
            if known is not None and opinion is not None and not reason.inherited:
                yield from _reason(case, sheet, reason, opinion, known)


def _reason(case: Case, sheet: Sheet, reason: SheetReason, opinion: Opinion, known: Opinions) -> Iterator[Finding]:
    stated = reason.effect.stated()
    moved = [one for one in reason.movements if one.direction is not None]
    for phase in PHASES:
        claimed = stated.get(phase)
        if claimed is None or claimed == "none" or opinion.at(phase).sure != turned(claimed, "lower"):
            continue
        rules = [says(case, sheet, one, phase) for one in moved]
        if "none" not in rules:
            halves = measure(opinion.at(phase).size, known.half_percent.get(phase))
            yield _finding(sheet, reason, phase, claimed, (opinion, halves), {one for one in rules if one})


def _finding(
    sheet: Sheet,
    reason: SheetReason,
    phase: Phase,
    claimed: Effect,
    model: tuple[Opinion, float | None],
    rules: set[Effect],
) -> Finding:
    opinion, halves = model[0].at(phase), model[1]
    does = turned(claimed, "lower")
    against = rules == {does}
    size = f", {in_words(halves)}" if halves is not None else ""
    whose = "; the rule says the same" if against else "; the rule is on your side" if claimed in rules else ""
    message = (
        f"by the chassis model, {_movement(sheet, reason)} the car {does} {PLACES[phase]}, not {claimed}: "
        f"in {of_hundred(opinion.agreement(does))} plausible cars{size}{whose}"
    )
    felt = "if you did feel it, keep it and name effect-against-model under 'allow'"
    hint = f"right the effect or the direction; {felt}" if against else f"{felt}; else right the effect"
    severity = Severity.WARNING if against else Severity.NOTE
    place, where = reason.reason.place("effect", phase), reason.reason.where("effect", phase)
    return Finding("effect-against-model", severity, place, message, hint, where)


def _movement(sheet: Sheet, reason: SheetReason) -> str:
    """`raising the right rear spring (275 to 325) makes`; of many settings only how many."""
    moved = [(one, one.direction) for one in reason.movements if one.direction is not None]
    if len(moved) > _NAMED:
        return f"what these {len(moved)} settings do together makes"
    return doing([(_named(sheet, one), way) for one, way in moved], "make")


def _named(sheet: Sheet, movement: Movement) -> str:
    figures = (sheet.garage.figure(movement.address, x) for x in (movement.start, movement.end))
    return f"{the(sheet.garage, movement.address)} ({' to '.join(figures)})"
