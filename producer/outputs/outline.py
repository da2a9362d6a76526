"""The outline of an episode: sections with their minutes, what differs, what the test laps carry, the shots to record,
what to tick off."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from producer.basics.spelling import spell
from producer.captions.chapters import stamp
from producer.model.dossier import Dossier
from producer.model.script import Section
from producer.model.sheet import Sheet
from producer.outputs.laps_told import LapsTold, laps_told
from producer.render.document import Document
from producer.render.kit import Kit
from producer.script.pace import (
    FAST_WORDS_PER_MINUTE,
    SLOW_WORDS_PER_MINUTE,
    lasts,
    minutes,
    words_of,
)
from producer.script.speaker import capital, listed, setup_name, small

# The kinds of shots in the order they are recorded, and what they are for.
_KINDS = (
    ("Screen", "Screens"),
    ("Driving", "Driving"),
    ("Corner", "Corners, for the advice"),
)


@dataclass(frozen=True, slots=True)
class OutlineSection:
    """One line of the table; `about` names the settings told there; `start` and `minutes` as m:ss."""

    number: int
    title: str
    about: str
    start: str
    minutes: str
    words: int


@dataclass(frozen=True, slots=True)
class OutlineShot:
    """One thing to record and the numbers of the sections it is for."""

    what: str
    sections: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class OutlineShots:
    """The shots of one kind."""

    title: str
    shots: tuple[OutlineShot, ...]


@dataclass(frozen=True, slots=True)
class OutlineSetup:
    """A later setup and its differences from the first, one line each."""

    name: str
    first: str
    changes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class OutlineView:
    """What `outline.md.j2` shows. `measured`: the times come from a take, not from an estimate."""

    title: str
    episode: str
    stamp: str
    measured: bool
    total: str
    fast: str
    slow: str
    pace: str
    paced: str
    fast_pace: str
    slow_pace: str
    words: int
    sections: tuple[OutlineSection, ...]
    others: tuple[OutlineSetup, ...]
    laps: LapsTold | None
    shots: tuple[OutlineShots, ...]
    checks: tuple[str, ...]
    caution: str


def documents(dossier: Dossier, kit: Kit) -> Iterator[Document]:
    """outline.md."""
    yield Document.of_text("outline.md", kit.text("outline.md.j2", view(dossier)))


def view(dossier: Dossier) -> OutlineView:
    """Everything on the outline, in the order it is told."""
    channel, timeline = dossier.channel, dossier.timeline
    rate = channel.voice.words_per_minute
    return OutlineView(
        title=dossier.episode.title,
        episode=episode_line(dossier),
        stamp=stamp_line(dossier),
        measured=timeline.source != "estimate",
        total=minutes(timeline.total_ms),
        fast=minutes(timeline.fast_ms),
        slow=minutes(timeline.slow_ms),
        pace=str(rate),
        paced=f", {dossier.pace.told}" if dossier.pace else "",
        fast_pace=str(max(rate, FAST_WORDS_PER_MINUTE)),
        slow_pace=str(min(rate, SLOW_WORDS_PER_MINUTE)),
        words=sum(words_of(one) for one in dossier.narration.sections),
        sections=_sections(dossier),
        others=tuple(_other(dossier, one) for one in dossier.others),
        laps=laps_told(dossier),
        shots=tuple(_shots(dossier, kind, title) for kind, title in _KINDS),
        checks=tuple(_checks(dossier)),
        caution=channel.caution,
    )


def episode_line(dossier: Dossier) -> str:
    """`Second Groove Notebook, episode 7: Marrow Creek, Grand Sedan`."""
    number = "" if dossier.episode.number is None else f", episode {dossier.episode.number}"
    return f"{dossier.channel.name}{number}: {dossier.track.name}, {dossier.garage.name}"


def stamp_line(dossier: Dossier) -> str:
    """`Draft`, or which revision each setup's card is where they differ."""
    labels = {one.name: dossier.stamps[one.id].label for one in dossier.sheets if one.id in dossier.stamps}
    if len(set(labels.values())) == 1:
        return capital(next(iter(labels.values())))
    return ", ".join(f"{name}: {label}" for name, label in labels.items()) or "Draft"


def _sections(dossier: Dossier) -> tuple[OutlineSection, ...]:
    timeline = dossier.timeline
    return tuple(
        OutlineSection(
            index + 1,
            section.title,
            _about(dossier, section),
            stamp(timeline.section_starts[index]),
            lasts(timeline, index),
            words_of(section),
        )
        for index, section in enumerate(dossier.narration.sections)
    )


def _about(dossier: Dossier, section: Section) -> str:
    """The parameters of a section in the order they are told: `pressure, camber, front toe`."""
    garage = dossier.garage
    told = [one for passage in section.passages for one in passage.settings if one in garage.settings]
    names = dict.fromkeys(small(garage.settings[one].parameter.name) for one in told)
    return spell(", ".join(names), dossier.channel.spelling)


def _other(dossier: Dossier, sheet: Sheet) -> OutlineSetup:
    first = dossier.first
    changes = tuple(_change(dossier, sheet, one) for one in sheet.differs(first))
    return OutlineSetup(sheet.name, setup_name(first), changes)


def _change(dossier: Dossier, sheet: Sheet, address: str) -> str:
    name = spell(sheet.garage.name_of(address), dossier.channel.spelling)
    return f"{name}: {sheet.shown(address)}, was {dossier.first.figure(address)}"


def _shots(dossier: Dossier, kind: str, title: str) -> OutlineShots:
    """Each shot once, with every section that asks for it."""
    wanted: dict[str, list[int]] = {}
    for number, section in enumerate(dossier.narration.sections, 1):
        for shot in section.shots:
            named, _, what = shot.partition(": ")
            if named == kind or (kind == _KINDS[0][0] and named not in dict(_KINDS)):
                wanted.setdefault(what if named == kind else shot, []).append(number)
    shots = (OutlineShot(capital(what), tuple(sections)) for what, sections in wanted.items())
    return OutlineShots(title, tuple(shots))


def _checks(dossier: Dossier) -> Iterator[str]:
    """What to see to before, while and after recording."""
    for sheet in dossier.sheets:
        untested = "" if sheet.setup.tested else "; it is untested, say so"
        yield f"{capital(setup_name(sheet))} is loaded and every page agrees with its card{untested}"
    for line in dossier.conditions:
        yield spell(f"{line.name} is set: {line.value}", dossier.channel.spelling)
    if dossier.episode.tested_with:
        yield f"The simulation is version {dossier.episode.tested_with}, as when it was tested"
    yield "Every page of the garage was on screen long enough to read"
    if dossier.credits:
        yield f"Thanks said to {listed(dossier.credits)}"
    yield f"The caution was said: {dossier.channel.caution}"
