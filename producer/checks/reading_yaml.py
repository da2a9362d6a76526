r"""A file of the library is plain YAML 1.2: mappings, lists and words.

Where YAML breaks off, the line is named with what usually helps: tabs in the indentation, a colon or `{{` in a text
without quotes, a quote that never closes. Anchors, aliases and tags are refused: a value is written where it is used,
and no small file unfolds into a huge one. So are a second document, nesting deeper than 64 levels, and a key that is
written twice (the first counts). Scalars stay text until a field wants a number: `off` is not "no", 1:30 is not 90.
Source: YAML 1.2.2, chapters 3, 6 and 7.

Found (not-yaml):

    # marrow-creek-grand-sedan/episode.yaml (whole)
    format: 1
    title: Marrow Creek: two setups
                       ^

Found (not-yaml):

    # tracks/marrow-creek.yaml (escapes)
    format: 1
    corners:
    \t- { radius: 520 ft }
    ^^

Found (duplicate-key):

    # tracks/marrow-creek.yaml
    name: Marrow Creek
    length: 1.10 mi
    corners:
      - { turns: [1, 2], radius: 520 ft, banking: 10, radius: 470 ft }
                                                      ^

Found (yaml-feature):

    # tracks/marrow-creek.yaml (whole)
    format: 1
    track: marrow-creek
    name: &place Marrow Creek
          ^

Found (yaml-feature):

    # tracks/marrow-creek.yaml (whole)
    format: 1
    track: marrow-creek
    name: Marrow Creek
    length: 1.10 mi
    corners: []
    ---
    ^
    format: 1

Found (too-deep):

    # marrow-creek-grand-sedan/episode.yaml
    conditions:
      use_speed: [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[
        [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[
                                       ^
        ]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]]

Silent:

    # tracks/marrow-creek.yaml (whole)
    # & * ! are only words here
    format: 1
    track: marrow-creek
    name: "Marrow Creek: & the *far* end {{ of it }}"
    length: 1.10 mi
    corners:
      - turns: [1, 2]
        radius: 520 ft
        banking: 10
    notes: |
      name: twice
      name: "twice"
    ...

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    title: 'Marrow Creek: two setups'
    approach: >
      One: brake early. Two: wait.
"""

from __future__ import annotations

from producer.basics.finding import Severity

CODES = {
    "not-yaml": Severity.ERROR,
    "yaml-feature": Severity.ERROR,
    "too-deep": Severity.ERROR,
    "duplicate-key": Severity.ERROR,
}
RAISED_WHILE = "reading"
