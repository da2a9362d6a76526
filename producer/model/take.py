"""What a recorded take was heard as: where its sections are, what was said otherwise than written, what was left out.

Times are milliseconds from the start of the caption file that is named, a start inclusive and an end exclusive.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from producer.basics.finding import Finding, Severity
from producer.basics.place import Place
from producer.model.said import CaptionFile, SaidLine
from producer.model.script import Narration, Timeline

TakeOf = Literal["raw", "cut"]
About = Literal["parameter", "condition", "caution", "section", "name"]
PlacedBy = Literal["words", "names", "nothing"]


@dataclass(frozen=True, slots=True)
class TakeFile:
    """A caption file of an episode: of the take as recorded (`raw`) or of the finished cut."""

    of: TakeOf
    captions: CaptionFile

    @property
    def file(self) -> str:
        """What it is called in the library."""
        return self.captions.file


@dataclass(frozen=True, slots=True)
class HeardSection:
    """A section of the script in the take; `start_ms` and `end_ms` None where it was left out.

    `confidence`: 0 to 1, how alike its first words are (by `words`) or how many of its settings are heard there (by
    `names`). `earlier`: where it was said before; the last time counts. `otherwise_ms`: where the second way of lining
    up puts it, None where both agree within two words. `moved`: it is told out of the script's order.
    """

    section: str
    title: str
    start_ms: int | None
    end_ms: int | None
    placed_by: PlacedBy
    confidence: float
    earlier: tuple[int, ...] = ()
    otherwise_ms: int | None = None
    moved: bool = False


@dataclass(frozen=True, slots=True)
class Aside:
    """A stretch of at least twenty words that stands nowhere in the script."""

    start_ms: int
    end_ms: int
    text: str


DIFFERS, MISSING = "said-differs", "not-said"
TO_RECORD = (DIFFERS, MISSING)
"""The codes of what has to be recorded again; the others are only to know."""


@dataclass(frozen=True, slots=True)
class TakeFinding:
    """Something to record again, or to know about.

    `said` and `expected` are figures in the setting's unit, or words. `parameter` and `setup` are ids, None where it is
    about something else. `again` is a sentence to say, "" where none is needed. `at_ms` is None for what is nowhere.
    """

    code: str
    about: About
    at_ms: int | None
    said: Decimal | str | None
    expected: Decimal | str | None
    parameter: str | None
    setup: str | None
    message: str
    again: str
    place: Place
    severity: Severity = Severity.WARNING

    @property
    def finding(self) -> Finding:
        """As every other finding: its place is the line of times in the caption file."""
        hint = f'say "{self.again}"' if self.again else ""
        return Finding(self.code, self.severity, self.place, self.message, hint)


@dataclass(frozen=True, slots=True)
class SaidFigure:
    """A figure that is heard of a setting or split: `start_ms` of its first word; all it may mean, without signs."""

    start_ms: int
    parameter: str
    readings: frozenset[Decimal]


@dataclass(frozen=True, slots=True)
class Mended:
    """What a pick-up mends: the finding it strikes from the list, and where the pick-up says it rightly: its file as it
    is called in the library, and ms from that file's start."""

    finding: TakeFinding
    file: str
    start_ms: int


@dataclass(frozen=True, slots=True)
class WordCount:
    """Words of the script, of the take, and how many were found in both in the same order."""

    matched: int
    script: int
    take: int


@dataclass(frozen=True, slots=True)
class Take:
    """A take, whole. `of` and `file` say which file the times are of; `pick_ups` are the further raw files.

    `findings` are in order of time, those without one last. `words_per_minute`: the author's own rate, pauses of more
    than 1.5 s left out; 0 where less than half a minute was spoken. `narration` and `timeline` are the episode as it
    was told: only the sections that are in the take, in its order; None where it is not this episode (`stranger` then
    says what speaks for that). `mended`: what pick-ups strike from the findings, in order of time.
    `said` is what `file` says, line by line, and `figures` what of it is a setting's figure.
    """

    of: TakeOf
    file: str
    pick_ups: tuple[str, ...]
    sections: tuple[HeardSection, ...]
    words: WordCount
    asides: tuple[Aside, ...]
    findings: tuple[TakeFinding, ...]
    words_per_minute: int
    length_ms: int
    narration: Narration | None
    timeline: Timeline | None
    stranger: str = ""
    mended: tuple[Mended, ...] = ()
    said: tuple[SaidLine, ...] = ()
    figures: tuple[SaidFigure, ...] = ()
