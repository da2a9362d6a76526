"""The author's prose in an episode, with its places."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from producer.basics.place import Place
from producer.model.episode import Episode, Setup
from producer.model.record import Record


@dataclass(frozen=True, slots=True)
class Prose:
    """One text: where it stands, and the setup whose values it may speak of (None: the episode's)."""

    record: Record
    path: tuple[str, ...]
    text: str
    setup: Setup | None = None

    @property
    def where(self) -> str:
        """Its path in the author's words."""
        return self.record.where(*self.path)

    def place(self, start: int, end: int) -> Place:
        """The place of characters `start` to `end` (exclusive)."""
        return self.record.inside(self.path, start, end)


def prose(episode: Episode) -> Iterator[Prose]:
    """Texts that are read out or printed and may hold references, in the order of the file's records."""
    yield Prose(episode, ("title",), episode.title)
    if episode.approach:
        yield Prose(episode, ("approach",), episode.approach)
    for setup in episode.setups:
        for reason in setup.reasons:
            if reason.because:
                yield Prose(reason, ("because",), reason.because, setup)
            for advice in reason.if_:
                if advice.say:
                    yield Prose(advice, ("say",), advice.say, setup)
    points = episode.talking_points
    for key, text in (("opening", points.opening), ("closing", points.closing)):
        if text:
            yield Prose(points, (key,), text)


def names(episode: Episode) -> Iterator[Prose]:
    """Short texts that are shown as they are."""
    for setup in episode.setups:
        yield Prose(setup, ("name",), setup.name, setup)
    for stint in episode.stints:
        if stint.driving:
            yield Prose(stint, ("driving",), stint.driving)
