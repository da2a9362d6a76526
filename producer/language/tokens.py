"""Words of a text with their places, and where its sentences end.

Words are lower case and keep their place in the original text (characters, end exclusive). A hyphen between
letters separates ("right-front", "fifty-one"), `'s`, `'m`, `'d` and the like are words of their own, `won't` is one
word. Curly quotes, the typographic minus and no-break spaces are read like their plain forms.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

# Possessive quantifiers and bounded repeats: no text, however odd, costs more than one pass.
_WORD = re.compile(
    r"""
    \d++(?:[.,]\d++)*+(?::1\b|(?::\d++)++(?:\.\d++)?+|(?:/\d++)++)?+  # 51.5  1,050  3.90:1  0:31.4  3/4  84/91/97
    | \.\d++
    | [½¼¾⅛⅜⅝⅞]
    | lbs?/in\b | n/mm\b
    | '(?:s|m|re|ve|ll|d)\b
    | [^\W\d_]++(?:(?<=n)'t\b)?+
    | ->|=>|→
    | \.\.++|[.?!]++
    | (?<![^\W\d_])-|-(?![^\W\d_])
    | [,;:()"%$°+=/#@~]|–|—
    """,
    re.VERBOSE,
)
_PLAIN = str.maketrans({"’": "'", "‘": "'", "“": '"', "”": '"', "″": '"', "−": "-", "‑": "-", "‐": "-"})


def listed(text: str) -> frozenset[str]:
    """A set of words from a text of words."""
    return frozenset(text.split())


# A full stop after these ends nothing unless a capital follows.
_ABBREVIATIONS = listed("lb lbs in psi deg approx vs ep no ca min max incl e g i")
_BREAK = re.compile(r"\n[ \t]*(?:\n|[-*#>][ \t])")
LONGEST = 160  # words: a longer sentence (captions without stops, noise) is read in pieces
# Where a piece may end, best near its limit: a new thought starts at these words.
_FRESH = listed("so okay and then but now")


@dataclass(frozen=True, slots=True)
class Words:
    """Parallel lists: the words of one sentence, lower case, and the characters where each starts and ends."""

    text: list[str]
    start: list[int]
    end: list[int]

    def __len__(self) -> int:
        return len(self.text)


def lowered(text: str) -> str:
    """`text` in lower case with plain quotes and minus, every character where it was."""
    low = text.translate(_PLAIN)
    lower = low.lower()
    if len(lower) == len(low):
        return lower
    return "".join(one.lower() if len(one.lower()) == 1 else one for one in low)


def words(text: str) -> Words:
    """All words of a text as one run."""
    found = Words([], [], [])
    _fill(found, lowered(text), 0, len(text))
    return found


def sentences(text: str) -> Iterator[Words]:
    """The sentences in order, each with places in the whole text. None is longer than `LONGEST` words."""
    low = lowered(text)
    begin = 0
    for cut in [*(one.start() for one in _BREAK.finditer(low)), len(low)]:
        run = Words([], [], [])
        _fill(run, low, begin, cut)
        yield from _split(run, text)
        begin = cut


def _fill(run: Words, low: str, begin: int, end: int) -> None:
    for match in _WORD.finditer(low, begin, end):
        run.text.append(match.group())
        run.start.append(match.start())
        run.end.append(match.end())


def _split(run: Words, text: str) -> Iterator[Words]:
    first = 0
    for at, word in enumerate(run.text):
        if word[0] in ".?!" and not word[-1].isdigit() and _ends(run, at, text):
            yield from _pieces(run, first, at)
            first = at + 1
    yield from _pieces(run, first, len(run))


def _ends(run: Words, at: int, text: str) -> bool:
    """Whether the stop at `at` ends a sentence."""
    if at + 1 == len(run):
        return True
    after = run.start[at + 1]
    if after == run.end[at]:
        return False
    short = at > 0 and run.text[at - 1] in _ABBREVIATIONS and run.text[at] == "."
    return not short or text[after].isupper()


def _pieces(run: Words, first: int, last: int) -> Iterator[Words]:
    while last - first > LONGEST:
        cut = first + LONGEST
        while cut > first + LONGEST // 2 and run.text[cut] not in _FRESH:
            cut -= 1
        if cut == first + LONGEST // 2:
            cut = first + LONGEST
        yield _part(run, first, cut)
        first = cut
    if last > first:
        yield _part(run, first, last)


def _part(run: Words, first: int, last: int) -> Words:
    return Words(run.text[first:last], run.start[first:last], run.end[first:last])
