"""What a caption file was read as: its cues, the words in time, and what was said, each line once.

Times are milliseconds from the start of the recording; a start is inclusive, an end exclusive. Nothing is put right
here: a cue may last no time, end before it starts or overlap its neighbour, and then a finding says so.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from producer.basics.finding import Finding
from producer.basics.place import Place

CaptionKind = Literal["srt", "vtt"]


@dataclass(frozen=True, slots=True)
class SaidWord:
    """One word as it is written in the captions, punctuation at its ends included, and when it starts.

    `timed` says that the file itself gives this time; otherwise it is the cue's time shared out by letters.
    """

    text: str
    start_ms: int
    timed: bool = False


@dataclass(frozen=True, slots=True)
class ReadCue:
    """One cue of a file. `place` is its line of times.

    `lines` are as people are shown them: tags and styles gone, blank lines left out. `raw` is the payload as it
    stands, its lines joined by LF. `words` are those said in this cue: what rolling captions repeat is left out.
    """

    start_ms: int
    end_ms: int
    lines: tuple[str, ...]
    raw: str
    place: Place
    words: tuple[SaidWord, ...] = ()

    @property
    def text(self) -> str:
        """The lines, one under the other."""
        return "\n".join(self.lines)


@dataclass(frozen=True, slots=True)
class SaidLine:
    """What one cue adds to what was said, on one line, its words in the order of their times; never empty.

    `end_ms` is never before `start_ms`. `place` is the line of times of its cue.
    """

    start_ms: int
    end_ms: int
    text: str
    words: tuple[SaidWord, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class CaptionFile:
    """A caption file read: `cues` and `said` in order of start (in the file's order where starts are equal).

    `findings` are in the order of the file; all that was dropped or is doubtful has one.
    """

    kind: CaptionKind
    file: str
    cues: tuple[ReadCue, ...] = ()
    said: tuple[SaidLine, ...] = ()
    findings: tuple[Finding, ...] = ()

    @property
    def words(self) -> Iterator[SaidWord]:
        """Every word said, line after line."""
        return (word for line in self.said for word in line.words)

    @property
    def end_ms(self) -> int:
        """When the last cue ends; 0 for a file without cues."""
        return max((max(cue.start_ms, cue.end_ms) for cue in self.cues), default=0)
