"""The conditions of the test as they are heard: each option's choice, and the version of the simulation."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation

from rapidfuzz.distance import Indel

from producer.basics.spelling import spell
from producer.language.numbers import numbers
from producer.language.tokens import words as words_of
from producer.model.episode import Episode
from producer.model.garage import Garage, Option
from producer.take.speech import Speech

_BEFORE, _AFTER = 6, 3  # words between an option's name and its choice
_TOGETHER, _BESIDE = 30, 15
_NEARLY, _ROUGHLY = 0.8, 0.74  # the latter only among other conditions
_SHORTEST = 3  # letters of a word that tells something
_VERSION_WORDS = 7


@dataclass(frozen=True, slots=True)
class Wanted:
    """A condition that the script tells: its `name` for people and the choices that are right (any of them)."""

    name: str
    expected: tuple[str, ...]
    names: tuple[tuple[str, ...], ...]
    choices: tuple[str, ...]

    @property
    def whole(self) -> tuple[tuple[str, ...], ...]:
        """The names in full, no part of them."""
        return tuple(form for form in self.names if len(form) > 1) or self.names[:1]

    @property
    def shown(self) -> str:
        """The right choice for people."""
        return " or ".join(self.expected)


@dataclass(frozen=True, slots=True)
class Condition:
    """A condition heard at word `at`; `right` where it is as it was driven."""

    wanted: Wanted
    at: int
    said: str
    right: bool


def wanted_conditions(garage: Garage, episode: Episode) -> tuple[Wanted, ...]:
    """The conditions of an episode, in the garage's order."""
    found = [
        _wanted(name, option, episode.conditions[name])
        for name, option in garage.options.items()
        if episode.conditions.get(name) is not None
    ]
    return tuple(found)


def _wanted(name: str, option: Option, driven: object) -> Wanted:
    expected = driven.values() if isinstance(driven, Mapping) else (driven,)
    names = (option.name, name.replace("_", " "))
    forms = [tuple(words_of(spell(one, spelling)).text) for one in names for spelling in ("us", "uk")]
    short = [(word,) for form in forms for word in form if len(word) >= _SHORTEST]
    return Wanted(
        option.name,
        tuple(dict.fromkeys(str(one).lower() for one in expected)),
        tuple(dict.fromkeys([*forms, *short])),
        tuple(one.lower() for one in option.choices),
    )


def conditions(heard: Speech, wanted: Sequence[Wanted]) -> list[Condition]:
    """What is heard of the conditions, in order. A choice beside its option's whole name counts, right or wrong; one
    beside part of the name, or among other conditions, only where it is right.
    """
    row = heard.plain
    found = [one for want in wanted for one in _of_option(row, want)]
    sure = [one for one in found if one.right]
    return sorted([*found, *_among(row, wanted, sure)], key=lambda one: one.at)


def _of_option(row: Sequence[str], want: Wanted) -> Iterator[Condition]:
    for at, word in enumerate(row):
        choice = word if word in want.choices else _misheard(word, want)
        if not choice:
            continue
        around = (row[max(0, at - _BEFORE) : at], row[at + 1 : at + 1 + _AFTER])
        whole = any(_has(some, form) for form in want.whole for some in around)
        part = any(_has(some, form) for form in want.names for some in around)
        right = choice in want.expected
        if (whole or (part and right)) and (right or not _taken_back(row, at, want)):
            yield Condition(want, at, choice, right)


def _misheard(word: str, want: Wanted) -> str:
    """The right choice that a word is nearly; a wrong one is never made of a misheard word."""
    if len(word) < 4:
        return ""
    return next((one for one in want.expected if Indel.normalized_similarity(word, one) >= _NEARLY), "")


def _roughly(word: str, want: Wanted) -> bool:
    """Whether a word is the right choice, roughly heard, and no other one."""
    if word in want.choices or len(word) < _SHORTEST:
        return word in want.expected
    return any(Indel.normalized_similarity(word, one) >= _ROUGHLY for one in want.expected)


def named(heard: Speech, want: Wanted, told: Sequence[Condition]) -> bool:
    """Whether the option is named whole, or in part beside other conditions: then something was said of it, if the
    captions lost what.
    """
    if any(_has(heard.plain, form) for form in want.whole):
        return True
    parts = {form[0] for form in want.names if len(form) == 1}
    return any(
        not parts.isdisjoint(heard.plain[max(0, one.at - _BESIDE) : one.at + _BESIDE])
        for one in told
        if one.wanted.name != want.name
    )


def _taken_back(row: Sequence[str], at: int, want: Wanted) -> bool:
    """Whether the right choice follows at once ("normal, sorry, fast") or this one is denied."""
    return not set(want.expected).isdisjoint(row[at + 1 : at + 8]) or "not" in row[max(0, at - 2) : at]


def _has(row: Sequence[str], form: Sequence[str]) -> bool:
    return any(tuple(row[at : at + len(form)]) == tuple(form) for at in range(len(row) - len(form) + 1))


def _among(row: Sequence[str], wanted: Sequence[Wanted], sure: Sequence[Condition]) -> Iterator[Condition]:
    """A right choice without its option's name, where other conditions are told, or named whole, around it."""
    told = {one.wanted.name for one in sure}
    named_at = {want.name: [*_places(row, want)] for want in wanted}
    for want in wanted:
        if want.name in told:
            continue
        near = [one.at for one in sure]
        near += [at for name, places in named_at.items() if name != want.name for at in places]
        for at, word in enumerate(row):
            if _roughly(word, want) and any(abs(one - at) <= _TOGETHER for one in near):
                yield Condition(want, at, word, right=True)
                break


def _places(row: Sequence[str], want: Wanted) -> Iterator[int]:
    """Where an option's whole name stands."""
    for form in want.whole:
        yield from (at for at in range(len(row)) if row[at] == form[0] and tuple(row[at : at + len(form)]) == form)


def version(heard: Speech, tested_with: str | None, told: Sequence[Condition] = ()) -> Condition | None:
    """The simulation's version as it is heard, None where none is. Beside `told` conditions its figure is enough."""
    if tested_with is None:
        return None
    want = Wanted("Version", (tested_with,), (("version",),), ())
    found: list[Condition] = []
    for at, word in enumerate(heard.plain):
        if word == "version" and at + 1 < len(heard):
            text = heard.text(at + 1, at + 6)
            read = numbers(text)
            if read and read[0].start == 0 and read[0].readings:
                right = _same(read[0].readings, text, tested_with)
                found.append(Condition(want, at, str(read[0].readings[0]), right))
    best = next((one for one in found if one.right), None) or _of_the_simulation(heard, want, tested_with)
    if best is None and not found:
        best = _beside(heard, want, tested_with, told)
    return best if best is not None or not found else found[-1]


def _beside(heard: Speech, want: Wanted, tested_with: str, told: Sequence[Condition]) -> Condition | None:
    """As in "weather mild, that is [lost] 3.1 [lost]"."""
    for one in told:
        text = heard.text(one.at + 1, one.at + _BESIDE)
        if any(_same(number.readings, text[number.start :], tested_with) for number in numbers(text)):
            return Condition(want, one.at, tested_with, right=True)
    return None


def _of_the_simulation(heard: Speech, want: Wanted, tested_with: str) -> Condition | None:
    """As in "[lost] 3.1 of the simulation"."""
    for at, word in enumerate(heard.plain):
        if word.startswith("simulat"):
            first = max(0, at - _VERSION_WORDS)
            for number in numbers(heard.text(first, at)):
                if _same(number.readings, heard.text(first, at)[number.start :], tested_with):
                    return Condition(want, first, tested_with, right=True)
    return None


def _same(readings: Sequence[Decimal], text: str, tested_with: str) -> bool:
    if text.startswith(tested_with):
        return True
    try:
        return Decimal(tested_with) in readings
    except InvalidOperation:
        return True  # a version that is no number cannot be told from speech
