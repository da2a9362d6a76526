"""A waiver (`allow:`) hides something.

The author lives with a finding and says why. Once the finding is gone the waiver only waits to hide the next slip of
the same kind: take it out. With `for` it hides only findings about that setting, split, parameter, page or setup. A
waiver for a code whose check has not run (what an episode would publish cannot be told while it has gaps) is left
alone.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    allow:
      - { code: off-step, why: The simulation rounds it. }
                ^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    conditions: { use_speed: double }
    allow:
      - code: conditions-missing
              ^^^^^^^^^^^^^^^^^^
        for: use_speed
        why: It has no such thing on this track.

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    conditions: { use_speed: double }
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.3, spring: { lf: 700, rf: 730, lr: 225, rr: 300 } }
        reasons:
          - { for: spring.rf, direction: raise, because: It takes a set sooner. }
    allow:
      - { code: conditions-missing, for: tyre_use, why: It has no such thing on this track. }
      - { code: off-step, for: suspension, why: The simulation rounds it. }
      - { code: off-step, for: front_weight, why: The simulation rounds it. }
      - { code: direction-against-sign, for: spring.rf, why: I mean against the test day. }
"""

from __future__ import annotations

from producer.basics.finding import Severity

CODES = {"waiver-unused": Severity.WARNING}
RAISED_WHILE = "waiving"
