"""What to show when: captions.srt, captions.vtt, captions.csv, and the chapters as chapters.vtt."""

from __future__ import annotations

import csv
import io
from bisect import bisect_right
from collections.abc import Iterable, Iterator

from producer.captions.chapters import ChapterList, legal_chapters
from producer.captions.payload import time_stamp
from producer.captions.profile import reading_profile
from producer.captions.settling import settle
from producer.captions.sheet_csv import safe_cell
from producer.captions.srt import to_srt
from producer.captions.vtt import chapters_vtt, to_vtt
from producer.model.cue import Chapter, Cue
from producer.model.dossier import Dossier
from producer.model.script import Section
from producer.render.document import Document
from producer.render.kit import Kit
from producer.script.on_screen import on_screen

HEADER = ("start", "end", "duration", "section", "show")
_TIMES = {
    "estimate": "Times are estimated from the script.",
    "raw": "Times are those of the take as recorded.",
    "cut": "",
}


def documents(dossier: Dossier, kit: Kit) -> Iterator[Document]:  # noqa: ARG001 - every output is called alike
    """The caption script in three formats and the chapters, in the time of the cut or the take where there is one."""
    dossier = dossier.told
    cues, note = shown(dossier), times_from(dossier)
    yield Document.of_text("captions.srt", to_srt(cues))
    yield Document.of_text("captions.vtt", to_vtt(cues, note=note))
    yield Document.of_text("captions.csv", to_csv(dossier, cues))
    yield Document.of_text("chapters.vtt", chapters_vtt(file_chapters(dossier), dossier.timeline.total_ms, note=note))


def times_from(dossier: Dossier) -> str:
    """A sentence on what the times of captions, chapters and cue sheets are taken from; "" for those of the cut."""
    return _TIMES[dossier.told.timeline.source]


def shown(dossier: Dossier) -> tuple[Cue, ...]:
    """The captions as they are written: inside the channel's reading profile, never two at once."""
    return settle(on_screen(dossier.told), reading_profile(dossier.channel.captions))


def chapters(dossier: Dossier) -> ChapterList:
    """The sections as a list of chapters that the platform takes, or why there is none."""
    dossier = dossier.told
    limits = dossier.channel.platform.chapters
    total = dossier.timeline.total_ms
    return legal_chapters(_sections(dossier), total, least=limits.least, seconds=limits.seconds)


def file_chapters(dossier: Dossier) -> tuple[Chapter, ...]:
    """The chapters as files hold them, rising and before the end: those of the platform's list, without one every
    section that has a time of its own.
    """
    dossier = dossier.told
    before = dossier.timeline.total_ms
    found: list[Chapter] = []
    for one in reversed(chapters(dossier).chapters or _sections(dossier)):
        if 0 <= one.start_ms < before:
            found.append(one)
            before = one.start_ms
    return tuple(reversed(found))


def to_csv(dossier: Dossier, cues: Iterable[Cue]) -> str:
    """RFC 4180: a header, CRLF, quotes where needed. Times as hh:mm:ss.ttt, duration in seconds; the lines of one
    caption are joined by ` / `. A cell that a spreadsheet would run as a formula gets an apostrophe before it.
    """
    file = io.StringIO(newline="")
    rows = csv.writer(file, lineterminator="\r\n")
    rows.writerow(HEADER)
    for cue in cues:
        times = (time_stamp(cue.start_ms, "."), time_stamp(cue.end_ms, "."), f"{cue.duration_ms / 1000:.3f}")
        section = section_at(dossier, cue.start_ms).title
        rows.writerow((*times, safe_cell(section), safe_cell(" / ".join(cue.lines))))
    return file.getvalue()


def section_at(dossier: Dossier, ms: int) -> Section:
    """The section that is told at a time."""
    dossier = dossier.told
    index = bisect_right(dossier.timeline.section_starts, ms) - 1
    return dossier.narration.sections[max(0, index)]


def _sections(dossier: Dossier) -> tuple[Chapter, ...]:
    titles = (one.title for one in dossier.narration.sections)
    return tuple(Chapter(start, title) for start, title in zip(dossier.timeline.section_starts, titles, strict=True))
