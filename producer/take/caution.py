"""Whether the caution was spoken: the numbers are for a simulation, not for a real car."""

from __future__ import annotations

from collections.abc import Sequence

from rapidfuzz.distance import Indel

from producer.language.tokens import listed
from producer.take.speech import Speech, plain

REACH = 12  # words between "simulation" and "real", whichever comes first
_SIMULATION = ("simulation", "simulations", "simulator", "sim")
_NOT, _REACH_BACK = listed("not none no never"), 7
_MISHEARD, _CAR = 0.75, 4
_NONE_OF_IT = ("none", "of", "it", "is", "for", "a")
_NEARLY_NOT, _NEARLY_REAL = 0.66, 0.85
_LIKE_NOT = listed("now note nor no on to of out got lot hot set ten ton note noon root foot boot most knot into onto")
# So much alike, words that the captions garbled are the channel's own caution.
_ALIKE = 0.65


def caution_at(heard: Speech, caution: str) -> int | None:
    """The word where the caution is said for the last time, in whatever words or in the channel's; None where it is
    not.
    """
    words = heard.plain
    real = [at for at in range(len(heard)) if _real(words, at) or _not_for_a_car(words, at) or _not_for(words, at)]
    found = [
        min(at, near)
        for at, word in enumerate(heard.plain)
        if _simulation(word)
        for near in real
        if abs(at - near) <= REACH
    ]
    found = found or [at for at in real if _no_real_car(words, at)]
    return found[-1] if found else _in_its_words(words, [plain(word) for word in caution.split()])


def _not_for_a_car(words: Sequence[str], at: int) -> bool:
    """As in "not for a [lost] car", "none of it is for a car"."""
    if not _car(words[at : at + 1]) or words[at - 1 : at] == ("the",):
        return False
    return _denied(words, at, _REACH_BACK)


def _not_for(words: Sequence[str], at: int) -> bool:
    """As in "for a simulation and not for a [lost]", "none of it is for a [lost]"."""
    ahead = tuple(words[max(0, at - 6) : at])
    return ahead[-5:] == _NONE_OF_IT[1:] or (ahead[-2:] == ("for", "a") and _denied(words, at - 2, 1))


def _denied(words: Sequence[str], at: int, reach: int) -> bool:
    """Whether "not" or "none" stands so many words before, "not" with a letter wrong or doubled, too."""
    return any(one in _NOT or _nearly_not(one) for one in words[max(0, at - reach) : at])


def _nearly_not(word: str) -> bool:
    """ "Nott", "oot", "noe": no word of their own."""
    return word not in _LIKE_NOT and 1 < len(word) < 5 and Indel.normalized_similarity(word, "not") >= _NEARLY_NOT


def _real(words: Sequence[str], at: int) -> bool:
    """ "Real" with a letter too many, before "car" roughly heard."""
    word = words[at]
    if word == "real" or word[:1] not in ("r", "u"):
        return word == "real"
    enough = _MISHEARD if _car(words[at + 1 : at + 2]) else _NEARLY_REAL
    return Indel.normalized_similarity(word, "real") >= enough


def _car(word: Sequence[str]) -> bool:
    return bool(word) and len(word[0]) <= _CAR and Indel.normalized_similarity(word[0], "car") >= _MISHEARD


def _no_real_car(words: Sequence[str], at: int) -> bool:
    """As in "none of it is for a real car", "not for a real [lost]", the simulation lost, or "for a real
    car", and the "not" lost, too.
    """
    whole = words[at : at + 2] == ("real", "car") and words[max(0, at - 2) : at] == ("for", "a")
    if tuple(words[max(0, at - 2) : at]) == ("for", "a") and _denied(words, at - 2, 1):
        return True
    return _car(words[at + 1 : at + 2]) and (whole or _denied(words, at, _REACH_BACK))


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
