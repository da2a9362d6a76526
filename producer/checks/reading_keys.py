"""Every key is one that is known, and what a thing cannot do without is there.

An unknown key is never passed over: it is a slip that would lose what you wrote. The nearest known key is suggested.
Only the format, a thing's own id, its name or title, and what it is made of are required; what is missing is
reported at the key of the map that lacks it (line 1 for a file).

Found (unknown-key):

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        valeus: { front_weight: 50.5 }
        ^^^^^^
        based_on: long

Found (unknown-key):

    # garages/grand-sedan.yaml
    parameters:
      spring:
        page: suspension
        name: spring
        corners: { lf: { min: 1, max: 9, step: 1 }, fr: { min: 1, max: 9, step: 1 } }
                                                    ^^

Found (missing-key):

    # tracks/marrow-creek.yaml (whole)
    format: 1
    ^
    track: marrow-creek
    length: 1.10 mi
    corners: []

Found (missing-key):

    # garages/grand-sedan.yaml
    options:
      tyre_use: { choices: [gentle, usual, hard] }
      ^^^^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml (whole)
    format: 1
    episode: marrow-creek-grand-sedan
    title: Marrow Creek
    track: marrow-creek
    garage: grand-sedan
    setups:
      - setup: short
        name: Short run
        values: { front_weight: 50.5, whatever: 1 }
"""

from __future__ import annotations

from producer.basics.finding import Severity

CODES = {"unknown-key": Severity.ERROR, "missing-key": Severity.ERROR}
RAISED_WHILE = "reading"
