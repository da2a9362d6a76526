"""Figures by reference in the author's prose: `{{ spring.rf }}`, `{{ spring.rear_split }}`, `{{ tape | with_unit }}`.

The language is the smallest useful part of Jinja's: a name of a setting or split, of another setup before it
(`{{ long.spring.rf }}`), and the one filter. Read by one pattern, it has nothing to call, to loop or to reach: no
engine is started for it. For what it accepts it says what Jinja's sandbox would say (tested).
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from difflib import get_close_matches

from producer.basics.figures import with_unit
from producer.model.sheet import Sheet

LONGEST = 200_000  # characters of a filled text; an episode's whole script is a tenth of it
_OPEN = re.compile(r"\{\{|\{%|\{#")
_PLAIN = re.compile(r"\{\{\s*([A-Za-z0-9_-]+(?:\.[A-Za-z0-9_-]+)*)\s*(?:\|\s*([A-Za-z0-9_]+)\s*)?\}\}")
_CLOSE = {"{{": "}}", "{%": "%}", "{#": "#}"}
_FILTER = "with_unit"


class ProseTrouble(Exception):  # noqa: N818 - it is the author's trouble and becomes a finding
    """A reference that cannot be filled: `start` and `end` (exclusive) count characters of the text; `near` is the
    nearest name that would work, "" without one; `unknown` says that the name is the trouble, not the way it is
    written."""

    def __init__(self, message: str, start: int, end: int, near: str = "", *, unknown: bool = False) -> None:
        super().__init__(message)
        self.message = message
        self.start = start
        self.end = end
        self.near = near
        self.unknown = unknown


@dataclass(frozen=True, slots=True)
class Reference:
    """`{{ name }}` or `{{ name | with_unit }}` as it stands at `start` to `end` (exclusive) of a text."""

    name: str
    with_unit: bool
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Scope:
    """What a text may name: the settings and splits of its own setup, and those of any setup behind the setup's id.

    `derived` holds further figures of the own setup by name, with their unit (`final_drive.rpm`).
    """

    own: Sheet | None
    sheets: Sequence[Sheet]
    derived: Mapping[str, tuple[str, str]] = field(default_factory=dict)

    @classmethod
    def of(cls, own: Sheet | None, sheets: Sequence[Sheet]) -> Scope:
        """The scope of a setup's prose (None: of no setup in particular) in an episode of these setups."""
        return cls(own, sheets)

    def names(self) -> tuple[str, ...]:
        """Every name that gives a figure, own ones first."""
        own = _names(self.own) if self.own else ()
        others = (f"{sheet.id}.{name}" for sheet in self.sheets for name in _names(sheet))
        return (*own, *self.derived, *others)

    def shown(self, name: str, *, unit: bool) -> str | None:
        """The figure of a name as people read it, with its unit where asked for; None where nothing has that name."""
        if self.own is not None and self.own.value(name) is not None:
            return _shown(self.own, name, unit=unit)
        if name in self.derived:
            figure, symbol = self.derived[name]
            return with_unit(figure, symbol) if unit else figure
        return self._of_another(name, unit=unit)

    def _of_another(self, name: str, *, unit: bool) -> str | None:
        for sheet in self.sheets:
            address = name.removeprefix(f"{sheet.id}.")
            if address != name and sheet.value(address) is not None:
                return _shown(sheet, address, unit=unit)
        return None


def _names(sheet: Sheet) -> tuple[str, ...]:
    return (*sheet.values, *(name for name in sheet.garage.splits if sheet.value(name) is not None))


def _shown(sheet: Sheet, address: str, *, unit: bool) -> str:
    return sheet.shown(address) if unit else sheet.figure(address)


@dataclass(frozen=True, slots=True)
class Filled:
    """A text with its figures in, and where each stands: `pieces` are (start, end) in the text and (start, end) in
    what the author wrote."""

    text: str
    pieces: tuple[tuple[int, int, int, int], ...]

    def given(self, start: int, end: int) -> bool:
        """Whether the stretch holds a figure that came by reference (so it cannot be wrong)."""
        return any(a < end and start < b for a, b, _, _ in self.pieces)

    def written(self, start: int, end: int) -> tuple[int, int]:
        """The stretch of the author's own text behind a stretch of the filled one; a reference counts as a whole."""
        return self._back(start, at_end=False), self._back(end, at_end=True)

    def _back(self, position: int, *, at_end: bool) -> int:
        shift = 0
        for start, end, first, last in self.pieces:
            if position <= start:
                break
            if position < end:
                return last if at_end else first
            shift = last - end
        return position + shift


def has_references(text: str) -> bool:
    """Whether anything in the text has to be filled or refused."""
    return "{" in text and _OPEN.search(text) is not None


def references(text: str) -> tuple[Reference, ...]:
    """The well-formed references of a text in order; what is not well-formed is left to `troubles`."""
    found, _ = _read(text)
    return found


def fill(text: str, scope: Scope) -> str:
    """The text with its references as figures. Raises ProseTrouble at the first that cannot be filled."""
    return filled(text, scope).text


def filled(text: str, scope: Scope) -> Filled:
    """As `fill`, with where each figure came from."""
    if not has_references(text):
        return Filled(text, ())
    found, malformed = _read(text)
    if malformed:
        raise malformed[0]
    return _put(text, [(one, _figure(one, scope)) for one in found])


def troubles(text: str, scope: Scope) -> tuple[ProseTrouble, ...]:
    """Everything that keeps a text from being filled, in order; () where `fill` works."""
    if not has_references(text):
        return ()
    found, malformed = _read(text)
    unknown = []
    for one in found:
        try:
            _figure(one, scope)
        except ProseTrouble as trouble:
            unknown.append(trouble)
    return tuple(sorted([*malformed, *unknown], key=lambda trouble: trouble.start))


def _put(text: str, figures: Sequence[tuple[Reference, str]]) -> Filled:
    parts: list[str] = []
    pieces: list[tuple[int, int, int, int]] = []
    done = length = 0
    for reference, figure in figures:
        before = text[done : reference.start]
        length += len(before)
        parts += [before, figure]
        pieces.append((length, length + len(figure), reference.start, reference.end))
        length += len(figure)
        done = reference.end
    parts.append(text[done:])
    length += len(parts[-1])
    if length > LONGEST:
        raise ProseTrouble(f"this text is longer than {LONGEST} characters once its figures are in", 0, len(text))
    return Filled("".join(parts), tuple(pieces))


def _figure(reference: Reference, scope: Scope) -> str:
    figure = scope.shown(reference.name, unit=reference.with_unit)
    if figure is not None:
        return figure
    parts = [name for name in scope.names() if name.startswith(reference.name + ".")]
    if parts:
        message = f"'{reference.name}' has several values: {', '.join(parts[:4])}"
        raise ProseTrouble(message, reference.start, reference.end, parts[0], unknown=True)
    near = get_close_matches(reference.name[:200], scope.names(), 1, 0.6)
    hint = f": did you mean '{near[0]}'?" if near else ""
    message = f"'{reference.name[:80]}' is no setting of this setup{hint}"
    raise ProseTrouble(message, reference.start, reference.end, near[0] if near else "", unknown=True)


def _read(text: str) -> tuple[tuple[Reference, ...], tuple[ProseTrouble, ...]]:
    found: list[Reference] = []
    malformed: list[ProseTrouble] = []
    at = 0
    while opened := _OPEN.search(text, at):
        match = _PLAIN.match(text, opened.start())
        if match and match.group(2) in {None, _FILTER}:
            found.append(Reference(match.group(1), match.group(2) is not None, match.start(), match.end()))
            at = match.end()
        else:
            trouble = _malformed(text, opened)
            malformed.append(trouble)
            at = trouble.end
    return tuple(found), tuple(malformed)


def _malformed(text: str, opened: re.Match[str]) -> ProseTrouble:
    start, mark = opened.start(), opened.group()
    closed = text.find(_CLOSE[mark], opened.end())
    end = len(text) if closed < 0 else closed + 2
    if mark == "{%":
        message = "'{% %}' does nothing here: only '{{ name }}' can be filled in"
    elif mark == "{#":
        message = "'{# #}' does nothing here: a comment goes after '#' in the file"
    elif closed < 0:
        message = "'{{' is never closed: write '{{ spring.rf }}'"
    else:
        better = "'{{ spring.rf }}' or '{{ spring.rf | with_unit }}'"
        message = f"'{text[start:end][:60]}' is more than a name: write {better}"
    return ProseTrouble(message, start, end)
