"""A file of laps into laps: nothing is dropped silently, everything odd is a finding with its line."""

from __future__ import annotations

import re
from collections.abc import Sequence

from producer.basics.finding import Finding
from producer.model.stints import Lap
from producer.stints.cells import Cell, Row, rows
from producer.stints.columns import KNOWN, Columns, columns
from producer.stints.lap_sheet import Sheet, cell_of
from producer.stints.levels import check_levels, level
from producer.stints.notes import why_left_out
from producer.stints.numbering import check_numbers
from producer.stints.times import lap_number, seconds

MOST_LAPS = 1_200  # a stint; robust lines look at every pair of laps
NO_TIME = "no time"
NO_LAP = "no lap"
_SUMS = frozenset(("total", "totals", "sum", "average", "avg", "mean", "median", "best", "fastest", "slowest", "worst"))
_THOUSANDTHS = re.compile(r"[0-9]{3}")
_WHOLE = re.compile(r"(?:[0-9]{1,2}:)?[0-9]{1,3}")
_DIGITS = re.compile(r"[0-9]{1,3}")
_TIME_HINT = "write it as 31.482, 0:31.482 or 1:02.3"


def read_laps(
    text: str, file: str, where: str = "", fuel_unit: str = ""
) -> tuple[tuple[Lap, ...], tuple[Finding, ...]]:
    """The laps of a file in the order written, and the findings about it.

    A lap that cannot be read, or that is not a lap of this stint, is among the laps with `left_out` saying why. Fuel
    is turned into `fuel_unit` where the file names another unit; "" takes it as it is written.
    """
    sheet = Sheet(file, where, fuel_unit)
    mark, table = rows(text)
    layout = columns(table)
    if layout is None:
        line = table[0].line if table else 1
        sheet.refuse(line, "no lap times are found in this file", f"its columns are {KNOWN}: '1,31.482'")
    elif "time" not in layout.roles:
        line = table[layout.body - 1].line
        sheet.refuse(line, "no column of this header holds lap times", f"the columns are {KNOWN}")
    elif _commas_twice(mark, table[layout.body :], layout):
        hint = "save it with points in the numbers (31.482), or with semicolons between the columns"
        sheet.refuse(table[layout.body].line, "commas part the columns and the decimals alike", hint)
    elif not table[layout.body :]:
        sheet.refuse(table[-1].line, "there is no lap below the header", "add the laps: '1,31.482'")
    else:
        _headers(sheet, table, layout)
        split = _split_times(mark, table[layout.body :], layout)
        for row in table[layout.body :]:
            _lap(sheet, row, layout, split=row.line in split)
        check_numbers(sheet, table[layout.body :], layout)
        check_levels(sheet)
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


def _split_times(mark: str, body: Sequence[Row], layout: Columns) -> frozenset[int]:
    """Lines on which a comma seems to part a time: `3,31,482` among laps written `2,31.501`.

    A whole time with digits behind it where others have a note or nothing; whole times alone are a spreadsheet's.
    """
    at = layout.roles["time"]
    if mark != "," or layout.roles.get("fuel") == at + 1:
        return frozenset()
    pairs = {row.line: [cell.text for cell in row.cells[at : at + 2]] for row in body}
    return frozenset(
        line
        for line, pair in pairs.items()
        if len(pair) == 2 and _WHOLE.fullmatch(pair[0]) and _DIGITS.fullmatch(pair[1])
    )


def _headers(sheet: Sheet, table: Sequence[Row], layout: Columns) -> None:
    head = table[layout.body - 1] if layout.header else None
    for row in table[: max(0, layout.body - bool(layout.header))]:
        hint = f"begin a line that is only for you with '#'; the columns are {KNOWN}"
        sheet.warn("lap-unreadable", row.line, "this line is above the laps and is passed over", hint, row.cells[0])
    if head is not None:
        if layout.taken is not None:
            message = f"the column '{layout.taken.text[:40]}' is taken for the lap times"
            sheet.warn("lap-columns", head.line, message, "name it 'time'", layout.taken)
        for _, cell in layout.strange:
            message, hint = f"the column '{cell.text[:40]}' is not read", f"the columns are {KNOWN}"
            sheet.warn("lap-columns", head.line, message, hint, cell)
        for _, cell in layout.twice:
            hint = "take out the one that is not meant"
            sheet.warn("lap-columns", head.line, f"'{cell.text[:40]}' stands a second time and is not read", hint, cell)


def _lap(sheet: Sheet, row: Row, layout: Columns, *, split: bool = False) -> None:
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
    _surplus(sheet, row, layout)
    note = _note(row, layout) or said
    left_out = why_left_out(note)
    cell = cell_of(row, layout, "time")
    if _is_sum(row, layout):
        sheet.laps.append(Lap(number, None, row.line, note=note, left_out=NO_LAP))
        return
    if split and cell is not None:
        message = f"a comma parts the time of lap {number}; it is left out"
        sheet.warn("lap-unreadable", row.line, message, _TIME_HINT, cell)
        sheet.laps.append(Lap(number, None, row.line, note=note, left_out=left_out or NO_TIME))
        return
    try:
        time = seconds(cell.text if cell else "")
    except ValueError as trouble:
        sheet.warn("lap-unreadable", row.line, f"{trouble}; lap {number} is left out", _TIME_HINT, cell)
        sheet.laps.append(Lap(number, None, row.line, note=note, left_out=left_out or NO_TIME))
        return
    sheet.laps.append(Lap(number, time, row.line, level(sheet, row, layout), note, left_out))


def _number(sheet: Sheet, row: Row, layout: Columns) -> tuple[int, str]:
    """The lap's number, and what stands in its place where that is a note (`out`)."""
    following = sheet.laps[-1].number + 1 if sheet.laps else 1
    cell = cell_of(row, layout, "lap")
    if cell is None:
        if "lap" in layout.roles:
            sheet.warn("lap-numbers", row.line, f"a lap without its number; counted as lap {following}", "number it")
        return following, ""
    found = lap_number(cell.text)
    if found is not None:
        return found, ""
    if _is_sum(row, layout):
        message, hint = f"'{cell.text[:40]}' is no lap; it is left out", "take the line out, or begin it with '#'"
        sheet.warn("lap-numbers", row.line, message, hint, cell)
    elif not why_left_out(cell.text):
        message = f"'{cell.text[:40]}' is not a lap's number; counted as lap {following}"
        sheet.warn("lap-numbers", row.line, message, "write whole numbers, from 1", cell)
    return following, cell.text


def _is_sum(row: Row, layout: Columns) -> bool:
    """A spreadsheet's last line: `Total` or `Average` where a lap's number stands."""
    cell = cell_of(row, layout, "lap")
    return cell is not None and cell.text.lower().rstrip(":. ") in _SUMS


def _surplus(sheet: Sheet, row: Row, layout: Columns) -> None:
    """More cells than the header names; a note that is last may hold commas."""
    note = layout.roles.get("note", -1)
    if not layout.header or len(row.cells) <= layout.header or note == layout.header - 1:
        return
    read = "is read as a note" if note == layout.header else "is not read"
    cell = row.cells[layout.header]
    message, hint = f"the header has no column for '{cell.text[:40]}', which {read}", "name the column, or quote a note"
    sheet.warn("lap-columns", row.line, message, hint, cell)


def _note(row: Row, layout: Columns) -> str:
    at = layout.roles.get("note")
    if at is None:
        return ""
    # A note that is last may hold commas without quotes.
    last = at == max(layout.roles.values()) and at == layout.width - 1
    parts = row.cells[at:] if last else row.cells[at : at + 1]
    return ", ".join(cell.text for cell in parts if cell.text)
