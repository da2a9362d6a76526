"""A caption file shown as the program reads it: its lines once each in time, and its complaints."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from textwrap import wrap

from producer.basics.located import Places
from producer.captions.blocks import counted
from producer.captions.chapters import stamp
from producer.captions.complaints import Complaints
from producer.captions.opening import LARGEST, caption_text, lines_of
from producer.captions.payload import time_stamp
from producer.captions.reading import read_captions
from producer.model.said import CaptionFile

_WIDTH = 80
_KINDS = {"srt": "SubRip", "vtt": "WebVTT"}
# What Python takes for a line end and no editor does; control characters must not steer a terminal.
_ODD = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u2028\u2029]")


@dataclass(frozen=True)
class Cues:
    """A caption file read, and its lines for excerpts."""

    read: CaptionFile
    files: Mapping[str, Places]


def cues(data: bytes, file: str) -> Cues:
    """Read a caption file. Never fails: what is wrong with it are findings."""
    read = read_captions(data, file)
    text = caption_text(data, Complaints(file)) if len(data) <= LARGEST else ""
    shown = "\n".join(_ODD.sub(" ", line) for line in lines_of(text, read.kind))
    return Cues(read, {file: Places(file, shown)})


def shape(found: Cues) -> dict[str, object]:
    """The shape that other programs rely on, without its findings; times in ms.

    A word that has no time of its own in the file, `timed` false, got its share of the cue's.
    """
    read = found.read
    return {
        "format": 1,
        "kind": read.kind,
        "cues": [
            {
                "start_ms": cue.start_ms,
                "end_ms": cue.end_ms,
                "text": cue.text,
                "raw": cue.raw,
                "line": cue.place.line,
                "words": [{"text": word.text, "start_ms": word.start_ms, "timed": word.timed} for word in cue.words],
            }
            for cue in read.cues
        ],
        "said": [{"start_ms": line.start_ms, "end_ms": line.end_ms, "text": line.text} for line in read.said],
    }


def as_text(found: Cues) -> str:
    """What was read for the terminal, within 80 columns: a line about the file, then each line said with its start;
    "" for a file without a cue.
    """
    return "\n".join(_rows(found.read)) if found.read.cues else ""


def _rows(read: CaptionFile) -> Iterator[str]:
    words = tuple(read.words)
    facts = [_KINDS[read.kind], counted(len(read.cues), "cue"), counted(len(words), "word"), stamp(read.end_ms)]
    if any(word.timed for line in read.said for word in line.words[1:]):
        facts.append("words have their own times")
    yield f"{read.file}: {', '.join(facts)}"
    if read.said:
        yield ""
    for line in read.said:
        start = time_stamp(line.start_ms, ".")
        text = _ODD.sub(" ", line.text)
        yield from wrap(text, _WIDTH, initial_indent=f"{start}  ", subsequent_indent=" " * (len(start) + 2))
