"""Where every node of a YAML text begins and ends, in characters from the start of the text."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any, Literal

import yaml

from producer.basics.located import Path
from producer.library.nodes import LOADER


@dataclass(frozen=True, slots=True)
class Span:
    """Characters `start` to `end` (exclusive) of one node; `column` (from 0) is where it begins in its line.

    `style` is what it is written with: of a scalar `"`, `'`, `|`, `>` or "" for a plain one, of a mapping `{` and of a
    list `[` on one line, "" for one in lines of its own. Such a block begins at its first key or `-` and ends with its
    last value.
    """

    start: int
    end: int
    column: int
    kind: Literal["scalar", "mapping", "sequence"]
    style: str


@dataclass(slots=True)
class Spans:
    """Path -> span, of every value and of the keys; of keys written twice only the first, as they are read."""

    values: dict[Path, Span] = field(default_factory=dict)
    keys: dict[Path, Span] = field(default_factory=dict)


def spans(text: str) -> Spans:
    """The spans of a text that can be read (see `read_nodes`, which says what cannot)."""
    walk = _Walk(text)
    walk.read()
    return walk.found


class _Walk:
    def __init__(self, text: str) -> None:
        self.found = Spans()
        self._events: Iterator[Any] = iter(yaml.parse(text, Loader=LOADER))

    def read(self) -> None:
        for event in self._events:
            if isinstance(event, yaml.NodeEvent):
                self._node(event, (), kept=True)
            elif isinstance(event, yaml.DocumentEndEvent):
                return

    def _node(self, event: Any, path: Path, *, kept: bool) -> int:
        """Go over one node and what is in it; where it ends. One that is not `kept` leaves no span."""
        if isinstance(event, yaml.ScalarEvent):
            end = _end(event)
            span = _span(event, end, "scalar", event.style or "")
        elif isinstance(event, yaml.SequenceStartEvent):
            end = self._sequence(event, path, kept=kept)
            span = _span(event, end, "sequence", "[" if event.flow_style else "")
        else:
            end = self._mapping(event, path, kept=kept)
            span = _span(event, end, "mapping", "{" if event.flow_style else "")
        if kept:
            self.found.values[path] = span
        return end

    def _sequence(self, start: Any, path: Path, *, kept: bool) -> int:
        end = _end(start)
        for number, event in enumerate(self._events):
            if isinstance(event, yaml.SequenceEndEvent):
                return _end(event) if start.flow_style else end
            end = self._node(event, (*path, number), kept=kept)
        return end

    def _mapping(self, start: Any, path: Path, *, kept: bool) -> int:
        end = _end(start)
        seen: set[str] = set()
        for event in self._events:
            if isinstance(event, yaml.MappingEndEvent):
                return _end(event) if start.flow_style else end
            key, first = event.value, event.value not in seen
            seen.add(key)
            if kept and first:
                self.found.keys[(*path, key)] = _span(event, _end(event), "scalar", event.style or "")
            end = self._node(next(self._events), (*path, key), kept=kept and first)
        return end


def _span(event: Any, end: int, kind: Literal["scalar", "mapping", "sequence"], style: str) -> Span:
    mark = event.start_mark
    return Span(int(mark.index), end, int(mark.column), kind, style)


def _end(event: Any) -> int:
    return int(event.end_mark.index)
