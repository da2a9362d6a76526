"""One pass over the YAML events of a file: values, places, and everything that is odd about it.

Scalars stay text; what kind of thing a field holds is decided by its record. So YAML 1.1 surprises (`off` a
boolean, `1:30` ninety, `012` ten) never happen. Quoted or not, only a plain empty, `~` or `null` is nothing.
Anchors, aliases and tags are refused: a value is written where it is used, and no small file can unfold into a
large one.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import yaml

from producer.basics.finding import Finding, Severity
from producer.basics.located import Located, Mark, Path, Places
from producer.basics.place import Place
from producer.library.trouble import QUOTED_REFERENCE, trouble

DEEPEST = 64
LOADER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_NOTHING = frozenset({"", "~", "null", "Null", "NULL"})
# Items of a list that are known by their own name: `setups.short`, `requests.req-014`.
_NAMED_BY = {"setups": "setup", "requests": "id"}


class Unreadable(Exception):  # noqa: N818 - not an error of ours: it carries the finding to the reader
    """The file cannot be read on; `finding` says why and where."""

    def __init__(self, finding: Finding) -> None:
        super().__init__(finding.message)
        self.finding = finding


def read_nodes(file: str, text: str) -> tuple[Any, Places, list[Finding]]:
    """The values of a YAML text (dict, list, str, None), their places, and findings that let reading go on.

    Raises Unreadable where it cannot: not YAML, too deep, an alias.
    """
    reader = _Reader(file, text)
    return reader.read(), reader.places, reader.findings


class _Reader:
    def __init__(self, file: str, text: str) -> None:
        self.places = Places(file, text)
        self.findings: list[Finding] = []
        self._events: Iterator[Any] = iter(())

    def read(self) -> Any:
        try:
            self._events = iter(yaml.parse(self.places.text, Loader=LOADER))
            value = None
            for event in self._events:
                if isinstance(event, yaml.NodeEvent):
                    value = self._node(event, (), 0)
                elif isinstance(event, yaml.DocumentEndEvent):
                    self._no_second_document()
                    break
        except yaml.MarkedYAMLError as error:
            raise Unreadable(self._broken(error)) from None
        except yaml.YAMLError as error:
            raise Unreadable(self._unreadable(error)) from None
        return value

    def _node(self, event: Any, path: Path, depth: int) -> Any:
        if depth > DEEPEST:
            raise Unreadable(self._deep(event))
        if isinstance(event, yaml.AliasEvent):
            raise Unreadable(self._refused(event, f"an alias (*{event.anchor})"))
        self._plain(event)
        if isinstance(event, yaml.ScalarEvent):
            return self._scalar(event, path)
        if isinstance(event, yaml.SequenceStartEvent):
            return self._sequence(event, path, depth)
        return self._mapping(event, path, depth)

    def _scalar(self, event: Any, path: Path) -> str | None:
        start, end = event.start_mark, event.end_mark
        self.places.values[path] = Mark(start.line, start.column, end.line, end.column)
        value: str = event.value
        if event.style in (None, "") and value in _NOTHING:
            return None
        self.places.texts[path] = value
        return value

    def _sequence(self, event: Any, path: Path, depth: int) -> list[Any]:
        start = event.start_mark
        items: list[Any] = []
        for child in self._events:
            if isinstance(child, yaml.SequenceEndEvent):
                break
            items.append(self._node(child, (*path, len(items)), depth + 1))
        self.places.values[path] = self._mark(start)
        return items

    def _mapping(self, event: Any, path: Path, depth: int) -> Located:
        items: dict[str, Any] = {}
        for key_event in self._events:
            if isinstance(key_event, yaml.MappingEndEvent):
                break
            key = self._key(key_event)
            below = (*path, key, "again") if key in items else (*path, key)
            value = self._node(next(self._events), below, depth + 1)
            if key in items:
                self._twice(key, (*path, key), key_event, begins=key == next(iter(items)))
                continue
            items[key] = value
            start, end = key_event.start_mark, key_event.end_mark
            self.places.keys[(*path, key)] = Mark(start.line, start.column, end.line, end.column)
        self.places.values[path] = self._mark(event.start_mark)
        name = items.get(_NAMED_BY.get(str(path[0]), "")) if len(path) == 2 else None
        if isinstance(name, str) and name and isinstance(path[1], int):
            self.places.names[path] = name
        return Located(items, self.places, path)

    def _key(self, event: Any) -> str:
        if isinstance(event, yaml.ScalarEvent):
            self._plain(event)
            key: str = event.value
            return key
        if isinstance(event, yaml.AliasEvent):
            raise Unreadable(self._refused(event, f"an alias (*{event.anchor})"))
        if isinstance(event, yaml.MappingStartEvent):
            message = "{{ }} without quotes is not read as a reference"
            raise Unreadable(self._finding("not-yaml", event, message, QUOTED_REFERENCE))
        raise Unreadable(self._finding("not-yaml", event, "only a word can be a key", "write 'key: value'"))

    def _plain(self, event: Any) -> None:
        """Refuse an anchor; note a tag, which reading can pass over."""
        if event.anchor is not None:
            raise Unreadable(self._refused(event, f"an anchor (&{event.anchor})"))
        if event.tag not in (None, "!"):
            message = f"a tag ({event.tag[:80]}) is not used here"
            self.findings.append(self._finding("yaml-feature", event, message, "take it out: the field decides"))

    def _twice(self, key: str, path: Path, event: Any, *, begins: bool) -> None:
        first = self.places.key(path)
        found = self._finding("duplicate-key", event, f"'{key}' is written twice here; the first one counts")
        hint = f"the first is on line {first.line}; keep one of them"
        if begins and len(path) > 1 and isinstance(path[-2], int):
            hint += ", or put '- ' before this one if another item begins here"
        self.findings.append(
            Finding(found.code, found.severity, found.place, found.message, hint, self.places.where(path), (first,))
        )

    def _no_second_document(self) -> None:
        for event in self._events:
            if isinstance(event, yaml.DocumentStartEvent):
                message = "a second document starts here (---); only the first is read"
                self.findings.append(self._finding("yaml-feature", event, message, "put it into a file of its own"))
                return

    def _mark(self, start: Any) -> Mark:
        """A collection is marked by its first word: a whole block would underline half the page."""
        rest = self.places.line(start.line + 1)[start.column :]
        word = rest.split(" ")[0] if rest else ""
        return Mark(start.line, start.column, start.line, start.column + max(1, len(word)))

    def _refused(self, event: Any, what: str) -> Finding:
        return self._finding("yaml-feature", event, f"{what} is not used here", "write the value where it is used")

    def _deep(self, at: Any) -> Finding:
        hint = "close some of these brackets, or indent less"
        return self._finding("too-deep", at, f"more than {DEEPEST} levels of nesting", hint)

    def _finding(self, code: str, at: Any, message: str, hint: str = "") -> Finding:
        place = Place(self.places.file, 1, 1)
        if at is not None:
            mark = getattr(at, "start_mark", at)
            place = Place(self.places.file, mark.line + 1, mark.column + 1)
        return Finding(code, Severity.ERROR, place, message, hint)

    def _unreadable(self, error: Exception) -> Finding:
        message = f"this is not YAML: {_first_line(error)}"
        return self._finding("not-yaml", None, message, "save it again as plain text in UTF-8")

    def _broken(self, error: Any) -> Finding:
        if "nesting depth" in str(error.problem):
            return self._deep(error.problem_mark or error.context_mark)
        found = trouble(error, self.places.line)
        place = Place(self.places.file, found.line, found.column)
        return Finding("not-yaml", Severity.ERROR, place, found.message, found.hint)


def _first_line(error: Exception) -> str:
    return str(error).strip().splitlines()[0] if str(error).strip() else "unreadable"
