"""Chapters as a video's description lists them, and the stamps before their titles.

A list is legal when it starts at 0:00, rises, has at least so many chapters and each lasts at least so long, counted
in the whole seconds that the stamps show (platforms' published rules: three chapters, ten seconds; the channel's
`platform.chapters`).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from producer.captions.payload import clean_line
from producer.model.cue import Chapter


@dataclass(frozen=True, slots=True)
class ChapterList:
    """A legal list of chapters, starts in whole seconds; or none, with the reason for the author."""

    chapters: tuple[Chapter, ...]
    reason: str = ""


def legal_chapters(sections: Iterable[Chapter], length_ms: int, *, least: int = 3, seconds: int = 10) -> ChapterList:
    """The sections of a video of `length_ms` as a legal list of chapters.

    Sections are taken in order of start, those past the end left out. A section that is too short or has no title is
    joined with the one before; a first section like that with the one after, whose title the two then bear. Where
    this leaves too few, short neighbours are joined with one another instead. Titles lose `<` and `>`.
    `least` and `seconds` are at least 1.
    """
    end = length_ms // 1000
    listed = _listed(sections, end)
    found = _joined_with_before(listed, end, seconds)
    if len(found) < least:
        found = _joined_with_another(listed, end, seconds)
    if len(found) < least:
        return ChapterList((), _reason(len(found), len(listed), end, least, seconds))
    return ChapterList(tuple(Chapter(start * 1000, title) for start, title in found))


def chapter_lines(chapters: Iterable[Chapter]) -> tuple[str, ...]:
    """One line a chapter: `0:00 Conditions`."""
    return tuple(f"{stamp(chapter.start_ms)} {chapter.title}" for chapter in chapters)


def stamp(ms: int) -> str:
    """A time as descriptions write it, whole seconds, floored: `0:00`, `12:34`, `1:02:03`. `ms` >= 0."""
    minutes, seconds = divmod(ms // 1000, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02d}:{seconds:02d}" if hours else f"{minutes}:{seconds:02d}"


def clean_title(title: str) -> str:
    """A title as one line without `<` and `>`, which descriptions may not hold."""
    return " ".join(word for word in re.split("[ <>]+", clean_line(title)) if word)


def _listed(sections: Iterable[Chapter], end: int) -> list[tuple[int, str]]:
    """Whole seconds and clean titles of the sections before the end, the first moved to zero."""
    ordered = sorted(sections, key=lambda section: section.start_ms)
    listed = [(max(0, section.start_ms // 1000), clean_title(section.title)) for section in ordered]
    inside = [(start, title) for start, title in listed if start < end]
    return [(0, inside[0][1]), *inside[1:]] if inside else []


def _joined_with_before(listed: Sequence[tuple[int, str]], end: int, seconds: int) -> list[tuple[int, str]]:
    """The sections that are long enough by themselves and have a title."""
    edges = [*listed, (end, "")]
    long = [(start, title) for (start, title), (after, _) in pairwise(edges) if after - start >= seconds and title]
    return [(0, long[0][1]), *long[1:]] if long else []


def _joined_with_another(listed: Sequence[tuple[int, str]], end: int, seconds: int) -> list[tuple[int, str]]:
    """As many chapters as there can be: each section that starts late enough after the last and before the end."""
    found: list[tuple[int, str]] = []
    for start, title in listed:
        if not title or end - start < seconds:
            continue
        if not found:
            found.append((0, title))
        elif start - found[-1][0] >= seconds:
            found.append((start, title))
    return found


def _reason(found: int, sections: int, end: int, least: int, seconds: int) -> str:
    if sections < least:
        return f"{_counted(sections, 'section')}; a list of chapters needs at least {least}"
    return (
        f"only {_counted(found, 'chapter')} of at least {seconds} s can be made of {sections} sections in "
        f"{stamp(end * 1000)}; a list needs at least {least}"
    )


def _counted(number: int, thing: str) -> str:
    return f"{number} {thing}" if number == 1 else f"{number} {thing}s"
