"""Script and take as rows of tokens that can be compared: a figure is one token however it is said or written."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from producer.language.number_words import PARTS
from producer.language.numbers import STARTS, numbers
from producer.language.tokens import LONGEST
from producer.model.script import Narration
from producer.take.speech import Speech, plain

# Read at once; so many words more where the cut would part a figure. The reader of numbers cuts what is longer.
_PIECE, _OVER = LONGEST * 5 // 8, LONGEST // 4


@dataclass(frozen=True, slots=True)
class Tokens:
    """`text` are the tokens, `word` the word of the source at which each begins (a figure may be several words)."""

    text: tuple[str, ...]
    word: tuple[int, ...]

    def __len__(self) -> int:
        return len(self.text)


@dataclass(frozen=True, slots=True)
class ScriptTokens:
    """The script's tokens: `starts` where each section begins, `passages` the (section, passage) of each token.

    `words` are the script's own, with punctuation.
    """

    tokens: Tokens
    starts: tuple[int, ...]
    passages: tuple[tuple[int, int], ...]
    words: tuple[str, ...]

    def section(self, number: int) -> tuple[int, int]:
        """The tokens of a section, the last one exclusive."""
        end = self.starts[number + 1] if number + 1 < len(self.starts) else len(self.tokens)
        return self.starts[number], end


def tokens_of(words: Sequence[str]) -> Tokens:
    """Words in lower case without punctuation, figures as their digits: `20.5` and `twenty and a
    half` are `205`, `4.15` and `four fifteen` are `415`."""
    text: list[str] = []
    places: list[int] = []
    first = 0
    while first < len(words):
        last = first + _PIECE
        while last < min(len(words), first + _PIECE + _OVER) and _within_a_figure(words, last):
            last += 1
        _add(words[first:last], first, text, places)
        first = last
    return Tokens(tuple(text), tuple(places))


def _within_a_figure(words: Sequence[str], at: int) -> bool:
    """Whether a cut before word `at` might part a figure: "one and | a half"."""
    return any(plain(one) in STARTS or one[:1].isdigit() for one in words[max(0, at - 2) : at + 3])


def _add(words: Sequence[str], first: int, text: list[str], places: list[int]) -> None:
    begins = list(accumulate((len(word) + 1 for word in words), initial=0))
    figures = _figures(" ".join(words), begins)
    at = 0
    for index, word in enumerate(words):
        if index < at:
            continue
        if index in figures:
            token, at = figures[index]
            text.append(token)
            places.append(first + index)
            continue
        for part in plain(word).replace("'", "").split("-"):
            if part:
                text.append("1" if part == "one" else part)
                places.append(first + index)


def _figures(text: str, begins: Sequence[int]) -> dict[int, tuple[str, int]]:
    """First word of each figure -> (token, word after it)."""
    found: dict[int, tuple[str, int]] = {}
    index = 0
    for one in numbers(text):
        if not one.readings or _of_one(text[one.start : one.end].split()):
            continue
        while begins[index + 1] <= one.start:
            index += 1
        last = index
        while begins[last + 1] < one.end:
            last += 1
        value = one.readings[0]
        digits = f"{value.normalize():f}".lstrip("-").replace(".", "")
        # A unit that was said stays a word of its own.
        words = text[one.start : one.end].split()
        kept = len(words) - (1 if one.unit and len(words) > 1 else 0)
        if one.unit == "lb/in":
            kept = max(1, len(words) - 3)
        found[index] = (digits, min(last + 1, index + max(1, kept)))
    return found


def _of_one(words: Sequence[str]) -> bool:
    """ "A click" is told like any other words: a figure before it stays apart, "4. A click more"."""
    return len(words) == 2 and words[0].lower() in ("a", "an") and words[1].lower() not in PARTS


def script_tokens(narration: Narration) -> ScriptTokens:
    """The tokens of a narration, section after section."""
    words: list[str] = []
    owner: list[tuple[int, int]] = []
    starts: list[int] = []
    for number, section in enumerate(narration.sections):
        starts.append(len(words))
        for index, passage in enumerate(section.passages):
            said = passage.text.replace("\u00a0", " ").split()
            words += said
            owner += [(number, index)] * len(said)
    found = tokens_of(words)
    passages = tuple(owner[word] for word in found.word)
    return ScriptTokens(found, _token_starts(found, starts), passages, tuple(words))


def _token_starts(found: Tokens, starts: Sequence[int]) -> tuple[int, ...]:
    """The first token of each section."""
    firsts: list[int] = []
    at = 0
    for start in starts:
        while at < len(found) and found.word[at] < start:
            at += 1
        firsts.append(at)
    return tuple(firsts)


def take_tokens(heard: Speech) -> Tokens:
    """The tokens of a take."""
    return tokens_of(heard.words)
