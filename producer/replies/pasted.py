"""Messages as they are pasted: one or many, an empty or drawn line between, each with its writer's name or without."""

from __future__ import annotations

import re
from dataclasses import dataclass

# An empty line, or one that is drawn.
_BETWEEN = re.compile(r"\n[ \t]*(?:[-=_*\u2013\u2014]{3,}[ \t]*)?(?=\n)")
_NAME = r"@[^\W_][\w.-]{0,79}|@_[\w.-]{1,79}"
# A line with nothing but a name, and perhaps how long ago it was written.
_AGO = r"(?:\s*[^\w\s]?\s*\(?\d+\s*[a-z]+\.?(?:\s+ago)?\)?)?(?:\s*\(edited\))?"
_ALONE = re.compile(rf"({_NAME})[:,]?{_AGO}", re.IGNORECASE)
_BEFORE = re.compile(rf"({_NAME})\s*:\s+(?=\S)")


@dataclass(frozen=True, slots=True)
class Pasted:
    """One message: `handle` None where no name stands at its head; `text` without blanks at the ends of its lines."""

    handle: str | None
    text: str


def pasted(text: str) -> tuple[Pasted, ...]:
    """The messages of a pasted text, in their order.

    A name is `@somebody` in a line of its own above the message (an empty line may follow it), or before a colon. One
    that only begins a sentence is no sender: it may be who the message is for.
    """
    found: list[Pasted] = []
    waiting: str | None = None
    for block in _blocks(text):
        handle, said = _headed(block)
        if not said:
            waiting = handle
            continue
        found.append(Pasted(handle or waiting, said))
        waiting = None
    return tuple(found)


def same(one: str, other: str) -> bool:
    """Whether two messages say the same, line breaks, case and blanks aside."""
    return one.casefold().split() == other.casefold().split()


def _blocks(text: str) -> list[str]:
    lines = re.split(r"\r\n|\n|\r", text)
    clean = "\n".join("".join(_shown(letter) for letter in line).rstrip() for line in lines)
    return [block.strip() for block in _BETWEEN.split(f"\n{clean}\n") if block.strip()]


def _shown(letter: str) -> str:
    """Letters that show, blanks as one kind; what steers a terminal or hides goes."""
    if letter.isspace():
        return " "
    return letter if letter.isprintable() or letter in "\u200d\ufe0f" else ""


def _headed(block: str) -> tuple[str | None, str]:
    """The name at the head of a block, and the message below or behind it."""
    first, _, rest = block.partition("\n")
    alone = _ALONE.fullmatch(first.strip())
    if alone is not None:
        return alone.group(1), rest.strip()
    before = _BEFORE.match(block)
    if before is not None:
        return before.group(1), block[before.end() :].strip()
    return None, block
