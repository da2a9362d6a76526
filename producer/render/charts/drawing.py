"""What a chart consists of: lines, shapes and texts at their places. x goes right, y down, in units of the drawing."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Literal, NamedTuple

from producer.render.charts.measuring import width

# Colours by what they stand for; the template says which they are.
Look = Literal["ink", "quiet", "hairline", "first", "second"]
Anchor = Literal["start", "middle", "end"]
_CAPITAL, _BELOW = 0.72, 0.22  # how far letters reach above and below their baseline, shares of the font size


class Point(NamedTuple):
    """A place in the drawing."""

    x: float
    y: float


class Extent(NamedTuple):
    """A rectangle by its edges."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: Extent) -> bool:
        """Whether two share more than an edge."""
        across = self.left < other.right and other.left < self.right
        return across and self.top < other.bottom and other.top < self.bottom

    def holds(self, other: Extent) -> bool:
        """Whether the other lies in this one, edges included."""
        across = self.left <= other.left and other.right <= self.right
        return across and self.top <= other.top and other.bottom <= self.bottom


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text; `y` is its baseline, `x` where it starts, has its middle or ends."""

    x: float
    y: float
    text: str
    size: float
    look: Look = "ink"
    anchor: Anchor = "start"
    strong: bool = False

    @property
    def extent(self) -> Extent:
        """The room it takes, from the font's own widths."""
        wide = width(self.text, self.size, strong=self.strong)
        left = self.x - {"start": 0.0, "middle": wide / 2, "end": wide}[self.anchor]
        return Extent(left, self.y - _CAPITAL * self.size, left + wide, self.y + _BELOW * self.size)


@dataclass(frozen=True, slots=True)
class Stroke:
    """A line through points. `dash` are lengths of ink and gap, () for a line without gaps."""

    points: tuple[Point, ...]
    look: Look
    thickness: float = 1
    dash: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Area:
    """A surface between points, lightly tinted so that lines and letters stay readable on it."""

    points: tuple[Point, ...]
    look: Look


@dataclass(frozen=True, slots=True)
class Box:
    """A bar: filled, or hollow with `hatching` where what it says is in doubt."""

    x: float
    y: float
    width: float
    height: float
    look: Look
    filled: bool = True
    hatching: tuple[Stroke, ...] = ()

    @property
    def extent(self) -> Extent:
        """The room it takes."""
        return Extent(self.x, self.y, self.x + self.width, self.y + self.height)


@dataclass(frozen=True, slots=True)
class Dot:
    """A marker: a circle or a diamond, filled or hollow; `faint` with a thin line."""

    x: float
    y: float
    radius: float
    look: Look
    shape: Literal["circle", "diamond"] = "circle"
    filled: bool = True
    faint: bool = False

    @property
    def corners(self) -> tuple[Point, ...]:
        """A diamond's corners: top, right, bottom, left."""
        x, y, r = self.x, self.y, self.radius * 1.25
        return (Point(x, y - r), Point(x + r, y), Point(x, y + r), Point(x - r, y))


@dataclass(frozen=True, slots=True)
class Drawing:
    """A chart ready to be written down, drawn in the order of its fields; `alt` says in words what it shows.

    `backed` with paper behind it, for a picture that stands alone.
    """

    width: float
    height: float
    alt: str
    areas: tuple[Area, ...] = ()
    strokes: tuple[Stroke, ...] = ()
    boxes: tuple[Box, ...] = ()
    dots: tuple[Dot, ...] = ()
    texts: tuple[Text, ...] = ()
    backed: bool = False


@dataclass(slots=True)
class Board:
    """Where a builder puts one thing after another; `drawing` is what came of it."""

    areas: list[Area] = field(default_factory=list)
    strokes: list[Stroke] = field(default_factory=list)
    boxes: list[Box] = field(default_factory=list)
    dots: list[Dot] = field(default_factory=list)
    texts: list[Text] = field(default_factory=list)

    def write(self, lines: Iterable[str], place: Text, leading: float) -> None:
        """Several lines below one another, each like `place`, which has the first one's place."""
        for number, line in enumerate(lines):
            y = place.y + number * leading
            self.texts.append(Text(place.x, y, line, place.size, place.look, place.anchor, place.strong))

    def rule(self, start: Point, end: Point, look: Look = "hairline", dash: tuple[float, ...] = ()) -> None:
        """A thin straight line."""
        self.strokes.append(Stroke((start, end), look, 1, dash))

    def drawing(self, width: float, height: float, alt: str, *, backed: bool = False) -> Drawing:
        """Everything put here, on a sheet of that size."""
        areas, strokes, boxes = tuple(self.areas), tuple(self.strokes), tuple(self.boxes)
        return Drawing(width, height, alt, areas, strokes, boxes, tuple(self.dots), tuple(self.texts), backed)
