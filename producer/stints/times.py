"""Lap times, lap numbers and fuel as people write them."""

from __future__ import annotations

import re
from decimal import Decimal

LONGEST = 600  # seconds; a lap of an oval that takes ten minutes is a slip of the pen, or milliseconds
_UNIT = r'\s*(?:s|sec|secs|seconds|")?'
_CLOCK = re.compile(r"(?:([0-9]{1,2}):)?([0-9]{1,3})[:'\u2019]([0-9]{1,2}(?:[.,][0-9]{1,6})?)" + _UNIT)
_DOTTED = re.compile(r"([0-9]{1,2})\.([0-9]{2}[.,][0-9]{1,3})" + _UNIT)
_SECONDS = re.compile(r"([0-9]{1,9}(?:[.,][0-9]{0,6})?|[.,][0-9]{1,6})" + _UNIT)
_LAP = re.compile(r"(?:lap|l|#|no\.?)?\s*([0-9]{1,6})(?:\.0*)?", re.IGNORECASE)
_AMOUNT = re.compile(r"([-+]?[0-9]{1,6}(?:[.,][0-9]{0,6})?)\s*([A-Za-z%]*)\.?")


def seconds(text: str) -> Decimal:
    """A lap time in seconds: `21.482`, `0:21.482`, `1:02.3`, `1'02.3`, `1.02.300`, `0:01:02.3`, `21,482 s`.

    Raises ValueError with a sentence for the author for anything else, for nothing, and for what no lap can take.
    """
    written = text.strip().lower()
    if not written:
        raise ValueError("no time stands here")
    found = _clock(written)
    if found is None:
        raise ValueError(f"'{text.strip()[:40]}' is not a lap time")
    if found <= 0:
        raise ValueError("a lap takes more than 0 seconds")
    if found > LONGEST:
        raise ValueError(f"{text.strip()[:40]} is more than {LONGEST} seconds for a lap")
    return found


def _clock(written: str) -> Decimal | None:
    match = _CLOCK.fullmatch(written)
    if match:
        hours, minutes, rest = match.groups(default="0")
        return _sum(Decimal(hours) * 60 + Decimal(minutes), _decimal(rest))
    match = _DOTTED.fullmatch(written)
    if match:
        return _sum(Decimal(match.group(1)), _decimal(match.group(2)))
    match = _SECONDS.fullmatch(written)
    return _decimal(match.group(1)) if match else None


def _sum(minutes: Decimal, rest: Decimal) -> Decimal | None:
    """None where the seconds beside minutes are 60 or more: that is no time of day or lap."""
    return minutes * 60 + rest if rest < 60 else None


def is_time(text: str) -> bool:
    """Whether a cell holds what could be a lap time."""
    try:
        seconds(text)
    except ValueError:
        return False
    return True


def lap_number(text: str) -> int | None:
    """`12`, `Lap 12`, `#12`, `L12`, `12.0`; None for anything else."""
    match = _LAP.fullmatch(text.strip())
    return int(match.group(1)) if match else None


def amount(text: str) -> tuple[Decimal, str] | None:
    """Fuel and its unit as written: `17.6`, `17,6`, `17.6 gal`; None for anything else."""
    match = _AMOUNT.fullmatch(text.strip())
    return (_decimal(match.group(1)), match.group(2)) if match else None


def _decimal(text: str) -> Decimal:
    return Decimal(text.replace(",", "."))
