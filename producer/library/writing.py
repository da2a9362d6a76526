"""New values as YAML is written by hand: plain where that is safe, texts of several lines as they stand."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence

# What a file may be given: texts, lists and mappings of them, nothing. Kinds are decided by the field, as in reading.
Given = str | None | Sequence["Given"] | Mapping[str, "Given"]

_PLAIN = re.compile(r"[A-Za-z0-9](?:[A-Za-z0-9_./%+ -]*[A-Za-z0-9_./%+-])?")
_NOTHING = frozenset({"~", "null", "Null", "NULL"})
# What JSON leaves as it is and no library file may hold.
_ODD = re.compile("[\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff]")


def double_quoted(text: str) -> str:
    """The text between double quotes, with a code for what cannot stand in a file."""
    return _ODD.sub(lambda odd: f"\\u{ord(odd.group()):04x}", json.dumps(text, ensure_ascii=False))


def single_quoted(text: str) -> str:
    """The text between single quotes; for one line."""
    return "'" + text.replace("'", "''") + "'"


def on_one_line(value: Given) -> str:
    """A value in one line: `new`, `"@handle"`, `[loose exit]`, `{ me: hard, field: hard }`."""
    if value is None:
        return "null"
    if isinstance(value, str):
        return value if _PLAIN.fullmatch(value) and value not in _NOTHING else double_quoted(value)
    if isinstance(value, Mapping):
        inside = ", ".join(f"{on_one_line(key)}: {on_one_line(one)}" for key, one in value.items())
        return f"{{ {inside} }}" if inside else "{}"
    return f"[{', '.join(on_one_line(one) for one in value)}]"


def entry(key: str, value: Given, indent: int) -> list[str]:
    """`key: value` as lines without their ends, indented by so many blanks; a text of several lines as a block."""
    blanks = " " * indent
    if isinstance(value, str) and _can_be_block(value):
        inside = [f"{blanks}  {line}" if line else "" for line in value[:-1].split("\n")]
        return [f"{blanks}{on_one_line(key)}: |", *inside]
    return [f"{blanks}{on_one_line(key)}: {on_one_line(value)}"]


def item(value: Given, dash: int, inside: int) -> list[str]:
    """One item of a list as lines: the `-` after `dash` blanks, what it holds after `inside`."""
    if not isinstance(value, Mapping) or not value:
        return [f"{' ' * dash}-{' ' * (inside - dash - 1)}{on_one_line(value)}"]
    lines = [line for key, one in value.items() for line in entry(key, one, inside)]
    return [f"{' ' * dash}-{lines[0][dash + 1 :]}", *lines[1:]]


def _can_be_block(text: str) -> bool:
    """Whether a text of whole lines can stand as it is: no blank at its start, no empty line at either end."""
    whole = text.endswith("\n") and not text.endswith("\n\n") and text[0] not in " \t\n"
    return whole and not _ODD.search(text) and all(one == "\n" or ord(one) >= 32 for one in text)
