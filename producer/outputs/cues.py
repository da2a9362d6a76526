"""Cue sheets for an editor: cues.csv, cues.otio and cues.edl, and chapters to put into the file of the video
(chapters.ffmeta) or beside a podcast (chapters.json).

Every sheet has the sections, with what to show there, the captions, and what has to be recorded again. Times are those
of the cut, until then of the take, until then an estimate; the first mark says which, and at which frame rate they are
counted where the channel gives none.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from producer.basics.frame_rate import FrameRate, frame_rate
from producer.captions.chapter_files import chapters_ffmetadata, chapters_podcast
from producer.captions.edl import marks_edl
from producer.captions.otio import marks_otio
from producer.captions.sheet_csv import marks_csv
from producer.model.cue import Mark
from producer.model.dossier import Dossier
from producer.outputs.captions import file_chapters, shown, times_from
from producer.outputs.pick_ups import pick_ups
from producer.render.document import Document
from producer.render.kit import Kit

USUAL_RATE = "30"
"""Frames a second of a sheet whose channel gives none."""


def documents(dossier: Dossier, kit: Kit) -> Iterator[Document]:  # noqa: ARG001 - every output is called alike
    """The cue sheet in three formats and the chapters in two."""
    found, rate = marks(dossier), rate_of(dossier)
    dossier = dossier.told
    title, total = dossier.episode.title, dossier.timeline.total_ms
    yield Document.of_text("cues.csv", marks_csv(found, rate))
    yield Document.of_text("cues.otio", marks_otio(found, rate, total, title=title))
    yield Document.of_text("cues.edl", marks_edl(found, rate, total, title=title))
    chapters = file_chapters(dossier)
    yield Document.of_text("chapters.ffmeta", chapters_ffmetadata(chapters, total, title=title))
    yield Document.of_text("chapters.json", chapters_podcast(chapters, total, title=title))


def rate_of(dossier: Dossier) -> FrameRate:
    """The channel's frame rate, without one the usual."""
    return dossier.channel.frame_rate or frame_rate(USUAL_RATE)


def marks(dossier: Dossier) -> tuple[Mark, ...]:
    """Sections, captions and what to record again in order of time; the section first where they start together."""
    again = tuple(pick_ups(dossier))
    dossier = dossier.told
    every = (*_sections(dossier), *_captions(dossier), *again)
    found = sorted(every, key=lambda one: (one.start_ms, one.kind != "section"))
    told = " ".join(_about_times(dossier))
    if not found or not told:
        return tuple(found)
    first, *rest = found
    return (replace(first, note=" ".join(filter(None, (told, first.note)))), *rest)


def _sections(dossier: Dossier) -> Iterator[Mark]:
    """Each section until the next one starts, with its shots."""
    starts, total = dossier.timeline.section_starts, dossier.timeline.total_ms
    for number, (start, section) in enumerate(zip(starts, dossier.narration.sections, strict=True)):
        end = starts[number + 1] if number + 1 < len(starts) else total
        yield Mark(max(0, start), max(0, start, end), "section", section.title, "; ".join(section.shots))


def _captions(dossier: Dossier) -> Iterator[Mark]:
    for cue in shown(dossier):
        yield Mark(cue.start_ms, cue.end_ms, "caption", " / ".join(cue.lines))


def _about_times(dossier: Dossier) -> Iterator[str]:
    """What an editor has to know before the marks go onto a timeline."""
    if timed := times_from(dossier):
        yield timed
    if dossier.channel.frame_rate is None:
        yield f"Timecode counts {USUAL_RATE} frames a second: channel.yaml gives no frame_rate."
