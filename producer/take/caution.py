"""Whether the caution was spoken: the numbers are for a simulation, not for a real car."""

from __future__ import annotations

from collections.abc import Sequence

from rapidfuzz.distance import Indel

from producer.language.tokens import listed
from producer.take.speech import Speech, plain

REACH = 12  # words between "simulation" and "real", whichever comes first
_SIMULATION = ("simulation", "simulations", "simulator", "sim")
_NOT, _REACH_BACK = listed("not none no never"), 8
_MISHEARD, _CAR = 0.75, 4
# So much alike, words that the captions garbled are the channel's own caution.
_ALIKE = 0.65


def caution_at(heard: Speech, caution: str) -> int | None:
    """The word where the caution is said for the last time, in whatever words or in the channel's; None where it is
    not.
    """
    real = [at for at in range(len(heard)) if _real(heard.plain, at) or _not_for_a_car(heard.plain, at)]
    found = [
        min(at, near)
        for at, word in enumerate(heard.plain)
        if _simulation(word)
        for near in real
        if abs(at - near) <= REACH
    ]
    found = found or [at for at in real if _no_real_car(heard.plain, at)]
    return found[-1] if found else _in_its_words(heard.plain, [plain(word) for word in caution.split()])


def _not_for_a_car(words: Sequence[str], at: int) -> bool:
    """As in "not for a [lost] car"."""
    return _car(words[at : at + 1]) and words[at - 1 : at] != ("the",) and "not" in words[max(0, at - 5) : at]


def _real(words: Sequence[str], at: int) -> bool:
    """ "Real", before "car" roughly heard."""
    word = words[at]
    if word == "real" or word[:1] not in ("r", "u") or not _car(words[at + 1 : at + 2]):
        return word == "real"
    return Indel.normalized_similarity(word, "real") >= _MISHEARD


def _car(word: Sequence[str]) -> bool:
    return bool(word) and len(word[0]) <= _CAR and Indel.normalized_similarity(word[0], "car") >= _MISHEARD


def _no_real_car(words: Sequence[str], at: int) -> bool:
    """As in "none of it is for a real car", the simulation lost."""
    return _car(words[at + 1 : at + 2]) and not _NOT.isdisjoint(words[max(0, at - _REACH_BACK) : at])


def _simulation(word: str) -> bool:
    return word in _SIMULATION or (word[:1] == "s" and Indel.normalized_similarity(word, _SIMULATION[0]) >= _MISHEARD)


def _in_its_words(words: Sequence[str], caution: Sequence[str]) -> int | None:
    size = len(caution)
    if size < 4:
        return None
    wanted = frozenset(caution)
    hits = [word in wanted for word in words]
    found = None
    for at in range(len(words) - size + 1):
        # Half of the words must be there before a comparison is worth its time.
        near = hits[at] and sum(hits[at : at + size]) * 2 >= size
        if near and Indel.normalized_similarity(words[at : at + size], caution) >= _ALIKE:
            found = at
    return found
