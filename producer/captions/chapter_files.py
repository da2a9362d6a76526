"""Chapters for programs: FFmpeg metadata to put them into the video file, JSON for podcast players."""

from __future__ import annotations

import json
import re
from collections.abc import Sequence

from producer.captions.marks import checked
from producer.captions.payload import clean_line
from producer.model.cue import Chapter

_SPECIAL = re.compile(r"([=;#\\\n])")


def chapters_ffmetadata(chapters: Sequence[Chapter], end_ms: int, *, title: str = "") -> str:
    """Chapters as FFmpeg reads them (ffmpeg.org, "Metadata"): `;FFMETADATA1`, then a block a chapter, times in ms.

    Each lasts until the next one starts, the last until `end_ms`. Raises CaptionError as `checked`.
    """
    lines = [";FFMETADATA1"]
    if name := clean_line(title):
        lines.append(f"title={_escaped(name)}")
    for start, end, chapter in checked(chapters, end_ms):
        lines += ["", "[CHAPTER]", "TIMEBASE=1/1000", f"START={start}", f"END={end}", f"title={_escaped(chapter)}"]
    return "\n".join(lines) + "\n"


def chapters_podcast(chapters: Sequence[Chapter], end_ms: int, *, title: str = "") -> str:
    """Chapters as the JSON of the podcast namespace, version 1.2.0 ("JSON Chapters Format Version 1.2"): `startTime`
    in seconds, ascending. Raises CaptionError as `checked`.
    """
    rows = [
        {"startTime": _seconds(start), "title": chapter, "endTime": _seconds(end)}
        for start, end, chapter in checked(chapters, end_ms)
    ]
    head: dict[str, object] = {"version": "1.2.0"}
    if name := clean_line(title):
        head["title"] = name
    return json.dumps({**head, "chapters": rows}, ensure_ascii=False, indent=2) + "\n"


def _escaped(text: str) -> str:
    """A value as FFmpeg reads it back. It joins lines at a backslash even where that is escaped: a last one is `/`."""
    if text.endswith("\\"):
        text = f"{text[:-1]}/"
    return _SPECIAL.sub(r"\\\1", text)


def _seconds(ms: int) -> int | float:
    return ms // 1000 if ms % 1000 == 0 else ms / 1000
