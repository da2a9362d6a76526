"""One finished file, before anybody writes it to disk."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Document:
    """`path` is relative to the episode's folder of the build (forward slashes); `data` the whole file."""

    path: str
    data: bytes

    @classmethod
    def of_text(cls, path: str, text: str) -> Document:
        """A text file: UTF-8 without a mark, line ends as they are in `text` (the program writes `\\n`)."""
        return cls(path, text.encode("utf-8"))
