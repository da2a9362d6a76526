"""Figures and words of sentences about laps: seconds, falloff, laps, names of setups."""

from __future__ import annotations

from decimal import Decimal

from producer.basics.figures import NO_BREAK, figure, with_unit
from producer.model.garage import Setting
from producer.model.guide import Change

_THINGS = ("run", "setup", "set-up", "car", "sheet")
_OWN = ("'s", "\u2019s", "s'", "s\u2019")
_SMALL = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def seconds(value: float, decimals: int = 2) -> str:
    """`31.36 s`, with a real minus sign."""
    return with_unit(rounded(value, decimals), "s")


def rounded(value: float, decimals: int) -> str:
    """The figure alone, rounded half to even, a real minus sign."""
    return figure(Decimal(repr(value)), decimals)


def thousandths(value: float) -> str:
    """Falloff: `0.034 s`."""
    return seconds(value, 3)


def count(number: int, word: str) -> str:
    """`ten laps`, `one lap`, `24 laps`."""
    written = _SMALL[number] if number < len(_SMALL) else str(number)
    return f"{written}{NO_BREAK if written.isdigit() else ' '}{word}{'' if number == 1 else 's'}"


def laps(numbers: tuple[int, ...]) -> str:
    """`lap 7`, `laps 7 and 9`, `laps 7 to 9 and 12`."""
    stretches: list[list[int]] = []
    for one in sorted(numbers):
        if stretches and one == stretches[-1][-1] + 1:
            stretches[-1].append(one)
        else:
            stretches.append([one])
    parts = [
        part
        for one in stretches
        for part in ([f"{one[0]} to {one[-1]}"] if len(one) > 2 else [str(number) for number in one])
    ]
    listed = parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"
    return f"lap{'' if len(numbers) == 1 else 's'} {listed}"


def the(name: str) -> str:
    """A setup in the middle of a sentence: `the long run`, `the qualifying setup`; else its name.

    Only names whose last word is a thing take an article, `Baseline`, `Jo's car` and `Plan B` are names as they stand.
    """
    words = name.split()
    plain = not any(letter.isupper() for letter in name[1:])
    lower = f"{name[:1].lower()}{name[1:]}" if plain else name
    if name.lower() == "qualifying":
        return "the qualifying setup"
    if words and words[0].lower() == "the":
        return " ".join(("the", *words[1:]))
    thing = len(words) > 1 and words[-1].lower() in _THINGS and not words[0].endswith(_OWN)
    return f"the {lower}" if thing else name


def click(setting: Setting, moved: Change) -> str:
    """`One click: Right front pressure from 46.0 to 45.5 psi.`"""
    return f"One click: {setting.name} from {setting.figure(moved.start)} to {setting.shown(moved.to)}."


def sentence(text: str) -> str:
    """With its first letter in capitals."""
    return f"{text[:1].upper()}{text[1:]}"
