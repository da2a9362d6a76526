"""Which of the author's fields hold prose: read out or printed, with figures by reference or checked as literals."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import TypeVar

from producer.basics.place import Place
from producer.model.episode import Advice, Episode, Reason, Setup, TalkingPoints
from producer.model.record import Record

# The one table of them: the fields of each record, and the records inside it that have some.
FIELDS: dict[type[Record], tuple[str, ...]] = {
    Episode: ("title", "approach"),
    Reason: ("because",),
    Advice: ("say",),
    TalkingPoints: ("opening", "closing"),
}
_INSIDE: dict[type[Record], tuple[str, ...]] = {
    Episode: ("setups", "talking_points"),
    Setup: ("reasons",),
    Reason: ("if_",),
}
R = TypeVar("R", bound=Record)


@dataclass(frozen=True, slots=True)
class Prose:
    """One text: the record and field it stands in, and the setup whose values it may speak of (None: the episode's).

    `reason` and `advice` are those it belongs to, where it belongs to one.
    """

    record: Record
    path: tuple[str, ...]
    text: str
    setup: Setup | None = None
    reason: Reason | None = None
    advice: Advice | None = None

    @property
    def where(self) -> str:
        """Its path in the author's words."""
        return self.record.where(*self.path)

    def place(self, start: int, end: int) -> Place:
        """The place of characters `start` to `end` (exclusive)."""
        return self.record.inside(self.path, start, end)


def prose(episode: Episode) -> Iterator[Prose]:
    """Every text of an episode that is not empty, a record's own before those inside it."""
    return _below(episode, None, None)


def _below(record: Record, setup: Setup | None, reason: Reason | None) -> Iterator[Prose]:
    setup = record if isinstance(record, Setup) else setup
    reason = record if isinstance(record, Reason) else reason
    advice = record if isinstance(record, Advice) else None
    for name in FIELDS.get(type(record), ()):
        text = getattr(record, name)
        if text:
            yield Prose(record, (name,), text, setup, reason, advice)
    for name in _INSIDE.get(type(record), ()):
        inside = getattr(record, name)
        for one in inside if isinstance(inside, tuple) else (inside,):
            yield from _below(one, setup, reason)


def with_prose(record: R, change: Callable[[str, Setup | None], str], setup: Setup | None = None) -> R:
    """The record with every text inside it changed; `change` is given the text and the setup it belongs to."""
    setup = record if isinstance(record, Setup) else setup
    changed: dict[str, object] = {}
    for name in FIELDS.get(type(record), ()):
        changed[name] = change(getattr(record, name), setup)
    for name in _INSIDE.get(type(record), ()):
        inside = getattr(record, name)
        if isinstance(inside, tuple):
            changed[name] = tuple(with_prose(one, change, setup) for one in inside)
        else:
            changed[name] = with_prose(inside, change, setup)
    return record.model_copy(update=changed)
