"""Texts of an episode beside its prose (`producer.model.prose`): short ones that are shown as they are."""

from __future__ import annotations

from collections.abc import Iterator

from producer.model.episode import Episode
from producer.model.prose import Prose


def names(episode: Episode) -> Iterator[Prose]:
    """Short texts that are shown as they are."""
    for setup in episode.setups:
        yield Prose(setup, ("name",), setup.name, setup)
    for stint in episode.stints:
        if stint.driving:
            yield Prose(stint, ("driving",), stint.driving)
