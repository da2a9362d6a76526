"""The adjustment guide of every setup: guide.md, guide.html, and as data guide.json and guide-<setup>.json."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from producer.basics.spelling import spell
from producer.handling.guide_json import guide_json
from producer.handling.saying import for_whom
from producer.handling.wording import PLACES
from producer.model.dossier import Dossier
from producer.model.guide import Change, GuideRow
from producer.model.sheet import Sheet
from producer.model.words import PHASES, Effect, Feel, Phase
from producer.outputs.balance_picture import between_picture, clicks_picture
from producer.outputs.outline import episode_line, stamp_line
from producer.outputs.picture import Picture
from producer.outputs.second_opinion import agrees, how_much
from producer.render.document import Document
from producer.render.kit import Kit
from producer.script.flatten import flat
from producer.script.speaker import capital, listed

# What Markdown would take for a mark inside a table.
_MARKS = re.compile(r"([\\`*_\[\]<>|~])")
_CURES: dict[Feel, Effect] = {"tight": "looser", "loose": "tighter"}


@dataclass(frozen=True, slots=True)
class Step:
    """One change. `start` is a figure, `to` one with its unit; `clicks` like `2 clicks down`, `room` like
    `11 clicks left`; `only` for whom it is ("" for everybody); `said` the author's words without marks ("" where it
    is a rule or nothing was said); `effects` what it does elsewhere; `much` how much it does by the chassis model;
    `also` what else there is to know; `voice` the presenter's name, or `rule`; `model` whether the model agrees.
    `much`, `also` and `model` are "" where there is nothing to say.
    """

    name: str
    start: str
    to: str
    clicks: str
    only: str
    said: str
    effects: str
    also: str
    room: str
    voice: str
    by_author: bool
    much: str = ""
    model: str = ""


@dataclass(frozen=True, slots=True)
class Complaint:
    """`Tight` `on entry` and what helps; `id` names it on its page; `steps` is () where nothing is left to change."""

    id: str
    feel: str
    place: str
    short: str
    steps: tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class SetupGuide:
    """One setup's guide. `rank` is `first` or `second` (every later setup): the accent; `clicks` what a click does."""

    id: str
    name: str
    rank: Literal["first", "second"]
    untested: str
    complaints: tuple[Complaint, ...]
    clicks: Picture | None


@dataclass(frozen=True, slots=True)
class GuideView:
    """What `guide.md.j2` and `guide.html.j2` show. `conditions` are short statements, `legend` whole sentences,
    `between` the later setups against the first."""

    language: str
    title: str
    place: str
    origin: str
    facts: tuple[str, ...]
    conditions: tuple[str, ...]
    legend: tuple[str, ...]
    headings: tuple[str, ...]
    setups: tuple[SetupGuide, ...]
    between: tuple[Picture, ...]
    caution: str


def documents(dossier: Dossier, kit: Kit) -> Iterator[Document]:
    """The guide to read, and the shape that other programs rely on: guide.json is the first setup's."""
    shown = view(dossier)
    yield Document.of_text("guide.md", kit.text("guide.md.j2", _for_markdown(shown)))
    yield Document.of_text("guide.html", kit.html("guide.html.j2", shown))
    yield Document.of_text("guide.json", _data(dossier, dossier.first.id))
    for sheet in dossier.sheets:
        yield Document.of_text(f"guide-{sheet.id}.json", _data(dossier, sheet.id))


def view(dossier: Dossier) -> GuideView:
    """Every setup's guide in the author's order."""
    place = f"{dossier.track.name}, {dossier.garage.name}"
    return GuideView(
        language="en-US" if dossier.channel.spelling == "us" else "en-GB",
        title=f"{place}: what to change",
        place=place,
        origin=episode_line(dossier),
        facts=_facts(dossier),
        conditions=tuple(spell(f"{one.name}: {one.value}", dossier.channel.spelling) for one in dossier.conditions),
        legend=tuple(_legend(dossier)),
        headings=("When the car is", "Setting", "Change", "What it does", "Room after it", "Who says so"),
        setups=tuple(_setup(dossier, one) for one in dossier.sheets),
        between=tuple(x for one in dossier.others if (x := between_picture(dossier, one, dossier.first))),
        caution=dossier.channel.caution,
    )


def _data(dossier: Dossier, setup: str) -> str:
    data = guide_json(dossier.guides[setup], dossier.channel.spelling)
    return json.dumps(data, ensure_ascii=False, indent=2) + "\n"


def _for_markdown(shown: GuideView) -> GuideView:
    """The same view, with the words that stand in the table safe there."""
    return replace(shown, setups=tuple(_setup_for_markdown(one) for one in shown.setups))


def _setup_for_markdown(setup: SetupGuide) -> SetupGuide:
    return replace(
        setup,
        complaints=tuple(
            replace(one, steps=tuple(_step_for_markdown(step) for step in one.steps)) for one in setup.complaints
        ),
    )


def _step_for_markdown(step: Step) -> Step:
    return replace(
        step, name=_escaped(step.name), said=_escaped(step.said), also=_escaped(step.also), voice=_escaped(step.voice)
    )


def _escaped(text: str) -> str:
    return _MARKS.sub(r"\\\1", text)


def _facts(dossier: Dossier) -> tuple[str, ...]:
    driven = dossier.episode.tested_with
    limits = dossier.garage.simulation.version
    version = f"tested with version {driven}" if driven else f"limits of version {limits}" if limits else ""
    return tuple(one for one in (stamp_line(dossier), version) if one)


def _legend(dossier: Dossier) -> Iterator[str]:
    """How to read it, and whose word it is."""
    presenter = dossier.channel.presenter
    yield "Change one thing at a time and drive a few laps before the next."
    yield "Each line starts from the figure on the card."
    yield f"What {presenter} says is advice for this very setup; a rule is one click by the usual rule, not tried here."
    if any(one.cars for one in dossier.opinions.values()):
        yield spell(
            "The chassis model is a second opinion and decides nothing: it says in how many plausible cars a change "
            "does what it stands here for, how much, told in cross weight, and which tyre pays.",
            dossier.channel.spelling,
        )
    yield "Up is to the larger number. Room is how many clicks are then left in that direction."


def _setup(dossier: Dossier, sheet: Sheet) -> SetupGuide:
    rows = dossier.guides[sheet.id].rows
    return SetupGuide(
        id=sheet.id,
        name=sheet.name,
        rank="first" if sheet.id == dossier.first.id else "second",
        untested="" if sheet.setup.tested else "Untested: nobody has driven these numbers yet.",
        complaints=tuple(_complaint(dossier, sheet, row) for row in rows),
        clicks=clicks_picture(dossier, sheet),
    )


def _complaint(dossier: Dossier, sheet: Sheet, row: GuideRow) -> Complaint:
    return Complaint(
        id=f"{sheet.id}-{row.feels}-{row.where}",
        feel=capital(row.feels),
        place=PLACES[row.where],
        short=f"{row.feels} {row.where}",
        steps=tuple(_step(dossier, sheet, row, one) for one in row.changes),
    )


def _step(dossier: Dossier, sheet: Sheet, row: GuideRow, change: Change) -> Step:
    spelling, garage, address = dossier.channel.spelling, sheet.garage, change.parameter
    by_author = change.voice == "author"
    return Step(
        name=spell(garage.name_of(address), spelling),
        start=garage.figure(address, change.start),
        to=garage.shown(address, change.to),
        clicks=f"{_clicks(abs(change.clicks))} {'up' if change.clicks > 0 else 'down'}",
        only=spell(for_whom(change.tyres, change.device), spelling),
        said=flat(change.say),
        effects=_effects(row, change),
        also=spell(_sentence(change.also), spelling),
        room=f"{_clicks(change.headroom)} left" if change.headroom else "none left, it is the limit",
        voice=dossier.channel.presenter if by_author else "rule",
        by_author=by_author,
        much=spell(_sentence(how_much(row, change, dossier.opinions.get(sheet.id))), spelling),
        model=agrees(row, change),
    )


def _clicks(number: int) -> str:
    return f"{number} {'click' if number == 1 else 'clicks'}"


def _effects(row: GuideRow, change: Change) -> str:
    """What the rules say of the rest of the corner: `Also looser on entry, but tighter on exit.`"""
    cure = _CURES[row.feels]
    same = [PLACES[phase] for phase in _elsewhere(row) if change.rule.get(phase) == cure]
    other = [PLACES[phase] for phase in _elsewhere(row) if change.rule.get(phase) == _against(cure)]
    parts = [f"also {cure} {listed(same)}"] if same else []
    parts += [f"{'but ' if same else ''}{_against(cure)} {listed(other)}"] if other else []
    if parts:
        return _sentence(", ".join(parts))
    if all(change.rule.get(phase) == "none" for phase in _elsewhere(row)):
        return "Nothing elsewhere."
    # Where the rules are silent nobody knows: silence must not read as a promise that nothing happens.
    return "No rule for the rest of the corner." if change.rule.get(row.where) == cure else "No rule speaks of it."


def _elsewhere(row: GuideRow) -> tuple[Phase, ...]:
    return tuple(phase for phase in PHASES if phase != row.where)


def _against(effect: Effect) -> Effect:
    return "looser" if effect == "tighter" else "tighter"


def _sentence(text: str) -> str:
    return f"{capital(text).rstrip('.')}." if text else ""
