"""Places of everything in one file, and the mapping that knows where it stands."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

from producer.basics.place import Place

Path = tuple[str | int, ...]


@dataclass(frozen=True, slots=True)
class Mark:
    """A stretch of text: 0-based line and column where it starts, and where it ends (exclusive)."""

    line: int
    column: int
    end_line: int
    end_column: int


@dataclass(slots=True, eq=False)
class Places:
    """Where each node of one file stands: path -> mark of its value, and of its key where it has one.

    Compared by identity and never part of a record's equality.
    """

    file: str
    text: str
    values: dict[Path, Mark] = field(default_factory=dict)
    keys: dict[Path, Mark] = field(default_factory=dict)
    names: dict[Path, str] = field(default_factory=dict)  # items of a list that say their own name
    texts: dict[Path, str] = field(default_factory=dict)  # what each scalar holds, for `inside`
    _lines: list[str] | None = None

    def line(self, number: int) -> str:
        """The text of line `number` (from 1) without its line end; "" past the end."""
        if self._lines is None:
            self._lines = self.text.splitlines()
        return self._lines[number - 1] if 0 < number <= len(self._lines) else ""

    def value(self, path: Path) -> Place:
        """The place of the value at `path`, or of the nearest thing around it."""
        while path and path not in self.values:
            path = path[:-1]
        mark = self.values.get(path)
        return self._place(mark) if mark else Place(self.file, 1, 1)

    def key(self, path: Path) -> Place:
        """The place of the key that holds `path`; its value's place for an item of a list, line 1 for the file."""
        if not path:
            return Place(self.file, 1, 1)
        mark = self.keys.get(path)
        return self._place(mark) if mark else self.value(path)

    def where(self, path: Path) -> str:
        """`setups.short.reasons[2].direction`: items that name themselves by name, others by index from 0."""
        text = ""
        for end in range(1, len(path) + 1):
            part = path[end - 1]
            name = self.names.get(path[:end])
            if name is None and isinstance(part, int):
                text += f"[{part}]"
            else:
                text += f".{name or part}" if text else str(name or part)
        return text

    def inside(self, path: Path, start: int, end: int) -> Place:
        """The place of characters `start` to `end` (exclusive) of the text that the scalar at `path` holds.

        Works for plain, quoted, literal and folded scalars: the held text and the source agree in every
        character that is not white space, an escape or a quote.
        """
        mark = self.values.get(path)
        if mark is None:
            return self.value(path)
        return self._walk(mark, self.texts.get(path, ""), start, end)

    def _place(self, mark: Mark) -> Place:
        if mark.end_line == mark.line:
            width = mark.end_column - mark.column
        else:
            width = len(self.line(mark.line + 1).rstrip()) - mark.column
        return Place(self.file, mark.line + 1, mark.column + 1, max(1, width))

    def _walk(self, mark: Mark, held: str, start: int, end: int) -> Place:
        line, column = mark.line, mark.column
        row = self.line(line + 1)
        if row[column : column + 1] in "|>" and mark.end_line > line:
            line, column = line + 1, 0  # block scalars: the header line is not text
        first: tuple[int, int] | None = None
        last = (line, column)
        for index, letter in enumerate(held[:end]):
            if letter.isspace():
                continue
            found = self._find(letter, line, column, mark.end_line)
            if found is None:
                break
            if index >= start and first is None:
                first = found
            last = found
            line, column = found[0], found[1] + 1
        if first is None:
            return self._place(mark)
        same = last[0] == first[0]
        width = (last[1] + 1 if same else len(self.line(first[0] + 1).rstrip())) - first[1]
        return Place(self.file, first[0] + 1, first[1] + 1, max(1, width))

    def _find(self, letter: str, line: int, column: int, end_line: int) -> tuple[int, int] | None:
        while line <= end_line:
            at = self.line(line + 1).find(letter, column)
            if at >= 0:
                return line, at
            line, column = line + 1, 0
        return None


class Located(dict[str, Any]):
    """A mapping read from a file that knows its places and its path in the file."""

    __slots__ = ("path", "places")

    def __init__(self, items: dict[str, Any], places: Places, path: Path) -> None:
        super().__init__(items)
        self.places = places
        self.path = path
