"""A text without quotes ends at ` #`: what follows on its line is a comment, also where it was meant to be read out.

"Take the #1 spring" is read as "Take the", and nobody is told. A figure or a word right after the `#` makes it look
like text; whoever writes a comment leaves a space. Behind a finished sentence a word may well be a comment (`#todo`)
or the tag of a video, so there it is only a note. Source: YAML 1.2.2, chapters 6.6 and 7.3.3.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    talking_points:
      opening: We take the #1 spring first.
                           ^^^^^^^^^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Run #2
                  ^^
        values: { front_weight: 50.5, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
        reasons:
          - for: spring.rf
            because: It takes a set
              sooner, as in #7 of this row.
                            ^^^^^^^^^^^^^^^

Found:

    # requests/2026-12.yaml
    format: 1
    requests:
      - id: req-020
        received: 2026-12-02
        text: the car is loose off turn #4 on old tires
                                        ^^^^^^^^^^^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    talking_points:
      opening: "We take the #1 spring first."  # so
      closing: Start with turn#1 and so on.   # my own words
    approach: >
      We take the #1 spring first.
    setups:
      - setup: short
        name: Short run  #-- the first
        values: { front_weight: 50.5, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }  #1 of 2
        reasons:
          - for: spring.rf #1
            because: 'It takes a set #1 sooner.' #1
            if:
              - { feels: loose entry, say: Go up a step. } #2
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.basics.place import Place
from producer.checks.texts import names
from producer.model.library import Case, Library
from producer.model.prose import prose
from producer.model.record import Record

CODES = {"text-cut-short": Severity.WARNING}
_CUT = re.compile(r"[ \t]+(#\w.*?)[ \t]*$")
_HINT = "put the whole text in quotes; if it is a comment, leave a space after the '#'"


def check_library(library: Library) -> Iterator[Finding]:
    """Messages of viewers."""
    for request in library.requests.values():
        yield from _cut(request, ("text",), request.text)


def check_episode(case: Case) -> Iterator[Finding]:
    """Prose, and short texts that are shown as they are."""
    for one in (*prose(case.episode), *names(case.episode)):
        yield from _cut(one.record, one.path, one.text)


def _cut(record: Record, path: tuple[str, ...], text: str) -> Iterator[Finding]:
    source = record.source
    mark = source.places.values.get((*source.path, *path)) if source else None
    if source is None or mark is None:
        return
    places = source.places
    if places.line(mark.line + 1)[mark.column : mark.column + 1] in ("|", ">", '"', "'"):
        return
    row = places.line(mark.end_line + 1)
    found = _CUT.match(row, mark.end_column)
    if found is None:
        return
    cut = found.group(1)
    ended = text.rstrip()[-1:] in ".!?" and not cut[1].isdigit()
    severity = Severity.NOTE if ended else Severity.WARNING
    place = Place(places.file, mark.end_line + 1, found.start(1) + 1, len(cut))
    message = f"the text ends before '{cut[:40]}': ' #' begins a comment here"
    yield Finding("text-cut-short", severity, place, message, _HINT, record.where(*path))
