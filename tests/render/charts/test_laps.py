"""The chart of laps: marks where laps are, lines and bands, laps left out, and nothing on anything else."""

from __future__ import annotations

from itertools import pairwise
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.render.charts.drawing import Drawing
from producer.render.charts.laps import LapChart, LapMark, LapSeries, lap_chart, lap_sheet
from tests.render.charts.laws import troubles

SIZES = [(358.0, 380.0), (820.0, 460.0)]
LEFT_OUT = {3: 34.9, 5: 31.4}


def series(
    name: str = "Short run",
    look: Literal["first", "second"] = "first",
    start: float = 31.25,
    slope: float = 0.03,
    laps: int = 20,
    out: dict[int, float] | None = None,
) -> LapSeries:
    """Laps exactly on a line, and some that do not count."""
    line = [(lap, start + slope * lap) for lap in range(1, laps + 1)]
    points = tuple((lap, seconds, True) for lap, seconds in line if lap not in (out or {}))
    points += tuple((lap, seconds, False) for lap, seconds in (out or {}).items())
    return LapSeries(name, look, points, tuple((lap, s, s - 0.02, s + 0.02) for lap, s in line))


def chart(*found: LapSeries, marks: tuple[LapMark, ...] = ()) -> LapChart:
    return LapChart(found, marks, "seconds a lap", "lap", "What the laps say.")


def two() -> LapChart:
    marks = (LapMark("equal pace at lap 10", 10.1, 6.3, 12.9), LapMark("ahead in total from lap 20", 20, 12, 25))
    return chart(series(out=LEFT_OUT, laps=38), series("Long run", "second", 31.35, 0.02, 40, {1: 36.0}), marks=marks)


def words(drawing: Drawing) -> list[str]:
    return [one.text for one in drawing.texts]


@pytest.mark.parametrize(("wide", "high"), SIZES)
def test_every_lap_has_its_mark(wide: float, high: float) -> None:
    drawing = lap_chart(two(), wide, high)
    solid = [one for one in drawing.dots if one.look == "first" and one.filled]
    hollow = [one for one in drawing.dots if one.look == "second" and not one.faint]
    assert (len(solid), len(hollow)) == (36, 39)
    assert {one.shape for one in solid} == {"circle"}
    assert {(one.shape, one.filled) for one in hollow} == {("diamond", False)}
    # Slower laps stand higher, later ones further right.
    assert all(b.x > a.x and b.y < a.y for a, b in pairwise(solid))


def test_a_lap_left_out_is_hollow_and_struck_and_one_past_the_edge_an_arrow() -> None:
    plain, told = lap_chart(chart(series()), 820, 460), lap_chart(chart(series(out=LEFT_OUT)), 820, 460)
    faint = [one for one in told.dots if one.faint]
    assert [(one.filled, one.shape) for one in faint] == [(False, "circle")]
    assert [one for one in plain.dots if one.faint] == []
    corners = [one for one in told.strokes if len(one.points) == 3]
    assert len(corners) == 1
    assert corners[0].points[1].y == min(at.y for at in corners[0].points)


def test_the_axis_is_that_of_the_laps_that_count() -> None:
    far = lap_chart(chart(series(out={3: 95.0})), 820, 460)
    assert [one for one in words(far) if one.startswith("3")] == [
        one for one in words(lap_chart(chart(series()), 820, 460)) if one.startswith("3")
    ]


def test_first_is_solid_and_second_dashed() -> None:
    lines = {one.look: one.dash for one in lap_chart(two(), 820, 460).strokes if one.thickness == 2.5}
    assert lines == {"first": (), "second": (9, 5)}
    assert [one.look for one in lap_chart(two(), 820, 460).areas] == ["first", "second"]


@pytest.mark.parametrize(("wide", "high"), SIZES)
def test_a_mark_stands_over_its_lap(wide: float, high: float) -> None:
    drawing = lap_chart(two(), wide, high)
    pace, ahead = (one for one in drawing.dots if one.look == "ink")
    dots = {round(one.x, 3) for one in drawing.dots if one.look == "second"}
    assert pace.x < ahead.x
    assert round(ahead.x, 3) in dots
    intervals = [one for one in drawing.strokes if one.thickness == 2]
    assert [one.points[0].x < dot.x < one.points[1].x for one, dot in zip(intervals, (pace, ahead), strict=True)] == [
        True,
        True,
    ]
    assert "equal pace at lap 10" in words(drawing)


def test_a_minute_is_written_as_people_time_laps() -> None:
    assert "1:02.5" in words(lap_chart(chart(series(start=61.9, slope=0.05)), 820, 460))
    assert "1:00.0" in words(lap_chart(chart(series(start=59.2, slope=0.1)), 820, 460))
    assert "59.5" in words(lap_chart(chart(series(start=59.2, slope=0.1)), 820, 460))


def test_names_at_the_same_end_move_apart() -> None:
    drawing = lap_chart(chart(series(), series("Long run", "second")), 820, 460)
    assert troubles(drawing) == []
    assert {"Short run", "Long run"} <= set(words(drawing))


@pytest.mark.parametrize(("wide", "high"), SIZES)
@pytest.mark.parametrize(
    "odd",
    [
        chart(),
        chart(series(laps=1)),
        chart(series(laps=2)),
        chart(series(slope=0.0)),
        chart(series(laps=1000)),
        chart(series(start=4000.0, slope=30)),
        chart(series("A setup with a name that is longer than any name should be")),
        chart(LapSeries("Empty", "first", (), ())),
        chart(LapSeries("Out", "first", ((1, 31.0, False),), ())),
        chart(series(), marks=(LapMark("at the very start", 1, -5, 3), LapMark("at the very end " * 9, 20, 18, 400))),
        chart(series(), series("Second", "second"), series("Third", "second"), series("Fourth", "second")),
    ],
)
def test_odd_stints(odd: LapChart, wide: float, high: float) -> None:
    assert troubles(lap_chart(odd, wide, high)) == []
    assert troubles(lap_sheet(odd, 960, 540, "What the laps say", ("Where it is from.", "Caution."))) == []


POINTS = st.lists(st.tuples(st.integers(1, 90), st.floats(10, 200), st.booleans()), max_size=40)


@given(
    points=POINTS, slope=st.floats(-0.5, 0.5), laps=st.integers(1, 90), mark=st.floats(1, 90), reach=st.floats(0, 50)
)
@pytest.mark.parametrize(("wide", "high"), SIZES)
def test_nothing_lies_on_anything(
    wide: float, high: float, points: list[tuple[int, float, bool]], slope: float, laps: int, mark: float, reach: float
) -> None:
    line = series("Long run", "second", 31, slope, laps)
    loose = LapSeries("Short run", "first", tuple(points), line.band)
    marks = (LapMark("equal pace at lap 10", mark, mark - reach, mark + reach),)
    assert troubles(lap_chart(chart(loose, line, marks=marks), wide, high)) == []


def test_a_sheet_has_title_foot_and_paper() -> None:
    sheet = lap_sheet(two(), 960, 540, "Long run is ahead from lap 20 " * 4, ("Where from.", "Not for a real car."))
    assert sheet.backed
    assert (sheet.width, sheet.height) == (960, 540)
    assert {"Where from.", "Not for a real car."} <= set(words(sheet))
    assert troubles(sheet) == []
