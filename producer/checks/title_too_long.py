"""The title fits where it is published.

The platform cuts or refuses a longer title; the limit is `platform.title_characters` in channel.yaml (100 unless it
says otherwise). Characters are counted as they will stand there, figures filled in.

Found:

    # channel.yaml
    platform: { title_characters: 30 }
    # marrow-creek-grand-sedan/episode.yaml
    title: "Marrow Creek: two setups for the Grand Sedan"
           ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    title: "Fifty {{ front_weight }}"
           ^^^^^^^^^^^^^^^^^^^^^^^^^^
    # summary
    title: "Fifty 50.5 and then some more and then some more and then some more and then some more and then some more"

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    title: "Marrow Creek: two setups for the Grand Sedan, one for the short run and one for a long night out"

Silent:

    # channel.yaml
    platform: { title_characters: 20 }
    # marrow-creek-grand-sedan/episode.yaml
    title: "Marrow Creek at {{ front_weight | with_unit }}"
    # summary
    title: "Marrow Creek at 50.5"
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.model.library import Case
from producer.model.summary import Summary

CODES = {"title-too-long": Severity.ERROR}


def check_episode(case: Case) -> Iterator[Finding]:
    """A title without references."""
    if "{{" not in case.episode.title:
        yield from _title(case, case.episode.title)


def check_summary(case: Case, summary: Summary) -> Iterator[Finding]:
    """A title with its references filled in."""
    if "{{" in case.episode.title:
        yield from _title(case, summary.title)


def _title(case: Case, title: str) -> Iterator[Finding]:
    if case.channel is None:
        return
    limit = case.channel.platform.title_characters
    if len(title) > limit:
        message = f"the title has {len(title)} characters, the platform takes {limit}"
        place, where = case.episode.place("title"), case.episode.where("title")
        yield Finding("title-too-long", Severity.ERROR, place, message, f"take out {len(title) - limit}", where)
