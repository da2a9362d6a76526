"""How wide a text is in the family of everything rendered: the advance widths of the font files themselves.

Tables `head`, `hhea`, `hmtx` and `cmap` of a TrueType file, formats as the OpenType specification has them. Kerning is
left out: it moves a text by a percent or two.
"""

from __future__ import annotations

import struct
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from producer.render.fonts import REGULAR, STRONG, folder

# Letters that the font lacks are as wide as its widest: better too much room than too little.
_UNKNOWN = 1.0
_ELLIPSIS = "\u2026"
# Tabular figures and the signs that go with them, which pages set, are all as wide as the widest figure.
_DIGITS = dict.fromkeys("123456789\u00d7\u2212+=\u00b1", "0")


def width(text: str, size: float, *, strong: bool = False) -> float:
    """The width of a line of text at a font size, in the unit of that size; `strong` in the heavier weight."""
    face = _face(folder() / (STRONG if strong else REGULAR))
    return size * sum(face.advance(_DIGITS.get(letter, letter)) for letter in text)


def wrapped(text: str, size: float, room: float, *, strong: bool = False) -> tuple[str, ...]:
    """The text in lines no wider than `room`, broken at spaces (never at no-break ones), a long word anywhere."""
    lines: list[str] = []
    for word in text.split(" "):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width(longer, size, strong=strong) <= room:
            lines[-1] = longer
        else:
            lines += _broken(word, size, room, strong=strong)
    return tuple(lines)


def shortened(text: str, size: float, room: float, *, strong: bool = False) -> str:
    """The text, cut with an ellipsis where it is wider than `room`."""
    if width(text, size, strong=strong) <= room:
        return text
    fitting = range(len(text), 0, -1)
    cut = (text[:end].rstrip() + _ELLIPSIS for end in fitting)
    return next((one for one in cut if width(one, size, strong=strong) <= room), _ELLIPSIS)


def _broken(word: str, size: float, room: float, *, strong: bool) -> list[str]:
    pieces = [""]
    for letter in word:
        if pieces[-1] and width(pieces[-1] + letter, size, strong=strong) > room:
            pieces.append("")
        pieces[-1] += letter
    return pieces


@dataclass(frozen=True, slots=True)
class _Face:
    """Advance widths as shares of the font size; `ends`, `starts` and `shifts` are the runs of its character map."""

    advances: tuple[float, ...]
    ends: tuple[int, ...]
    starts: tuple[int, ...]
    shifts: tuple[int, ...]
    offsets: tuple[int, ...]
    glyphs: tuple[int, ...]

    def advance(self, letter: str) -> float:
        glyph = self._glyph(ord(letter))
        return self.advances[min(glyph, len(self.advances) - 1)] if glyph else _UNKNOWN

    def _glyph(self, code: int) -> int:
        at = bisect_left(self.ends, code)
        if at == len(self.ends) or self.starts[at] > code:
            return 0
        if not self.offsets[at]:
            return (code + self.shifts[at]) % 65536
        # The offset counts from its own place in a table that stands before the glyphs.
        index = self.offsets[at] // 2 + (code - self.starts[at]) - (len(self.ends) - at)
        glyph = self.glyphs[index] if 0 <= index < len(self.glyphs) else 0
        return (glyph + self.shifts[at]) % 65536 if glyph else 0


@cache
def _face(path: Path) -> _Face:
    data = path.read_bytes()
    (count,) = struct.unpack_from(">H", data, 4)
    tables = {tag: start for tag, _, start, _ in struct.iter_unpack(">4sIII", data[12 : 12 + 16 * count])}
    (em,) = struct.unpack_from(">H", data, tables[b"head"] + 18)
    (metrics,) = struct.unpack_from(">H", data, tables[b"hhea"] + 34)
    pairs = struct.iter_unpack(">Hh", data[tables[b"hmtx"] : tables[b"hmtx"] + 4 * metrics])
    return _Face(tuple(advance / em for advance, _ in pairs), *_map(data, tables[b"cmap"]))


def _map(data: bytes, cmap: int) -> Sequence[tuple[int, ...]]:
    """The runs of the character map of format 4: ends, starts, shifts, offsets, glyphs."""
    (count,) = struct.unpack_from(">H", data, cmap + 2)
    records = struct.iter_unpack(">HHI", data[cmap + 4 : cmap + 4 + 8 * count])
    start = next(cmap + at for _, _, at in records if struct.unpack_from(">H", data, cmap + at) == (4,))
    length, _, doubled = struct.unpack_from(">HHH", data, start + 2)
    runs = doubled // 2

    def column(number: int, kind: str) -> tuple[int, ...]:
        # Between ends and starts stand two bytes that mean nothing.
        return struct.unpack_from(f">{runs}{kind}", data, start + 14 + number * doubled + (2 if number else 0))

    after = 16 + 4 * doubled
    glyphs = struct.unpack_from(f">{(length - after) // 2}H", data, start + after)
    return column(0, "H"), column(1, "H"), column(2, "h"), column(3, "H"), glyphs
