"""What is wrong with what the author wrote, and what to do about it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from producer.basics.place import Place


class Severity(StrEnum):
    """How much a finding weighs: errors fail a check, warnings fail it with --strict, notes never do."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Fix:
    """A repair that needs no judgement: what to put where, in the file that the finding stands in.

    Characters `start` to `end` (exclusive) of the text that the value at `path` holds stand at `place` and become
    `new`; where the file's form does not allow that, `plain`, and where that is "", nothing.
    """

    place: Place
    path: tuple[str | int, ...]
    start: int
    end: int
    new: str
    plain: str = ""


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing to tell the author.

    `where` is the path inside the file in the author's words (`setups.short.reasons[2].direction`,
    counted from 0 as YAML tools do); `hint` says what to do next and may be empty; `related` are other
    places that a clash names. `fix` is how `check --fix` repairs it, where that is mechanical.
    """

    code: str
    severity: Severity
    place: Place
    message: str
    hint: str = ""
    where: str = ""
    related: tuple[Place, ...] = ()
    fix: Fix | None = None


def in_order(findings: Iterable[Finding]) -> list[Finding]:
    """Findings as they are shown: by file, line, column, then code and message; each one once."""
    return sorted(set(findings), key=lambda one: (one.place, one.code, one.message))
