"""WebVTT read by the parsing steps of W3C WebVTT, section 6.1: the cues that a browser makes of a file, no others.

What those steps throw away without a word is complained of here.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from producer.captions.blocks import Block, counted, quoted
from producer.captions.complaints import Complaints
from producer.captions.opening import has_signature, lines_of
from producer.captions.stamps import Times, vtt_times, vtt_trouble

_COMMENT = re.compile(r"NOTE(?:[ \t]|\Z)")
_HEADING = re.compile(r"(?:STYLE|REGION)[ \t\f]*\Z")
_NUMBER = re.compile(r"[0-9]{1,9}")


def vtt_blocks(text: str, complaints: Complaints) -> list[Block]:
    """The cues of a WebVTT file in its order. Never fails; a file without the signature has none."""
    if not has_signature(text):
        return []
    reader = _Reader(lines_of(text, "vtt"), complaints)
    if reader.lines[-1] == "":
        reader.lines.pop()  # what follows the last line end is no line
    reader.position = 1
    if reader.position < len(reader.lines) and reader.lines[1]:
        reader.header()
    while reader.position < len(reader.lines):
        if reader.lines[reader.position]:
            reader.block()
        else:
            reader.position += 1
    return reader.blocks


@dataclass
class _Reader:
    """`position` is the index of the next line; `cut` says that the last block was ended by an arrow inside it."""

    lines: list[str]
    complaints: Complaints
    position: int = 0
    blocks: list[Block] = field(default_factory=list)
    cut: bool = False

    def header(self) -> None:
        """Lines up to a blank one or the first cue: of no meaning to us."""
        while self.position < len(self.lines):
            line = self.lines[self.position]
            if "-->" in line:
                return
            self.position += 1
            if not line:
                return

    def block(self) -> None:
        """One block: a cue, a comment, a style, or text that nobody is shown."""
        first, was_cut = self.position, self.cut
        arrow: int | None = None
        self.cut = False
        while self.position < len(self.lines) and (line := self.lines[self.position]):
            if "-->" in line:
                if arrow is not None or self.position - first > 1:
                    self.cut = arrow is not None
                    break
                arrow = self.position
            self.position += 1
        if arrow is None:
            self._no_cue(first)
        else:
            self._cue(arrow, was_cut)

    def _cue(self, arrow: int, was_cut: bool) -> None:
        line = self.lines[arrow]
        payload = tuple((index + 1, self.lines[index]) for index in range(arrow + 1, self.position))
        times = vtt_times(line)
        place = self.complaints.at(arrow + 1, 1, len(line))
        if times is None:
            self._unreadable(arrow, payload, was_cut)
            return
        if was_cut and "-->" not in self.lines[arrow - 1]:
            self._stuck(arrow)
        if times.rest:
            self.complaints.add("text-left-out", place, f"{quoted(times.rest)} after the times is left out")
        self.blocks.append(_block(times, arrow, line, payload))

    def _unreadable(self, arrow: int, payload: tuple[tuple[int, str], ...], was_cut: bool) -> None:
        line = self.lines[arrow]
        place = self.complaints.at(arrow + 1, 1, len(line))
        lost = f" and {counted(len(payload), 'line')} after it" if payload else ""
        if was_cut:
            message = f"--> ends the cue above: players leave out {quoted(line)}{lost}"
            self.complaints.add("arrow-in-text", place, message, "write --&gt; in a text, or 'to'")
            return
        message = f"the times of this cue cannot be read, players leave it out: {vtt_trouble(line)}"
        self.complaints.add("cue-times-unreadable", place, message, "write 00:01:02.500 --> 00:01:04.000")

    def _stuck(self, arrow: int) -> None:
        above = self.lines[arrow - 1]
        message = "a blank line is missing above this line of times"
        if _NUMBER.fullmatch(above):
            message += f"; {quoted(above)} is taken for text of the cue before"
        self.complaints.add("missing-blank-line", arrow + 1, message, "put a blank line between two cues")

    def _no_cue(self, first: int) -> None:
        """A block without times. Comments are meant to be left out, styles and regions ahead of the first cue too."""
        opening = self.lines[first]
        if _COMMENT.match(opening) or (_HEADING.match(opening) and not self.blocks):
            return
        lines = counted(self.position - first, "line")
        message = f"{lines} without times, from {quoted(opening)} on: players leave them out"
        hint = "delete the blank line above, if this belongs to the cue before"
        self.complaints.add("text-left-out", self.complaints.at(first + 1, 1, len(opening)), message, hint)


def _block(times: Times, arrow: int, line: str, payload: tuple[tuple[int, str], ...]) -> Block:
    return Block(times.start_ms, times.end_ms, arrow + 1, len(line), payload)
