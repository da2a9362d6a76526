"""The laps of one file as they are read, and what there is to say about them."""

from __future__ import annotations

from producer.basics.finding import Finding, Severity
from producer.basics.place import Place
from producer.model.stints import Lap
from producer.stints.cells import Cell, Row
from producer.stints.columns import Columns


class Sheet:
    """What has been read of a file so far.

    `file` is its name in the library, `where` the path in the episode that names it, `fuel_unit` that of the stint.
    """

    def __init__(self, file: str, where: str = "", fuel_unit: str = "") -> None:
        self._file = file
        self._where = where
        self.fuel_unit = fuel_unit
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


def cell_of(row: Row, layout: Columns, role: str) -> Cell | None:
    """The cell of a role, None where it is missing or empty."""
    at = layout.roles.get(role)
    if at is None or at >= len(row.cells) or not row.cells[at].text:
        return None
    return row.cells[at]
