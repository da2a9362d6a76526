"""Lap times over a stint: laps, the line through them with its band, and the laps where one setup passes another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from producer.basics.figures import decimals_of, figure
from producer.render.charts.drawing import Area, Board, Dot, Drawing, Extent, Point, Stroke, Text
from producer.render.charts.measuring import shortened, width, wrapped
from producer.render.charts.scale import step_of, ticks

SMALL, TITLE = 15.0, 24.0  # font sizes; see `bars`
GAP, EDGE = 8.0, 32.0
_ROW = SMALL * 1.25 + 12.0  # words, and the bar below them
_NARROWEST = 0.05  # seconds; a finer axis would show nothing but the clock


@dataclass(frozen=True, slots=True)
class LapSeries:
    """One setup. `points` are (lap, seconds, kept), `band` (lap, seconds, low, high) along the line, lap by lap.

    The look says the marker too: `first` a solid line and filled circles, `second` a dashed one and hollow diamonds.
    """

    name: str
    look: Literal["first", "second"]
    points: tuple[tuple[int, float, bool], ...]
    band: tuple[tuple[int, float, float, float], ...]


@dataclass(frozen=True, slots=True)
class LapMark:
    """A lap where something happens: at `lap`, by the interval from `low` to `high` (None where there is none)."""

    words: str
    lap: float
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True, slots=True)
class LapChart:
    """`marks` stand above the laps in their order; `upright` says what the axis of times is, `along` that of laps."""

    series: tuple[LapSeries, ...]
    marks: tuple[LapMark, ...]
    upright: str
    along: str
    alt: str


@dataclass(frozen=True, slots=True)
class _Plot:
    """Where a lap and a time are: `frame` in the drawing, `last` the last lap, times from `low` to `high`."""

    frame: Extent
    last: float
    low: float
    high: float

    def x(self, lap: float) -> float:
        share = (min(max(lap, 1.0), self.last) - 1) / max(1e-9, self.last - 1)
        return self.frame.left + share * (self.frame.right - self.frame.left)

    def y(self, seconds: float) -> float:
        return self.frame.bottom - (seconds - self.low) / (self.high - self.low) * (self.frame.bottom - self.frame.top)

    def at(self, lap: float, seconds: float) -> Point:
        return Point(self.x(lap), self.y(seconds))


def lap_chart(chart: LapChart, wide: float, high: float) -> Drawing:
    """The chart alone, for a page that says its title."""
    board = Board()
    _laps(board, chart, Extent(0, 0, wide, high))
    return board.drawing(wide, high, chart.alt)


def lap_sheet(chart: LapChart, wide: float, high: float, title: str, foot: Sequence[str]) -> Drawing:
    """The chart as a picture of its own: with title, edges and the lines at its foot."""
    board = Board()
    room, leading = wide - 2 * EDGE, TITLE * 1.2
    titles = wrapped(title, TITLE, room, strong=True)
    board.write(titles, Text(EDGE, EDGE + TITLE * 0.75, "", TITLE, strong=True), leading)
    feet = [line for text in foot for line in wrapped(text, SMALL, room)]
    first = high - EDGE - (len(feet) - 1) * SMALL * 1.3
    board.write(feet, Text(EDGE, first, "", SMALL, "quiet"), SMALL * 1.3)
    _laps(board, chart, Extent(EDGE, EDGE + leading * len(titles) + GAP, wide - EDGE, first - SMALL * 1.8))
    return board.drawing(wide, high, chart.alt, backed=True)


def _laps(board: Board, chart: LapChart, room: Extent) -> None:
    """Everything within a part of the sheet."""
    low, high = _range(chart)
    step = step_of((high - low) / 5)
    times = [(tick, _time(tick, step)) for tick in ticks(low, high, step)]
    most = (room.right - room.left) * 0.3
    names = [shortened(one.name, SMALL, most, strong=True) for one in chart.series]
    left = room.left + max((width(words, SMALL) for _, words in times), default=0.0) + GAP
    right = room.right - max((width(one, SMALL, strong=True) for one in names), default=0.0) - 1.5 * GAP
    top = room.top + _ROW * len(chart.marks) + SMALL * 1.6
    last = max((lap for one in chart.series for lap, *_ in (*one.points, *one.band)), default=1)
    plot = _Plot(Extent(left, top, right, room.bottom - SMALL * 1.6), max(2.0, last), low, high)
    _axes(board, chart, plot, times, room)
    for number, mark in enumerate(chart.marks):
        _mark(board, plot, mark, room.top + _ROW * number)
    for one in chart.series:
        _series(board, plot, one)
    _names(board, plot, chart, names)


def _range(chart: LapChart) -> tuple[float, float]:
    """From the quickest to the slowest time that counts, with a little space around."""
    times = [seconds for one in chart.series for _, seconds, kept in one.points if kept]
    times += [edge for one in chart.series for _, *three in one.band for edge in three]
    low, high = (min(times), max(times)) if times else (0.0, 1.0)
    space = max((high - low) * 0.04, _NARROWEST / 2)
    return low - space, high + space


def _time(seconds: Decimal, step: Decimal) -> str:
    """`31.5`, or `1:02.5` from a minute on."""
    decimals = decimals_of(step)
    if abs(seconds) < 60:
        return figure(seconds, decimals)
    minutes, rest = divmod(seconds, 60)
    return f"{minutes}:{figure(rest, decimals).zfill(2 + (decimals + 1 if decimals else 0))}"


def _axes(board: Board, chart: LapChart, plot: _Plot, times: Sequence[tuple[Decimal, str]], room: Extent) -> None:
    """Times at the left, laps below, a hairline for each time."""
    frame = plot.frame
    board.texts.append(Text(room.left, frame.top - SMALL * 0.6, chart.upright, SMALL, "quiet"))
    for tick, words in times:
        y = plot.y(float(tick))
        board.rule(Point(frame.left, y), Point(frame.right, y))
        board.texts.append(Text(frame.left - GAP, y + SMALL * 0.34, words, SMALL, "quiet", "end"))
    board.rule(Point(frame.left, frame.bottom), Point(frame.right, frame.bottom), "quiet")
    baseline = frame.bottom + SMALL * 1.25
    board.texts.append(Text(room.left, baseline, chart.along, SMALL, "quiet"))
    least = max(1.0, 48.0 * (plot.last - 1) / (frame.right - frame.left))
    taken = room.left + width(chart.along, SMALL) + GAP
    for tick in ticks(1, plot.last, step_of(least)):
        x, half = plot.x(float(tick)), width(figure(tick), SMALL) / 2
        if x - half > taken:
            board.rule(Point(x, frame.bottom), Point(x, frame.bottom + 4), "quiet")
            board.texts.append(Text(x, baseline, figure(tick), SMALL, "quiet", "middle"))


def _mark(board: Board, plot: _Plot, mark: LapMark, top: float) -> None:
    """The words, below them the interval with the lap on it, and a thin line down through the laps."""
    frame, x = plot.frame, plot.x(mark.lap)
    words = shortened(mark.words, SMALL, frame.right - frame.left)
    half = width(words, SMALL) / 2
    middle = min(max(x, frame.left + half), frame.right - half)
    board.texts.append(Text(middle, top + SMALL * 0.85, words, SMALL, "ink", "middle"))
    y = top + SMALL * 1.25 + 2
    if mark.low is not None and mark.high is not None:
        ends = (Point(plot.x(mark.low), y), Point(plot.x(mark.high), y))
        board.strokes.append(Stroke(ends, "quiet", 2))
    board.dots.append(Dot(x, y, 3.5, "ink"))
    board.rule(Point(x, frame.top), Point(x, frame.bottom), "quiet", (2, 4))


def _series(board: Board, plot: _Plot, one: LapSeries) -> None:
    """Band, line and laps of one setup."""
    upper = tuple(plot.at(lap, high) for lap, _, _, high in one.band)
    lower = tuple(plot.at(lap, low) for lap, _, low, _ in reversed(one.band))
    if len(one.band) > 1:
        board.areas.append(Area(upper + lower, one.look))
        line = tuple(plot.at(lap, seconds) for lap, seconds, *_ in one.band)
        board.strokes.append(Stroke(line, one.look, 2.5, () if one.look == "first" else (9, 5)))
    radius = min(4.0, max(2.2, (plot.frame.right - plot.frame.left) / plot.last * 0.3))
    for lap, seconds, kept in one.points:
        if kept:
            board.dots.append(_dot(plot.at(lap, seconds), radius, one, kept=True))
        else:
            _left_out(board, plot, one, plot.at(lap, seconds), radius)


def _dot(at: Point, radius: float, one: LapSeries, *, kept: bool) -> Dot:
    first = one.look == "first"
    return Dot(at.x, at.y, radius, one.look, "circle" if first else "diamond", filled=first and kept, faint=not kept)


def _left_out(board: Board, plot: _Plot, one: LapSeries, at: Point, radius: float) -> None:
    """A lap that does not count: hollow and struck through; past the edge only a small arrow points to it."""
    frame, reach = plot.frame, radius * 1.7
    if frame.top <= at.y <= frame.bottom:
        board.dots.append(_dot(at, radius, one, kept=False))
        board.strokes.append(Stroke((Point(at.x - reach, at.y + reach), Point(at.x + reach, at.y - reach)), one.look))
        return
    edge, way = (frame.top, 1) if at.y < frame.top else (frame.bottom, -1)
    # Setups that leave at the same lap point side by side.
    x = at.x + (0 if one.look == "first" else 2 * radius + 2)
    tip, foot = edge + way * 2, edge + way * (2 + 2 * radius)
    board.strokes.append(Stroke((Point(x - radius, foot), Point(x, tip), Point(x + radius, foot)), one.look, 1.5))


def _names(board: Board, plot: _Plot, chart: LapChart, names: Sequence[str]) -> None:
    """Each setup's name at the end of its line, moved apart where two would lie on one another."""
    ends = [(plot.y(one.band[-1][1]), one, name) for one, name in zip(chart.series, names, strict=True) if one.band]
    heights = _apart([end for end, *_ in ends], SMALL * 1.25, plot.frame.top, plot.frame.bottom)
    for y, (_, one, name) in zip(heights, ends, strict=True):
        text = Text(plot.frame.right + GAP * 1.5, y + SMALL * 0.34, name, SMALL, one.look, strong=True)
        board.texts.append(text)


def _apart(wanted: Sequence[float], least: float, highest: float, lowest: float) -> Iterator[float]:
    """The heights in the order given, at least `least` apart, from `highest` (the smaller) to `lowest`."""
    order = sorted(range(len(wanted)), key=lambda index: wanted[index])
    found: dict[int, float] = {}
    limit = highest
    for index in order:
        found[index] = max(wanted[index], limit)
        limit = found[index] + least
    limit = lowest
    for index in reversed(order):
        found[index] = min(found[index], limit)
        limit = found[index] - least
    yield from (found[index] for index in range(len(wanted)))
