"""A word such as "stiffer" or "raise" goes the way that the numbers go.

"A step softer" beside a spring that went up is the mistake that sends a viewer the wrong way, and nobody sees it on a
card. Movement words of a reason are compared with the movement that it explains (without compared_with they may
also go the way from the default), those of an advice with its direction or first stop. Conditions, tries,
denials, rules ("raising it calms the nose"), words about other setups or settings and words whose object is not clear
say nothing.

Source: none, it is the author's own sheet.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - for: spring.rf
            because: Stiffer than the default, so the nose takes a set sooner.
                     ^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { cross_weight: 52 }
        reasons:
          - for: cross_weight
            because: >
              I lowered the wedge for this place,
                ^^^^^^^
              and the car waits for me.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { cross_weight: 52 }
        reasons:
          - for: cross_weight
            because: It waits for me.
            if:
              - feels: tight middle
                direction: lower
                to: [51.5, 51]
                say: Add half a percent and the middle frees up.
                     ^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lf: 700, rf: 725, lr: 225, rr: 300 }, cross_weight: 52 }
        reasons:
          - for: spring.rf
            because: >
              A step softer than the default. I tried it stiffer first, and if you raise it the nose gets lazy. It does
              not want a stiffer spring. Lower lap times are one thing, a softer ride another; turn up early, drop a
              comment below, and put less load on the right rear tire.
            if:
              - feels: loose entry
                direction: raise
                to: [750, 775]
                say: Go back up a step, and a second if you need it.
          - for: cross_weight
            because: More wedge than the garage gives. It raises the price a little, and I would not add more.
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.checks.said import Said, said
from producer.handling.wording import the
from producer.model.library import Case
from producer.model.words import Direction, direction_of

CODES = {"direction-word-differs": Severity.WARNING}
COSTLY = True
_WENT = {"raise": "up", "lower": "down"}


def check_episode(case: Case) -> Iterator[Finding]:
    """Every movement word in reasons and advice."""
    for one in said(case):
        word, span = one.statement.claim.direction, one.statement.moved
        if word is None or span is None or one.reason is None or one.address not in one.reason.targets:
            continue
        if "general" in one.statement.hedges or (not one.statement.named and _mixed(one)):
            continue
        ways = _advised(one) if one.advice is not None else _moved(one)
        if ways and word not in ways:
            yield _differs(one, span, ways[0])


def _moved(one: Said) -> list[Direction]:
    """The ways the setting went, that of the reason's own comparison first; [] where it did not move."""
    garage, sheet = one.sheet.garage, one.sheet
    value = sheet.value(one.address)
    movement = one.reason.movement(one.address) if one.reason else None
    if value is None or movement is None or movement.direction is None:
        return []
    if one.reason is not None and one.reason.reason.compared_with is not None:
        return [movement.direction]
    defaults = {a: x.default for a, x in garage.settings.items() if x.default is not None}
    starts = (garage.value_of(one.address, sheet.base), garage.value_of(one.address, defaults))
    others = (direction_of(value - start) for start in starts if start is not None)
    return [movement.direction, *(way for way in others if way is not None)]


def _advised(one: Said) -> list[Direction]:
    advice, value = one.advice, one.sheet.value(one.address)
    if advice is None or (one.address in one.sheet.garage.splits and not one.statement.named):
        return []
    if advice.direction is not None:
        return [advice.direction]
    way = direction_of(advice.to[0] - value) if advice.to and value is not None else None
    return [way] if way else []


def _mixed(one: Said) -> bool:
    """Whether the reason's settings went different ways, so that a word without a name belongs to some of them."""
    moved = {x.direction for x in one.reason.movements} if one.reason else set()
    return len(moved) > 1


def _differs(one: Said, span: tuple[int, int], way: Direction) -> Finding:
    name = the(one.sheet.garage, one.address)
    if one.advice is not None:
        message = f"'{one.words(span)}' goes the other way: the advice about {name} is to {way}"
    else:
        message = f"'{one.words(span)}' goes the other way: {name} went {_WENT[way]} to {one.sheet.shown(one.address)}"
    hint = "change the word, or the figures if the word is right"
    return one.finding("direction-word-differs", Severity.WARNING, span, message, hint)
