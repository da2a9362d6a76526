"""Files as people leave them: mixed quotes, comments, empty lines, lists of both kinds, either line end."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from hypothesis import strategies as st

from producer.library.writing import double_quoted, single_quoted

Draw = Callable[[Any], Any]
WORDS = st.text("abcxyz019 .:#'\"-{}[]\u00e9\u20ac\U0001f3c1", min_size=1, max_size=12)
KEYS = st.sampled_from(["id", "status", "text", "from", "setup", "values", "to be", "r\u00e9sum\u00e9"])
PLAIN = st.sampled_from(["new", "700", "3.90", "2026-11-05", "loose exit", "yes", "off", "a plain  one", "it's"])
NOISE = st.sampled_from(["", "", "", "  # why", "   #'quote", " # {{ a }}: [b"])
LINES = st.sampled_from(["", "", "", "\n", "# alone: here\n", "\n\n"])


@st.composite
def files(draw: Draw) -> str:
    """A whole file, a mapping at its top."""
    body = draw(LINES) + _mapping(draw, 0, 0)
    if draw(st.booleans()) and not body.rstrip("\n").endswith(("|", ">")):
        body += "# the end\n"
    newline = draw(st.sampled_from(["\n", "\n", "\r\n"]))
    mark = draw(st.sampled_from(["", "", "\ufeff"]))
    return str(mark + body.replace("\n", newline))


def _mapping(draw: Draw, indent: int, depth: int) -> str:
    keys = draw(st.lists(KEYS, min_size=1, max_size=4, unique=True))
    return "".join(f"{' ' * indent}{key}:{_value(draw, indent, depth)}" for key in keys)


def _value(draw: Draw, indent: int, depth: int) -> str:
    kind = draw(st.integers(0, 9 if depth < 3 else 6))
    if kind < 6:
        return f" {_scalar(draw)}{draw(NOISE)}\n{draw(LINES)}"
    if kind == 6:
        mark = draw(st.sampled_from(["|", "|-", "|+", ">", ">-"]))
        inner = "".join(f"{' ' * (indent + 2)}{draw(PLAIN)}\n" for _ in range(draw(st.integers(1, 3))))
        return f" {mark}{draw(NOISE)}\n{inner}{draw(st.sampled_from(['', chr(10)]))}"
    if kind == 7:
        return f" {_flow(draw, 0)}{draw(NOISE)}\n"
    if kind == 8:
        return f"{draw(NOISE)}\n{_mapping(draw, indent + draw(st.integers(1, 4)), depth + 1)}"
    return f"{draw(NOISE)}\n{_list(draw, indent + draw(st.integers(0, 2)), depth + 1)}"


def _list(draw: Draw, indent: int, depth: int) -> str:
    gap = draw(st.integers(1, 3))
    rows = []
    for _ in range(draw(st.integers(1, 3))):
        if draw(st.booleans()):
            rows.append(f"{' ' * indent}-{' ' * gap}{_scalar(draw)}{draw(NOISE)}\n")
        else:
            inner = _mapping(draw, indent + 1 + gap, depth + 1)
            rows.append(f"{' ' * indent}-{' ' * gap}{inner.lstrip(' ')}")
        rows.append(draw(LINES))
    return "".join(rows)


def _scalar(draw: Draw) -> str:
    kind = draw(st.integers(0, 3))
    if kind == 0:
        return double_quoted(draw(WORDS))
    if kind == 1:
        return single_quoted(draw(WORDS))
    return str(draw(PLAIN)) if kind == 2 else draw(st.sampled_from(["", "~", "null", "x"]))


def _flow(draw: Draw, depth: int) -> str:
    if depth > 1 or draw(st.booleans()):
        return str(draw(st.sampled_from(["a", "'b, c'", '"d: e"', "12.5"])))
    inner = [_flow(draw, depth + 1) for _ in range(draw(st.integers(0, 3)))]
    if draw(st.booleans()):
        return f"[{', '.join(inner)}]"
    pairs = ", ".join(f"k{number}: {one}" for number, one in enumerate(inner))
    return f"{{ {pairs} }}" if pairs else "{}"
