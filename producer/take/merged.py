"""Words that the captions ran into one: "leftrear", "onthe"."""

from __future__ import annotations

from collections.abc import Set as AbstractSet
from dataclasses import replace

from producer.language.number_words import SMALL, TENS
from producer.language.tokens import listed
from producer.take.speech import Speech, plain

# Words that no script has to have, but everybody says.
EVERYDAY = frozenset(SMALL) | frozenset(TENS) | listed("i mean sorry no wait let me that again take do hang on hundred")
_SHORTEST, _LONGEST_PART = 5, 3  # letters of the whole, and of the longer one of its two parts at least


def unmerged(heard: Speech, known: AbstractSet[str]) -> Speech:
    """The take with such words as two. `known`: the words that are expected, in lower case; others stay as they are."""
    found: list[tuple[str, int]] = []
    for at, word in enumerate(heard.words):
        parts = _parts(heard.plain[at], known)
        if parts is None:
            found.append((word, at))
        else:
            end = word[len(word.rstrip(".,;:?!")) :]
            found += [(parts[0], at), (parts[1] + end, at)]
    if len(found) == len(heard):
        return heard
    words = tuple(word for word, _ in found)
    return replace(
        heard,
        words=words,
        plain=tuple(plain(one) for one in words),
        starts_ms=tuple(heard.starts_ms[at] for _, at in found),
        line_of=tuple(heard.line_of[at] for _, at in found),
    )


def _parts(word: str, known: AbstractSet[str]) -> tuple[str, str] | None:
    """The two known words that a strange one is made of, the longer the shorter one of them the likelier."""
    if len(word) < _SHORTEST or word in known or not word.isalpha():
        return None
    cuts = sorted(range(1, len(word)), key=lambda at: abs(2 * at - len(word)))
    for at in cuts:
        one, other = word[:at], word[at:]
        if max(at, len(word) - at) >= _LONGEST_PART and _whole(one, known) and _whole(other, known):
            return one, other
    return None


def _whole(part: str, known: AbstractSet[str]) -> bool:
    return part in known and (len(part) > 1 or part == "i")
