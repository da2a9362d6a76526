"""Values as Typst literals: whatever the author wrote stays a value and never becomes markup or code."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import fields, is_dataclass
from decimal import Decimal
from enum import Enum

_SPECIAL = {'"': '\\"', "\\": "\\\\", "\n": "\\n", "\r": "\\r", "\t": "\\t"}
# Besides the two that end a string or escape: control characters, and characters that turn or hide text.
_ESCAPED = re.compile('["\\\\\x00-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]')


def typst_literal(value: object) -> str:
    """`value` as Typst code: text, number, yes or no, none, list, dictionary; a record becomes a dictionary.

    Figures (Decimal) become text, so that Typst never rounds or writes them its own way. Raises TypeError for
    anything else: a template shows facts, not objects.
    """
    if value is None:
        return "none"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, Enum):
        return typst_literal(value.value)
    if isinstance(value, int | float):
        return repr(value)
    if isinstance(value, str | Decimal):
        return _text(str(value))
    return _compound(value)


def _compound(value: object) -> str:
    if is_dataclass(value) and not isinstance(value, type):
        return _dictionary({one.name: getattr(value, one.name) for one in fields(value)})
    if isinstance(value, Mapping):
        return _dictionary(value)
    if isinstance(value, Sequence):
        return "(" + "".join(f"{typst_literal(item)}, " for item in value) + ")"
    raise TypeError(f"a template cannot show a {type(value).__name__}")


def _dictionary(items: Mapping[object, object]) -> str:
    if not items:
        return "(:)"
    return "(" + "".join(f"{_text(str(key))}: {typst_literal(item)}, " for key, item in items.items()) + ")"


def _text(text: str) -> str:
    return '"' + _ESCAPED.sub(_escape, text) + '"'


def _escape(match: re.Match[str]) -> str:
    letter = match.group()
    return _SPECIAL.get(letter) or f"\\u{{{ord(letter):x}}}"
