"""What the cards show is what was published.

The digest of each published revision is kept; viewers have typed in those values. Once a value, a limit or a
condition has changed since, the published video and the cards here disagree: a new revision tells them. Only the
last revision counts.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    status: published
    published:
      - revision: 1
        date: 2026-11-20
        digest: "1111111111111111111111111111111111111111111111111111111111111111"
                ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
        garage_version: "2.4"
    # summary
    digest: "2222222222222222222222222222222222222222222222222222222222222222"

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    status: published
    published:
      - revision: 1
        date: 2026-11-20
        digest: "1111111111111111111111111111111111111111111111111111111111111111"
        garage_version: "2.4"
      - revision: 2
        date: 2026-11-27
        digest: "2222222222222222222222222222222222222222222222222222222222222222"
        garage_version: "2.4"
    # summary
    digest: "2222222222222222222222222222222222222222222222222222222222222222"
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.model.library import Case
from producer.model.summary import Summary

CODES = {"changed-since-published": Severity.WARNING}


def check_summary(case: Case, summary: Summary) -> Iterator[Finding]:
    """The cards' digest against the last revision's."""
    if not case.episode.published:
        return
    last = case.episode.published[-1]
    if last.digest != summary.digest:
        message = f"the cards have changed since revision {last.revision} of {last.date.isoformat()}"
        hint = "put the values back, or publish a new revision and tell your viewers"
        place, where = last.place("digest"), last.where("digest")
        yield Finding("changed-since-published", Severity.WARNING, place, message, hint, where)
