"""Every thing has one file, the file is called like the thing, and there is something in it.

A track, a garage and an episode are known by their id, which is also the name of the file (of the folder for an
episode): so that you find it, and so that a link to it stays. Two of one id would be told apart by chance; the first
counts. An empty file is most likely one that was not saved. A folder that holds stints, a take or published
revisions but no `episode.yaml` was meant to be an episode.

Found (empty-file):

    # tracks/marrow-creek.yaml (whole)
    ^

Found (empty-file):

    # tracks/pine-hollow.yaml
    # Only a comment.
    ^

Found (missing-file):

    # channel.yaml (missing)
    ^

Found (missing-file):

    # marrow-creek-grand-sedan/episode.yaml (missing)
    ^

Found (missing-file):

    # marrow-creek-grand-sedan/episode.yaml
    takes:
      - { file: take.srt, of: raw }
                ^^^^^^^^

Found (id-differs):

    # tracks/pine-hollow.yaml
    format: 1
    track: pine-hill
           ^^^^^^^^^
    name: Pine Hill
    length: 0.5 mi
    corners: []

Found (duplicate-id):

    # tracks/marrow-creek.yaml (missing)
    # tracks/a.yaml
    format: 1
    track: a
    name: A
    length: 0.5 mi
    corners: []
    # tracks/b.yaml
    format: 1
    track: a
           ^
    name: A, too
    length: 0.5 mi
    corners: []

Found (duplicate-id):

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - { setup: short, name: Short run, values: { front_weight: 50.5 } }
      - { setup: short, name: Shorter run, values: { front_weight: 51 } }
                 ^^^^^

Found (duplicate-id):

    # requests/2026-12.yaml
    format: 1
    requests:
      - { id: req-014, received: 2026-12-01, from: "@nobody_at_all", text: hello }
              ^^^^^^^

Silent:

    # tracks/pine-hollow.yaml
    format: 1
    track: pine-hollow
    name: Pine Hollow
    length: 0.5 mi
    corners: []
    # notes/take.txt.yaml
    format: 1
    # requests/2026-12.yaml
    format: 1
    requests: []
"""

from __future__ import annotations

from producer.basics.finding import Severity

CODES = {
    "empty-file": Severity.ERROR,
    "missing-file": Severity.ERROR,
    "duplicate-id": Severity.ERROR,
    "id-differs": Severity.ERROR,
}
RAISED_WHILE = "reading"
