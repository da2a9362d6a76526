"""Every field holds the kind of thing it is for, with a value it can have.

`wrong-kind`: text where a number belongs, a list where a mapping belongs, nothing where something belongs. What a
thing is, its field decides: `off` is a word, `07` is seven, and a number is never infinite, `nan`, or longer than
nine digits. `wrong-value`: the right kind, but not one that can be: a word that is none of the fixed ones, a unit
nobody knows, limits that contradict each other, a name that could not be a file's.

Found (wrong-kind):

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        values: { spring: { lf: 700, rf: stiff }, front_weight: .nan, tape: 12345678901234567890 }
                                         ^^^^^
                                                                ^^^^
                                                                            ^^^^^^^^^^^^^^^^^^^^

Found (wrong-kind):

    # marrow-creek-grand-sedan/episode.yaml
    stints: yes
            ^^^
    approach:
    planned: soon
             ^^^^

Found (wrong-value):

    # marrow-creek-grand-sedan/episode.yaml
    status: recoded
            ^^^^^^^
    episode: ../marrow-creek
             ^^^^^^^^^^^^^^^

Found (wrong-value):

    # garages/grand-sedan.yaml
    parameters:
      tape: { page: driveline, name: Grille tape, unit: furlongs, min: 0, max: 100, step: 5 }
                                                        ^^^^^^^^
      final_drive: { page: driveline, name: Final drive, choices: [3.90, 3.80] }
                   ^
    car: { mass: 1500 stone }
                 ^^^^^^^^^^
    # channel.yaml
    frame_rate: 29.9
                ^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    number: 07
    title: "off"
    status: idea
    planned: 2026-12-01
    setups:
      - setup: short
        name: 12
        tested: no
        values: { spring: { lf: 700, rf: +725. }, front_weight: .5 }
    # channel.yaml
    frame_rate: 29.97
"""

from __future__ import annotations

from producer.basics.finding import Severity

CODES = {"wrong-kind": Severity.ERROR, "wrong-value": Severity.ERROR}
RAISED_WHILE = "reading"
