"""The numbers of the laps of a file: laps that stand twice, go back, begin anew, or are missing."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

from producer.model.stints import Lap
from producer.stints.cells import Cell, Row
from producer.stints.columns import Columns
from producer.stints.lap_sheet import Sheet, cell_of

SECOND = "a second stint in this file"


def check_numbers(sheet: Sheet, body: Sequence[Row], layout: Columns) -> None:
    """Leave out laps that stand twice or begin a second stint; say so, and which go back or are missing."""
    cells = {row.line: cell_of(row, layout, "lap") for row in body}
    seen: dict[int, Lap] = {}
    again = _second_stint(sheet.laps)
    for index, lap in enumerate(sheet.laps):
        cell = cells.get(lap.line)
        if again is not None and index >= again:
            if index == again:
                message = f"the laps begin again at {lap.number}; from here on they are left out"
                sheet.warn("lap-numbers", lap.line, message, "put the second stint into a file of its own", cell)
            sheet.laps[index] = replace(lap, left_out=SECOND)
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
