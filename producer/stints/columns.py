"""Which column of a file of laps holds what: by the words of its header, else by what stands in it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from producer.basics.units import unit
from producer.stints.cells import Cell, Row
from producer.stints.times import amount, is_time, lap_number

KNOWN = "lap, time, fuel, note"
_BRACKETS = re.compile(r"[(\[](.*?)[)\]]")
_HUMPS = re.compile(r"(?<=[a-z])(?=[A-Z])")  # LapNumber
_ABOVE = 40  # lines that may stand above a header
_BETWEEN = re.compile(r"[^a-z#]+")
_WORDS = {
    "lap": "lap", "laps": "lap", "#": "lap", "no": "lap", "number": "lap", "lap number": "lap", "lap no": "lap",
    "lap #": "lap", "nr": "lap", "n": "lap", "num": "lap", "lap num": "lap", "lap nr": "lap", "lapnumber": "lap",
    "lapnum": "lap", "lapno": "lap",
    "time": "time", "lap time": "time", "laptime": "time", "times": "time", "seconds": "time", "sec": "time",
    "secs": "time", "s": "time", "lap seconds": "time", "time s": "time", "time sec": "time", "time seconds": "time",
    "lap times": "time", "laptimes": "time", "lap time s": "time", "lap time sec": "time", "lap time seconds": "time",
    "laptime s": "time", "time of lap": "time",
    "fuel": "fuel", "fuel left": "fuel", "fuel level": "fuel", "gas": "fuel", "gallons": "fuel", "litres": "fuel",
    "liters": "fuel", "fuel gal": "fuel", "fuel l": "fuel", "tank": "fuel", "fuelleft": "fuel", "fuel kg": "fuel",
    "fuel lb": "fuel", "fuel gallons": "fuel", "fuel litres": "fuel", "fuel liters": "fuel", "fuel remaining": "fuel",
    "remaining fuel": "fuel", "fuel at start": "fuel",
    "note": "note", "notes": "note", "comment": "note", "comments": "note", "remark": "note", "remarks": "note",
    "what": "note", "flag": "note",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Columns:
    """Index of each role's column (`lap`, `time`, `fuel`, `note`); `width` columns in all.

    `body` is the index of the first row with a lap; `strange` are header cells that mean nothing to us, `twice` those
    whose role another column has already, `taken` the one that is taken for the times although it does not say so.
    `header` is how many cells the header has, 0 without one; `fuel_unit` what it says of the fuel. A header that names
    no times, and leaves none to be found, has no `time` among its roles.
    """

    roles: dict[str, int]
    width: int
    body: int = 0
    strange: tuple[tuple[int, Cell], ...] = ()
    twice: tuple[tuple[int, Cell], ...] = field(default=())
    taken: Cell | None = None
    header: int = 0
    fuel_unit: str = ""


def columns(rows: Sequence[Row]) -> Columns | None:
    """The columns of a table of laps; None where no column of times can be made out."""
    above: list[Columns] = []
    for index, row in enumerate(rows[:_ABOVE]):
        named = _named(row, index)
        if "time" in named.roles:
            return named
        if any(is_time(cell.text) for cell in row.cells):
            break
        above.append(named)
    partly = next((one for one in above if {"lap", "fuel"} & set(one.roles) and one.header > 1), None)
    return _with_times(partly, rows) if partly is not None else _guessed(rows)


def role_of(header: str) -> str:
    """`lap`, `time`, `fuel`, `note` for a header cell, "" for one that we do not know."""
    return _WORDS.get(_plain(_BRACKETS.sub(" ", header)), "")


def unit_of(header: str) -> str:
    """The unit that a fuel column's header names, by its symbol: `Fuel (gal)`, `litres`; "" where it names none."""
    inside = " ".join(_BRACKETS.findall(header))
    words = [inside.strip(), *_plain(header).split()]
    return next((known.symbol for word in words if word and (known := unit(word)) is not None), "")


def _plain(header: str) -> str:
    return _BETWEEN.sub(" ", _HUMPS.sub(" ", header).lower()).strip()


def _named(row: Row, index: int) -> Columns:
    roles: dict[str, int] = {}
    strange: list[tuple[int, Cell]] = []
    twice: list[tuple[int, Cell]] = []
    for at, cell in enumerate(row.cells):
        role = role_of(cell.text)
        if role and role not in roles:
            roles[role] = at
        elif cell.text:
            (twice if role else strange).append((at, cell))
    width = len(row.cells)
    if "note" not in roles:
        # What stands behind the last column of the header is a note that it forgot.
        roles["note"] = width
    fuel = unit_of(row.cells[roles["fuel"]].text) if "fuel" in roles else ""
    return Columns(
        roles, max(roles["note"] + 1, width), index + 1, tuple(strange), tuple(twice), header=width, fuel_unit=fuel
    )


def _with_times(partly: Columns, rows: Sequence[Row]) -> Columns:
    """The one strange column that holds times is taken for them; as it was where there is none, or several."""
    body = rows[partly.body :]
    holding = [(at, cell) for at, cell in partly.strange if _mostly_times(body, at)]
    if len(holding) != 1:
        return partly
    at, cell = holding[0]
    strange = tuple(one for one in partly.strange if one[0] != at)
    return replace(partly, roles={**partly.roles, "time": at}, strange=strange, taken=cell)


def _mostly_times(body: Sequence[Row], at: int) -> bool:
    there = [row.cells[at].text for row in body if len(row.cells) > at and row.cells[at].text]
    return bool(there) and sum(is_time(text) for text in there) * 2 > len(there)


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
    if at:
        # A lap whose time cannot be read may come first.
        first = min(first, next(i for i, row in enumerate(rows) if lap_number(row.cells[0].text) is not None))
    return Columns(roles, rest + 1, first)


def _mostly_amounts(cells: Sequence[Sequence[str]], at: int) -> bool:
    there = [row[at] for row in cells if len(row) > at and row[at]]
    enough = len(there) * 2 > len(cells)  # a figure behind one lap in ten is no column
    return enough and sum(amount(text) is not None for text in there) * 2 > len(there)
