"""Bars to either side of a zero line, in groups: stacked below one another, or one panel beside the other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from producer.basics.figures import figure
from producer.render.charts.axis import Axis, Need, axis
from producer.render.charts.drawing import Board, Box, Drawing, Look, Point, Stroke, Text
from producer.render.charts.measuring import shortened, width, wrapped
from producer.render.charts.scale import step_of, ticks

NAME, SMALL = 16.0, 15.0  # font sizes; drawn at about one pixel a unit, so that a phone shows them as large
BAR, GAP = 13.0, 6.0  # a bar's height, and the space between a bar and its words
_TICK_APART, _TICKS = 44.0, 5  # units between two ticks at least, and how many at most, about
_LEAST = 1.5  # a bar that is shorter than this would not be seen
_HATCH = 5.0
_MANY = 4  # groups; below more than that the sides are named once more, as a phone shows only a part


@dataclass(frozen=True, slots=True)
class Bar:
    """`length` is signed, + to the right, in the chart's measure, below 1e9; `figure` says it (`1.8×`).

    `doubt` is what makes it uncertain, "" where it is sure.
    """

    name: str
    length: float
    figure: str
    doubt: str = ""


@dataclass(frozen=True, slots=True)
class Group:
    """What belongs together under one name; `detail` is said more quietly."""

    name: str
    detail: str
    bars: tuple[Bar, ...]


@dataclass(frozen=True, slots=True)
class BarChart:
    """Groups with the same bars each. `left` and `right` name the two sides; `measure` is written after a tick."""

    groups: tuple[Group, ...]
    left: str
    right: str
    measure: str
    look: Literal["first", "second"]
    alt: str


def stacked(chart: BarChart, wide: float) -> Drawing:
    """Every group with its name above and its bars below one another: for narrow places and for few groups."""
    board = Board()
    names = [bar.name for group in chart.groups for bar in group.bars]
    column = max((width(one, SMALL) for one in names), default=0.0)
    plot = _axis(chart, column + 2 * GAP, wide, whole=True)
    y, spans = _sides(board, chart, plot, SMALL), []
    between = GAP if any(group.name for group in chart.groups) else 2 * GAP
    for number, group in enumerate(chart.groups):
        y = top = _heading(board, group, y + (GAP * 2 if number else GAP), wide) if group.name else y
        for bar in group.bars:
            centre = y + (BAR + between) / 2
            board.texts.append(Text(0, _baseline(centre), bar.name, SMALL, "quiet"))
            _bar(board, chart.look, plot, bar, centre, (bar.doubt,) if bar.doubt else ())
            y += BAR + between
        spans.append((top, y))
    height = _feet(board, chart, (plot,), spans)
    if len(chart.groups) > _MANY:
        height = _sides(board, chart, plot, height + SMALL)
    return board.drawing(wide, height, chart.alt)


def panelled(chart: BarChart, wide: float) -> Drawing:
    """A row a group, its name at the left, and a panel for each of its bars: for wide places."""
    board, column, between = Board(), 190.0, 18.0
    heads = [bar.name for bar in chart.groups[0].bars] if chart.groups else []
    each = (wide - column - len(heads) * between) / max(1, len(heads))
    plot = _axis(chart, column + between, column + between + each, whole=False)
    axes = tuple(plot.moved(number * (each + between)) for number in range(len(heads)))
    for head, one in zip(heads, axes, strict=True):
        board.texts.append(Text(one.zero, NAME, head, NAME, anchor="middle", strong=True))
    top = y = max((_sides(board, chart, one, NAME * 2 + 4) for one in axes), default=0.0)
    for number, group in enumerate(chart.groups):
        if number:
            board.rule(Point(0, y), Point(wide, y))
        y = _row(board, chart, group, axes, y, column)
    height = _feet(board, chart, axes, [(top, y)])
    return board.drawing(wide, height, chart.alt)


def _row(board: Board, chart: BarChart, group: Group, axes: Sequence[Axis], top: float, column: float) -> float:
    """One group's row; where the next one begins."""
    names = wrapped(group.name, NAME, column, strong=True)
    details = wrapped(group.detail, SMALL, column) if group.detail else ()
    tall = max(NAME * 1.15 * len(names) + SMALL * 1.2 * len(details), BAR * 2) + 2 * GAP
    centre = top + tall / 2
    board.write(names, Text(0, top + GAP + NAME * 0.85, "", NAME, strong=True), NAME * 1.15)
    board.write(details, Text(0, top + GAP + NAME * 1.15 * len(names) + SMALL * 0.85, "", SMALL, "quiet"), SMALL * 1.2)
    for bar, plot in zip(group.bars, axes, strict=True):
        _bar(board, chart.look, plot, bar, centre, _doubt_lines(bar.doubt))
    return top + tall


def _heading(board: Board, group: Group, top: float, wide: float) -> float:
    """A group's name and beside it, or below where there is no room, its detail; where the bars begin."""
    names = wrapped(group.name, NAME, wide, strong=True)
    leading = NAME * 1.15
    board.write(names, Text(0, top + NAME, "", NAME, strong=True), leading)
    end = top + leading * len(names)
    beside = width(names[-1], NAME, strong=True) + 2 * GAP
    if group.detail and beside + width(group.detail, SMALL) <= wide:
        board.texts.append(Text(beside, end - leading + NAME, group.detail, SMALL, "quiet"))
    elif group.detail:
        board.texts.append(Text(0, end + SMALL, shortened(group.detail, SMALL, wide), SMALL, "quiet"))
        end += SMALL * 1.2
    return end + GAP / 2


def _sides(board: Board, chart: BarChart, plot: Axis, baseline: float) -> float:
    """The words for the two sides, at the zero line; what is below them."""
    board.texts.append(Text(plot.zero - GAP, baseline, chart.left, SMALL, "quiet", "end"))
    board.texts.append(Text(plot.zero + GAP, baseline, chart.right, SMALL, "quiet"))
    return baseline + GAP


def _bar(board: Board, look: Look, plot: Axis, bar: Bar, centre: float, doubts: Sequence[str]) -> None:
    """The bar, what it says at its end, and its doubt on the side where no bar is."""
    way = -1 if bar.length < 0 else 1
    long = max(abs(bar.length) * plot.scale, _LEAST) if bar.length else 0.0
    if long:
        x, y = min(plot.zero, plot.zero + way * long), centre - BAR / 2
        hatching = tuple(_hatching(x, y, long, look)) if bar.doubt else ()
        board.boxes.append(Box(x, y, long, BAR, look, filled=not bar.doubt, hatching=hatching))
    end, other = plot.zero + way * (long + GAP), plot.zero - way * GAP
    quiet: Look = "ink" if bar.length else "quiet"
    if bar.figure:
        board.texts.append(Text(end, _baseline(centre), bar.figure, SMALL, quiet, "end" if way < 0 else "start"))
    if doubts:
        first = _baseline(centre) - (len(doubts) - 1) * SMALL * 0.55
        place = Text(other, first, "", SMALL, "quiet", "start" if way < 0 else "end")
        board.write(doubts, place, SMALL * 1.1)


def _hatching(x: float, y: float, wide: float, look: Look) -> Iterator[Stroke]:
    """Strokes that rise at 45 degrees across a bar, cut off at its edges."""
    start = _HATCH
    while start < wide + BAR:
        low = Point(x + max(0.0, start - BAR), y + min(start, BAR))
        high = Point(x + min(start, wide), y + max(0.0, start - wide))
        yield Stroke((low, high), look, 1)
        start += _HATCH


def _feet(board: Board, chart: BarChart, axes: Sequence[Axis], spans: Sequence[tuple[float, float]]) -> float:
    """Zero lines and ticks where bars are (from, to), with their figures below; the height of it all."""
    bottom = spans[-1][1] if spans else 0.0
    for plot in axes:
        for tick, words in _ticks(chart, plot):
            x = plot.at(float(tick))
            for start, end in spans:
                board.rule(Point(x, start), Point(x, end), "hairline" if tick else "quiet")
            board.texts.append(Text(x, bottom + SMALL + 3, words, SMALL, "quiet", "middle"))
    return bottom + SMALL * 1.5 + 3


def _ticks(chart: BarChart, plot: Axis) -> Iterator[tuple[Decimal, str]]:
    """Zero, and as many more as their figures have room for."""
    step = step_of(max(_TICK_APART, (plot.end - plot.start) / _TICKS) / plot.scale)
    apart = float(step) * plot.scale - GAP
    for tick in ticks((plot.start - plot.zero) / plot.scale, (plot.end - plot.zero) / plot.scale, step):
        words = f"{figure(abs(tick))}{chart.measure}" if tick else "0"
        half = width(words, SMALL) / 2
        inside = plot.start <= plot.at(float(tick)) - half and plot.at(float(tick)) + half <= plot.end
        if not tick or (inside and half * 2 <= apart):
            yield tick, words


def _axis(chart: BarChart, start: float, end: float, *, whole: bool) -> Axis:
    """The axis for all bars; `whole` where a doubt stands on one line."""
    needs = (
        Need(bar.length, _LEAST + GAP + width(bar.figure, SMALL), _doubt_room(bar, whole=whole)) for bar in _all(chart)
    )
    least = GAP + max(width(chart.left, SMALL), width(chart.right, SMALL))
    return axis(tuple(needs), start, end, least)


def _doubt_room(bar: Bar, *, whole: bool) -> float:
    lines = ((bar.doubt,) if whole else _doubt_lines(bar.doubt)) if bar.doubt else ()
    return max((GAP + width(line, SMALL) for line in lines), default=0.0)


def _all(chart: BarChart) -> list[Bar]:
    return [bar for group in chart.groups for bar in group.bars]


def _doubt_lines(doubt: str) -> tuple[str, ...]:
    return wrapped(doubt, SMALL, 78) if doubt else ()


def _baseline(centre: float) -> float:
    return centre + SMALL * 0.34
