"""The description fits where it is published.

Its limit is counted in bytes of UTF-8 (`platform.description_bytes` in channel.yaml, 5,000 unless it says otherwise):
a dash or a degree sign counts two or three. The platform cuts what is longer, and credits, conditions and the caution
stand at the end. Until the episode is scripted it is a note.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    approach: |
    ^^^^^^^^
      Brake early.
    # summary
    description: "Brake early."
    description_bytes: 5001

Found:

    # channel.yaml
    platform: { description_bytes: 800 }
    # marrow-creek-grand-sedan/episode.yaml
    title: "Marrow Creek: two setups"
    ^^^^^
    # summary
    description_bytes: 900

Silent:

    # summary
    description_bytes: 5000

Silent:

    # channel.yaml
    platform: { description_bytes: 8000 }
    # summary
    description_bytes: 7999
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.model.library import Case
from producer.model.summary import Summary

CODES = {"description-too-long": Severity.ERROR}


def check_summary(case: Case, summary: Summary) -> Iterator[Finding]:
    """The description's bytes against the platform's."""
    limit = case.channel.platform.description_bytes if case.channel else None
    if limit is None or summary.description_bytes <= limit:
        return
    episode = case.episode
    severity = Severity.ERROR if episode.at_least("scripted") else Severity.NOTE
    first = next((line.strip() for line in episode.approach.splitlines() if line.strip()), "")
    key = "approach" if first and first in summary.description else "title"
    message = f"the description has {summary.description_bytes} bytes, the platform takes {limit}"
    hint = f"it is {summary.description_bytes - limit} too long: shorten your own texts in it"
    yield Finding("description-too-long", severity, episode.key_place(key), message, hint, episode.where(key))
