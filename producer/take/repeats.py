"""What was said and then said again: the words around two statements are alike, whatever their figures."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass

from rapidfuzz.distance import Indel

from producer.language.number_words import PARTS, SMALL, TENS
from producer.language.tokens import listed
from producer.take.heard import Heard
from producer.take.sentences import Sentence
from producer.take.speech import Speech

_AROUND = 8  # words on each side
_ALIKE = 0.66
_RESTART_MS = 15_000
_SAME = 0.8
_TELLING = 4  # words: "left front, 725" stands in a list and again at its reason
_SORRY = listed("sorry wait correction oops scratch")
_SORRY_REACH = 10
_NO = listed("no mean")
# Words from what was broken off to "let me take that again", and to where the second try has it.
_AGAIN_WITHIN, _AGAIN_REACH = 16, 60
_NO_REACH = 5  # "four fifty-six, no, four eighty-eight", the first figure's own words counted
_AGAIN = (" hang on ", " hold on ", " scratch that ", " from the top ", " once more ", " more time ", " start over ")
_TRIES, _ONCE_MORE = listed("let do take try say start me"), listed("again over")
_FIGURES = "0123456789"
_NUMBER_WORDS = frozenset(SMALL) | frozenset(TENS) | frozenset(PARTS)


@dataclass(frozen=True, slots=True)
class Repeats:
    """One take's words, ready for comparing stretches of them."""

    speech: Speech
    sentences: Sequence[Sentence]

    def sentence(self, word: int) -> int:
        """The number of the sentence that holds a word."""
        return max(0, bisect_right(self.sentences, (word, len(self.speech) + 1)) - 1)

    def taken_back(self, wrong: Heard, right: Heard) -> bool:
        """Whether a later statement stands in place of an earlier one: said again in the same words, straight after it,
        or after "sorry"."""
        if right.at <= wrong.at:
            return False
        between = self.speech.plain[wrong.at + 1 : right.at]
        if len(between) <= _SORRY_REACH and (not _SORRY.isdisjoint(between) or _meant(between)):
            return True
        if len(between) <= _NO_REACH and not _NO.isdisjoint(between):
            return True
        if len(between) <= _AGAIN_REACH and _begun_again(between[:_AGAIN_WITHIN]):
            return True
        soon = self.speech.ms(right.at) - self.speech.ms(wrong.at) <= _RESTART_MS
        if soon and right.sentence - wrong.sentence == 1:
            # Begun again: the same sentence once more, not "so that is why it is at 775".
            one, other = (self._masked(*self.sentences[x.sentence]) for x in (wrong, right))
            if self._alike(one, other) >= _SAME:
                return True
        return right.at - wrong.at >= _AROUND and self._alike(self._around(wrong), self._around(right)) >= _ALIKE

    def _around(self, one: Heard) -> list[str]:
        return self._masked(max(0, one.at - _AROUND), min(len(self.speech), one.at + _AROUND))

    def _masked(self, first: int, last: int) -> list[str]:
        words = self.speech.plain[first:last]
        return ["#" if word and (word[:1] in _FIGURES or word in _NUMBER_WORDS) else word for word in words]

    def _alike(self, one: Sequence[str], other: Sequence[str]) -> float:
        return Indel.normalized_similarity(one, other) if min(len(one), len(other)) >= _TELLING else 0.0


def _begun_again(words: Sequence[str]) -> bool:
    """As in "hang on, let me take that again"; a word of it may be lost."""
    text = f" {' '.join(words)} "
    if any(phrase in text for phrase in _AGAIN):
        return True
    tries = [at for at, word in enumerate(words) if word in _TRIES]
    return any(not _ONCE_MORE.isdisjoint(words[at + 1 : at + 6]) for at in tries)


def _meant(words: Sequence[str]) -> bool:
    text = f" {' '.join(words)} "
    return any(phrase in text for phrase in (" i mean ", " make that ", " or rather ", " let me say ", " no it's "))
