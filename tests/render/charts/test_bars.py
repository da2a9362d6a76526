"""Bars to either side of zero: how long, how they are drawn, and that nothing ever lies on anything else."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.render.charts.bars import Bar, BarChart, Group, panelled, stacked
from producer.render.charts.drawing import Box, Drawing
from tests.render.charts.laws import troubles

Builder = Callable[[BarChart, float], Drawing]
BUILDERS: list[tuple[Builder, float]] = [(stacked, 358.0), (stacked, 820.0), (panelled, 820.0)]
DOUBT = "depends on\u00a0the\u00a0car"
PHASES = ("entry", "middle", "exit")


def bar(name: str, length: float, doubt: str = "") -> Bar:
    return Bar(name, length, "nothing" if not length else f"{min(abs(length), 99):.1f}\u00d7", doubt)


def chart(*lengths: tuple[float, float, float], doubt: str = "", name: str = "Right rear spring") -> BarChart:
    groups = (
        Group(name, "275 to 300\u00a0lb/in", tuple(bar(a, b, doubt) for a, b in zip(PHASES, three, strict=True)))
        for three in lengths
    )
    return BarChart(tuple(groups), "looser", "tighter", "\u00d7", "first", "What it shows.")


def boxes(drawing: Drawing) -> tuple[Box, ...]:
    return drawing.boxes


@pytest.mark.parametrize(("build", "wide"), BUILDERS)
def test_lengths_are_to_scale_and_on_their_side(build: Builder, wide: float) -> None:
    first, second, third = build(chart((2.0, -1.0, 0.5)), wide).boxes
    assert first.width == pytest.approx(2 * second.width) == pytest.approx(4 * third.width)
    words = {one.text.split("\u00d7")[0]: one for one in build(chart((2.0, -1.0, 0.5)), wide).texts}
    assert (words["2.0"].anchor, words["1.0"].anchor) == ("start", "end")


@pytest.mark.parametrize(("build", "wide"), BUILDERS)
@pytest.mark.parametrize("groups", [1, 4, 5, 12])
def test_a_bar_says_how_much_and_the_axis_which_way(build: Builder, wide: float, groups: int) -> None:
    """`2.0x tighter` would read as twice as tight. A long column of bars names its sides at its foot too."""
    drawing = build(chart(*[(2.0, -1.0, 0.5)] * groups), wide)
    said = [one.text for one in drawing.texts]
    assert "2.0\u00d7" in said
    sides = 3 if build is panelled else 2 if groups > 4 else 1
    for side in ("looser", "tighter"):
        assert [one for one in said if side in one] == [side] * sides
    assert troubles(drawing) == []


@pytest.mark.parametrize(("build", "wide"), BUILDERS)
def test_doubt_is_hollow_hatched_and_written_out(build: Builder, wide: float) -> None:
    sure, doubtful = build(chart((2.0, -1.0, 0.5)), wide), build(chart((2.0, -1.0, 0.5), doubt=DOUBT), wide)
    assert all(one.filled and not one.hatching for one in sure.boxes)
    assert all(not one.filled and one.hatching for one in doubtful.boxes)
    said = "".join(one.text for one in doubtful.texts).replace("\u00a0", "").replace(" ", "")
    assert said.count("dependsonthecar") == 3
    assert "depends" not in "".join(one.text for one in sure.texts)


@pytest.mark.parametrize(("build", "wide"), BUILDERS)
@pytest.mark.parametrize(
    "lengths",
    [
        [(0.0, 0.0, 0.0)],
        [(1.0, 0.0, 0.0)],
        [(-1e9, 1e-9, 0.0), (3.0, 2.0, 1.0)],
        [(-3.0, -2.0, -1.0)] * 12,
        [(1e-300, 0.0, 0.0)],
        [(1e9, -1e9, 0.0)],
    ],
)
@pytest.mark.parametrize("doubt", ["", DOUBT])
def test_odd_lengths(build: Builder, wide: float, lengths: list[tuple[float, float, float]], doubt: str) -> None:
    drawing = build(chart(*lengths, doubt=doubt), wide)
    assert troubles(drawing) == []
    assert all(math.isfinite(one.width) for one in drawing.boxes)
    assert len(drawing.boxes) == sum(1 for three in lengths for one in three if one)


@pytest.mark.parametrize(("build", "wide"), BUILDERS)
def test_no_groups_at_all(build: Builder, wide: float) -> None:
    assert build(chart(), wide).boxes == ()


@pytest.mark.parametrize(("build", "wide"), BUILDERS)
def test_a_long_name_is_broken(build: Builder, wide: float) -> None:
    assert troubles(build(chart((1.0, 2.0, 3.0), (1.0, 0.0, 0.0), name="Longnamedthing " * 8), wide)) == []


LENGTHS = st.one_of(st.just(0.0), st.floats(-30, 30), st.floats(-1e-6, 1e6))
BARS = st.tuples(LENGTHS, st.sampled_from(["", DOUBT]))
GROUPS = st.lists(st.tuples(BARS, BARS, BARS), min_size=1, max_size=12)


@pytest.mark.parametrize(("build", "wide"), BUILDERS)
@given(groups=GROUPS, name=st.text("abc DEFghi", max_size=50))
def test_nothing_lies_on_anything(build: Builder, wide: float, groups: list[object], name: str) -> None:
    told = tuple(
        Group(
            name, "1 to 2", tuple(bar(one, length, doubt) for one, (length, doubt) in zip(PHASES, three, strict=True))
        )
        for three in groups  # type: ignore[call-overload]
    )
    drawing = build(BarChart(told, "looser", "tighter", "\u00d7", "second", "Bars."), wide)
    assert troubles(drawing) == []
