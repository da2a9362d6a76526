"""What YAML's parser stumbles over, in plain words: where to look, what is wrong there, what to type instead.

The parser names what it expected by its grammar, and often only lines below the slip. What people really do
(a tab, a colon in a text, a quote that never closes, a comma left out) is recognised from the line itself. The words
of both parsers (PyYAML's C part and its pure one) are understood.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any, NamedTuple

_COLON = re.compile(r":(?=\s|$)")
_QUOTED = re.compile(r"\"[^\"]*\"|'[^']*'")
_WORD = re.compile(r"[^\s,}\]]*")
QUOTED_REFERENCE = 'a value with {{ }} is written in quotes: "{{ spring.rf }}"'


class Trouble(NamedTuple):
    """Line and column (from 1) to look at, what is wrong, what to do."""

    line: int
    column: int
    message: str
    hint: str


Spot = tuple[int, int]
Line = Callable[[int], str]


def trouble(error: Any, line_at: Line) -> Trouble:
    """A parser's error in plain words. `line_at` gives a line of the file by its number from 1, without its end."""
    problem = str(error.problem or error.context or "it ends in the middle of something")
    at = _spot(error.problem_mark) or _spot(error.context_mark) or (1, 1)
    around = _spot(error.context_mark) or at
    row = line_at(at[0])
    for rule in (_tab, _reference, _token, _colon, _no_colon, _quote, _bracket, _block, _escape, _place):
        found = rule(problem, at, around, line_at)
        if found is not None:
            return found
    hint = "look at the punctuation of this line and the one above" if row else "look at the end of the file"
    return Trouble(*at, f"this is not YAML: {problem}", hint)


def _spot(mark: Any) -> Spot | None:
    return (mark.line + 1, mark.column + 1) if mark is not None else None


def _tab(problem: str, at: Spot, _: Spot, line_at: Line) -> Trouble | None:
    row = line_at(at[0])
    if "\t" in row[: len(row) - len(row.lstrip())] or "\\t" in problem:
        return Trouble(*at, "a tab stands in the indentation", "indent with spaces; YAML refuses tabs")
    return _no_break(at, line_at)


def _no_break(at: Spot, line_at: Line) -> Trouble | None:
    """A blank that only looks like one, pasted into the indentation of this line or the one above."""
    for number in (at[0], at[0] - 1):
        row = line_at(number)
        indent = row[: len(row) - len(row.lstrip())]
        if "\u00a0" in indent:
            message = "a no-break space (U+00A0) stands in the indentation"
            return Trouble(number, indent.index("\u00a0") + 1, message, "delete it and type plain spaces")
    return None


def _reference(_problem: str, at: Spot, _: Spot, line_at: Line) -> Trouble | None:
    if "{{" in _QUOTED.sub("", line_at(at[0])):
        return Trouble(*at, "{{ }} without quotes is not read as a reference", QUOTED_REFERENCE)
    return None


def _token(problem: str, at: Spot, _: Spot, line_at: Line) -> Trouble | None:
    if "cannot start any token" not in problem:
        return None
    found = _WORD.match(line_at(at[0]), at[1] - 1)
    word = found.group() if found else ""
    if not word:
        return None
    return Trouble(*at, f"a value cannot begin with '{word[:1]}'", f'write it in quotes: "{word[:40]}"')


def _colon(problem: str, at: Spot, _: Spot, line_at: Line) -> Trouble | None:
    if "mapping values are not allowed" not in problem:
        return None
    row = line_at(at[0])
    if not _COLON.search(row[: at[1] - 1]):
        message = "this line is indented as if it belonged to the one above, which has a value already"
        return Trouble(*at, message, "put it in line with the keys beside it")
    if any(quote in row for quote in "\u201c\u201d\u201e"):
        return Trouble(*at, "curly quotes are letters like any other", 'type straight quotes: "one: two"')
    return Trouble(*at, "a second colon stands in this line", 'a text with a colon in it is written in quotes: "a: b"')


def _no_colon(problem: str, _: Spot, around: Spot, _line_at: Line) -> Trouble | None:
    if "could not find expected ':'" not in problem:
        return None
    return Trouble(*around, "this line has no colon and blank after its key", "write 'key: value'")


def _quote(problem: str, at: Spot, around: Spot, line_at: Line) -> Trouble | None:
    """A quote that never closes ends at the next one, lines below: the line where it opened is named."""
    if "end of stream" in problem:
        return Trouble(*around, "a quote opens here and never closes", "close it at the end of the text")
    before = line_at(at[0])[: at[1] - 1].rstrip()
    if not before.endswith(('"', "'")) or "expected" not in problem:
        return None
    quote = before[-1]
    for number in range(at[0], 0, -1):
        row = line_at(number)
        if row.count(quote) % 2 and number < at[0]:
            hint = f"close it; reading broke off on line {at[0]}"
            return Trouble(number, row.index(quote) + 1, "a quote opens here and does not close in this line", hint)
        if row.count(quote) % 2:
            break
    inside = "it''s" if quote == "'" else "'this'"
    hint = f"put quotes around all of it; inside them write {inside}"
    return Trouble(*at, "the text goes on after a closing quote", hint)


def _bracket(problem: str, at: Spot, around: Spot, _line_at: Line) -> Trouble | None:
    closing = next((one for one in "]}" if f"',' or '{one}'" in problem), None)
    if closing is None:
        return None
    if at[0] == around[0]:
        return Trouble(*at, f"a comma or '{closing}' is missing before here", "in brackets: { one: 1, another: 2 }")
    return Trouble(*around, "a bracket opens here and never closes", f"close it with '{closing}'")


def _block(problem: str, at: Spot, _: Spot, _line_at: Line) -> Trouble | None:
    if "comment or line break" not in problem and "chomping" not in problem:
        return None
    return Trouble(*at, "text stands in the line of the '|' or '>'", "begin it on the next line, indented")


def _escape(problem: str, at: Spot, _: Spot, _line_at: Line) -> Trouble | None:
    if "unknown escape" not in problem:
        return None
    return Trouble(*at, "a backslash in double quotes is a code, and not this one", "write / or use single quotes")


def _place(problem: str, at: Spot, _: Spot, line_at: Line) -> Trouble | None:
    """Nothing odd in the line itself: it stands in the wrong column."""
    if not line_at(at[0])[: at[1] - 1].strip(" -") and "expected" in problem:
        message = "this line does not line up with those above it"
        return Trouble(*at, message, "begin it under the keys, or the '-', that it belongs with")
    return None
