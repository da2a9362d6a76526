"""Feels and movements in the middle of a sentence."""

from __future__ import annotations

from collections.abc import Sequence

from producer.handling.wording import DOING, PLACES, the
from producer.model.guide import Change
from producer.model.sheet import Sheet
from producer.model.words import Complaint, Direction, HowMuch

_MUCH: dict[HowMuch, str] = {"little": "a little ", "plain": "", "very": "very "}


def feel(complaint: Complaint) -> str:
    """`very tight in the middle`, `loose`."""
    where = f" {PLACES[complaint.where]}" if complaint.where else ""
    return f"{_MUCH[complaint.how_much]}{complaint.feel}{where}"


def listed(parts: Sequence[str]) -> str:
    """`a`, `a and b`, `a, b and c`."""
    return " and ".join([", ".join(parts[:-1]), parts[-1]] if len(parts) > 1 else parts)


def doing(moves: Sequence[tuple[str, Direction]], verb: str) -> str:
    """What moving settings does: `raising A makes`, `raising A and B makes`, `raising A and lowering B make`.

    `moves`, one at least, are what each is called and its way; `verb` is in its plain form.
    """
    names, ways = [name for name, _ in moves], {way for _, way in moves}
    if len(ways) == 1:
        return f"{DOING[ways.pop()]} {listed(names)} {verb}s"
    return f"{listed([f'{DOING[way]} {name}' for name, way in moves])} {verb}"


def for_whom(tyres: str | None, device: str | None) -> str:
    """`on worn tyres, with a pad`; "" for everybody."""
    parts = (f"on {tyres} tyres" if tyres else "", f"with a {device}" if device else "")
    return ", ".join(part for part in parts if part)


def moved(sheet: Sheet, change: Change) -> str:
    """`the right front spring from 750 to 725 lb/in`, `the final drive from 3.90:1 to 3.80:1`."""
    setting = sheet.setting(change.parameter)
    start = setting.shown(change.start) if setting.unit.startswith(":") else setting.figure(change.start)
    return f"{the(sheet.garage, change.parameter)} from {start} to {setting.shown(change.to)}"
