"""What every caption file shares: text made fit for a payload, the order of cues, and time stamps."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from producer.model.cue import Cue

# Line ends of WebVTT (section 4.1) and the others of Unicode (UAX 14: BK, NL), which some readers take for one.
_LINE_END = re.compile(r"\r\n|[\n\r\v\f\x1c-\x1e\x85\u2028\u2029]")
# Controls, byte order marks and halves of surrogate pairs, which UTF-8 can't hold.
_DROPPED = re.compile(r"[\x00-\x08\x0e-\x1b\x1f\x7f-\x9f\ufeff]")
_HALF = re.compile(r"[\ud800-\udfff]")


class CaptionError(ValueError):
    """Cues that no caption file can hold (no time, out of order): a mistake of the caller, never of the author."""


def clean_lines(lines: Iterable[str]) -> tuple[str, ...]:
    """The author's lines without what a payload can't hold: controls, blank lines, space at the ends.

    A line end inside a line divides it; a tab becomes a space; half a surrogate pair becomes U+FFFD. Never fails.
    """
    whole = _DROPPED.sub("", _LINE_END.sub("\n", "\n".join(lines)).replace("\t", " "))
    stripped = (line.strip() for line in _HALF.sub("\ufffd", whole).split("\n"))
    return tuple(line for line in stripped if line)


def clean_line(text: str) -> str:
    """The same as one line."""
    return " ".join(clean_lines((text,)))


def written(cues: Iterable[Cue]) -> Iterator[Cue]:
    """The cues as they can be written: clean lines, those without any text left out, order and times checked.

    Raises CaptionError where a cue starts before zero, ends no later than it starts, or starts before its forerunner.
    """
    last = 0
    for number, cue in enumerate(cues, 1):
        _check_times(cue, number, last)
        last = cue.start_ms
        if lines := clean_lines(cue.lines):
            yield Cue(cue.start_ms, cue.end_ms, lines)


def _check_times(cue: Cue, number: int, last_ms: int) -> None:
    if cue.start_ms < 0:
        raise CaptionError(f"cue {number} starts before zero: {cue.start_ms} ms")
    if cue.end_ms <= cue.start_ms:
        raise CaptionError(f"cue {number} ends at {cue.end_ms} ms, no later than it starts")
    if cue.start_ms < last_ms:
        raise CaptionError(f"cue {number} starts at {cue.start_ms} ms, before the one ahead of it at {last_ms} ms")


def check_rising(starts_ms: Sequence[int], what: str) -> None:
    """Raises CaptionError unless every start is later than the one before."""
    for number, (before, start) in enumerate(pairwise(starts_ms), 2):
        if start <= before:
            raise CaptionError(f"{what} {number} starts at {start} ms, no later than the one ahead of it")


def time_stamp(ms: int, mark: str) -> str:
    """`hh:mm:ss` and three digits after `mark`; two digits of hours, more where it takes more. `ms` >= 0."""
    seconds, rest = divmod(ms, 1000)
    minutes, seconds = divmod(seconds, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours:02d}:{minutes:02d}:{seconds:02d}{mark}{rest:03d}"
