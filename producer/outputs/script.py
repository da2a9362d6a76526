"""The narration to read from: script.md to print or edit by, script.html to read aloud from at a distance."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from producer.captions.chapters import stamp
from producer.captions.spoken import spoken_words
from producer.model.dossier import Dossier
from producer.model.script import Passage, Section
from producer.outputs.outline import episode_line, stamp_line
from producer.render.document import Document
from producer.render.kit import Kit
from producer.script.pace import (
    FAST_WORDS_PER_MINUTE,
    PASSAGE_PAUSE_MS,
    SECTION_PAUSE_MS,
    SLOW_WORDS_PER_MINUTE,
    lasts,
    minutes,
)

_FIGURE = re.compile(r"[\u2212+-]?(?<![\w.])\d+(?:[.,:]\d+)*(?![\w])")
# What Markdown would take for a mark where the author's plain words stand.
_MARKS = re.compile(r"([\\`*\[\]<>|])|(?<!\w)(_)|(_)(?!\w)|^([#+>-]|\d+(?=[.)]))", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class ScriptRun:
    """A stretch of one passage; `figure` marks a number."""

    text: str
    figure: bool


@dataclass(frozen=True, slots=True)
class ScriptPassage:
    """One passage: `kind` as in the narration, `markdown` the text with its figures strong.

    `words` as spoken; `pause_ms` the silence after it.
    """

    kind: str
    runs: tuple[ScriptRun, ...]
    markdown: str
    words: int
    pause_ms: int


@dataclass(frozen=True, slots=True)
class ScriptSection:
    """One section; `voice` is `first` or `second` where it is about a setup, else ""; `pause_ms` goes before it."""

    number: int
    id: str
    title: str
    start: str
    minutes: str
    voice: str
    pause_ms: int
    passages: tuple[ScriptPassage, ...]


@dataclass(frozen=True, slots=True)
class ScriptView:
    """What `script.md.j2` and `script.html.j2` show. `pace` in words a minute; lengths as m:ss."""

    language: str
    title: str
    episode: str
    stamp: str
    total: str
    fast: str
    slow: str
    pace: str
    paced: str
    fast_pace: str
    slow_pace: str
    sections: tuple[ScriptSection, ...]
    caution: str


def documents(dossier: Dossier, kit: Kit) -> Iterator[Document]:
    """script.md and script.html, word for word the same text."""
    shown = view(dossier)
    yield Document.of_text("script.md", kit.text("script.md.j2", shown))
    yield Document.of_text("script.html", kit.html("script.html.j2", shown))


def view(dossier: Dossier) -> ScriptView:
    """The narration with its times."""
    channel, timeline = dossier.channel, dossier.timeline
    rate = channel.voice.words_per_minute
    sections = enumerate(dossier.narration.sections)
    return ScriptView(
        language="en-GB" if channel.spelling == "uk" else "en-US",
        title=dossier.episode.title,
        episode=episode_line(dossier),
        stamp=stamp_line(dossier),
        total=minutes(timeline.total_ms),
        fast=minutes(timeline.fast_ms),
        slow=minutes(timeline.slow_ms),
        pace=str(rate),
        paced=f", {dossier.pace.told}" if dossier.pace else "",
        fast_pace=str(max(rate, FAST_WORDS_PER_MINUTE)),
        slow_pace=str(min(rate, SLOW_WORDS_PER_MINUTE)),
        sections=tuple(_section(dossier, index, section) for index, section in sections),
        caution=channel.caution,
    )


def _section(dossier: Dossier, index: int, section: Section) -> ScriptSection:
    timeline = dossier.timeline
    voice = "" if section.setup is None else "first" if section.setup == dossier.first.id else "second"
    last = len(section.passages) - 1
    return ScriptSection(
        number=index + 1,
        id=f"section-{index + 1}",
        title=section.title,
        start=stamp(timeline.section_starts[index]),
        minutes=lasts(timeline, index),
        voice=voice,
        pause_ms=SECTION_PAUSE_MS if index else 0,
        passages=tuple(
            _passage(passage, 0 if place == last else PASSAGE_PAUSE_MS)
            for place, passage in enumerate(section.passages)
        ),
    )


def _passage(passage: Passage, pause_ms: int) -> ScriptPassage:
    runs = figure_runs(passage.text)
    marked = "".join(f"**{run.text}**" if run.figure else run.text for run in _escaped(runs))
    return ScriptPassage(passage.kind, runs, marked, spoken_words(passage.text), pause_ms)


def figure_runs(text: str) -> tuple[ScriptRun, ...]:
    """The text cut at its figures: `750`, `−3.50`, `14:32`; joined again it is the same text."""
    runs: list[ScriptRun] = []
    at = 0
    for found in _FIGURE.finditer(text):
        runs += [ScriptRun(text[at : found.start()], False), ScriptRun(found.group(), True)]
        at = found.end()
    runs.append(ScriptRun(text[at:], False))
    return tuple(run for run in runs if run.text)


def _escaped(runs: tuple[ScriptRun, ...]) -> Iterator[ScriptRun]:
    for index, run in enumerate(runs):
        if run.figure:
            yield run
        else:
            # Only at the start of a passage a dash or a number sign means something to Markdown.
            text = run.text if index == 0 else f"\x00{run.text}"
            yield ScriptRun(_MARKS.sub(lambda found: f"\\{found.group()}", text).replace("\x00", ""), False)
