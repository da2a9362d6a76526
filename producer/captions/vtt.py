"""WebVTT written (W3C WebVTT, sections 4.1-4.6): captions and chapters.

The text is meant as UTF-8 without a byte order mark; its line ends are LF and it ends with one.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from producer.captions.marks import checked
from producer.captions.payload import clean_line, time_stamp, written
from producer.model.cue import Chapter, Cue

_ESCAPES = str.maketrans({"&": "&amp;", "<": "&lt;", ">": "&gt;"})


def to_vtt(cues: Iterable[Cue], *, note: str = "") -> str:
    """Captions as WebVTT. Cues may overlap but starts never go back; a cue without any text is left out. `note` is a
    comment that no viewer is shown.

    The author's text is always made legal: `&`, `<` and `>` (so `-->` as well) are escaped and read back equal,
    blank lines and controls are dropped. Raises CaptionError for times that can't be written.
    """
    return _file((_block(cue.start_ms, cue.end_ms, cue.text) for cue in written(cues)), note)


def chapters_vtt(chapters: Sequence[Chapter], end_ms: int, *, note: str = "") -> str:
    """Chapters as WebVTT (section 4.6.3: plain titles, one cue a chapter, none within another).

    Each lasts until the next one starts, the last until `end_ms`. A chapter without a title is numbered.
    Raises CaptionError unless starts rise from zero or later and `end_ms` is after the last.
    """
    return _file((_block(start, end, title) for start, end, title in checked(chapters, end_ms)), note)


def _block(start_ms: int, end_ms: int, text: str) -> str:
    return f"{time_stamp(start_ms, '.')} --> {time_stamp(end_ms, '.')}\n{text.translate(_ESCAPES)}\n"


def _file(blocks: Iterable[str], note: str) -> str:
    told = clean_line(note).replace("-->", "to")
    comment = (f"NOTE {told}\n",) if told else ()
    return "\n".join(("WEBVTT\n", *comment, *blocks))
