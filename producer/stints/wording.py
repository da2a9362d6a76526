"""Figures and words of sentences about laps: seconds, falloff, laps, names of setups."""

from __future__ import annotations

from decimal import Decimal

from producer.basics.figures import NO_BREAK, figure, with_unit

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
        str(one[0]) if len(one) == 1 else f"{one[0]} to {one[-1]}" if len(one) > 2 else f"{one[0]}, {one[-1]}"
        for one in stretches
    ]
    listed = parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"
    return f"lap{'' if len(numbers) == 1 else 's'} {listed}"


def the(name: str) -> str:
    """`the long run` for a setup called `Long run`; a name in capitals, or one with an article, keeps its letters."""
    plain = name[:1].isupper() and not name[1:2].isupper()
    lower = f"{name[0].lower()}{name[1:]}" if plain and name else name
    return lower if lower.startswith("the ") else f"the {lower}"


def sentence(text: str) -> str:
    """With its first letter in capitals."""
    return f"{text[:1].upper()}{text[1:]}"
