r"""A file of laps is read whole: whatever is odd in it is told with its line, and no lap is dropped silently.

One lap a line: `lap,time[,fuel][,note]`, with a header or without; times as 31.482, 0:31.482, 1:02.3; decimal commas
where semicolons or tabs part the columns. A column that cannot be made out is `lap-columns` (an error where that leaves
no laps at all: a header that names no times), and so is a cell for which the header has no column; a line or time that
cannot be read is `lap-unreadable` (the lap is shown as left out), a lap that stands twice, goes back or begins a second
stint, or a sum below the laps, `lap-numbers`, numbers that are not there `laps-missing`, fuel that is no amount in the
stint's unit or goes up in the middle of a stint `fuel-odd`.
Source: common practice, no source.

Found (lap-columns):

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    lap,time,gap
             ^^^
    1,31.482,0
    2,31.501,0

Found (lap-columns):

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    1,31,482
    ^
    2,31,501

Found (lap-columns):

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    lap,fuel
    ^
    1,17.6
    2,17.2

Found (lap-unreadable):

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    lap,time
    1,31.482
    2,31482
      ^^^^^
    3,31.5.1.2
    4,0:75.2

Found (lap-numbers):

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    lap,time
    1,31.482
    2,31.501
    2,31.530
    ^

Found (laps-missing):

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    lap,time
    1,31.482
    2,31.501
    5,31.530
    ^

Found (fuel-odd):

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    lap,time,fuel
    1,31.482,17.6
    2,31.501,full
             ^^^^

Found (fuel-odd):

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    lap,time,fuel
    1,31.482,3.6
    2,44.501,17.6
    ^

Silent:

    # marrow-creek-grand-sedan/stints/short-1.csv (escapes)
    \ufeffLap;Lap time (s);Fuel left;Notes\r
    1;0:35,352;17,6;out lap\r
    2;31,369;17,2;"no traffic; cold"\r
    3;31,402;16,8;\r

Silent:

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    # Marrow Creek, Tuesday evening
    35.352
    31.369
    31.402

Silent:

    # marrow-creek-grand-sedan/stints/short-1.csv (whole)
    1,1:02.3
    2,31.482,traffic
    3,31.402
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.model.library import Case
from producer.stints.gather import reading_findings

CODES = {
    "lap-columns": Severity.ERROR,
    "lap-unreadable": Severity.WARNING,
    "lap-numbers": Severity.WARNING,
    "laps-missing": Severity.NOTE,
    "fuel-odd": Severity.WARNING,
}
COSTLY = True


def check_episode(case: Case) -> Iterator[Finding]:
    """Each file of laps once."""
    yield from reading_findings(case)
