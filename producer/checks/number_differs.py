"""A figure said in prose is the figure on the sheet.

Reasons and advice are written once and the numbers are changed many times; a viewer who hears 750 and reads 725 on the
card trusts neither. Literal numbers that the prose gives for a setting are compared with the sheet: values with the
setup's value, where a movement starts with what the reason compares, amounts and clicks with the difference; numbers
of an advice with its stops and the present value. Conditions ("if you raise it to 750"), tries ("I had 750 first"),
other setups, laps, times and numbers without a setting say nothing. A reference such as `{{ spring.rf }}` can't differ:
`check --fix` puts one in place of a figure that stands alone in a sentence about one setting.

Source: none, it is the author's own sheet.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lf: 700, rf: 725, lr: 225, rr: 300 }, front_weight: 50.5 }
        reasons:
          - for: spring.rf
            because: The right front spring is at 750, so the nose takes a set sooner.
                                                  ^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 51, final_drive: 3.90 }
        reasons:
          - for: front_weight
            because: >
              I went up half a percent on the nose weight
                        ^^^^^^^^^^^^^^
              and it calmed right down.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { cross_weight: 52, final_drive: 3.90 }
        reasons:
          - for: cross_weight
            because: "It is two clicks more than the garage gives."
                            ^^^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { final_drive: 3.90, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - for: spring.rf
            because: The front of the car rolls in gently.
            if:
              - feels: loose entry
                direction: raise
                to: [750, 775]
                say: Put the right front spring back up to 800 and it calms down.
                                                           ^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    approach: |
      Wait for the car, and then go.
      We run the three-seventy gear all night.
                 ^^^^^^^^^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lf: 700, rf: 725, lr: 225, rr: 300 }, final_drive: 3.90, cross_weight: 52 }
        reasons:
          - for: spring.rf
            compared_with: 750
            because: >
              I went down from 750 to {{ spring.rf }}, one step, after 25 laps behind 2 cars. I tried 775 first, and I
              run 725 pounds instead of 750 ever since. If you raise it to 800 the nose gets lazy. Lap 52 was a 31.4.
            if:
              - feels: loose entry
                direction: raise
                to: [750, 775]
                say: Go up a step, to 750 on the right front, and if that is not enough, to 775.
          - for: cross_weight
            because: Four clicks more than the default, two percent, and the three ninety gear goes with it.

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { camber: { lf: 3, rf: -3.5 }, track_bar: { left: 9.5, right: 9.5 } }
        reasons:
          - for: camber.rf
            because: Three and a half degrees of right front camber, and the long run has 3.25 in the right front.
          - for: track_bar
            because: The track bar is level, nine and a half on the left and nine and a half on the right.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from itertools import pairwise

from producer.basics.finding import Finding, Fix, Severity
from producer.checks.mending import by_figure, by_reference, stands_alone
from producer.checks.said import Said, said
from producer.handling.wording import the
from producer.model.library import Case

CODES = {"number-differs": Severity.ERROR}
COSTLY = True


def check_episode(case: Case) -> Iterator[Finding]:
    """Every figure that the episode's prose states for a setting."""
    for one in said(case):
        if one.advice is not None:
            yield from _in_advice(one)
        elif one.reason is not None:
            yield from _in_reason(one)
        else:
            yield from _in_passing(one, case)


def _in_reason(one: Said) -> Iterator[Finding]:
    claim, value = one.statement.claim, one.sheet.value(one.address)
    if value is None:
        return
    starts = _starts(one)
    compared = starts if "than" in one.statement.hedges and one.address in one.sheet.values else []
    for field, figure in (("value", claim.value), ("to", claim.to)):
        if figure is not None and abs(figure) != abs(value) and figure not in compared:
            yield _differs(one, field, _has(one), _reference(one), _fixed(one, field, value))
    if claim.frm is not None and starts and claim.frm not in starts:
        yield _differs(one, "frm", f"it comes from {_shown(one, starts)}", "say that, or name it in compared_with")
    steps = [abs(value - start) for start in starts]
    explained = one.reason is not None and one.address in one.reason.targets
    if claim.amount is not None and explained and steps and claim.amount not in steps:
        yield _differs(one, "amount", f"the difference is {_shown(one, steps)}", "say this difference")


def _in_advice(one: Said) -> Iterator[Finding]:
    claim, value = one.statement.claim, one.sheet.value(one.address)
    if one.advice is None or one.reason is None or value is None or not one.advice.to:
        return
    if one.address not in one.reason.targets or one.address in one.sheet.garage.splits:
        return
    stops = (value, *one.advice.to)
    shown = ", ".join(one.sheet.garage.figure(one.address, x) for x in one.advice.to)
    goes = f"the advice goes from {one.sheet.shown(one.address)} to {shown}"
    for field, figure in (("value", claim.value), ("to", claim.to), ("frm", claim.frm)):
        if figure is not None and abs(figure) not in {abs(x) for x in stops}:
            fix = _stop(one, field) if len(stops) == 2 else None
            yield _differs(one, field, goes, "say one of its stops, or change them", fix)
    if claim.amount is not None:
        steps = {abs(b - a) for a, b in pairwise(stops)} | {abs(x - value) for x in stops[1:]}
        if claim.amount not in steps:
            yield _differs(one, "amount", goes, "say the step it takes, or change its stops")


def _in_passing(one: Said, case: Case) -> Iterator[Finding]:
    """Texts around the setups speak of any of them."""
    claim = one.statement.claim
    known = [sheet.value(one.address) for sheet in case.sheets]
    figures = {abs(x) for x in known if x is not None}
    same = known[0] if len(set(known)) == 1 else None
    for field, figure in (("value", claim.value), ("to", claim.to)):
        if figure is not None and figures and abs(figure) not in figures:
            fix = _fixed(one, field, same) if same is not None else None
            yield _differs(one, field, _has(one), _reference(one), fix)


def _fixed(one: Said, field: str, value: Decimal) -> Fix | None:
    """A reference in place of a figure that stands alone, unless the reason states that figure, too."""
    claim = one.statement.claim
    stated = one.reason.reason.is_ if one.reason else None
    if (stated is not None and stated in (claim.value, claim.to)) or not stands_alone(one):
        return None
    return by_reference(one, one.statement.spans[field], value)


def _stop(one: Said, field: str) -> Fix | None:
    """The only stop of the advice in place of the figure it is told to go to."""
    if field != "to" or one.advice is None or not stands_alone(one):
        return None
    return by_figure(one, one.statement.spans[field], one.advice.to[0])


def _starts(one: Said) -> list[Decimal]:
    """What a movement of that setting may be told from: what the reason compares, the setup below, the default."""
    garage = one.sheet.garage
    movement = one.reason.movement(one.address) if one.reason else None
    setting = garage.settings.get(one.address)
    found = (movement.start if movement else None, garage.value_of(one.address, one.sheet.base))
    return list(dict.fromkeys(x for x in (*found, setting.default if setting else None) if x is not None))


def _has(one: Said) -> str:
    return f"the sheet has {one.sheet.shown(one.address)}"


def _reference(one: Said) -> str:
    figure = one.sheet.garage.figure(one.address, one.sheet.value(one.address) or Decimal(0))
    return f"say {figure}, or write {{{{ {one.address} }}}} so that it follows the sheet"


def _shown(one: Said, figures: list[Decimal]) -> str:
    return " or ".join(dict.fromkeys(one.sheet.garage.shown(one.address, x) for x in figures))


def _differs(one: Said, field: str, has: str, hint: str, fix: Fix | None = None) -> Finding:
    span = one.statement.spans[field]
    name = the(one.sheet.garage, one.address)
    message = f"'{one.words(span)}' is said of {name}, but {has}"
    return one.finding("number-differs", Severity.ERROR, span, message, hint, fix)
