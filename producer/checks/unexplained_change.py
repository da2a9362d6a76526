"""A change from one setup to the other has a reason.

Viewers come for the why: what differs from the setup it is based on is what the second half of the episode is about.
A reason for the setting, for a split with it, for the parameter or for its page will do. Only a note: some changes
follow from others. It looks at `changes` only, never at the first setup's values.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - { for: spring.rf, because: It takes a set sooner. }
      - setup: long
        name: Long run
        based_on: short
        changes: { front_weight: 51, spring: { rf: 775 } }
                                 ^^
        reasons:
          - { for: spring.rf, because: The rear gives up first. }

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - { for: spring.rf, because: It takes a set sooner. }
      - setup: long
        name: Long run
        based_on: short
        changes: { spring: { rf: 775 } }
                                 ^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5, tape: 40, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
      - setup: long
        name: Long run
        based_on: short
        changes: { front_weight: 51, tape: 40, spring: { lr: 200, rr: 275 } }
        reasons:
          - { for: ballast, because: Calmer over a run. }
          - { for: spring.rear_split, because: The rear gives up first. }
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.checks.written import in_setup
from producer.model.library import Case

CODES = {"unexplained-change": Severity.NOTE}


def check_episode(case: Case) -> Iterator[Finding]:
    """Each figure under `changes` that differs, against the reasons of its setup."""
    for sheet in case.sheets:
        if sheet.base_setup is None:
            continue
        explained = {address for one in sheet.reasons if not one.inherited for address in one.covers}
        for one in in_setup(sheet.setup, sheet.garage, ("changes",)):
            address = one.setting.address
            if address not in explained and sheet.base.get(address) != one.value:
                message = f"nothing says why {address} is {one.setting.shown(one.value)} in setup '{sheet.id}'"
                yield one.finding("unexplained-change", Severity.NOTE, message, f"add a reason 'for: {address}'")
