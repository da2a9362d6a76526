"""An advice does not, by rule, feed the very complaint that it answers.

"If it is loose on entry, soften the right front" sends a viewer further into the wall: by the rule table that makes
the entry looser still. The first stop decides, or the direction where there is none; the garage's own word in its
`handling` block comes before the built-in table, and where neither has an opinion nothing is said. An advice that
moves several settings is named only if none of them helps. Source: the rule table; each finding names the row's.

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
                to: [675, 650]
                     ^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { cross_weight: 52 }
        reasons:
          - for: cross_weight
            because: I want the car to wait for me.
            if:
              - feels: tight middle
                direction: raise
                           ^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { rf: 700, lf: 700 }, cross_weight: 52, tape: 40, track_bar: { left: 9.5 } }
        reasons:
          - for: spring.rf
            because: So the nose takes a set.
            if:
              - feels: loose entry
                to: [725, 750]
          - for: cross_weight
            because: I want the car to wait for me.
            if:
              - feels: tight middle
                direction: lower
          - for: spring.lf
            because: It settles the nose.
            if:
              - feels: loose entry
                direction: raise
          - for: tape
            because: For the engine.
            if:
              - feels: tight entry
                to: [35]
          - for: track_bar.left
            because: It is for the way in.
            if:
              - feels: loose exit
                direction: raise
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from producer.basics.finding import Finding, Severity
from producer.handling.advised import Walk, walks, written_advice
from producer.handling.changes import movement, way_of
from producer.handling.rules import cure, feeds_by, rule
from producer.handling.wording import DOING, PLACES, differs, the
from producer.model.episode import Advice
from producer.model.library import Case
from producer.model.sheet import Sheet
from producer.model.words import PHASES, Complaint, Effect, Phase

CODES = {"advice-makes-it-worse": Severity.WARNING}


def check_episode(case: Case) -> Iterator[Finding]:
    """Every advice against the rule of what it moves."""
    for sheet, reason, advice in written_advice(case):
        said = [(walk, _effects(case, sheet, walk)) for walk in walks(sheet, reason, advice)]
        fed = next((walk for walk, effects in said if feeds_by(effects, advice.feels)), None)
        if fed is not None and not any(_helps(effects, advice.feels) for _, effects in said):
            yield _finding(case, sheet, advice, fed)


def _effects(case: Case, sheet: Sheet, walk: Walk) -> Mapping[Phase, Effect | None]:
    way = way_of(walk.present, walk.stops[0]) if walk.present is not None and walk.stops else None
    return movement(sheet.garage, case.track, walk.moves, way, walk.split) if way else {}


def _helps(effects: Mapping[Phase, Effect | None], complaint: Complaint) -> bool:
    phases = (complaint.where,) if complaint.where else PHASES
    return any(effects.get(phase) == cure(complaint.feel) for phase in phases)


def _finding(case: Case, sheet: Sheet, advice: Advice, walk: Walk) -> Finding:
    feels = advice.feels
    effects, worse = _effects(case, sheet, walk), "tighter" if feels.feel == "tight" else "looser"
    where = next(PLACES[phase] for phase in PHASES if effects[phase] == worse and feels.where in (None, phase))
    raised = walk.present is not None and walk.stops[0] > walk.present
    name, verb = the(sheet.garage, walk.moves), DOING["raise" if raised else "lower"]
    message = f"by rule, {verb} {name} makes the car {worse} {where}, and it is {feels.feel} there already"
    row = rule(sheet.garage, case.track, walk.moves)
    path: tuple[str | int, ...] = ("to", 0) if advice.to else ("direction",)
    hint = f"the other way helps; {differs(row)}"
    return Finding("advice-makes-it-worse", Severity.WARNING, advice.place(*path), message, hint, advice.where(*path))
