"""Which column of a file of laps holds what: by the words of its header, else by what stands in it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field

from producer.stints.cells import Cell, Row
from producer.stints.times import amount, is_time, lap_number

KNOWN = "lap, time, fuel, note"
_BRACKETS = re.compile(r"[(\[].*?[)\]]")
_BETWEEN = re.compile(r"[^a-z#]+")
_WORDS = {
    "lap": "lap", "laps": "lap", "#": "lap", "no": "lap", "number": "lap", "lap number": "lap", "lap no": "lap",
    "lap #": "lap", "nr": "lap", "n": "lap",
    "time": "time", "lap time": "time", "laptime": "time", "times": "time", "seconds": "time", "sec": "time",
    "secs": "time", "s": "time", "lap seconds": "time", "time s": "time", "time sec": "time", "time seconds": "time",
    "fuel": "fuel", "fuel left": "fuel", "fuel level": "fuel", "gas": "fuel", "gallons": "fuel", "litres": "fuel",
    "liters": "fuel", "fuel gal": "fuel", "fuel l": "fuel", "tank": "fuel",
    "note": "note", "notes": "note", "comment": "note", "comments": "note", "remark": "note", "remarks": "note",
    "what": "note", "flag": "note",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Columns:
    """Index of each role's column (`lap`, `time`, `fuel`, `note`); `width` columns in all.

    `body` is the index of the first row with a lap; `strange` are header cells that mean nothing to us, `twice` those
    whose role another column has already.
    """

    roles: dict[str, int]
    width: int
    body: int = 0
    strange: tuple[tuple[int, Cell], ...] = ()
    twice: tuple[tuple[int, Cell], ...] = field(default=())


def columns(rows: Sequence[Row]) -> Columns | None:
    """The columns of a table of laps; None where no column of times can be made out."""
    for index, row in enumerate(rows[:5]):
        named = _named(row, index)
        if named is not None:
            return named
        if any(is_time(cell.text) for cell in row.cells):
            break
    return _guessed(rows)


def role_of(header: str) -> str:
    """`lap`, `time`, `fuel`, `note` for a header cell, "" for one that we do not know."""
    written = _BETWEEN.sub(" ", _BRACKETS.sub(" ", header.lower())).strip()
    return _WORDS.get(written, "")


def _named(row: Row, index: int) -> Columns | None:
    roles: dict[str, int] = {}
    strange: list[tuple[int, Cell]] = []
    twice: list[tuple[int, Cell]] = []
    for at, cell in enumerate(row.cells):
        role = role_of(cell.text)
        if role and role not in roles:
            roles[role] = at
        elif cell.text:
            (twice if role else strange).append((at, cell))
    if "time" not in roles:
        return None
    return Columns(roles, len(row.cells), index + 1, tuple(strange), tuple(twice))


def _guessed(rows: Sequence[Row]) -> Columns | None:
    """Without a header: lap,time[,fuel][,note], or times alone."""
    first = next((index for index, row in enumerate(rows) if any(is_time(cell.text) for cell in row.cells)), None)
    if first is None:
        return None
    body = rows[first:]
    cells = [[cell.text for cell in row.cells] for row in body]
    # A whole number and then a time is a lap and its time; a time that comes first has no lap's number before it.
    led = sum(len(row) > 1 and lap_number(row[0]) is not None and is_time(row[1]) for row in cells)
    at = 1 if led * 2 >= sum(bool(row and is_time(row[0])) for row in cells) and led else 0
    roles = {"lap": 0, "time": 1} if at else {"time": 0}
    rest = at + 1
    if _mostly_amounts(cells, rest):
        roles["fuel"] = rest
        rest += 1
    roles["note"] = rest
    return Columns(roles, rest + 1, first)


def _mostly_amounts(cells: Sequence[Sequence[str]], at: int) -> bool:
    there = [row[at] for row in cells if len(row) > at and row[at]]
    return bool(there) and sum(amount(text) is not None for text in there) * 2 > len(there)
