"""What a reader of captions complains of, by line, and not a thousand times the same."""

from __future__ import annotations

from dataclasses import dataclass, field

from producer.basics.finding import Finding, Severity, in_order
from producer.basics.place import Place

MOST = 20
"""So many findings of one code are told one by one; what more there are is counted in one finding."""


@dataclass
class Complaints:
    """Collects findings while one file is read. `file` is the name that stands in their places."""

    file: str
    _found: list[Finding] = field(default_factory=list)

    def add(
        self,
        code: str,
        place: Place | int,
        message: str,
        hint: str = "",
        *,
        severity: Severity = Severity.WARNING,
        related: tuple[Place, ...] = (),
    ) -> None:
        """Keep one finding; a bare number is the line (from 1) that it is about."""
        at = self.at(place) if isinstance(place, int) else place
        self._found.append(Finding(code, severity, at, message, hint, related=related))

    def note(self, code: str, place: Place | int, message: str, hint: str = "") -> None:
        """Keep one that nobody needs to act on."""
        self.add(code, place, message, hint, severity=Severity.NOTE)

    def at(self, line: int, column: int = 1, width: int = 1) -> Place:
        """A place in this file."""
        return Place(self.file, line, column, max(1, width))

    def findings(self) -> tuple[Finding, ...]:
        """All of them in the order of the file; of each code the first `MOST`, then how many more there are."""
        seen: dict[str, list[Finding]] = {}
        for one in in_order(self._found):
            seen.setdefault(one.code, []).append(one)
        kept = [one for found in seen.values() for one in _folded(found)]
        return tuple(in_order(kept))


def _folded(found: list[Finding]) -> list[Finding]:
    rest = len(found) - MOST
    if rest <= 1:
        return found
    after = found[MOST]
    return [*found[:MOST], Finding(after.code, after.severity, after.place, f"{rest} more like this from here on")]
