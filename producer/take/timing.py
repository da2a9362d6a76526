"""The episode in the time of its take: when each passage is spoken, and how fast the author speaks."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Literal

from producer.captions.spoken import spoken_words
from producer.model.script import Narration, Section, Span, Timeline
from producer.take.heard import Listened
from producer.take.sections import Lined
from producer.take.speech import Speech

PAUSE_MS = 1500  # a longer one is no part of speaking
_LEAST_MS = 30_000  # of speech, for a rate worth having


def as_told(
    narration: Narration,
    lined: Lined,
    spans: Sequence[tuple[int, int] | None],
    listened: Listened,
    speech: Speech,
    source: Literal["raw", "cut"],
) -> tuple[Narration, Timeline] | None:
    """The sections that are in the take, in its order, with the time of every passage; None where there is none."""
    there = sorted((span, number) for number, span in enumerate(spans) if span is not None)
    if not there:
        return None
    hits = _hits(lined)
    sections: list[Section] = []
    starts: list[int] = []
    timed: list[Span] = []
    for index, (span, number) in enumerate(there):
        section = narration.sections[number]
        sections.append(section)
        starts.append(speech.ms(span[0]))
        anchors = [_anchor(number, passage, section, span, hits, listened) for passage in range(len(section.passages))]
        timed += _passages(index, section, span, anchors, speech)
    total = max(speech.end_ms, starts[-1] + 1)
    return Narration(tuple(sections)), Timeline(tuple(timed), tuple(starts), total, total, total, source)


def _hits(lined: Lined) -> dict[tuple[int, int], list[tuple[int, int]]]:
    """(section, passage) -> (how many tokens of it before, word of the take) of the words that agree."""
    found: dict[tuple[int, int], list[tuple[int, int]]] = {}
    first: dict[tuple[int, int], int] = {}
    for token, passage in enumerate(lined.script.passages):
        first.setdefault(passage, token)
    for some in lined.read:
        for one in some[-1].agreed if some else ():
            for step in range(one.script[1] - one.script[0]):
                passage = lined.script.passages[one.script[0] + step]
                before = one.script[0] + step - first[passage]
                found.setdefault(passage, []).append((before, lined.take.word[one.take[0] + step]))
    return found


def _anchor(
    number: int,
    passage: int,
    section: Section,
    span: tuple[int, int],
    hits: dict[tuple[int, int], list[tuple[int, int]]],
    listened: Listened,
) -> int | None:
    """The word of the take with which a passage begins, None where nothing tells."""
    begin, end = span
    for before, word in hits.get((number, passage), ()):
        if begin <= word < end and before <= 12:
            return max(begin, word - before)
    settings = section.passages[passage].settings
    told = (x for x in listened.heard if x.claim.parameter in settings and x.figure is not None)
    said = [x.first for x in told if begin <= x.at < end]
    return max(begin, said[0]) if said else None


def _passages(
    index: int, section: Section, span: tuple[int, int], anchors: Sequence[int | None], speech: Speech
) -> list[Span]:
    """Spans of a section's passages: at their anchors as far as these rise, between them by their words."""
    count = len(section.passages)
    times: list[int | None] = [None] * count
    times[0] = latest = speech.ms(span[0])
    end = max(speech.ms(span[1]), latest + 1)
    for number in range(1, count):
        word = anchors[number]
        if word is not None and latest < speech.ms(word) < end:
            times[number] = latest = speech.ms(word)
    lengths = [max(1, spoken_words(one.text)) for one in section.passages]
    begins = _filled([*times, end], lengths)
    return [Span(index, number, begins[number], begins[number + 1]) for number in range(count)]


def _filled(times: Sequence[int | None], lengths: Sequence[int]) -> list[int]:
    """The times with what is between known ones shared out by length; the first and the last are known."""
    found: list[int] = []
    known = [(at, time) for at, time in enumerate(times) if time is not None]
    for (first, begin), (last, end) in pairwise(known):
        whole, before = sum(lengths[first:last]), 0
        for at in range(first, last):
            found.append(begin + (end - begin) * before // whole)
            before += lengths[at]
    return [*found, known[-1][1]]


def words_per_minute(speech: Speech) -> int:
    """Words as spoken a minute, pauses of more than a second and a half left out; 0 for hardly any speech."""
    if not len(speech):
        return 0
    pauses = [speech.pause_after(at) for at in range(len(speech))]
    lasts = speech.end_ms - speech.starts_ms[0] - sum(one for one in pauses if one > PAUSE_MS)
    words = spoken_words(" ".join(speech.words))
    return round(words * 60_000 / lasts) if lasts >= _LEAST_MS else 0
