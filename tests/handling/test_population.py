"""The crowd of cars: fixed, narrowed by what is known, shared among a track's corners."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from producer.handling.asking import Question
from producer.handling.population import car, crowd
from producer.handling.ranges import CAR, Bend

FLAT = Bend((100.0, 100.0), (0.0, 0.0))
STEEP = Bend((200.0, 200.0), (20.0, 20.0))
OPEN = Question(CAR, (FLAT,), {}, ())


def test_the_crowd_is_the_same_every_time() -> None:
    one, other = crowd(OPEN, 50), crowd(OPEN, 50)
    assert all(np.array_equal(one.parts[name], other.parts[name]) for name in one.parts)


def test_the_stream_of_dice_is_frozen() -> None:
    """An answer that changes with a version of a library would make yesterday's guide wrong."""
    first = crowd(OPEN, 3).parts["mass"].ravel()
    assert first == pytest.approx([1312.7955, 1254.8511, 1633.7846], abs=1e-4)
    assert np.array_equal(first, crowd(OPEN, 10).parts["mass"].ravel()[:3])


@pytest.mark.parametrize("name", CAR)
def test_every_part_stays_in_its_range_and_fills_it(name: str) -> None:
    low, high = CAR[name]
    found = crowd(OPEN, 1000).parts[name]
    assert low <= found.min() < low + 0.02 * (high - low)
    assert high - 0.02 * (high - low) < found.max() <= high


def test_a_stated_part_takes_the_place_of_its_range_and_moves_no_other() -> None:
    stated = replace(OPEN, stated={"front": 0.51, "spring.rf": 130e3})
    one, other = crowd(OPEN, 50), crowd(stated, 50)
    assert np.all(other.parts["front"] == 0.51)
    assert np.all(other.parts["spring.rf"] == 130e3)
    assert np.array_equal(one.parts["mass"], other.parts["mass"])


def test_a_stated_height_of_the_track_bar_keeps_four_centimetres_of_doubt() -> None:
    heights = crowd(replace(OPEN, stated={"track_bar.left": 0.25}), 1000).parts["track_bar.left"]
    assert 0.21 <= heights.min() < 0.212
    assert 0.288 < heights.max() <= 0.29


def test_corners_share_the_cars_equally_and_entry_and_exit_are_gentler() -> None:
    turn = crowd(replace(OPEN, bends=(FLAT, STEEP)), 1000).turn
    middle = np.rad2deg(turn.banking[0, 1])
    assert sorted(np.unique(middle.round(6), return_counts=True)[1]) == [500, 500]
    assert np.allclose(turn.banking[0, 0], 0.8 * turn.banking[0, 1])
    assert np.allclose(turn.banking[0, 2], 0.8 * turn.banking[0, 1])
    assert np.all(turn.radius[0, 0][middle > 10] == 200)


def test_brakes_are_for_the_entry_and_throttle_for_the_exit() -> None:
    turn = crowd(OPEN, 100).turn
    assert np.all(turn.brake[0, 0] >= 0.10)
    assert not turn.brake[0, 1:].any()
    assert not turn.throttle[0, :2].any()
    assert np.all(turn.roll_rate[0, 0] > 0)
    assert np.all(turn.roll_rate[0, 2] < 0)
    assert not turn.pitch_rate[0, 1].any()


def test_a_final_drive_counts_only_against_another() -> None:
    parts = dict(crowd(replace(OPEN, stated={"final": 5.0}), 10).parts)
    usual = car(crowd(OPEN, 10).parts).drive
    assert np.allclose(car(parts).drive, usual)
    parts["final"] = parts["final"] * 1.1
    assert np.allclose(car(parts).drive, 1.1 * usual)
