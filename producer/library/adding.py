"""Where new keys and items go, and how they are laid out there: like what stands beside them."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from producer.basics.located import Path
from producer.library.spans import Span, Spans
from producer.library.writing import Given, entry, item, on_one_line

_BREAK = re.compile(r"\r\n|\n|\r")
_STEP = 2  # blanks a new list is indented by


def line_break(text: str) -> str:
    """How lines end in a text: as its first one does."""
    found = _BREAK.search(text)
    return found.group() if found else "\n"


def with_key(text: str, found: Spans, path: Path, key: str, value: Given, after: str | None) -> Iterator[str]:
    """The text with `key: value` put into the mapping at `path`, behind the key `after` (else at its end)."""
    there = found.values[path]
    keys = [one[-1] for one in found.keys if one[:-1] == path]
    if not keys:
        yield _put(text, there.start, there.end, on_one_line({key: value}))
        return
    last = (*path, after if after in keys else keys[-1])
    if there.style:
        end = found.values[last].end
        yield _put(text, end, end, f", {on_one_line(key)}: {on_one_line(value)}")
        return
    lines = entry(key, value, found.keys[last].column)
    yield from _below(text, found.values[last], lines)


def with_items(text: str, found: Spans, path: Path, items: Sequence[Given]) -> Iterator[str]:
    """The text with items put behind those of the list at `path`; the list may be empty, or nothing yet."""
    there = found.values[path]
    last = found.values.get((*path, _length(found, path) - 1))
    if last is None:
        yield from _begun(text, found, path, items)
        lead = " " if there.end == there.start else ""
        yield _put(text, there.start, there.end, lead + on_one_line(items))
    elif there.style:
        more = "".join(f", {on_one_line(one)}" for one in items)
        yield _put(text, last.end, last.end, more)
    else:
        dash, inside = there.column, max(last.column, there.column + _STEP)
        apart = [""] if _apart(text, found, path) else []
        lines = [line for one in items for line in (*apart, *item(one, dash, inside))]
        yield _line_put(text, _own_end(text, last.end, dash), lines)
        yield from _below(text, last, lines)


def with_list(text: str, found: Spans, path: Path, key: str, items: Sequence[Given]) -> Iterator[str]:
    """The text with a new list under a new key at the end of the block mapping at `path`."""
    last = [one for one in found.keys if one[:-1] == path][-1]
    column = found.keys[last].column
    lines = [f"{' ' * column}{on_one_line(key)}:", *_listed(items, column)]
    yield from _below(text, found.values[last], lines)


def _begun(text: str, found: Spans, path: Path, items: Sequence[Given]) -> Iterator[str]:
    """The first items of a list: what stood for nothing goes, the items come below the key's line."""
    there, key = found.values[path], found.keys.get(path)
    if key is None:
        return
    start = len(text[: there.start].rstrip(" ")) if there.end > there.start else there.start
    end = _line_end(text, there.end)
    lines = [text[there.end : end], *_listed(items, key.column)]
    new = line_break(text).join(lines) + ("" if end < len(text) else line_break(text))
    yield _put(text, start, end, new)


def _listed(items: Sequence[Given], column: int) -> list[str]:
    dash = column + _STEP
    return [line for one in items for line in item(one, dash, dash + _STEP)]


def _below(text: str, above: Span, lines: Sequence[str]) -> Iterator[str]:
    """Lines put below the one in which a value ends."""
    yield _line_put(text, len(text[: above.end].rstrip()), lines)
    if text[: above.end].endswith(("\n", "\r")):  # a text that keeps its empty lines ends below them
        yield _put(text, above.end, above.end, "".join(f"{one}{line_break(text)}" for one in lines))


def _line_put(text: str, at: int, lines: Sequence[str]) -> str:
    end, newline = _line_end(text, at), line_break(text)
    return _put(text, end, end, newline + newline.join(lines) + ("" if end < len(text) else newline))


def _own_end(text: str, end: int, dash: int) -> int:
    """Behind the comments below an item that are indented like what is in it."""
    at = _line_end(text, len(text[:end].rstrip()))
    for row in re.finditer(r"(?:\r\n|\n|\r)([^\r\n]*)", text[at:]):
        line = row.group(1)
        if line.strip() and not (line.lstrip(" ").startswith("#") and len(line) - len(line.lstrip(" ")) > dash):
            break
        if line.strip():
            end = at + row.end()
    return end


def _apart(text: str, found: Spans, path: Path) -> bool:
    """Whether an empty line stands between the last two items."""
    last = _length(found, path) - 1
    if last < 1:
        return False
    between = text[found.values[(*path, last - 1)].end : found.values[(*path, last)].start]
    return bool(re.search(r"(?:\r\n|\n|\r)[ ]*(?:\r\n|\n|\r)", between))


def _length(found: Spans, path: Path) -> int:
    number = 0
    while (*path, number) in found.values:
        number += 1
    return number


def _line_end(text: str, at: int) -> int:
    found = _BREAK.search(text, at)
    return found.start() if found else len(text)


def _put(text: str, start: int, end: int, new: str) -> str:
    return text[:start] + new + text[end:]
