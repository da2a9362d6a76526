"""The tags fit where they are published.

They are counted together, commas included (`platform.tags_characters` in channel.yaml, 500 unless it says
otherwise). The platform drops the last ones.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    title: "Marrow Creek: two setups"
    ^^^^^
    # summary
    tags_characters: 501

Silent:

    # summary
    tags_characters: 500
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.model.library import Case
from producer.model.summary import Summary

CODES = {"tags-too-long": Severity.WARNING}


def check_summary(case: Case, summary: Summary) -> Iterator[Finding]:
    """The characters of the tags against the platform's."""
    limit = case.channel.platform.tags_characters if case.channel else None
    if limit is not None and summary.tags_characters > limit:
        message = f"the tags have {summary.tags_characters} characters together, the platform takes {limit}"
        hint = "shorten 'tags' in channel.yaml: what the episode itself adds is its track, garage and setups"
        place, where = case.episode.key_place("title"), case.episode.where("title")
        yield Finding("tags-too-long", Severity.WARNING, place, message, hint, where)
