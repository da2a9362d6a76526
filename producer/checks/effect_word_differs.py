"""A word such as "loosens it off" says what the reason's `effect` says.

The effect goes into the guide and onto the card, the words are read out; a viewer who hears that a change tightens
the exit and reads `looser` there does not know which to try. Effect words of a reason are compared with the effect
it states for that part of the corner, without a part with all that it states; those of an advice with the complaint it
answers: what cures a loose entry cannot free the entry. Parts of the corner without a stated effect, conditions,
rules about the other direction, other settings and setups, other times of a run and the price that is paid say
nothing.

Source: none, it is the author's own file.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { cross_weight: 52, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - for: cross_weight
            effect: { exit: tighter }
            because: I want the car to wait for me. It loosens it off the corner.
                                                       ^^^^^^^^^^^^^^^^^^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { cross_weight: 52, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - for: spring.rf
            effect: { entry: looser, middle: looser }
            because: >
              A step softer, and it keeps it
                                    ^^^^^^^^
              from getting loose going in.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { cross_weight: 52 }
        reasons:
          - for: cross_weight
            effect: { middle: tighter, exit: tighter }
            because: It is up two clicks, which frees the car.
                                                ^^^^^^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { cross_weight: 52 }
        reasons:
          - for: cross_weight
            effect: { middle: tighter }
            because: The car waits for me.
            if:
              - feels: loose entry
                direction: raise
                to: [52.5]
                say: Add half a percent and it loosens the entry.
                                               ^^^^^^^^^^^^^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { cross_weight: 52, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - for: cross_weight
            effect: { entry: tighter, exit: tighter }
            because: >
              It steadies the car going in and keeps it from getting loose off. It frees the middle a little, which
              nobody notices. Less of it would loosen the exit, and if you take it out the entry frees up. The spring
              is another matter: it loosens the exit. Late in the run it gets loose off anyway.
            if:
              - feels: loose exit
                direction: raise
                to: [52.5]
                say: Add half a percent and the exit tightens up. If it gets tight in the middle, take it out again.
              - feels: tight middle
                direction: lower
                to: [51.5]
                say: Take half a percent out. It frees the middle up and tightens nothing.
          - for: spring.rf
            effect: { entry: looser }
            because: The nose takes a set. I tried a stiffer one, and it was tight going in.
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.checks.felt import Felt, felt
from producer.checks.said import Spoken, setup_names, spoken
from producer.checks.written import listed
from producer.handling.wording import PLACES
from producer.model.library import Case
from producer.model.words import Effect, Phase

CODES = {"effect-word-differs": Severity.WARNING}
COSTLY = True
_MAKES = {"loose": "looser", "tight": "tighter"}


def check_episode(case: Case) -> Iterator[Finding]:
    """Every effect told in a reason that states one, and in advice."""
    names = setup_names(case.episode)
    for text in spoken(case):
        if text.advice is not None:
            yield from _in_advice(text, list(felt(text, names)))
        elif text.reason is not None and _stated(text):
            yield from _in_reason(text, list(felt(text, names)))


def _stated(text: Spoken) -> dict[Phase, Effect]:
    """The effects the reason states, without those of nothing."""
    stated = text.reason.effect.stated() if text.reason else {}
    return {phase: stated[phase] for phase in PLACES if stated.get(phase, "none") != "none"}


def _in_reason(text: Spoken, said: list[Felt]) -> Iterator[Finding]:
    stated = _stated(text)
    for one in said:
        about = {phase: effect for phase, effect in stated.items() if phase in one.where or not one.where}
        if about and one.feel not in about.values() and (one.where or one.sure):
            places = listed([PLACES[phase] for phase in about])
            other = next(iter(about.values()))
            yield _differs(
                text, one, f"but this reason states {other} {places}", "or the effect if the words are right"
            )


def _in_advice(text: Spoken, said: list[Felt]) -> Iterator[Finding]:
    complaint = text.advice.feels if text.advice else None
    for one in said:
        if complaint is None or one.feel != _MAKES[complaint.feel]:
            continue
        if complaint.where in one.where or (one.sure and (complaint.where is None or not one.where)):
            has = f"but this advice is for a car that is {complaint.feel}"
            where = f" {PLACES[complaint.where]}" if complaint.where else ""
            yield _differs(text, one, has + where, "or what the advice is for")


def _differs(text: Spoken, said: Felt, has: str, other: str) -> Finding:
    message = f"'{text.words(said.span)}' says {said.feel}, {has}"
    return text.finding("effect-word-differs", Severity.WARNING, said.span, message, f"change the words, {other}")
