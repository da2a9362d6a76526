"""SubRip read. No standard exists: this is what real files hold.

A line of times opens a cue wherever it stands; the line of digits before it is the cue's number, whether or not it is
missing, zero, repeated, or stuck to the text above it. All other lines are text, those of digits alone as well.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from itertools import pairwise

from producer.captions.blocks import Block, counted, quoted
from producer.captions.complaints import Complaints
from producer.captions.opening import lines_of
from producer.captions.stamps import Times, looks_like_times, srt_times

_NUMBER = re.compile(r"\s*([0-9]{1,9})\s*")


def srt_blocks(text: str, complaints: Complaints) -> list[Block]:
    """The cues of a SubRip file in its order; whatever is dropped or doubtful is complained of. Never fails."""
    reader = _Reader(complaints)
    for number, line in enumerate(lines_of(text, "srt"), 1):
        reader.take(number, line)
    reader.close()
    return reader.blocks


@dataclass
class _Reader:
    """The file as far as it is read: `times` None before the first cue and inside one that cannot be read."""

    complaints: Complaints
    blocks: list[Block] = field(default_factory=list)
    times: Times | None = None
    at: tuple[int, int] = (0, 1)
    lines: list[tuple[int, str]] = field(default_factory=list)
    number: int | None = None
    numbers_told: bool = False

    def take(self, number: int, line: str) -> None:
        """The next line of the file."""
        times = srt_times(line) if "-->" in line else None
        if times is None and not looks_like_times(line):
            self._text(number, line)
            return
        cue_number = self._number_above(number)
        self.close()
        self.times, self.at = times, (number, len(line))
        self._check_number(number, cue_number)
        self._check_times(number, line, times)

    def close(self) -> None:
        """End of a cue, or of what stands before the first."""
        lines = _without_outer_blanks(self.lines)
        self.lines = []
        if self.times is not None:
            self._check_blanks(lines)
            payload = tuple((number, text) for number, text in lines if text.strip())
            self.blocks.append(Block(self.times.start_ms, self.times.end_ms, *self.at, payload))
        elif lines:
            first, text = lines[0]
            where = "above the first cue" if self.at[0] == 0 else "of a cue without times"
            told = sum(1 for _, one in lines if one.strip())
            message = f"{counted(told, 'line')} {where} left out, from {quoted(text)} on"
            self.complaints.add("text-left-out", self.complaints.at(first, 1, len(text)), message)

    def _text(self, number: int, line: str) -> None:
        if "-->" in line:
            message = "some programs take a line with --> for a line of times; here it is text"
            self.complaints.add("arrow-in-text", self.complaints.at(number, 1, len(line)), message, "write 'to'")
        self.lines.append((number, line))

    def _number_above(self, line: int) -> int | None:
        """The cue's number, taken off the lines above its times; None where there is none.

        Straight above the times any number is one, unless it would rob a file without numbers of its text; with
        blank lines between only the one that comes next.
        """
        lines = self.lines
        last = next((index for index in reversed(range(len(lines))) if lines[index][1].strip()), None)
        found = _NUMBER.fullmatch(lines[last][1]) if last is not None else None
        if last is None or found is None:
            return None
        value = int(found[1])
        follows = value == (self.number or 0) + 1
        after_blank = self.at[0] == 0 if last == 0 else not lines[last - 1][1].strip()
        straight = lines[last][0] == line - 1
        if not (follows or (straight and (after_blank or self.number is not None))):
            return None
        if not after_blank and self.at[0]:
            message = f"a blank line is missing above cue {value}; its number is not taken for text"
            self.complaints.add("missing-blank-line", lines[last][0], message, "put a blank line above")
        del lines[last:]
        return value

    def _check_number(self, line: int, number: int | None) -> None:
        expected = (self.number or 0) + 1
        if number is not None:
            self.number = number
        elif self.number is not None:
            self.number = expected
        if number != expected and not self.numbers_told:
            self.numbers_told = True
            is_there = "no number stands" if number is None else f"{number} stands"
            message = f"the cues are not numbered 1, 2, 3: {is_there} here instead of {expected}"
            self.complaints.note("cue-number-odd", line, message)

    def _check_times(self, number: int, line: str, times: Times | None) -> None:
        place = self.complaints.at(number, 1, len(line))
        if times is None:
            message = f"the times of this cue cannot be read, it is left out: {quoted(line)}"
            self.complaints.add("cue-times-unreadable", place, message, "write 00:01:02,500 --> 00:01:04,000")
            return
        if times.short:
            message = f"{times.short}; some programs take one or two digits for tenths or hundredths"
            self.complaints.add("cue-short-milliseconds", place, message, "write three digits")
        if times.odd:
            self.complaints.add("cue-times-odd", place, times.odd)
        if times.rest:
            self.complaints.add("text-left-out", place, f"{quoted(times.rest)} after the times is left out")

    def _check_blanks(self, lines: list[tuple[int, str]]) -> None:
        for (_, before), (number, text) in pairwise(lines):
            if not before.strip() and text.strip():
                message = "text after a blank line and without times of its own: taken as part of the cue above"
                self.complaints.add("blank-line-in-cue", self.complaints.at(number, 1, len(text)), message)


def _without_outer_blanks(lines: list[tuple[int, str]]) -> list[tuple[int, str]]:
    filled = [index for index, (_, text) in enumerate(lines) if text.strip()]
    return lines[filled[0] : filled[-1] + 1] if filled else []
