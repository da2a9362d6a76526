"""Numbers as people say and write them, each a set of readings that a parameter's grid settles.

"three ninety" is 390 or 3.90, "twelve twenty-five" 1225 or 12.25, "fifty-one five" 51.5. What is plainly no figure of
a setting (a lap, a time, a price, a place, a turn of the track) is read too, so that nothing else claims its words,
and marked `foreign`.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from itertools import chain

from producer.language.figures import Said, figure_at
from producer.language.number_words import FOREIGN_AFTER, FOREIGN_BEFORE, MORE, ORDINALS, SMALL, TENS, UNITS, VULGAR
from producer.language.tokens import Words, listed, sentences
from producer.model.grid import Grid

# Where a number may start: checked first, most words fail here.
_OTHER_STARTS = listed("a an another extra hundred half quarter minus negative - + point inch")
STARTS = frozenset(chain(SMALL, TENS, VULGAR, _OTHER_STARTS))


@dataclass(frozen=True, slots=True)
class Number:
    """`readings` are what it may mean, the likeliest first; `ratios` what it may mean as well for a gear.

    `start`, `end`: characters of the text, the unit's words included. `unit` is a unit's symbol, or `click`, `step`,
    `point` (places counted), or "". `more` is 1 or -1 for "two more clicks" and "+25", `again` marks "another click".
    """

    start: int
    end: int
    readings: tuple[Decimal, ...]
    ratios: tuple[Decimal, ...] = ()
    unit: str = ""
    more: int = 0
    again: bool = False
    foreign: bool = False

    def candidates(self, unit: str) -> tuple[Decimal, ...]:
        """The readings for a setting whose unit is `unit`."""
        return self.readings + self.ratios if unit == ":1" else self.readings


def numbers(text: str) -> tuple[Number, ...]:
    """Every number of a text in order, foreign ones included and marked."""
    found: list[Number] = []
    for sentence in sentences(text):
        at = 0
        while at < len(sentence):
            number, at = read(sentence, at)
            if number is not None:
                found.append(number)
    return tuple(found)


def settle(candidates: tuple[Decimal, ...], grid: Grid) -> Decimal | None:
    """The reading that a setting means: the grid chooses between several, a single one is kept as it is.

    On the grid before inside the limits before on the grid's continuation before near the limits; where two
    different readings are equally good there is none.
    """
    unlike = tuple(dict.fromkeys(candidates))
    if len(unlike) == 1:
        return unlike[0]
    span = grid.high - grid.low
    for fits in (
        lambda one: grid.inside(one) and grid.index(one) is not None,
        grid.inside,
        lambda one: grid.index(one) is not None and grid.low - span <= one <= grid.high + span,
        lambda one: grid.low - span <= one <= grid.high + span,
    ):
        good = [one for one in unlike if fits(one)]
        if good:
            return good[0] if len(good) == 1 else None
    return None


def read(words: Words, at: int) -> tuple[Number | None, int]:
    """The number at word `at` and the word after it; (None, at + 1) where none starts."""
    text = words.text
    word = text[at]
    if word not in STARTS and not (word[0].isdigit() or (word[0] == "." and len(word) > 1 and word[1].isdigit())):
        return None, at + 1
    begin, minus = at, False
    if word in {"minus", "negative", "-", "+"}:
        if at + 1 >= len(text) or not _signed(words, at):
            return None, at + 1
        minus, at = word != "+", at + 1
    again = text[at] in {"another", "extra"}
    said = figure_at(words, at)
    if said is None:
        return None, begin + 1
    return _complete(words, begin, said, minus, again)


def _signed(words: Words, at: int) -> bool:
    """A written minus stands before a digit without a space and after no digit."""
    if words.text[at] not in {"-", "+"}:
        return True
    close = words.start[at + 1] == words.end[at] and words.text[at + 1][0] in ".0123456789"
    apart = at == 0 or words.end[at - 1] < words.start[at] or words.text[at - 1] in "(=:"
    return close and apart


def _complete(words: Words, begin: int, said: Said, minus: bool, again: bool) -> tuple[Number | None, int]:
    text, at = words.text, said.next
    unit, more = said.unit, 0
    if not unit:
        unit, more, at = _unit(words, at)
    if again and not unit and not said.readings:
        return None, begin + 1
    if text[begin] == "+":
        more = 1
    foreign = not said.readings or _foreign(words, begin, at)
    sign = -1 if minus else 1
    number = Number(
        words.start[begin],
        words.end[at - 1],
        tuple(sign * one for one in said.readings),
        tuple(sign * one for one in said.ratios),
        unit,
        more,
        again,
        foreign,
    )
    if foreign and at < len(text) and text[at] in FOREIGN_AFTER:
        at += 1
    return number, at


def _foreign(words: Words, begin: int, after: int) -> bool:
    text = words.text
    if begin and text[begin - 1] in FOREIGN_BEFORE:
        # "No 12" is a car, "sixty one, no, sixty two" none.
        return text[begin - 1] != "no" or text[begin][0].isdigit()
    if begin > 1 and text[begin - 1] in {"of", "-"} and text[begin - 2] in FOREIGN_BEFORE:
        return True
    if after >= len(text):
        return False
    following = text[after]
    if text[after : after + 2] == ["to", "go"]:
        return text[after + 2 : after + 3] in ([], [","], ["i"], ["we"], ["and"], ["he"], ["so"])  # "with ten to go"
    if following in FOREIGN_AFTER or following in ORDINALS:
        return True
    return following == "of" and after + 1 < len(text) and text[after + 1] in {"you", "them", "us", "those"}


def _unit(words: Words, at: int) -> tuple[str, int, int]:
    """(unit, more, next) after a figure: "clicks", "more clicks", "of an inch", "pounds per inch"."""
    text = words.text
    more = 0
    if at + 1 < len(text) and text[at] in MORE and text[at + 1] in UNITS:
        more, at = MORE[text[at]], at + 1
    elif at + 2 < len(text) and text[at] == "of" and text[at + 1] in {"a", "an"} and text[at + 2] in UNITS:
        at += 2
    elif at + 1 < len(text) and text[at] == "-" and text[at + 1] in UNITS and words.end[at] == words.start[at + 1]:
        at += 1
    if at >= len(text):
        return "", 0, at
    unit = UNITS.get(text[at], "")
    if not unit:
        return _in_inches(words, at)
    at += 1
    if unit == "lb" and text[at : at + 2] == ["per", "inch"]:
        return "lb/in", more, at + 2
    return unit, more, at


def _in_inches(words: Words, at: int) -> tuple[str, int, int]:
    """As in "9.5 in" at the end of a stretch; before anything else "in" is the preposition."""
    text = words.text
    if text[at] == "in" and (at + 1 == len(text) or text[at + 1] in {",", ";", ")", "."}):
        return "in", 0, at + 1
    return "", 0, at
