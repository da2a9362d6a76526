"""A text broken into lines and, where it is too long for one caption, into several.

Lines are broken where `phrases.break_cost` says, balanced otherwise. What outranks what: the length of a line;
then a figure with its unit and words joined by a no-break space; then the phrase rules; then balance.
Length is counted in code points.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from producer.captions.payload import clean_line
from producer.captions.phrases import SENTENCE, break_cost, measures
from producer.captions.speed import needed_ms
from producer.model.cue import ReadingProfile

_SPACE = re.compile(r"[^\S\u00a0\u2007\u202f]+")
_NO_BREAK = re.compile(r"[\u00a0\u2007\u202f]+")
# Weights against the costs of `phrases`. A full line costs _FULL_LINE, half of one a quarter of that, so that equal
# lines are cheapest; _A_LINE exceeds half of it, so that nothing is put on two lines that fits on one.
_FULL_LINE = 12
_A_LINE = 8
_A_PIECE = 5
_RUN_ON = 6  # a sentence that ends inside a line
_PIECE_BREAK = 2  # a break between captions weighs more than one between lines
_STRAY = 8  # a break that leaves the first word of a sentence behind, or takes its last word along


def break_lines(text: str, profile: ReadingProfile) -> tuple[str, ...]:
    """`text` as the lines of one caption: as few as hold it, never more than `profile.lines`.

    Only a single word longer than a line makes a longer line. Raises ValueError where the text does not fit
    (`split_text` is for that); () for a text without words.
    """
    words = _words(text, profile)
    pieces = _laid(words, profile, single=True)
    if words and not pieces:
        raise ValueError(f"{len(text)} characters do not fit into one caption")
    return pieces[0] if pieces else ()


def fits(text: str, profile: ReadingProfile) -> bool:
    """Whether one caption holds the text, and its longest time is enough to read it."""
    words = _words(text, profile)
    return not words or (_in_time(words, profile) and bool(_laid(words, profile, single=True)))


def split_text(text: str, profile: ReadingProfile) -> tuple[tuple[str, ...], ...]:
    """`text` as one caption or several, each as its lines, in reading order; () for a text without words.

    Captions end with a sentence or a clause where they can. One that would have to be shown longer than
    `profile.longest_ms` to be read is divided; all words are kept, in order.
    """
    pieces = _laid(_words(text, profile), profile)
    return tuple(lines for piece in pieces for lines in _timely(_words(" ".join(piece), profile), profile))


def _words(text: str, profile: ReadingProfile) -> list[str]:
    """What may be parted: words, with figure and unit as one, and no-break spaces kept as far as a line holds them."""
    joined: list[str] = []
    for word in _SPACE.split(clean_line(text)):
        if joined and measures(joined[-1], word) and _length([joined[-1], word]) <= profile.characters_per_line:
            joined[-1] = f"{joined[-1]} {word}"
        elif len(word) > profile.characters_per_line:
            joined.extend(part for part in _NO_BREAK.split(word) if part)
        elif word:
            joined.append(word)
    return joined


def _length(words: list[str]) -> int:
    return sum(map(len, words)) + len(words) - 1


def _in_time(words: list[str], profile: ReadingProfile) -> bool:
    return needed_ms(" ".join(words), profile) <= profile.longest_ms


def _timely(words: list[str], profile: ReadingProfile) -> list[tuple[str, ...]]:
    """One caption's words as captions that can be read in time: halved at the best gap until they can."""
    if len(words) < 2 or _in_time(words, profile):
        return [lines for lines in _laid(words, profile) if lines]
    length = _length(words)

    def cost(at: int) -> float:
        return _PIECE_BREAK * break_cost(words[at - 1], words[at]) + abs(2 * _length(words[:at]) - length)

    at = min(range(1, len(words)), key=cost)
    return _timely(words[:at], profile) + _timely(words[at:], profile)


@dataclass(frozen=True, slots=True)
class _Way:
    """A way to lay the first words: its cost, where its last line begins, and the lines ahead of that line in its
    caption (0 where it opens one).
    """

    cost: float
    start: int
    ahead: int


def _laid(words: list[str], profile: ReadingProfile, *, single: bool = False) -> list[tuple[str, ...]]:
    """The words laid out in captions of lines at the least cost (dynamic programming over lines).

    `best[i][k]` is the cheapest way to lay the first `i` words with `k` lines in the last caption. With `single`
    all words go into one caption; [] where they do not fit.
    """
    if not words:
        return []
    if _length(words) <= profile.characters_per_line:
        return [(" ".join(words),)]
    best: list[dict[int, _Way]] = [{} for _ in range(len(words) + 1)]
    best[0][0] = _Way(0, 0, 0)
    gaps = [0, *(break_cost(before, after) for before, after in pairwise(words))]
    for start, gap in enumerate(_with_strays(gaps)):
        opening = 0 if not start else math.inf if single else _A_PIECE + _PIECE_BREAK * gap
        for end, line in _lines_from(words, gaps, start, profile.characters_per_line):
            for count, way in best[start].items():
                _keep(best[end], 1, _Way(way.cost + line + opening, start, 0))
                if 0 < count < profile.lines:
                    _keep(best[end], count + 1, _Way(way.cost + line + gap, start, count))
    return _read_back(best, words)


def _with_strays(gaps: list[int]) -> list[int]:
    """What breaks cost, those more that part one word from its sentence."""
    around = [SENTENCE, *gaps[1:], SENTENCE]
    strays = [gap != SENTENCE and SENTENCE in around[at - 1 : at + 2 : 2] for at, gap in enumerate(gaps) if at]
    return [*gaps[:1], *(gap + _STRAY * stray for gap, stray in zip(gaps[1:], strays, strict=True))]


def _keep(ways: dict[int, _Way], lines: int, way: _Way) -> None:
    if way.cost < math.inf and (lines not in ways or way.cost < ways[lines].cost):
        ways[lines] = way


def _lines_from(words: list[str], gaps: list[int], start: int, limit: int) -> Iterator[tuple[int, float]]:
    """Each line that can begin with word `start`: the word after it, and its cost. `gaps[n]` is what a break before
    word n costs.
    """
    length, run_on = -1, 0
    for end in range(start + 1, len(words) + 1):
        length += 1 + len(words[end - 1])
        if length > limit and end > start + 1:
            return
        yield end, _A_LINE + run_on + _FULL_LINE * (length / limit) ** 2
        if end < len(words) and gaps[end] == SENTENCE:
            run_on += _RUN_ON


def _read_back(best: list[dict[int, _Way]], words: list[str]) -> list[tuple[str, ...]]:
    """The cheapest way to lay all words, from its end to its start; [] where there is none."""
    captions: list[tuple[str, ...]] = []
    lines: list[str] = []
    end = len(words)
    ways = best[end]
    count = min(ways, key=lambda lines: ways[lines].cost) if ways else 0
    while end and count:
        way = best[end][count]
        lines.append(" ".join(words[way.start : end]))
        if not way.ahead:
            captions.append(tuple(reversed(lines)))
            lines = []
            ahead = best[way.start]
            count = min(ahead, key=lambda lines: ahead[lines].cost)
        else:
            count = way.ahead
        end = way.start
    return captions[::-1]
