"""The narration as sections and passages, and when each is spoken."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

PassageKind = Literal["talk", "conditions", "value", "reason", "advice", "laps", "caution"]


@dataclass(frozen=True, slots=True)
class Board:
    """One text for the screen, and the words of the passage that bring it up ("" for the passage's start)."""

    lines: tuple[str, ...]
    cue_word: str = ""


@dataclass(frozen=True, slots=True)
class Passage:
    """One stretch that is spoken in one go. `text` is the prose to read, figures written out for the eye.

    `settings` are the addresses (splits included) whose values it speaks, in the order spoken; `boards` what it
    brings to the screen besides their values.
    """

    kind: PassageKind
    text: str
    settings: tuple[str, ...] = ()
    boards: tuple[Board, ...] = ()


@dataclass(frozen=True, slots=True)
class Section:
    """One part of the episode: `opening`, `short.suspension` (setup.page), `closing` ...

    `title` is for people (and for chapters); `shots` what to have on screen or to record for it.
    """

    id: str
    title: str
    setup: str | None
    page: str | None
    passages: tuple[Passage, ...]
    shots: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Narration:
    """The whole episode in the order it is told."""

    sections: tuple[Section, ...]


@dataclass(frozen=True, slots=True)
class Span:
    """When one passage is spoken: `section` and `passage` are indexes from 0; milliseconds, end exclusive."""

    section: int
    passage: int
    start_ms: int
    end_ms: int


@dataclass(frozen=True, slots=True)
class Pace:
    """The rate of reading an estimate is made with, and where it comes from: `channel.yaml`, the author's last takes
    (`takes` says how many), or nowhere: the usual one.
    """

    words_per_minute: Decimal
    source: Literal["channel", "takes", "usual"]
    takes: int = 0

    @property
    def told(self) -> str:
        """Where it comes from, to be said after the rate: `measured in your last take`."""
        if self.source == "channel":
            return "from channel.yaml"
        if self.source == "usual":
            return "the usual rate"
        return "measured in your last take" if self.takes == 1 else f"measured in your last {self.takes} takes"


@dataclass(frozen=True, slots=True)
class Timeline:
    """Every passage in time. `source` says where the times come from: `estimate` (or, after a take, `raw` or `cut`).

    `section_starts` has one entry a section, ms; `total_ms` is the length of the whole. `fast_ms` and `slow_ms` are the
    length at the ends of the band of reading rates.
    """

    spans: tuple[Span, ...]
    section_starts: tuple[int, ...]
    total_ms: int
    fast_ms: int
    slow_ms: int
    source: Literal["estimate", "raw", "cut"] = "estimate"
