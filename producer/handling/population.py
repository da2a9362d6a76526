"""The cars that the chassis model asks: a fixed, seeded crowd, narrowed by what is known of the car and the track."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from producer.handling.asking import Question
from producer.handling.car import Array, Car, Turn, corners
from producer.handling.ranges import (
    CAR,
    DRIVE,
    DRIVING,
    END_HEIGHT,
    FRONT_DAMPER,
    GENTLER,
    REAR_DAMPER,
    REFERENCE_LOAD,
    UNSPRUNG_HEIGHT,
    Range,
)
from producer.model.words import CORNERS

_SEED = 20_261
_OTHER = ("end.left", "end.right", "radius", "banking", *DRIVING)
_NAMES = (*CAR, *_OTHER)
# What stands where nothing is stated, alike in every car.
_USUAL: Mapping[str, float] = {
    "front_bar_size": 1.0,
    "rear_bar_size": 1.0,
    "final": 1.0,
    **{f"{way}.{corner}": FRONT_DAMPER for way in ("compression", "rebound") for corner in ("lf", "rf")},
    **{f"{way}.{corner}": REAR_DAMPER for way in ("compression", "rebound") for corner in ("lr", "rr")},
}


@dataclass(frozen=True, slots=True)
class Crowd:
    """The parts of many cars by name, each of shape (1, 1, cars) or (1, 1, 1), and the turn each of them drives."""

    parts: Mapping[str, Array]
    turn: Turn


def crowd(question: Question, cars: int, first: int = 0) -> Crowd:
    """`cars` cars from the `first`-th draw on; the same draws for every question.

    Each car drives one of the track's corners in turn, so that they share the cars equally. Entry and exit have 0.8
    of the banking of the middle.
    """
    dice = _dice(first, cars)
    parts = {name: _spread(one, dice[name]) for name, one in question.car.items()}
    parts |= {name: _one(value) for name, value in _USUAL.items()}
    parts |= {name: _one(value) for name, value in question.stated.items()}
    parts["final_before"] = parts["final"]
    for end in ("left", "right"):
        if f"track_bar.{end}" in question.stated:
            parts[f"track_bar.{end}"] = parts[f"track_bar.{end}"] + _spread(
                (-END_HEIGHT, END_HEIGHT), dice[f"end.{end}"]
            )
    return Crowd(parts, _turn(question, dice, first))


def car(parts: Mapping[str, Array]) -> Car:
    """The cars that these parts make."""
    springs, compression, rebound = (
        corners(*(parts[f"{kind}.{corner}"] for corner in CORNERS)) for kind in ("spring", "compression", "rebound")
    )
    return Car(
        mass=parts["mass"],
        unsprung_front=parts["unsprung_front"],
        unsprung_rear=parts["unsprung_rear"],
        unsprung_height=_one(UNSPRUNG_HEIGHT),
        wheelbase=parts["wheelbase"],
        front_track=parts["front_track"],
        rear_track=parts["rear_track"],
        cg_height=parts["cg_height"],
        front_roll_centre=parts["front_roll_centre"],
        track_bar=(parts["track_bar.left"] + parts["track_bar.right"]) / 2,
        front=parts["front"],
        left=parts["left"],
        cross=parts["cross"],
        spring=springs,
        front_motion=parts["front_motion"],
        rear_motion=parts["rear_motion"],
        tyre_rate=parts["tyre_rate"],
        front_bar=parts["front_bar"] * parts["front_bar_size"],
        rear_bar=parts["rear_bar"] * parts["rear_bar_size"],
        compression=compression,
        rebound=rebound,
        bias=parts["bias"],
        drive=DRIVE * parts["final"] / parts["final_before"],
        grip=parts["grip"],
        sensitivity=parts["sensitivity"],
        reference_load=_one(REFERENCE_LOAD),
        anti_dive=parts["anti_dive"],
        anti_squat=parts["anti_squat"],
        front_downforce=parts["front_downforce"],
        rear_downforce=parts["rear_downforce"],
        drag_area=parts["drag_area"],
    )


def _turn(question: Question, dice: Mapping[str, Array], first: int) -> Turn:
    count = dice["radius"].size
    which = (first + np.arange(count)) % len(question.bends)
    radius, banking = (
        _pick([getattr(one, name) for one in question.bends], which, dice[name]) for name in ("radius", "banking")
    )
    steep = np.deg2rad(banking)
    still = np.zeros_like(steep)
    driven = {name: _spread(one, dice[name]) for name, one in DRIVING.items()}
    return Turn(
        radius=radius,
        banking=_phases(GENTLER * steep, steep, GENTLER * steep),
        brake=_phases(driven["brake"], still, still),
        throttle=_phases(still, still, driven["throttle"]),
        roll_rate=_phases(driven["roll_in"], still, driven["roll_out"]),
        pitch_rate=_phases(driven["pitch_in"], still, driven["pitch_out"]),
    )


def _dice(first: int, cars: int) -> dict[str, Array]:
    """Numbers from 0 up to 1 for every name, of shape (1, 1, cars): a row of dice for each car.

    This generator's stream is frozen for good, so that an answer never changes with another version of NumPy.
    """
    rolled = np.random.RandomState(_SEED).random_sample((first + cars, len(_NAMES)))[first:]
    return {name: rolled[:, place].reshape(1, 1, cars) for place, name in enumerate(_NAMES)}


def _spread(one: Range, dice: Array) -> Array:
    low, high = one
    return low + (high - low) * dice if high > low else _one(low)


def _pick(ranges: list[Range], which: NDArray[np.intp], dice: Array) -> Array:
    """A figure for each car out of the range of its own corner."""
    low, high = (np.array([one[side] for one in ranges])[which] for side in (0, 1))
    picked: Array = low + (high - low) * dice
    return picked


def _phases(entry: Array, middle: Array, leave: Array) -> Array:
    return np.concatenate(np.broadcast_arrays(entry, middle, leave), axis=1)


def _one(value: float) -> Array:
    return np.full((1, 1, 1), float(value))
