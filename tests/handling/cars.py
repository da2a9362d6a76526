"""Cars and turns for the tests of the chassis model: plain figures in, records of one car out; and the crowd that
`tests/data/model-reference.csv` was made with.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from producer.handling.asking import Question
from producer.handling.car import GRAVITY, Array, Car, Forces, Turn
from producer.handling.ranges import CAR, Bend

# A car that is alike on both sides and at both ends, without bars, dampers, air and links that carry anything.
PLAIN: Mapping[str, Any] = {
    "mass": 1500.0, "unsprung_front": 0.0, "unsprung_rear": 0.0, "unsprung_height": 0.3, "wheelbase": 2.75,
    "front_track": 1.6, "rear_track": 1.6, "cg_height": 0.45, "front_roll_centre": 0.1, "track_bar": 0.1,
    "front": 0.5, "left": 0.5, "cross": 0.5, "spring": (80e3, 80e3, 80e3, 80e3), "front_motion": 1.0,
    "rear_motion": 1.0, "tyre_rate": 300e3, "front_bar": 0.0, "rear_bar": 0.0, "compression": (0.0,) * 4,
    "rebound": (0.0,) * 4, "bias": 0.5, "drive": 6000.0, "grip": 1.3, "sensitivity": 0.1, "reference_load": 4500.0,
    "anti_dive": 0.0, "anti_squat": 0.0, "front_downforce": 0.0, "rear_downforce": 0.0, "drag_area": 0.0,
}  # fmt: skip
BY_CORNER = ("spring", "compression", "rebound")
RIGID = 1e18  # N/m, a tyre that gives nothing: published examples leave it out
LB_IN = 175.1268352  # N/m
INCH = 0.0254  # m
BANDS = ((0, 6), (6, 12), (12, 18), (18, 24), (24, 33))


def one(value: float) -> Array:
    return np.full((1, 1, 1), float(value))


def four(value: Array) -> list[float]:
    """The figures of the four corners of one car."""
    return [float(corner) for corner in value.reshape(4, -1)[:, 0]]


def car(**changed: Any) -> Car:
    """The plain car with some figures changed; springs and dampers as four figures LF, RF, LR, RR."""
    figures = {**PLAIN, **changed}
    return Car(
        **{
            name: np.stack([one(part) for part in value]) if name in BY_CORNER else one(value)
            for name, value in figures.items()
        }
    )


def turn(radius: float = 200.0, banking: float = 0.0, **driven: float) -> Turn:
    """A turn, banking in degrees; neither brakes nor gas nor movement of the body unless said."""
    rest = {"brake": 0.0, "throttle": 0.0, "roll_rate": 0.0, "pitch_rate": 0.0, **driven}
    return Turn(one(radius), one(np.deg2rad(banking)), **{name: one(value) for name, value in rest.items()})


def pushed(some: Car, sideways: float = 0.0, forward: float = 0.0, **more: float) -> Forces:
    """Forces given as such: `sideways` m/s^2, `forward` N; the road is flat unless `pressing` says otherwise."""
    pressing = more.get("pressing", float(some.mass.item()) * GRAVITY)
    down = (more.get("front_downforce", 0.0), more.get("rear_downforce", 0.0))
    return Forces(one(sideways), one(pressing), one(forward), one(0), one(0), one(down[0]), one(down[1]))


def crowd_question(banking: tuple[float, float], moves: Sequence[Mapping[str, float]]) -> Question:
    """What the prototype behind the reference was asked: one setup on turns of 80 to 300 m within a band of banking."""
    ranges = {**CAR, "unsprung_front": (0.0, 0.0), "unsprung_rear": (0.0, 0.0), "rear_bar": (0.0, 0.0)}
    stated = {
        "mass": 1500.0, "front": 0.50, "left": 0.54, "cross": 0.50, "bias": 0.62, "tyre_rate": 300e3,
        "spring.lf": 700 * LB_IN, "spring.rf": 750 * LB_IN, "spring.lr": 225 * LB_IN, "spring.rr": 275 * LB_IN,
        "track_bar.left": 9.5 * INCH, "track_bar.right": 9.5 * INCH,
    }  # fmt: skip
    return Question(ranges, (Bend((80.0, 300.0), banking),), stated, tuple(moves))
