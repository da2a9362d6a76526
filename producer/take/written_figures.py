"""What was said with its numbers written as figures: "seven hundred and then fifty-two and a half percent" is
`700 lb/in and then 52.5 %`.

Which of several readings is meant ("seven twenty-five" is 725 or 7.25) is settled by what the sheets and the written
advice have for the setting that is spoken of, then by its grid; a number that stays open is left in its words. Nothing
is put right: a wrong figure is written as it was said.

A setting's figure has the decimals that were said, a ratio those of its choices. Its unit stands after the figure where
it was said, and where the figure is one that is written for it; after the last one alone in a row of one setting's
figures, not at all where it was said ahead of them ("pressure, in psi"). Other numbers: figures before a unit, for what
is counted in clicks, for a place or time by its number (turn 3), and from ten on; smaller ones stay words (BBC Subtitle
Guidelines, "Numbers", from memory).
"""

from __future__ import annotations

import re
from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from producer.basics.figures import figure, with_unit
from producer.language.number_words import FOREIGN_BEFORE, UNITS
from producer.language.numbers import STARTS, Number, numbers, settle
from producer.model.garage import Garage
from producer.model.said import SaidLine, SaidWord
from producer.model.sheet import Sheet
from producer.model.take import SaidFigure
from producer.take.apart import parted

_COUNTED = frozenset({"click", "step", "point", "turns"})
_ARTICLES = frozenset({"a", "an", "another"})
_PART = re.compile(r"\b(?:hal(?:f|ves)|quarters?|eighths?|sixteenths?)\b")
_WORD = re.compile(r"[a-z]+")
_WRITTEN = re.compile(
    r"(?:minus |[-\u2212+])?[\d.]+\s.*|minus [\d.]+", re.IGNORECASE
)  # a figure and what is to be put right
_JOINED = re.compile(r"[\w'\u2019-]")
_SAME_ROW = 60  # characters from one figure of a row to the next
_SENTENCE = 200  # characters: how far back a unit may have been said
_MOVEMENT = 45  # characters from the first figure of a movement to the second


@dataclass(frozen=True, slots=True)
class Known:
    """What the figures of an episode may be: by setting or split, on the sheets and in all that is written of it."""

    garage: Garage
    on_sheets: Mapping[str, frozenset[Decimal]]
    written: Mapping[str, frozenset[Decimal]]

    @classmethod
    def of(cls, sheets: Sequence[Sheet], garage: Garage) -> Known:
        """From the sheets: values, where they come from, and the stops of the advice; all without signs."""
        values: dict[str, set[Decimal]] = {}
        written: dict[str, set[Decimal]] = {}
        for sheet in sheets:
            for address in (*garage.settings, *garage.splits):
                value = sheet.value(address)
                if value is not None:
                    values.setdefault(address, set()).add(abs(value))
            for reason in sheet.reasons:
                for target in reason.targets:
                    every = [x for one in reason.advice for x in one.to]
                    every += [x for one in reason.movements if one.address == target for x in (one.start, one.end)]
                    written.setdefault(target, set()).update(abs(x) for x in every)
        return cls(garage, _frozen(values), _frozen(written))

    def settled(self, address: str, readings: Sequence[Decimal]) -> Decimal | None:
        """The reading that is meant of a setting or split, None where that stays open."""
        for figures in (self.on_sheets, self.written):
            for one in readings:
                if abs(one) in figures.get(address, frozenset()):
                    return one
        setting = self.garage.settings.get(address)
        if setting is None:
            return readings[0] if len(set(readings)) == 1 else None
        return settle(tuple(readings), setting.grid)

    def has(self, address: str, value: Decimal) -> bool:
        """Whether that figure is on a sheet or in the advice for a setting or split."""
        return any(abs(value) in figures.get(address, frozenset()) for figures in (self.on_sheets, self.written))

    def anywhere(self, readings: Sequence[Decimal]) -> Decimal | None:
        """The one reading that is a figure of this episode, whose ever; None where that stays open."""
        every = frozenset[Decimal]().union(*self.on_sheets.values(), *self.written.values())
        found = {one for one in readings if abs(one) in every}
        return found.pop() if len(found) == 1 else None


def with_figures(said: Sequence[SaidLine], figures: Sequence[SaidFigure], known: Known) -> tuple[SaidLine, ...]:
    """The lines with their numbers as figures; one that is said across two lines stands in the first."""
    run = _Run.of(said)
    words: list[str | None] = [word.text for word in run.words]
    for first, last, text in _Writer(run, figures, known).written():
        words[first] = text
        words[first + 1 : last + 1] = [None] * (last - first)
    return tuple(_lines(said, words))


def _lines(said: Sequence[SaidLine], words: Sequence[str | None]) -> Iterator[SaidLine]:
    at = 0
    for line in said:
        texts = words[at : at + len(line.words)]
        at += len(line.words)
        kept = tuple(replace(word, text=x) for word, x in zip(line.words, texts, strict=True) if x is not None)
        if kept:
            yield replace(line, words=kept, text=" ".join(word.text for word in kept))


@dataclass(frozen=True, slots=True)
class _Run:
    """All words as one text, and the character at which each begins."""

    words: tuple[SaidWord, ...]
    text: str
    begins: tuple[int, ...]

    @classmethod
    def of(cls, said: Sequence[SaidLine]) -> _Run:
        """A comma parts number words with a silence between them."""
        words = tuple(word for line in said for word in line.words)
        text, begins = "", []
        for number, word in enumerate(words):
            if number:
                text += " , " if _apart(words[number - 1], word) else " "
            begins.append(len(text))
            text += word.text
        return cls(words, text, tuple(begins))

    def word(self, character: int) -> int:
        """The word at a character."""
        return max(0, bisect_right(self.begins, character) - 1)

    def around(self, one: Number, first: int, last: int) -> tuple[str, str]:
        """What stands before and after a number in its own words: `(`, `,`."""
        end = self.begins[last] + len(self.words[last].text)
        return self.text[self.begins[first] : one.start], self.text[one.end : end]


def _apart(before: SaidWord, after: SaidWord) -> bool:
    words = [_WORD.findall(one.text.lower()) for one in (before, after)]
    spoken = all(one and one[0] in STARTS for one in words)
    return spoken and parted(before.text, after.start_ms - before.start_ms)


@dataclass(frozen=True, slots=True)
class _Found:
    """A number of the text: its first and last word, the setting it is of ("" for none), and its value."""

    number: Number
    first: int
    last: int
    address: str
    value: Decimal | None


class _Writer:
    """Writes one number after another."""

    def __init__(self, run: _Run, figures: Sequence[SaidFigure], known: Known) -> None:
        self._run = run
        self._known = known
        self._figures = sorted(figures, key=lambda one: one.start_ms)
        self._starts = [one.start_ms for one in self._figures]

    def written(self) -> Iterator[tuple[int, int, str]]:
        """(first word, last word, what is written for them)."""
        found = self._with_movements([self._found(one) for one in numbers(self._run.text) if one.readings])
        for at, one in enumerate(found):
            before, after = self._run.around(one.number, one.first, one.last)
            if _JOINED.search(before[-1:]) or _JOINED.match(after[:1]):
                continue
            text = self._text(one, found[at + 1] if at + 1 < len(found) else None)
            if text:
                yield one.first, one.last, f"{before}{text}{after}"

    def _found(self, one: Number) -> _Found:
        run = self._run
        first, last = run.word(one.start), run.word(one.end - 1)
        address = self._address(one, run.words[first].start_ms, run.words[last].start_ms)
        readings = one.candidates(self._known.garage.unit_of(address)) if address else one.readings
        value = self._known.settled(address, readings) if address else None
        if value is None and not address:
            value = readings[0] if len(set(readings)) == 1 else self._known.anywhere(readings)
        return _Found(one, first, last, address, value)

    def _address(self, one: Number, start_ms: int, end_ms: int) -> str:
        """Whose figure it is heard to be."""
        if one.more or one.again or one.foreign or one.unit in _COUNTED:
            return ""
        said = {abs(x) for x in one.readings + one.ratios}
        for heard in self._figures[bisect_left(self._starts, start_ms) : bisect_right(self._starts, end_ms)]:
            if heard.readings & said:
                return heard.parameter
        return ""

    def _with_movements(self, found: list[_Found]) -> list[_Found]:
        """The first figure of "from 750 down to 725" is of the same setting as the second."""
        for at in range(len(found) - 2, -1, -1):
            one, after = found[at], found[at + 1]
            plain = not (one.address or one.number.foreign or one.number.more or one.number.again or one.number.unit)
            if plain and after.address and self._moves(one.number, after.number):
                value = self._known.settled(after.address, one.number.readings)
                setting = self._known.garage.settings.get(after.address)
                if value is not None and setting is not None and setting.grid.inside(value):
                    found[at] = replace(one, address=after.address, value=value)
        return found

    def _moves(self, one: Number, after: Number) -> bool:
        between = self._run.text[one.end : after.start].lower()
        return len(between) <= _MOVEMENT and re.search(r"\bto\b", between) is not None and "." not in between

    def _text(self, one: _Found, after: _Found | None) -> str:
        """What is written for a number, "" where it stays in its words."""
        if one.value is None or not self._spelled_as_figure(one):
            return ""
        if one.address:
            return self._setting(one, after)
        number, shown = one.number, figure(one.value)
        if self._in_digits(one) and _WRITTEN.fullmatch(self._said(one)) is None:
            return ""
        if number.unit in _COUNTED:
            return f"{shown}{self._unit_words(one)}"
        if number.unit:
            return with_unit(shown, number.unit)
        numbered = number.foreign and self._word_before(one) in FOREIGN_BEFORE
        return shown if numbered or abs(one.value) >= 10 else ""

    def _setting(self, one: _Found, after: _Found | None) -> str:
        garage, value = self._known.garage, one.value
        assert value is not None  # noqa: S101 - `_text` has seen to it
        unit = garage.unit_of(one.address)
        shown = garage.figure(one.address, value) if unit == ":1" else figure(value)
        bare = self._goes_on(one, after) or self._said_ahead(one, unit) or not self._known.has(one.address, value)
        named = one.number.unit or self._said(one).endswith(":1")
        if unit == "clicks" or (bare and not named):
            return shown
        return with_unit(shown, unit)

    def _goes_on(self, one: _Found, after: _Found | None) -> bool:
        """Whether the next figure is of the same kind and close: the unit follows there."""
        if after is None or not after.address:
            return False
        between = self._run.text[one.number.end : after.number.start]
        kinds = [found.address.split(".", 1)[0] for found in (one, after)]
        return kinds[0] == kinds[1] and len(between) <= _SAME_ROW and not re.search(r"[.?!]", between)

    def _said_ahead(self, one: _Found, unit: str) -> bool:
        """Whether the sentence has the unit before the figure: "pressure, in psi: left front 20.5"."""
        begin = max(0, one.number.start - _SENTENCE)
        ahead = re.split(r"[.?!]\s", self._run.text[begin : one.number.start])[-1].lower()
        short = unit.partition("/")[0]
        return any(UNITS.get(word) in {unit, short} for word in re.findall(r"[a-z/%]+", ahead))

    def _spelled_as_figure(self, one: _Found) -> bool:
        """Not "a step", "another click", "half a pound", "two more clicks"."""
        number, value = one.number, abs(one.value if one.value is not None else Decimal(0))
        if self._in_digits(one):
            return True
        said = self._said(one).lower()
        first = _WORD.search(said)
        in_passing = first is not None and first[0] in _ARTICLES and value < 10
        part = _PART.search(said) is not None and value < 1
        return not (number.again or number.more or (in_passing and not one.address) or (part and not one.address))

    def _in_digits(self, one: _Found) -> bool:
        return any(letter.isdigit() for letter in self._said(one))

    def _said(self, one: _Found) -> str:
        return self._run.text[one.number.start : one.number.end]

    def _unit_words(self, one: _Found) -> str:
        """What is counted, as it was said: ` clicks`."""
        return f"\u00a0{self._said(one).split()[-1]}"

    def _word_before(self, one: _Found) -> str:
        return _bare(self._run.words[one.first - 1].text) if one.first else ""


def _bare(word: str) -> str:
    return word.lower().strip(".,;:!?")


def _frozen(found: Mapping[str, set[Decimal]]) -> dict[str, frozenset[Decimal]]:
    return {address: frozenset(figures) for address, figures in found.items()}
