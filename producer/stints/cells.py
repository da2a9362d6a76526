"""A table of laps into cells that know their column: separators, quotes, comments."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

_SEPARATORS = (";", "\t", ",")
_BLANKS = ""  # the separator of a table that is laid out with blanks
_COMMA_TIME = re.compile(r"\s*(?:\S+[ \t]+)?(?:[0-9]{1,2}:)?[0-9]{1,3},[0-9]{1,6}(?:[ \t].*)?")
_TWO_NUMBERS = re.compile(r"\s*([0-9]{1,6}),\s*[0-9]{1,6}\s*")


class Cell(NamedTuple):
    """The text of a cell without its quotes, and where it starts in its line (from 1)."""

    text: str
    column: int


class Row(NamedTuple):
    """One line of the file (from 1) and its cells; `open_quote` is the column of a quote that never closes, or 0."""

    line: int
    cells: tuple[Cell, ...]
    open_quote: int = 0


def rows(text: str) -> tuple[str, tuple[Row, ...]]:
    """The separator and the rows, without blank lines, comments (`#`) and a spreadsheet's `sep=;`."""
    lines = [(number, line) for number, line in enumerate(text.splitlines(), 1) if _counts(line)]
    said = next((line.strip()[4:5] for _, line in lines[:1] if line.strip().lower().startswith("sep=")), "")
    if said:
        lines = lines[1:]
    mark = said or separator(line for _, line in lines[:40])
    return mark, tuple(_row(number, line, mark) for number, line in lines)


def separator(lines: Iterable[str]) -> str:
    """What parts the columns: a semicolon, a tab or a comma that stands in most lines, else blanks ("").

    A comma that only parts seconds from thousandths (`21,482`, `1 21,482 out lap`) parts no columns; a mark in a few
    lines does where what it parts is one word (`21.482` alone, and `21.600,traffic` among them).
    """
    bare = [_without_quoted(line) for line in lines]
    for mark in _SEPARATORS:
        if bare and sum(mark in line for line in bare) * 2 > len(bare):
            return _BLANKS if mark == "," and _decimal_commas(bare) else mark
    return next((mark for mark in _SEPARATORS if _parts_a_few(bare, mark)), _BLANKS)


def _decimal_commas(bare: Sequence[str]) -> bool:
    """Whether commas stand in times only; `1,31` to `9,32`, whose first numbers count up, are laps and their times."""
    there = [line for line in bare if "," in line]
    if sum(_COMMA_TIME.fullmatch(line) is not None for line in there) * 2 <= len(bare):
        return False
    numbers = [int(match.group(1)) for line in there if (match := _TWO_NUMBERS.fullmatch(line))]
    return len(there) > 1 and not (len(numbers) > 1 and all(one < other for one, other in pairwise(numbers)))


def _parts_a_few(bare: Sequence[str], mark: str) -> bool:
    first = [line.partition(mark)[0].strip() for line in bare]
    return any(mark in line for line in bare) and all(one and not re.search(r"\s", one) for one in first)


def _counts(line: str) -> bool:
    # "#12" may be a lap's number, "# evening two" is a comment.
    stripped = line.strip().strip(",;\t ")
    return bool(stripped) and not (stripped.startswith("#") and not stripped[1:2].isdigit() and "," not in stripped[:3])


def _without_quoted(line: str) -> str:
    return "".join(line.split('"')[::2])


def _row(number: int, line: str, mark: str) -> Row:
    if mark == _BLANKS:
        return Row(number, tuple(_blank_cells(line)))
    cells: list[Cell] = []
    at = 0
    while at <= len(line):
        cell, end = _cell(line, at, mark)
        if cell is None:
            rest = line[at:].strip()
            return Row(number, (*cells, Cell(rest.removeprefix('"'), at + 1)), line.index(rest, at) + 1)
        cells.append(cell)
        at = end + 1
    while len(cells) > 1 and not cells[-1].text:
        cells.pop()
    return Row(number, tuple(cells))


def _cell(line: str, at: int, mark: str) -> tuple[Cell | None, int]:
    """The cell that starts at index `at`, and the index of the separator after it (or the end of the line)."""
    start = at
    while start < len(line) and line[start] == " ":
        start += 1
    if line[start : start + 1] == '"':
        return _quoted(line, start, mark)
    end = line.find(mark, at)
    end = len(line) if end < 0 else end
    return Cell(line[start:end].strip(), start + 1), end


def _quoted(line: str, start: int, mark: str) -> tuple[Cell | None, int]:
    at = start + 1
    while True:
        close = line.find('"', at)
        if close < 0:
            return None, len(line)
        if line[close + 1 : close + 2] != '"':
            break
        at = close + 2
    end = line.find(mark, close)
    end = len(line) if end < 0 else end
    held = line[start + 1 : close].replace('""', '"') + line[close + 1 : end].rstrip()
    return Cell(held.strip(), start + 1), end


def _blank_cells(line: str) -> Iterator[Cell]:
    """Lap and time by blanks; what follows them is one cell, so that a note keeps its words."""
    at = 0
    for _ in range(2):
        while at < len(line) and line[at].isspace():
            at += 1
        end = at
        while end < len(line) and not line[end].isspace():
            end += 1
        if end > at:
            yield Cell(line[at:end], at + 1)
        at = end
    rest = line[at:].strip()
    if rest:
        yield Cell(rest, line.index(rest, at) + 1)
