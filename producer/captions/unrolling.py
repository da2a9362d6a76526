"""What was said, each line once: rolling captions unrolled, and every word given its time.

Automatic captions roll: each cue repeats the last line of the one before above its own, and a cue of a few
milliseconds between two shows the finished line alone (seen in files of such services, no published description).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from producer.captions.blocks import Block
from producer.captions.cue_text import CueText, TextLine
from producer.model.said import SaidWord

_TOUCHING_MS = 250  # cues further apart than this do not roll into one another: the line is said again


@dataclass(frozen=True, slots=True)
class Part:
    """A cue and its text."""

    block: Block
    text: CueText

    @property
    def lines(self) -> list[TextLine]:
        """The lines that hold words."""
        return [line for line in self.text.lines if line.words]


def new_lines(parts: Sequence[Part]) -> list[list[TextLine]]:
    """Of each cue the lines that it does not repeat from the one before, in the order given."""
    if not _rolls(parts):
        return [part.lines for part in parts]
    fresh = [parts[0].lines] if parts else []
    fresh += [after.lines[_repeated(before, after) :] for before, after in pairwise(parts)]
    return fresh


def timed(lines: Sequence[TextLine], block: Block) -> tuple[SaidWord, ...]:
    """The words of a cue in time: each at the last stamp before it, those ahead of the first stamp shared out between
    the start of the cue and that stamp (the end of the cue where there is none). The first word starts with the cue.
    """
    words = [word for line in lines for word in line.words]
    stamped = [SaidWord(text, stamp, timed=True) for text, stamp in words if stamp is not None]
    ahead = [text for text, stamp in words if stamp is None]
    until = stamped[0].start_ms if stamped else block.end_ms
    return (*_shared(ahead, block.start_ms, until), *stamped)


def _shared(words: Sequence[str], start: int, until: int) -> list[SaidWord]:
    """Words one after the other from `start` to `until`, each with time by its letters and the space after it."""
    whole = sum(len(word) + 1 for word in words)
    room, before = max(0, until - start), 0
    found = []
    for word in words:
        found.append(SaidWord(word, start + room * before // whole, timed=not before))
        before += len(word) + 1
    return found


def _rolls(parts: Sequence[Part]) -> bool:
    """Whether a file rolls: words have times in it, or at least twice and in a quarter of its cues a line moves up."""
    if any(line.stamped for part in parts for line in part.text.lines):
        return True
    moved = sum(1 for before, after in pairwise(parts) if 0 < _repeated(before, after) < len(after.lines))
    return moved >= 2 and moved * 4 >= len(parts) - 1


def _repeated(before: Part, after: Part) -> int:
    """How many first lines of a cue are the last ones of the cue before.

    A line with times of words is new, and what stands above it is old however long ago it was said.
    """
    most = next((index for index, line in enumerate(after.lines) if line.stamped), None)
    if most is None:
        most = len(after.lines)
        if after.block.start_ms - before.block.end_ms > _TOUCHING_MS:
            return 0
    lines = [line.text for line in before.lines]
    for count in range(min(most, len(lines)), 0, -1):
        if lines[-count:] == [line.text for line in after.lines[:count]]:
            return count
    return 0
