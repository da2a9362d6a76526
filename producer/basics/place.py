"""Where something stands in a text file."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A stretch of one line.

    `file` is relative to the library, with forward slashes on every system. `line` and `column`
    count from 1, columns in characters (not bytes). `width` is how many characters of that line are
    meant, at least 1; a stretch over several lines is marked on its first line only.
    Raises ValueError for anything smaller: a finding on line 0 is a bug of ours.
    """

    file: str
    line: int
    column: int
    width: int = 1

    def __post_init__(self) -> None:
        if self.line < 1 or self.column < 1 or self.width < 1:
            raise ValueError(f"a place counts from 1: {self.file}:{self.line}:{self.column}+{self.width}")

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"
