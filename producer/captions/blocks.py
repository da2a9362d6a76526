"""A cue as a file has it, before its payload is read: what the reader of each format hands on."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Block:
    """Times in ms, the line (from 1) and width of the line of times, and the payload: each line with its number."""

    start_ms: int
    end_ms: int
    line: int
    width: int
    payload: tuple[tuple[int, str], ...]

    @property
    def raw(self) -> str:
        """The payload as it stands, lines joined by LF."""
        return "\n".join(text for _, text in self.payload)


def counted(number: int, thing: str) -> str:
    """`1 line`, `2 lines`."""
    return f"{number} {thing}" if number == 1 else f"{number} {thing}s"


def quoted(text: str, most: int = 40) -> str:
    """A piece of a file as messages cite it: one line, not too long."""
    short = " ".join(text.split())
    return f"'{short}'" if len(short) <= most else f"'{short[: most - 1]}\u2026'"
