"""The description's chapters are a list that the platform takes.

It shows chapters only if the first begins at 0:00, there are enough of them, and each is long enough (`chapters` in
channel.yaml: at least 3 of at least 10 seconds unless it says otherwise). Sections too short for a chapter are joined
with the one before; only where that leaves too few is there a finding. Times come from the estimate until there is a
cut. Until the episode is scripted it is a note.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
    ^^^^^^
      - setup: short
        name: Short run
        values: { front_weight: 50.5 }
    # summary
    chapter_problem: only 2 chapters of at least 10 s
    chapters: [[0, Hello], [14000, Short run]]

Silent:

    # summary
    chapters: [[0, Hello], [10000, Short run], [30000, Long run]]
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.model.library import Case
from producer.model.summary import Summary

CODES = {"chapter-too-close": Severity.ERROR}


def check_summary(case: Case, summary: Summary) -> Iterator[Finding]:
    """What keeps the chapters from being shown."""
    if summary.chapter_problem:
        severity = Severity.ERROR if case.episode.at_least("scripted") else Severity.NOTE
        message = f"the platform would show no chapters: {summary.chapter_problem}"
        hint = "say more in the reasons, or lower 'chapters' in channel.yaml if your platform takes fewer"
        place, where = case.episode.key_place("setups"), case.episode.where("setups")
        yield Finding("chapter-too-close", severity, place, message, hint, where)
