"""A file of laps into laps: nothing is dropped silently, everything odd is a finding with its line."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal
from itertools import pairwise

from producer.basics.finding import Finding, Severity
from producer.basics.place import Place
from producer.model.stints import Lap
from producer.stints.cells import Cell, Row, rows
from producer.stints.columns import KNOWN, Columns, columns
from producer.stints.notes import why_left_out
from producer.stints.times import amount, lap_number, seconds

MOST_LAPS = 1_200  # a stint; robust lines look at every pair of laps
NO_TIME = "no time"
_THOUSANDTHS = re.compile(r"[0-9]{3}")
_WHOLE = re.compile(r"(?:[0-9]{1,2}:)?[0-9]{1,3}")
_TIME_HINT = "write it as 31.482, 0:31.482 or 1:02.3"


class Sheet:
    """The laps of one file as they are read, and what there is to say about them.

    `file` is its name in the library, `where` the path in the episode that names it.
    """

    def __init__(self, file: str, where: str = "") -> None:
        self._file = file
        self._where = where
        self.laps: list[Lap] = []
        self.findings: list[Finding] = []

    def warn(self, code: str, line: int, message: str, hint: str = "", cell: Cell | None = None) -> None:
        """Say something about a line, or about one cell of it."""
        self._say(code, Severity.WARNING, line, message, hint, cell)

    def refuse(self, line: int, message: str, hint: str) -> None:
        """Say that no laps can be read."""
        self._say("lap-columns", Severity.ERROR, line, message, hint, None)

    def note(self, code: str, line: int, message: str, hint: str, cell: Cell | None = None) -> None:
        """Say something that may be meant."""
        self._say(code, Severity.NOTE, line, message, hint, cell)

    def _say(self, code: str, severity: Severity, line: int, message: str, hint: str, cell: Cell | None) -> None:
        column, width = (cell.column, max(1, len(cell.text))) if cell else (1, 1)
        place = Place(self._file, line, column, width)
        self.findings.append(Finding(code, severity, place, message, hint, self._where))


def read_laps(text: str, file: str, where: str = "") -> tuple[tuple[Lap, ...], tuple[Finding, ...]]:
    """The laps of a file in the order written, and the findings about it.

    A lap that cannot be read, or that is not a lap of this stint, is among the laps with `left_out` saying why.
    """
    sheet = Sheet(file, where)
    mark, table = rows(text)
    layout = columns(table)
    if layout is None:
        line = table[0].line if table else 1
        sheet.refuse(line, "no lap times are found in this file", f"its columns are {KNOWN}: '1,31.482'")
    elif _commas_twice(mark, table[layout.body :], layout):
        hint = "save it with points in the numbers (31.482), or with semicolons between the columns"
        sheet.refuse(table[layout.body].line, "commas part the columns and the decimals alike", hint)
    elif not table[layout.body :]:
        sheet.refuse(table[-1].line, "there is no lap below the header", "add the laps: '1,31.482'")
    else:
        _headers(sheet, table, layout)
        for row in table[layout.body :]:
            _lap(sheet, row, layout)
        _numbers(sheet, table[layout.body :], layout)
        _fuel(sheet)
    return tuple(sheet.laps), tuple(sheet.findings)


def _commas_twice(mark: str, body: Sequence[Row], layout: Columns) -> bool:
    """`1,31,482`: in every row two whole numbers where a time should stand, the second of three places."""
    at = layout.roles["time"]
    pairs = [[cell.text for cell in row.cells[at : at + 2]] for row in body]
    return (
        mark == ","
        and bool(pairs)
        and all(
            len(pair) == 2 and bool(_WHOLE.fullmatch(pair[0])) and bool(_THOUSANDTHS.fullmatch(pair[1]))
            for pair in pairs
        )
    )


def _headers(sheet: Sheet, table: Sequence[Row], layout: Columns) -> None:
    head = table[layout.body - 1] if layout.strange or layout.twice else None
    for row in table[: max(0, layout.body - 1)]:
        hint = "begin a line that is only for you with '#'"
        sheet.warn("lap-unreadable", row.line, "this line is above the laps and is passed over", hint, row.cells[0])
    if head is not None:
        for _, cell in layout.strange:
            message, hint = f"the column '{cell.text[:40]}' is not read", f"the columns are {KNOWN}"
            sheet.warn("lap-columns", head.line, message, hint, cell)
        for _, cell in layout.twice:
            hint = "take out the one that is not meant"
            sheet.warn("lap-columns", head.line, f"'{cell.text[:40]}' stands a second time and is not read", hint, cell)


def _lap(sheet: Sheet, row: Row, layout: Columns) -> None:
    """One row: its lap is among the laps whatever is wrong with it."""
    if len(sheet.laps) >= MOST_LAPS:
        if len(sheet.laps) == MOST_LAPS:
            message, hint = f"laps past {MOST_LAPS} are not looked at", "put the rest into a stint of its own"
            sheet.warn("lap-unreadable", row.line, message, hint)
        sheet.laps.append(Lap(sheet.laps[-1].number + 1, None, row.line, left_out=f"past {MOST_LAPS} laps"))
        return
    if row.open_quote:
        message, hint = "a quote opens here and does not close in this line", "close it at the end of the note"
        sheet.warn("lap-unreadable", row.line, message, hint, Cell("", row.open_quote))
    number, said = _number(sheet, row, layout)
    note = _note(row, layout) or said
    left_out = why_left_out(note)
    cell = _cell(row, layout, "time")
    try:
        time = seconds(cell.text if cell else "")
    except ValueError as trouble:
        sheet.warn("lap-unreadable", row.line, f"{trouble}; lap {number} is left out", _TIME_HINT, cell)
        sheet.laps.append(Lap(number, None, row.line, note=note, left_out=left_out or NO_TIME))
        return
    sheet.laps.append(Lap(number, time, row.line, _level(sheet, row, layout), note, left_out))


def _number(sheet: Sheet, row: Row, layout: Columns) -> tuple[int, str]:
    """The lap's number, and what stands in its place where that is a note (`out`)."""
    following = sheet.laps[-1].number + 1 if sheet.laps else 1
    cell = _cell(row, layout, "lap")
    if cell is None:
        if "lap" in layout.roles:
            sheet.warn("lap-numbers", row.line, f"a lap without its number; counted as lap {following}", "number it")
        return following, ""
    found = lap_number(cell.text)
    if found is not None:
        return found, ""
    if not why_left_out(cell.text):
        message = f"'{cell.text[:40]}' is not a lap's number; counted as lap {following}"
        sheet.warn("lap-numbers", row.line, message, "write whole numbers, from 1", cell)
    return following, cell.text


def _level(sheet: Sheet, row: Row, layout: Columns) -> Decimal | None:
    cell = _cell(row, layout, "fuel")
    if cell is None:
        return None
    found = amount(cell.text)
    if found is None or found < 0:
        message = f"'{cell.text[:40]}' is no amount of fuel; the lap counts without it"
        sheet.warn("fuel-odd", row.line, message, "write what was left in the tank, like 17.6", cell)
        return None
    return found


def _note(row: Row, layout: Columns) -> str:
    at = layout.roles.get("note")
    if at is None:
        return ""
    # A note that is last may hold commas without quotes.
    last = at == max(layout.roles.values()) and at == layout.width - 1
    parts = row.cells[at:] if last else row.cells[at : at + 1]
    return ", ".join(cell.text for cell in parts if cell.text)


def _cell(row: Row, layout: Columns, role: str) -> Cell | None:
    """The cell of a role, None where it is missing or empty."""
    at = layout.roles.get(role)
    if at is None or at >= len(row.cells) or not row.cells[at].text:
        return None
    return row.cells[at]


def _numbers(sheet: Sheet, body: Sequence[Row], layout: Columns) -> None:
    """Laps that stand twice, go back, or are missing."""
    cells = {row.line: _cell(row, layout, "lap") for row in body}
    seen: dict[int, Lap] = {}
    again = _second_stint(sheet.laps)
    for index, lap in enumerate(sheet.laps):
        cell = cells.get(lap.line)
        if again is not None and index >= again:
            if index == again:
                message = f"the laps begin again at {lap.number}; from here on they are left out"
                sheet.warn("lap-numbers", lap.line, message, "put the second stint into a file of its own", cell)
            sheet.laps[index] = replace(lap, left_out="a second stint in this file")
        elif lap.seconds is None:
            continue
        elif lap.number in seen:
            message = f"lap {lap.number} stands on line {seen[lap.number].line} already; this one is left out"
            sheet.warn("lap-numbers", lap.line, message, "correct its number", cell)
            sheet.laps[index] = replace(lap, left_out=f"lap {lap.number} a second time")
        else:
            if seen and lap.number < max(seen):
                message = f"lap {lap.number} stands after lap {max(seen)}"
                sheet.warn("lap-numbers", lap.line, message, "put the laps in order, or correct the number", cell)
            seen[lap.number] = lap
    _missing(sheet, {one.number: one for one in reversed(sheet.laps)}, cells)


def _second_stint(laps: Sequence[Lap]) -> int | None:
    """Where the numbers begin anew at 0 or 1 after three laps and more, and go on from there."""
    for index in range(3, len(laps)):
        if laps[index].number <= 1 < laps[index - 1].number and _goes_on(laps[index:]):
            return index
    return None


def _goes_on(laps: Sequence[Lap]) -> bool:
    return len(laps) < 2 or laps[1].number == laps[0].number + 1


def _missing(sheet: Sheet, seen: dict[int, Lap], cells: dict[int, Cell | None]) -> None:
    numbers = sorted(seen)
    if numbers and numbers[0] > 2:
        lap = seen[numbers[0]]
        hint = "number them from the first lap on these tyres; falloff does not mind, pace on lap 1 does"
        sheet.note("laps-missing", lap.line, f"the laps begin at {lap.number}", hint, cells.get(lap.line))
    for before, after in pairwise(numbers):
        if after > before + 1:
            gone = f"lap {before + 1} is" if after == before + 2 else f"laps {before + 1} to {after - 1} are"
            hint = "a lap that does not count may stay, with a note that says why"
            line = seen[after].line
            sheet.note("laps-missing", line, f"{gone} not in the file", hint, cells.get(line))


def _fuel(sheet: Sheet) -> None:
    for before, lap in _levels(sheet.laps):
        if lap.fuel is not None and before.fuel is not None and lap.fuel > before.fuel:
            message = f"fuel goes up from {before.fuel} to {lap.fuel} on lap {lap.number}"
            hint = "a stint has no stop in it: put the laps after the stop into a file of their own"
            sheet.warn("fuel-odd", lap.line, message, hint)


def _levels(laps: Sequence[Lap]) -> Iterator[tuple[Lap, Lap]]:
    known = [one for one in laps if one.fuel is not None and one.left_out != "a second stint in this file"]
    yield from pairwise(known)
