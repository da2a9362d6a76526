"""The chart of laps: each setup's laps with the line through them, and from which lap one is ahead of another."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from producer.basics.figures import NO_BREAK, with_unit
from producer.basics.spelling import spell
from producer.model.dossier import Dossier
from producer.model.stints import Comparison, Evidence, Lap, SetupLine
from producer.outputs.outline import stamp_line
from producer.outputs.picture import NARROW, WIDE, Picture
from producer.render.charts.drawing import Drawing
from producer.render.charts.laps import LapChart, LapMark, LapSeries, lap_chart, lap_sheet

_WIDE_HIGH, _NARROW_HIGH = 460.0, 380.0
SHEET = (960.0, 540.0)  # the shape of a video


def laps_picture(dossier: Dossier) -> Picture | None:
    """The chart for a page; None where no setup has laps enough for a line."""
    evidence = dossier.evidence
    if evidence is None or not evidence.lines:
        return None
    chart = _chart(dossier, evidence)
    return Picture(
        id="laps",
        title=finding(dossier, evidence),
        rank="first",
        wide=lap_chart(chart, WIDE, _WIDE_HIGH),
        narrow=lap_chart(chart, NARROW, _NARROW_HIGH),
        notes=tuple(spell(one, dossier.channel.spelling) for one in _notes(evidence)),
        rows=(),
    )


def laps_sheet(dossier: Dossier) -> Drawing | None:
    """The same as a picture of its own, with title, origin and caution."""
    evidence = dossier.evidence
    if evidence is None or not evidence.lines:
        return None
    number = dossier.episode.number
    channel = dossier.channel.name if number is None else f"{dossier.channel.name}, episode{NO_BREAK}{number}"
    parts = (f"{dossier.track.name}, {dossier.garage.name}", channel, stamp_line(dossier))
    foot = (" · ".join(part for part in parts if part), dossier.channel.caution)
    return lap_sheet(_chart(dossier, evidence), *SHEET, finding(dossier, evidence), foot)


def finding(dossier: Dossier, evidence: Evidence) -> str:
    """What the laps say in a few words; of one setup alone what it loses."""
    comparison = evidence.comparison
    if comparison is not None:
        return spell(comparison.title, dossier.channel.spelling)
    if not evidence.lines:
        return "Too few laps for a line"
    line = evidence.lines[0]
    interval = line.robust.slope_interval
    if interval is None or interval.holds(0):
        return f"{line.name}: no falloff that these laps could tell"
    way = "loses" if line.robust.slope > 0 else "gains"
    return f"{line.name} {way} {with_unit(f'{abs(line.robust.slope):.3f}', 's')} a lap"


def left_out(laps: tuple[Lap, ...]) -> str:
    """`1 (out lap), 19 (traffic)`; "" where every lap counts."""
    return ", ".join(f"{one.number} ({one.left_out or 'no time'})" for one in laps)


def _chart(dossier: Dossier, evidence: Evidence) -> LapChart:
    first = dossier.first.id
    series = tuple(_series(one, "first" if one.setup == first else "second") for one in evidence.lines)
    comparison = evidence.comparison
    marks = tuple(_marks(comparison)) if comparison is not None and comparison.comparable else ()
    said = comparison.paragraph if comparison is not None else ""
    alt = spell(f"{finding(dossier, evidence)}. {said}".strip(), dossier.channel.spelling)
    return LapChart(series, marks, "seconds a lap", "lap", alt)


def _series(line: SetupLine, look: Literal["first", "second"]) -> LapSeries:
    band = []
    for one in line.band:
        low, high = one.interval or (one.seconds, one.seconds)
        band.append((one.lap, one.seconds, low, high))
    return LapSeries(line.name, look, line.points, tuple(band))


def _marks(comparison: Comparison) -> Iterator[LapMark]:
    """Equal pace, and from where one setup's total is ahead, if by more than chance."""
    if comparison.crossover_lap is not None and comparison.paces_cross:
        low, high = comparison.interval or (None, None)
        yield LapMark(f"equal pace at lap {round(comparison.crossover_lap)}", comparison.crossover_lap, low, high)
    lap, interval = comparison.ahead_from_lap, comparison.ahead_interval
    if comparison.passing is not None:
        _, lap, interval = comparison.passing
    elif not comparison.ahead_for_sure:
        return
    if lap is not None:
        yield LapMark(f"ahead in total from lap {lap}", lap, *(interval or (None, None)))


def _notes(evidence: Evidence) -> Iterator[str]:
    """How to read it, and every lap that does not count."""
    yield f"Each mark is a lap; the lines are fitted by least squares, the tint holds the line at 95{NO_BREAK}%."
    comparison = evidence.comparison
    if comparison is not None:
        yield from (text for text in (comparison.crossover_text, comparison.ahead_text, *comparison.why_not) if text)
    out = [(one, left_out(one.left_out)) for one in evidence.stints if one.left_out]
    if out:
        many = {one.setup for one, _ in out if len(evidence.of(one.setup)) > 1}
        named = [
            f"{one.setup_name}{f', stint {one.number},' if one.setup in many else ''} lap {laps}" for one, laps in out
        ]
        yield f"Struck through or past the edge, and left out: {'; '.join(named)}."
