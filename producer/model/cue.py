"""Captions as they pass from one engine to another: cues, chapters, marks and the limits of readability."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

MarkKind = Literal["section", "caption", "pick-up"]


@dataclass(frozen=True, slots=True)
class Cue:
    """Lines shown from `start_ms` (inclusive) to `end_ms` (exclusive), milliseconds from the start of the video.

    Nothing is checked here: a cue read from a file may last no time, have no lines or overlap its neighbour.
    What is written is checked by the writers.
    """

    start_ms: int
    end_ms: int
    lines: tuple[str, ...]

    @property
    def text(self) -> str:
        """The lines, one under the other."""
        return "\n".join(self.lines)

    @property
    def duration_ms(self) -> int:
        """How long it is shown."""
        return self.end_ms - self.start_ms


@dataclass(frozen=True, slots=True)
class Chapter:
    """A chapter of a video: begins at `start_ms` and lasts until the next one or the end."""

    start_ms: int
    title: str


@dataclass(frozen=True, slots=True)
class Mark:
    """One row of a cue sheet for an editor: from `start_ms` (inclusive) to `end_ms` (exclusive), milliseconds.

    `name` is what the editor sees on the timeline, one short line; `note` says what to do there and may be empty.
    A mark that only points somewhere ends where it starts.
    """

    start_ms: int
    end_ms: int
    kind: MarkKind
    name: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class ReadingProfile:
    """What a viewer can read. The defaults are the profile `web`.

    - `characters_per_line` 42, `lines` 2, `characters_per_second` 20, `shortest_ms` 833 (20 frames at 24 a
      second), `longest_ms` 7000, `gap_ms` 500 (cues touch, or stand at least this far apart): common practice
      of streaming services, no standard;
    - `words_per_minute` 180: upper end of the 160-180 of the BBC Subtitle Guidelines 1.2.5, section 4;
    - `figure_ms` 300 more for each figure: extra time for long figures is the BBC's (section 4.3.6), its size
      is their 0.3 s a word (section 4.1) once more.

    Limits are times, never counts of frames: a video may have any rate.
    Raises ValueError, with a sentence for the author, for limits that no cue can meet.
    """

    characters_per_line: int = 42
    lines: int = 2
    characters_per_second: float = 20
    words_per_minute: float = 180
    shortest_ms: int = 833
    longest_ms: int = 7000
    gap_ms: int = 500
    figure_ms: int = 300

    def __post_init__(self) -> None:
        if self.characters_per_line < 1 or self.lines < 1:
            raise ValueError("captions need at least one line of one character")
        if not (self.characters_per_second > 0 and self.words_per_minute > 0):
            raise ValueError("the reading speed of captions must be above zero")
        if self.shortest_ms < 1 or self.gap_ms < 0 or self.figure_ms < 0:
            raise ValueError("times of captions must not be negative, the shortest at least a millisecond")
        if self.longest_ms < self.shortest_ms + self.gap_ms:
            raise ValueError(
                "the longest caption must last as long as the shortest and a gap together: "
                f"at least {(self.shortest_ms + self.gap_ms) / 1000:g} s"
            )

    @classmethod
    def web(cls) -> ReadingProfile:
        """The defaults."""
        return cls()

    @classmethod
    def broadcast(cls) -> ReadingProfile:
        """As `web` with 37 characters a line.

        BBC Subtitle Guidelines 1.2.5: section 3.1 (line length), section 4 (160-180 words a minute, its upper end,
        as in `web`: faster than that is a fault, slower is not).
        """
        return cls(characters_per_line=37)


def named_profile(name: str) -> ReadingProfile:
    """The profile `web` or `broadcast`. Raises ValueError for any other name."""
    if name == "web":
        return ReadingProfile.web()
    if name == "broadcast":
        return ReadingProfile.broadcast()
    raise ValueError(f"'{name}' is not a reading profile: web or broadcast")
