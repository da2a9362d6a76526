"""A figure that a reason states (`is`) is the figure on the sheet.

The author says 75 and the program subtracts: right rear minus left rear. If the two differ, one of them is a slip,
and the viewer would hear one number and type in another. `check --fix` writes the sheet's figure, unless the reason's
words say the other one, too.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - for: spring.rear_split
            is: 85
                ^^
            because: It helps the car turn.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5 }
        reasons:
          - { for: front_weight, is: 51, because: It goes in straight. }
                                     ^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5, spring: { lf: 750, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - { for: spring.rear_split, is: 75, because: It helps the car turn. }
          - { for: spring.front_split, is: -25, because: It takes a set sooner. }
          - { for: front_weight, is: 50.50, because: It goes in straight. }
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from producer.basics.figures import plain
from producer.basics.finding import Finding, Fix, Severity
from producer.checks.mending import agrees_with_prose, held, repair
from producer.model.library import Case
from producer.model.sheet import Sheet, SheetReason

CODES = {"stated-figure-differs": Severity.ERROR}
_FIGURE = re.compile(r"[-+]?[\d.]+")


def check_episode(case: Case) -> Iterator[Finding]:
    """Each reason that states a figure, in the setup that wrote it."""
    for sheet in case.sheets:
        for one in sheet.reasons:
            if one.reason.is_ is not None and not one.inherited:
                yield from _reason(one, sheet, case)


def _reason(one: SheetReason, sheet: Sheet, case: Case) -> Iterator[Finding]:
    reason, garage = one.reason, sheet.garage
    for address in one.targets:
        value = sheet.value(address)
        if value is None or reason.is_ is None or value == reason.is_:
            continue
        decimals = garage.settings[garage.splits.get(address, (address,))[0]].decimals
        message = f"{address} is {sheet.shown(address)} in setup '{sheet.id}'{_sum(address, sheet)}, not {reason.is_}"
        hint = f"write 'is: {plain(value, decimals)}', or look at the value again"
        place, where = reason.place("is"), reason.where("is")
        fix = _fix(one, sheet, plain(value, decimals), case)
        yield Finding("stated-figure-differs", Severity.ERROR, place, message, hint, where, fix=fix)


def _fix(one: SheetReason, sheet: Sheet, figure: str, case: Case) -> Fix | None:
    """The sheet's figure, its unit as written; None where targets differ or the words agree with what is written."""
    written = _FIGURE.match(held(one.reason, "is"))
    if written is None or len({sheet.value(address) for address in one.targets}) != 1:
        return None
    if agrees_with_prose(case, one, figure=one.reason.is_):
        return None
    return repair(one.reason, ("is",), written.start(), written.end(), figure)


def _sum(address: str, sheet: Sheet) -> str:
    if address not in sheet.garage.splits:
        return ""
    first, second = sheet.garage.splits[address]
    return f" ({sheet.figure(first)} less {sheet.figure(second)})"
