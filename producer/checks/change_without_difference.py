"""What stands under `changes` is another value than in the setup it is based on.

`changes` holds only what differs. An equal value is a leftover or a slip of the pen: the episode would speak of a
change that nobody made.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
      - setup: long
        name: Long run
        based_on: short
        changes:
          front_weight: 50.50
                        ^^^^^
          spring: { rf: 725, rr: 275 }
                        ^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
      - setup: long
        name: Long run
        based_on: short
        changes: { front_weight: 51, spring: { rf: 775 } }
      - setup: quick
        name: Qualifying
        based_on: long
        changes: { front_weight: 50.5, spring: { rf: 725 } }
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.checks.written import in_setup
from producer.model.library import Case

CODES = {"change-without-difference": Severity.WARNING}


def check_episode(case: Case) -> Iterator[Finding]:
    """Each figure under `changes` against the setup it is based on."""
    for sheet in case.sheets:
        if sheet.base_setup is None:
            continue
        for one in in_setup(sheet.setup, sheet.garage, ("changes",)):
            if sheet.base.get(one.setting.address) == one.value:
                shown = one.setting.shown(one.value)
                message = f"{one.setting.address} is {shown} in setup '{sheet.base_setup}' already"
                hint = "take it out, or write the value you changed it to"
                yield one.finding("change-without-difference", Severity.WARNING, message, hint)
