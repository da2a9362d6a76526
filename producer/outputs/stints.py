"""What the test laps say: a page with the chart, what may be claimed and what not, and every stint; the chart alone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from producer.basics.figures import NO_BREAK, figure, with_unit
from producer.basics.spelling import spell
from producer.model.dossier import Dossier
from producer.model.stints import Comparison, Evidence, Stint
from producer.model.tyre_readings import Temperatures, Wear
from producer.outputs.laps_picture import finding, laps_picture, laps_sheet, left_out
from producer.outputs.outline import episode_line, stamp_line
from producer.outputs.picture import Picture
from producer.render.document import Document
from producer.render.kit import Kit
from producer.script.speaker import capital
from producer.stints.wording import click

_PIXELS = 2  # of a picture for one unit of its drawing


@dataclass(frozen=True, slots=True)
class Tyre:
    """One tyre after a stint: `figures` with their unit under the stint's headings, "" where nothing was read."""

    corner: str
    figures: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class StintView:
    """One stint. `facts` are short statements, `out` the laps left out, `said` and `not_said` whole sentences."""

    id: str
    name: str
    rank: Literal["first", "second"]
    facts: tuple[str, ...]
    out: str
    said: tuple[str, ...]
    not_said: tuple[str, ...]
    tyre_headings: tuple[str, ...]
    tyres: tuple[Tyre, ...]
    findings: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ComparisonView:
    """Two setups: `may` and `may_not` are whole sentences, `notes` what else to know."""

    title: str
    may: tuple[str, ...]
    may_not: tuple[str, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class StintsView:
    """What `stints.html.j2` shows."""

    language: str
    title: str
    place: str
    origin: str
    facts: tuple[str, ...]
    conditions: tuple[str, ...]
    picture: Picture | None
    comparisons: tuple[ComparisonView, ...]
    stints: tuple[StintView, ...]
    caution: str


@dataclass(frozen=True, slots=True)
class Sheet:
    """What `chart.typ.j2` sets: a chart on a page of its own size, in points."""

    title: str
    svg: str
    alt: str
    width: float
    height: float


def documents(dossier: Dossier, kit: Kit) -> Iterator[Document]:
    """The page, and the chart as SVG and PNG; nothing where the episode has no test laps."""
    if dossier.evidence is None or not dossier.evidence.stints:
        return
    yield Document.of_text("stints.html", kit.html("stints.html.j2", view(dossier, dossier.evidence)))
    drawing = laps_sheet(dossier)
    if drawing is not None:
        svg = kit.svg(drawing)
        yield Document.of_text("laps.svg", svg)
        title = finding(dossier, dossier.evidence)
        sheet = Sheet(title, svg, drawing.alt, drawing.width * _PIXELS, drawing.height * _PIXELS)
        yield Document("laps.png", kit.png(kit.typst("chart.typ.j2", sheet)))


def view(dossier: Dossier, evidence: Evidence) -> StintsView:
    """Everything the laps say, in the author's order."""
    spelling = dossier.channel.spelling
    place = f"{dossier.track.name}, {dossier.garage.name}"
    return StintsView(
        language="en-US" if spelling == "us" else "en-GB",
        title=f"{place}: test laps",
        place=place,
        origin=episode_line(dossier),
        facts=tuple(one for one in (stamp_line(dossier),) if one),
        conditions=tuple(spell(f"{one.name}: {one.value}", spelling) for one in dossier.conditions),
        picture=laps_picture(dossier),
        comparisons=tuple(_comparison(one, spelling) for one in evidence.comparisons),
        stints=tuple(_stint(dossier, evidence, one) for one in evidence.stints),
        caution=dossier.channel.caution,
    )


def _comparison(one: Comparison, spelling: str) -> ComparisonView:
    may_not = (*one.why_not, *one.may_not) if not one.comparable else one.may_not
    return ComparisonView(
        title=f"{one.first_name} and {one.second_name}",
        may=_spelled(one.may, spelling),
        may_not=_spelled(may_not, spelling),
        notes=_spelled(one.notes, spelling),
    )


def _spelled(texts: tuple[str, ...], spelling: str) -> tuple[str, ...]:
    return tuple(spell(text, spelling) for text in texts)


def _stint(dossier: Dossier, evidence: Evidence, one: Stint) -> StintView:
    spelling = dossier.channel.spelling
    number = f", stint {one.number}" if len(evidence.of(one.setup)) > 1 else ""
    laps = f"{len(one.kept)} of {len(one.laps)} laps count"
    driving = f"driven {one.driving}" if one.driving else ""
    return StintView(
        id=f"stint-{one.setup}-{one.number}",
        name=f"{one.setup_name}{number}",
        rank="first" if one.setup == dossier.first.id else "second",
        facts=tuple(part for part in (laps, driving, _fuel(one)) if part),
        out=left_out(one.left_out),
        said=_spelled(one.may, spelling),
        not_said=_spelled(one.may_not, spelling),
        tyre_headings=(capital(spell("tyre", spelling)), *_columns(one)),
        tyres=tuple(_tyres(one)),
        findings=_spelled(tuple(_findings(dossier, one)), spelling),
    )


def _findings(dossier: Dossier, one: Stint) -> Iterator[str]:
    """Which tyre gives up first, then what temperatures and wear say, each with the click that answers it."""
    if one.tyres.wear is not None and one.tyres.wear.text:
        yield one.tyres.wear.text
    sheet = next((each for each in dossier.sheets if each.id == one.setup), None)
    for found in one.tyres.findings:
        answer = ""
        if sheet is not None and found.change is not None:
            answer = f" {click(sheet.setting(found.change.parameter), found.change)}"
        if found.text:
            yield f"{found.text}{answer}"


def _fuel(one: Stint) -> str:
    """What was in the tank, as the author says it; else as it stands beside the first lap that has it."""
    if one.fuel is not None:
        return f"{with_unit(figure(one.fuel.value), one.fuel.unit)} of fuel at the start"
    first = next((lap for lap in one.laps if lap.fuel is not None), None)
    if first is None or first.fuel is None:
        return ""
    return f"{with_unit(figure(first.fuel), one.fuel_unit)} of fuel on lap{NO_BREAK}{first.number}"


def _columns(one: Stint) -> Iterator[str]:
    """Only what was read has columns."""
    if one.tyres.temperatures:
        yield from ("Outside", "Middle", "Inside", "Spread")
    if one.tyres.wear is not None:
        yield "Used"


def _tyres(one: Stint) -> Iterator[Tyre]:
    """The corners of which something was read, in the order of the car."""
    hot = {read.corner: read for read in one.tyres.temperatures}
    wear = one.tyres.wear
    for corner in ("lf", "rf", "lr", "rr"):
        read, used = hot.get(corner), _used(wear, corner)
        if read is not None or used:
            figures = (*(_heat(read) if hot else ()), *((used,) if wear is not None else ()))
            yield Tyre(corner.upper(), figures)


def _heat(read: Temperatures | None) -> tuple[str, str, str, str]:
    """Outside, middle, inside, and how far the hottest is from the coolest."""
    if read is None:
        return "", "", "", ""
    four = (read.outside, read.middle, read.inside, read.spread)
    outside, middle, inside, spread = (with_unit(figure(x), read.unit) for x in four)
    return outside, middle, inside, spread


def _used(wear: Wear | None, corner: str) -> str:
    found = {str(name): used for name, used in wear.used.items()}.get(corner) if wear is not None else None
    return with_unit(figure(found), "%") if found is not None else ""
