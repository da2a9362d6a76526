"""Cue sheets for an editor: CSV, OpenTimelineIO, an edit decision list, chapters for FFmpeg and for podcasts."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Sequence
from itertools import pairwise

from producer.basics.frame_rate import FrameRate
from producer.captions.payload import CaptionError, clean_line
from producer.captions.timecode import frame_at
from producer.model.cue import Chapter, Mark, MarkKind

COLOURS: dict[MarkKind, str] = {"section": "GREEN", "caption": "CYAN", "pick-up": "RED"}
"""What a kind of mark looks like: names that editing programs share for locators and markers."""
_ASCII = {"\u2212": "-", "\u2013": "-", "\u2014": "-", "\u2192": "to", "\u00b0": " deg", "\u2018": "'", "\u2019": "'"}
_LETTERS = str.maketrans({**_ASCII, "\u201c": '"', "\u201d": '"', "\u2044": "/", "\u00d7": "x"})
_WHOLE_AND_HALF = re.compile(r"(?<=\d)(?=[\u00bc-\u00be\u2150-\u215e])")


def ordered(marks: Iterable[Mark]) -> tuple[Mark, ...]:
    """Marks by start, the longer first, each with clean one-line texts.

    A mark without a name bears its kind's. Raises CaptionError for one before zero or that ends before it starts.
    """
    found = sorted(marks, key=lambda mark: (mark.start_ms, -mark.end_ms))
    for mark in found:
        if mark.start_ms < 0 or mark.end_ms < mark.start_ms:
            raise CaptionError(f"a mark from {mark.start_ms} to {mark.end_ms} ms cannot be written")
    return tuple(
        Mark(one.start_ms, one.end_ms, one.kind, clean_line(one.name) or one.kind, clean_line(one.note))
        for one in found
    )


def frames_of(mark: Mark, rate: FrameRate) -> tuple[int, int]:
    """First frame and the one after the last; at least one frame lies between."""
    start = frame_at(mark.start_ms, rate)
    return start, max(start + 1, frame_at(mark.end_ms, rate))


def plain_ascii(text: str) -> str:
    """A text for formats of the days before Unicode: typographic signs as plain ones, accents off, the rest `?`."""
    spaced = _WHOLE_AND_HALF.sub(" ", text).translate(_LETTERS)
    apart = unicodedata.normalize("NFKD", spaced.replace("\u2044", "/")).replace("\u2044", "/")
    bare = "".join(letter for letter in apart if not unicodedata.combining(letter))
    return " ".join("".join(letter if " " <= letter <= "~" else "?" for letter in bare).split())


def checked(chapters: Sequence[Chapter], end_ms: int) -> tuple[tuple[int, int, str], ...]:
    """Start, end and title of each chapter: it lasts until the next one, the last until `end_ms`.

    A chapter without a title is numbered. Raises CaptionError unless starts rise from zero or later and the end is
    after the last.
    """
    starts = [chapter.start_ms for chapter in chapters]
    edges = [*starts, end_ms]
    if starts and (starts[0] < 0 or any(after <= before for before, after in pairwise(edges))):
        raise CaptionError(f"chapters at {starts} ms do not rise from zero to {end_ms} ms")
    titles = [clean_line(chapter.title) or f"Chapter {number}" for number, chapter in enumerate(chapters, 1)]
    return tuple(zip(starts, edges[1:], titles, strict=True))
