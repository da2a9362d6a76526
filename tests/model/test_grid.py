"""The laws of a grid: exact places, clicks there and back, room left, the nearest."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.model.grid import Grid

D = Decimal
numbers = st.decimals(allow_nan=False, allow_infinity=False, min_value=-2000, max_value=2000, places=4)
steps = st.sampled_from([D("0.0625"), D("0.1"), D("0.25"), D("0.5"), D(1), D(5), D(25)])


@st.composite
def grids(draw: st.DrawFn) -> Grid:
    if draw(st.booleans()):
        choices = tuple(sorted(draw(st.sets(numbers, min_size=1, max_size=8))))
        return Grid(choices[0], choices[-1], None, choices)
    low = draw(numbers)
    step = draw(steps)
    rest = draw(st.sampled_from([D(0), step / 2]))  # the highest limit need not be a place
    return Grid(low, low + step * draw(st.integers(0, 200)) + rest, step)


@given(grids(), st.data())
def test_a_place_is_found_again(grid: Grid, data: st.DataObject) -> None:
    index = data.draw(st.integers(0, grid.last))
    value = grid.at(index)
    assert value is not None
    assert grid.index(value) == index
    assert grid.inside(value)
    assert grid.nearest(value) == (value,)
    assert grid.headroom(value, 1) + grid.headroom(value, -1) == grid.last


@given(grids(), st.data())
def test_clicks_there_and_back(grid: Grid, data: st.DataObject) -> None:
    one, other = (grid.at(data.draw(st.integers(0, grid.last))) for _ in range(2))
    assert one is not None
    assert other is not None
    clicks = grid.clicks(one, other)
    assert clicks is not None
    assert grid.moved(one, clicks) == other
    assert grid.clicks(other, one) == -clicks
    assert (clicks > 0) == (other > one)


@given(grids(), st.data())
def test_the_room_left_is_the_last_click_that_goes(grid: Grid, data: st.DataObject) -> None:
    value = grid.at(data.draw(st.integers(0, grid.last)))
    assert value is not None
    for way in (1, -1):
        room = grid.headroom(value, way)
        assert grid.moved(value, way * room) is not None
        assert grid.moved(value, way * (room + 1)) is None


@given(grids(), numbers)
def test_the_nearest_are_places_around_it(grid: Grid, value: Decimal) -> None:
    near = grid.nearest(value)
    assert 1 <= len(near) <= 2
    assert list(near) == sorted(near)
    assert all(grid.index(one) is not None and grid.inside(one) for one in near)
    if len(near) == 2:
        assert near[0] < value < near[1]
        assert grid.clicks(*near) == 1


@given(grids())
def test_there_is_nothing_past_the_ends(grid: Grid) -> None:
    assert grid.at(-1) is None
    assert grid.at(grid.last + 1) is None
    assert not grid.inside(grid.low - 1)
    assert not grid.inside(grid.high + 1)


@pytest.mark.parametrize(
    ("low", "high", "step", "value", "index"),
    [
        ("300", "1300", "25", "725", 17),
        ("300", "1300", "25", "730", None),
        ("-0.125", "0.375", "0.0625", "0.1875", 5),
        ("0", "1", "0.1", "0.3", 3),  # no float is exactly this
        ("250", "690", "20", "410", 8),  # counted from the smallest, not from nought
        ("250", "690", "20", "400", None),
        ("46", "56", "0.5", "56.5", 21),  # past the limit the grid goes on: clicks can still be told
        ("5", "5", "1", "5", 0),
    ],
)
def test_places(low: str, high: str, step: str, value: str, index: int | None) -> None:
    assert Grid(D(low), D(high), D(step)).index(D(value)) == index


def test_choices_are_places_of_their_own() -> None:
    gears = tuple(D(one) for one in ("3.70", "3.80", "3.90", "4.00", "4.11"))
    grid = Grid(gears[0], gears[-1], None, gears)
    assert grid.clicks(D("3.9"), D("4.11")) == 2
    assert grid.moved(D("4.00"), 1) == D("4.11")
    assert grid.moved(D("4.11"), 1) is None
    assert grid.nearest(D("4.05")) == (D("4.00"), D("4.11"))
    assert grid.nearest(D("3")) == (D("3.70"),)
    assert grid.nearest(D("5")) == (D("4.11"),)
    assert (grid.headroom(D("3.85"), 1), grid.clicks(D("3.85"), D("3.90")), grid.moved(D("3.85"), 1)) == (0, None, None)
    assert grid.decimals == 2


@pytest.mark.parametrize(
    ("low", "step", "decimals"),
    [("300", "25", 0), ("46", "0.50", 1), ("0.75", "0.125", 3), ("0.5", "1", 1), ("10", "10", 0)],
)
def test_decimals(low: str, step: str, decimals: int) -> None:
    assert Grid(D(low), D(low) + 100 * D(step), D(step)).decimals == decimals
