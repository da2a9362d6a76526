"""One reader for each garage: its vocabulary is built once and no text is read twice."""

from __future__ import annotations

from producer.language.statements import Statement, statements
from producer.language.terms import Vocabulary
from producer.model.garage import Garage

_KEPT = "(reader)"


class Reader:
    """Reads prose about one garage. Keeps what it has read: a library says many things more than once."""

    __slots__ = ("_read", "vocabulary")

    def __init__(self, garage: Garage) -> None:
        self.vocabulary = Vocabulary(garage)
        self._read: dict[tuple[str, tuple[str, ...]], tuple[Statement, ...]] = {}

    def statements(self, text: str, subject: tuple[str, ...] = ()) -> tuple[Statement, ...]:
        """As `producer.language.statements.statements`."""
        key = (text, subject)
        if key not in self._read:
            self._read[key] = tuple(statements(text, self.vocabulary, subject))
        return self._read[key]


def reader(garage: Garage) -> Reader:
    """The garage's reader. It is kept with the garage, as its other derived properties are, and goes with it."""
    kept = garage.__dict__.get(_KEPT)
    # A copy of a garage takes the reader of its original along; it needs its own.
    if isinstance(kept, Reader) and kept.vocabulary.garage is garage:
        return kept
    made = Reader(garage)
    garage.__dict__[_KEPT] = made
    return made
