"""On-screen captions as pictures: a transparent lower third each, to lay over the video as it is cut.

They are made when asked for and never by a build, so this module has no `documents`. A picture is named after the
time code at which it comes up, as in the cue sheets: names sort by time, and are legal on every system.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from producer.basics.figures import NO_BREAK
from producer.captions.phrases import is_figure, measures
from producer.captions.timecode import frame_at, to_timecode
from producer.model.cue import Cue
from producer.model.dossier import Dossier
from producer.model.sheet import Sheet
from producer.outputs.captions import section_at, shown
from producer.outputs.cues import rate_of
from producer.render.document import Document
from producer.render.kit import Kit

FOLDER = "overlays"
_TEMPLATE = "overlay.typ.j2"
# A caption may come up a little after its section has ended, where the one before had still to be read.
_LATE_MS = 3000


@dataclass(frozen=True, slots=True)
class Shape:
    """A picture's size in pixels, the plate's least distances from its edges, and type sizes.

    `size` is wanted, down to `kept` each line stays on one row, below that lines are wrapped; `least` is the smallest.
    Distances keep text out of what televisions crop and players draw over (common practice, no source).
    """

    name: str
    width: int
    height: int
    left: int
    right: int
    bottom: int
    size: int
    kept: int
    least: int


SHAPES = (
    Shape("wide", 1920, 1080, left=96, right=96, bottom=140, size=64, kept=52, least=24),
    Shape("tall", 1080, 1920, left=60, right=120, bottom=480, size=64, kept=54, least=24),
)


@dataclass(frozen=True, slots=True)
class Word:
    """What is never broken: a word, or a figure with its unit."""

    text: str
    weight: Literal["strong", "plain", "quiet"]


@dataclass(frozen=True, slots=True)
class Overlay:
    """One caption. `setup` names the setup it is about ("" for none, or where the caption is its name); `rank` gives
    its colour and sign."""

    lines: tuple[tuple[Word, ...], ...]
    setup: str
    rank: Literal["first", "second", "neither"]


@dataclass(frozen=True, slots=True)
class Sheets:
    """What the template gets: a page for each overlay."""

    language: str
    title: str
    shape: Shape
    overlays: tuple[Overlay, ...]


@dataclass(frozen=True, slots=True)
class Wanted:
    """A picture that is not drawn yet: its path, and the Typst source that it depends on and on nothing else."""

    path: str
    source: str

    def drawn(self, kit: Kit) -> Document:
        """The picture. Raises ProducerError where the text is too long for any size."""
        return Document(self.path, kit.png(self.source))


def wanted(dossier: Dossier, kit: Kit) -> tuple[Wanted, ...]:
    """Every caption in both shapes, in order of time.

    Raises ProducerError for a letter that the font lacks, which a picture would draw as a box.
    """
    cues = shown(dossier)
    overlays = tuple(lower_third(dossier, cue) for cue in cues)
    names = tuple(names_of(dossier, cues))
    if overlays:
        kit.pdf(kit.typst(_TEMPLATE, _sheets(dossier, SHAPES[0], overlays)))
    return tuple(
        Wanted(f"{FOLDER}/{shape.name}/{name}.png", kit.typst(_TEMPLATE, _sheets(dossier, shape, (one,))))
        for name, one in zip(names, overlays, strict=True)
        for shape in SHAPES
    )


def _sheets(dossier: Dossier, shape: Shape, overlays: tuple[Overlay, ...]) -> Sheets:
    language = "en-US" if dossier.channel.spelling == "us" else "en-GB"
    return Sheets(language, dossier.episode.title, shape, overlays)


def names_of(dossier: Dossier, cues: tuple[Cue, ...]) -> Iterator[str]:
    """`00-01-23-10`: hours, minutes, seconds, frames; a second caption in one frame gets `-2`."""
    rate = rate_of(dossier)
    seen: Counter[str] = Counter()
    for cue in cues:
        code = to_timecode(frame_at(cue.start_ms, rate), rate).replace(":", "-").replace(";", "-")
        seen[code] += 1
        yield code if seen[code] == 1 else f"{code}-{seen[code]}"


def lower_third(dossier: Dossier, cue: Cue) -> Overlay:
    sheet = _setup_at(dossier, cue.start_ms)
    titles = {name: one for one in dossier.sheets for name in (one.name, _shown_name(one))}
    titled = titles.get(cue.lines[0])
    strong = {dossier.track.name, *titles}
    lines = tuple(words_of(line, whole=line in strong and number == 0) for number, line in enumerate(cue.lines))
    return Overlay(lines, "" if titled or sheet is None else _shown_name(sheet), _rank(dossier, titled or sheet))


def _shown_name(sheet: Sheet) -> str:
    return sheet.name if sheet.setup.tested else f"{sheet.name}, untested"


def _rank(dossier: Dossier, sheet: Sheet | None) -> Literal["first", "second", "neither"]:
    if sheet is None:
        return "neither"
    return "first" if sheet.id == dossier.first.id else "second"


def _setup_at(dossier: Dossier, ms: int) -> Sheet | None:
    """The setup that is told at a time; None around the moment where another one begins."""
    now, before = (section_at(dossier, time).setup for time in (ms, max(0, ms - _LATE_MS)))
    return next((one for one in dossier.sheets if one.id == now == before), None)


def words_of(line: str, *, whole: bool) -> tuple[Word, ...]:
    """A line's words. Strong: its figures, what stands after a colon, or the `whole`. Quiet: what a figure was."""
    texts = _kept_together(line)
    named = next((number for number, text in enumerate(texts[:-1]) if text.endswith(":")), None)
    found: list[Word] = []
    for number, text in enumerate(texts):
        if text == "was" or (found and found[-1] == Word("was", "quiet")):
            found.append(Word(text, "quiet"))
        elif whole or _figure(text) or (named is not None and number > named):
            found.append(Word(text, "strong"))
        else:
            found.append(Word(text, "plain"))
    return tuple(found)


def _kept_together(line: str) -> list[str]:
    joined: list[str] = []
    for word in line.split(" "):
        if joined and measures(joined[-1], word):
            joined[-1] += NO_BREAK + word
        elif word:
            joined.append(word)
    return joined


def _figure(text: str) -> bool:
    return is_figure(text.partition(NO_BREAK)[0].rstrip(",;."))
