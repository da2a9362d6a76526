"""Changes one thing in a file of the author's and nothing else.

Characters are spliced in: comments, quotes, order, line ends, all that is not meant stays byte for byte. Then the
result is read again. What was meant must have come out, and every other value must be what it was; where that is not
so the edit is refused and nothing is written.
"""

from __future__ import annotations

import re
from codecs import BOM_UTF8
from collections.abc import Iterable, Iterator, Mapping, Sequence
from difflib import unified_diff
from typing import Any

from producer.basics.errors import ProducerError
from producer.basics.located import Path, Places
from producer.library.adding import line_break, with_items, with_key, with_list
from producer.library.nodes import Unreadable, read_nodes
from producer.library.spans import Span, spans
from producer.library.text import decode
from producer.library.writing import Given, double_quoted, on_one_line, single_quoted

_CONTEXT = 2  # unchanged lines shown around a change


class EditError(ProducerError):
    """An edit would have changed more than was meant, or the file cannot be read; nothing was changed."""


class Draft:
    """One file of the library while it is being changed; `file` is its path in the library.

    Edits follow one another. A path leads to a value as in the reader: `("requests", 3, "status")`. Each edit raises
    EditError, with a sentence for the author, where it cannot be made without changing something else.
    """

    def __init__(self, file: str, data: bytes) -> None:
        text, findings = decode(data, file)
        if text is None:
            raise EditError(f"{findings[0].place}: {findings[0].message}; nothing was changed")
        self.file, self.before, self.text = file, data, text
        self._mark = BOM_UTF8 if data.startswith(BOM_UTF8) else b""

    @property
    def data(self) -> bytes:
        """The file as it would be written."""
        return self._mark + self.text.encode("utf-8")

    @property
    def changed(self) -> bool:
        """Whether anything is different from what was read."""
        return self.data != self.before

    def diff(self) -> str:
        """What is different, as unified diff with lines of the file's own name; "" for nothing."""
        before = self.before.removeprefix(BOM_UTF8).decode("utf-8")
        return difference(self.file, before, self.text)

    def set_value(self, path: Path, value: str) -> None:
        """Give one value another text; it keeps its quotes where the text allows it."""
        old, _ = self._read()
        span = spans(self.text).values.get(path)
        if span is None or span.kind != "scalar":
            raise self._refused(path, "there is no single value to change")
        forms = _forms(self.text, span, value)
        self._take((self._put(span.start, span.end, one) for one in forms), _changed(old, path, value), path)

    def replace_inside(self, path: Path, start: int, end: int, new: str) -> None:
        """Put `new` in place of characters `start` to `end` (exclusive) of the text that the value at `path` holds."""
        old, places = self._read()
        span, held = spans(self.text).values.get(path), places.texts.get(path)
        if span is None or held is None or not 0 <= start < end <= len(held):
            raise self._refused(path, "there is no such text to change")
        at = self._offset(places, path, start, end)
        if self.text[at : at + end - start] != held[start:end]:
            raise self._refused(path, f"'{held[start:end][:40]}' does not stand in one line there")
        wanted = _changed(old, path, held[:start] + new + held[end:])
        self._take(self._replaced(span, at, at + end - start, new), wanted, path)

    def add_key(self, path: Path, key: str, value: Given, after: str | None = None) -> None:
        """Put a new key into the mapping at `path`, behind the key `after` where that is there, else at the end."""
        old, _ = self._read()
        there = _at(old, path)
        if not isinstance(there, Mapping) or key in there:
            raise self._refused((*path, key), "there is no room for this key")
        wanted = _changed(old, path, _with_key(there, key, value, after))
        self._take(with_key(self.text, spans(self.text), path, key, value, after), wanted, (*path, key))

    def add_items(self, path: Path, items: Sequence[Given]) -> None:
        """Put items behind those of the list at `path`; a list that is empty or not there yet is begun."""
        old, _ = self._read()
        above, found = _at(old, path[:-1]), spans(self.text)
        there = _at(old, path)
        if not isinstance(above, Mapping) or not (there is None or isinstance(there, list)):
            raise self._refused(path, "there is no list to add to")
        every = [*(there or []), *items]
        if path in found.values:
            self._take(with_items(self.text, found, path, items), _changed(old, path, every), path)
        else:
            wanted = _changed(old, path[:-1], _with_key(above, str(path[-1]), every, None))
            self._take(with_list(self.text, found, path[:-1], str(path[-1]), items), wanted, path)

    def _read(self) -> tuple[Any, Places]:
        try:
            value, places, _ = read_nodes(self.file, self.text)
        except Unreadable as trouble:
            finding = trouble.finding
            raise EditError(f"{finding.place}: {finding.message}; nothing was changed") from None
        return value, places

    def _take(self, candidates: Iterable[str], wanted: Any, path: Path) -> None:
        """The first candidate that reads as is wanted, and is still a file that can be read."""
        for text in candidates:
            if self._reads_as(text, wanted):
                self.text = text
                return
        raise self._refused(path, "this cannot be changed here without changing something else")

    def _reads_as(self, text: str, wanted: Any) -> bool:
        try:
            found, _, findings = read_nodes(self.file, text)
            before = read_nodes(self.file, self.text)[2]
        except Unreadable:
            return False
        clean = decode(text.encode("utf-8"), self.file)[0] is not None
        return clean and len(findings) == len(before) and _same(found, wanted)

    def _replaced(self, span: Span, start: int, end: int, new: str) -> Iterator[str]:
        """The text with `new` at `start` to `end`, written as the scalar around it is."""
        quoted = {'"': double_quoted(new)[1:-1], "'": new.replace("'", "''")}
        yield self._put(start, end, quoted.get(span.style, new))
        if not span.style:  # what may not stand in a plain text may in quotes
            before, after = self.text[span.start : start], self.text[end : span.end]
            inside = "".join(_escaped(part) for part in (before, new, after))
            yield self._put(span.start, span.end, f'"{inside}"')

    def _put(self, start: int, end: int, new: str) -> str:
        return self.text[:start] + new + self.text[end:]

    def _offset(self, places: Places, path: Path, start: int, end: int) -> int:
        place = places.inside(path, start, end)
        begins = [0, *(one.end() for one in re.finditer(r"\r\n|\n|\r", self.text))]
        return begins[place.line - 1] + place.column - 1

    def _refused(self, path: Path, why: str) -> EditError:
        where = read_nodes(self.file, self.text)[1].where(path)
        return EditError(f"{self.file}, {where}: {why}; change it by hand")


def new_file(values: Mapping[str, Given], lists: Mapping[str, Sequence[Given]], head: str = "") -> bytes:
    """A new file of the author's: a comment at its head, single values, then lists of items."""
    text = head + "".join(f"{on_one_line(key)}: {on_one_line(value)}\n" for key, value in values.items())
    draft = Draft("a new file", text.encode("utf-8"))
    for key, items in lists.items():
        draft.add_items((key,), items)
    return draft.data


def difference(file: str, before: str, after: str) -> str:
    """Two states of a file as unified diff; "" where they are alike. Line ends are not shown."""
    old, new = before.splitlines(), after.splitlines()
    rows = unified_diff(old, new, file if before else "nothing", file, n=_CONTEXT, lineterm="")
    return "\n".join(rows)


def _forms(text: str, span: Span, value: str) -> Iterator[str]:
    """Ways to write a value in the place of another, the most alike first."""
    lead = " " if span.start and text[span.start - 1] in ":-?," and span.start == span.end else ""
    source, tail = text[span.start : span.end], ""
    if span.style in ("|", ">"):
        tail = source[len(source.rstrip()) :]
        yield from _block(source, value, line_break(text), tail)
    elif span.style == "'" and "\n" not in value:
        yield single_quoted(value)
    elif not span.style:
        yield lead + value
    yield lead + double_quoted(value) + tail


def _block(source: str, value: str, newline: str, tail: str) -> Iterator[str]:
    """A text in lines of its own, indented as the old one."""
    rows = re.split(r"\r\n|\n|\r", source)
    first = next((row for row in rows[1:] if row.strip()), "")
    indent = first[: len(first) - len(first.lstrip(" "))]
    lines = [f"{indent}{line}" if line else "" for line in value.rstrip("\n").split("\n")]
    if first:
        yield newline.join([rows[0], *lines]) + tail


def _escaped(source: str) -> str:
    return source.replace("\\", "\\\\").replace('"', '\\"')


def _at(value: Any, path: Path) -> Any:
    for part in path:
        inside = (isinstance(value, Mapping) and part in value) or (
            isinstance(value, list) and isinstance(part, int) and part < len(value)
        )
        if not inside:
            return None
        value = value[part]
    return value


def _changed(value: Any, path: Path, new: Any) -> Any:
    """The same values with another one at `path`."""
    if not path:
        return new
    inside = _changed(value[path[0]], path[1:], new)
    if isinstance(value, Mapping):
        return {key: inside if key == path[0] else one for key, one in value.items()}
    return [inside if number == path[0] else one for number, one in enumerate(value)]


def _with_key(there: Mapping[str, Any], key: str, value: Given, after: str | None) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for name, one in there.items():
        found[name] = one
        if name == after:
            found[key] = value
    found.setdefault(key, value)
    return found


def _same(one: Any, other: Any) -> bool:
    """Equal values, keys in the same order."""
    if isinstance(one, Mapping) and isinstance(other, Mapping):
        return list(one) == list(other) and all(_same(one[key], other[key]) for key in one)
    if isinstance(one, Sequence) and isinstance(other, Sequence) and not isinstance(one, str):
        return len(one) == len(other) and all(_same(x, y) for x, y in zip(one, other, strict=True))
    return bool(one == other)
