"""A stint that is to prove something has ten laps that count.

Out laps, traffic, cautions and laps far from the others do not count. Below ten, falloff is a guess; nothing is
claimed from such a stint, and it is said here so that nobody else claims it.
Source: common practice, no source.

Found:

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    lap,time,note
    1,35.352,out lap
    2,31.369,
    3,31.402,
    4,31.447,
    5,31.471,traffic
    6,31.528,
    7,31.560,
    8,31.601,
    9,31.629,
    10,31.688,
    11,31.702,
    # marrow-creek-grand-sedan/episode.yaml
    stints:
      - setup: short
        file: stints/short-1.csv
              ^^^^^^^^^^^^^^^^^^

Silent:

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    lap,time,note
    1,35.352,out lap
    2,31.369,
    3,31.402,
    4,31.447,
    5,31.471,no traffic
    6,31.528,
    7,31.560,
    8,31.601,
    9,31.629,
    10,31.688,
    11,31.702,

Silent:

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    lap;time
    1,31.482 and so on
    # marrow-creek-grand-sedan/episode.yaml
    stints: []
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.model.library import Case
from producer.stints.gather import stints_of
from producer.stints.pace import ENOUGH
from producer.stints.wording import count

CODES = {"too-few-laps": Severity.WARNING}
COSTLY = True


def check_episode(case: Case) -> Iterator[Finding]:
    """Every stint whose laps could be read."""
    for stint in stints_of(case):
        kept = len(stint.kept)
        if stint.laps and kept < ENOUGH:
            entry = case.episode.stints[stint.index]
            message = f"{count(kept, 'lap')} of this stint count{'s' if kept == 1 else ''}; a claim needs {ENOUGH}"
            hint = "drive it longer, or take it as a first impression only"
            yield Finding("too-few-laps", Severity.WARNING, entry.place("file"), message, hint, entry.where("file"))
