"""The track and the class as they are named: only where the episode says what it is about."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from producer.language.tokens import listed
from producer.language.tokens import words as words_of
from producer.take.speech import Speech

# The opening of a take, where an episode says what it is; later another track may be spoken of.
_OPENING = 150
_BESIDE = 12
_HERE = listed("at is for to here in the this around of called")


_SMALL = listed("of the end")


def name_words(name: str) -> list[str]:
    """The words that a setting's name has to tell it: "Track bar, left end" gives track, bar, left."""
    return [word for word in name.lower().replace(",", "").split() if word not in _SMALL]


@dataclass(frozen=True, slots=True)
class Names:
    """A kind of thing that is named: `own` is this episode's id, `names` every one of the library by id."""

    kind: str
    own: str
    names: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Misnamed:
    """Another name of that kind said at word `at` in place of this episode's."""

    kind: str
    at: int
    said: str
    expected: str


def misnamed(heard: Speech, known: Sequence[Names]) -> Iterator[Misnamed]:
    """Names of other tracks and classes where this episode's should stand, once a kind."""
    for one in known:
        own = _forms(one.names.get(one.own, ""))
        said = list(_said(heard, own))
        for name, text in one.names.items():
            if name == one.own:
                continue
            at = next((x for x in _said(heard, _forms(text)) if _in_place(heard, x, said)), None)
            if at is not None:
                yield Misnamed(one.kind, at, text, one.names[one.own])
                break


def own_name_said(heard: Speech, name: str) -> bool:
    """Whether a name is said anywhere."""
    return next(_said(heard, _forms(name)), None) is not None


def _forms(name: str) -> tuple[str, ...]:
    return tuple(words_of(name.replace("-", " ")).text)


def _said(heard: Speech, form: tuple[str, ...]) -> Iterator[int]:
    size = len(form)
    for at in range(len(heard) - size + 1 if size else 0):
        if heard.plain[at] == form[0] and heard.plain[at : at + size] == form:
            yield at


def _in_place(heard: Speech, at: int, own: Sequence[int]) -> bool:
    """In the opening, straight after "at", "is", "in the" and the like, and the right name not beside it."""
    if at >= _OPENING or any(abs(one - at) <= _BESIDE for one in own):
        return False
    ahead = heard.plain[max(0, at - 2) : at]
    # The words just before end a sentence: the name begins one, "Marrow Creek in the Grand Sedan".
    begins = at == 0 or heard.words[at - 1].endswith((".", ":", ",", "?", "!"))
    return begins or not _HERE.isdisjoint(ahead)
