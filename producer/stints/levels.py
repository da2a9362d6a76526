"""Fuel in the laps of a file: what was left in the tank, in the unit of the stint."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal
from itertools import pairwise

from producer.basics.units import convert, unit
from producer.model.stints import Lap
from producer.stints.cells import Row
from producer.stints.columns import Columns
from producer.stints.lap_sheet import Sheet, cell_of
from producer.stints.numbering import SECOND
from producer.stints.times import amount


def level(sheet: Sheet, row: Row, layout: Columns) -> Decimal | None:
    """What is left in the tank, in the unit of the sheet; None, and a finding, for what is no amount of fuel."""
    cell = cell_of(row, layout, "fuel")
    if cell is None:
        return None
    found = amount(cell.text)
    left = _in_unit(found[0], found[1] or layout.fuel_unit, sheet.fuel_unit) if found else None
    if left is None or left < 0:
        wanted = f" in {sheet.fuel_unit}" if found and sheet.fuel_unit else ""
        message = f"'{cell.text[:40]}' is no amount of fuel{wanted}; the lap counts without it"
        sheet.warn("fuel-odd", row.line, message, "write what was left in the tank, like 17.6", cell)
        return None
    return left


def _in_unit(value: Decimal, written: str, wanted: str) -> Decimal | None:
    """Fuel in the stint's unit; None where what is written does not measure the same thing."""
    known = unit(written)
    if not written or (known is not None and known.symbol == wanted):
        return value
    if known is None or known.dimension not in ("volume", "mass"):
        return None
    try:
        return round(convert(value, written, wanted), 3) if wanted else value
    except ValueError:
        return None


def check_levels(sheet: Sheet) -> None:
    """Say where fuel goes up: a stint has no stop in it."""
    for before, lap in _levels(sheet.laps):
        if lap.fuel is not None and before.fuel is not None and lap.fuel > before.fuel:
            message = f"fuel goes up from {before.fuel} to {lap.fuel} on lap {lap.number}"
            hint = "a stint has no stop in it: put the laps after the stop into a file of their own"
            sheet.warn("fuel-odd", lap.line, message, hint)


def _levels(laps: Sequence[Lap]) -> Iterator[tuple[Lap, Lap]]:
    known = [one for one in laps if one.fuel is not None and one.left_out != SECOND]
    yield from pairwise(known)
