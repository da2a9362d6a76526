"""A cue sheet as an edit decision list: one event, the whole cut, with a locator for each mark.

CMX 3600 layout (no standard in force; as its readers have it): TITLE, FCM, events of a number, a reel of at most eight
characters, track, transition and four timecodes; notes begin with an asterisk. Locators, `* LOC:` with record timecode,
colour and text, are common practice of editing programs, no source. ASCII throughout.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from producer.basics.frame_rate import FrameRate
from producer.captions.marks import COLOURS, frames_of, ordered, plain_ascii
from producer.captions.timecode import frame_at, from_timecode, to_timecode
from producer.model.cue import Mark

_NO_REEL = re.compile(r"[^A-Za-z0-9_]+")
_REEL = 8
_LONGEST = 120  # characters of a text; longer lines are cut by some readers


def marks_edl(marks: Iterable[Mark], rate: FrameRate, total_ms: int, *, title: str, clip: str = "") -> str:
    """The list as text, LF at line ends. The record side starts at one hour, as editing programs' timelines do.

    `total_ms` is the length of the cut; a mark past its end makes it longer. `clip` is the file of the cut, whose
    name without its ending is the reel. Raises CaptionError as `ordered`.
    """
    return "".join(f"{line}\n" for line in _lines(ordered(marks), rate, total_ms, title, clip))


def reel(clip: str) -> str:
    """At most eight letters, digits or underscores of a file's name, `AX` (no tape) where none is left."""
    stem = plain_ascii(clip.rpartition(".")[0] or clip)
    return _NO_REEL.sub("_", stem).strip("_").upper()[:_REEL] or "AX"


def _lines(marks: tuple[Mark, ...], rate: FrameRate, total_ms: int, title: str, clip: str) -> Iterator[str]:
    hour = from_timecode("01:00:00;00" if rate.drop else "01:00:00:00", rate)
    spans = [frames_of(mark, rate) for mark in marks]
    length = max([1, frame_at(total_ms, rate), *(after for _, after in spans)])
    codes = (to_timecode(frame, rate) for frame in (0, length, hour, hour + length))
    yield f"TITLE: {plain_ascii(title)[:_LONGEST]}"
    yield f"FCM: {'DROP FRAME' if rate.drop else 'NON-DROP FRAME'}"
    yield f"001  {reel(clip):<8} V     C        {' '.join(codes)}"
    if clip:
        yield f"* FROM CLIP NAME: {plain_ascii(clip)[:_LONGEST]}"
    for mark, (start, _) in zip(marks, spans, strict=True):
        text = f"{mark.name} - {mark.note}" if mark.note else mark.name
        yield f"* LOC: {to_timecode(hour + start, rate)} {COLOURS[mark.kind]:<7} {plain_ascii(text)[:_LONGEST]}"
