"""How a figure is written for people: decimals of its step, a real minus, its unit beside it."""

from __future__ import annotations

from decimal import ROUND_HALF_EVEN, Decimal

MINUS = "\u2212"
NO_BREAK = "\u00a0"
# Units that stand against the figure, as they are spoken with it: 3.90:1.
_TIGHT = frozenset({":1"})


def decimals_of(number: Decimal) -> int:
    """How many decimals a number is written with: 0.25 -> 2, 25 -> 0, 3.90 -> 2 (as written)."""
    exponent = number.as_tuple().exponent
    return max(0, -exponent) if isinstance(exponent, int) else 0


def plain(value: Decimal, decimals: int) -> str:
    """The figure for machines and files: ASCII minus, exactly `decimals` decimals, no exponent."""
    return format(value.quantize(Decimal(1).scaleb(-decimals), rounding=ROUND_HALF_EVEN), "f")


def figure(value: Decimal, decimals: int | None = None) -> str:
    """The figure for people: a real minus sign; `decimals` None keeps those it was written with."""
    text = plain(value, decimals_of(value) if decimals is None else decimals)
    if text.startswith("-"):
        digits = text[1:]
        # A rounded zero has no sign.
        return digits if not digits.strip("0.") else MINUS + digits
    return text


def signed(value: Decimal, decimals: int | None = None) -> str:
    """A difference for people: `+25`, `−0.5`, `0`."""
    text = figure(value, decimals)
    return f"+{text}" if value > 0 and text.strip("0.") else text


def give_or_take(value: float, half: float | None) -> tuple[str, str]:
    """The size of a computed figure and of its doubt, no finer than the doubt allows: `1.4`, `0.5`; "" without one."""
    if half is None:
        return figure(Decimal(repr(abs(value))), 1), ""
    decimals = 1 if half >= 0.05 else 2
    doubt = max(Decimal(repr(half)), Decimal(1).scaleb(-decimals))
    return figure(Decimal(repr(abs(value))), decimals), figure(doubt, decimals)


def with_unit(text: str, unit: str) -> str:
    """A written figure and its unit, never to be broken apart: `750 lb/in`, `3.90:1`, `5`."""
    if not unit:
        return text
    return f"{text}{unit}" if unit in _TIGHT else f"{text}{NO_BREAK}{unit}"
