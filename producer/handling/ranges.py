"""What a car of this kind can be: the range of everything that the author's files do not state.

Assumptions, from memory, wide on purpose: nobody outside knows the simulation's car. A figure that the garage's `car`
block, the setup or the track states takes the place of its range. SI units; shares 0..1.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from producer.basics.units import Quantity
from producer.model.garage import Car, Garage
from producer.model.track import Track, TurnGroup

Range = tuple[float, float]

# Never written to after import. The order is that of the draws: a new line goes to the end.
CAR: Mapping[str, Range] = {
    "mass": (1200.0, 1650.0),
    "front": (0.48, 0.54),
    "left": (0.50, 0.58),
    "cross": (0.49, 0.56),
    "wheelbase": (2.65, 2.85),
    "front_track": (1.5, 1.65),
    "rear_track": (1.5, 1.65),
    "cg_height": (0.33, 0.48),
    "front_roll_centre": (0.0, 0.12),
    "track_bar.left": (0.20, 0.32),
    "track_bar.right": (0.20, 0.32),
    "front_motion": (0.55, 0.80),
    "rear_motion": (0.75, 1.00),
    "tyre_rate": (250e3, 350e3),
    "front_bar": (10e3, 60e3),
    "rear_bar": (3e3, 20e3),
    "bias": (0.60, 0.82),
    "sensitivity": (0.06, 0.18),
    "grip": (1.1, 1.6),
    "anti_dive": (0.0, 0.3),
    "anti_squat": (0.0, 0.6),
    "front_downforce": (0.0, 0.6),
    "rear_downforce": (0.0, 0.8),
    "drag_area": (0.5, 1.2),
    "spring.lf": (70e3, 175e3),
    "spring.rf": (70e3, 175e3),
    "spring.lr": (26e3, 70e3),
    "spring.rr": (26e3, 70e3),
    "unsprung_front": (70.0, 110.0),
    "unsprung_rear": (110.0, 160.0),
}
CORNER: Mapping[str, Range] = {"radius": (40.0, 350.0), "banking": (0.0, 36.0)}  # m, degrees
# How a lap is driven: g, share of full throttle, rad/s into the turn and out of it.
DRIVING: Mapping[str, Range] = {
    "brake": (0.10, 0.35),
    "throttle": (0.5, 1.0),
    "roll_in": (0.02, 0.10),
    "roll_out": (-0.06, -0.01),
    "pitch_in": (0.01, 0.05),
    "pitch_out": (-0.04, -0.01),
}
END_HEIGHT = 0.04  # m, either way, that a track bar's scale may be off
FRONT_DAMPER, REAR_DAMPER = 6e3, 5e3  # N s/m at the default click
REFERENCE_LOAD = 4500.0  # N
UNSPRUNG_HEIGHT = 0.32  # m
GENTLER = 0.8  # of the banking in the middle, on entry and on exit
# N at the rear wheels at full throttle: 600 N m x 3.6 (top gear x final drive) / 0.35 m. A setup's final drive counts
# only against another one: how much of the torque a driver uses is as little known as the torque.
DRIVE = 600.0 * 3.6 / 0.35


@dataclass(frozen=True, slots=True)
class Bend:
    """One corner of a track: radius in m, banking in degrees, each a range (both ends alike where it is known)."""

    radius: Range
    banking: Range


def car_ranges(garage: Garage) -> dict[str, Range]:
    """The ranges of a garage's car, narrowed by its `car` block. Without a bar at the rear there is none."""
    found = dict(CAR)
    if not any(one.role == "bar.rear" for one in garage.settings.values()):
        found["rear_bar"] = (0.0, 0.0)
    found.update({name: (value, value) for name, value in _stated(garage.car).items()})
    return found


def bends(track: Track | None) -> tuple[Bend, ...]:
    """The corners of a track; one that may be anything where the track says nothing."""
    known = tuple(_bend(one) for one in track.corners) if track else ()
    return known or (Bend(CORNER["radius"], CORNER["banking"]),)


def measured(written: Quantity | None, unit: str) -> float | None:
    """A quantity as a number of a unit; None for what is not there, has no unit or measures something else."""
    if written is None or not written.unit:
        return None
    try:
        return float(written.into(unit))
    except ValueError:  # a check tells the author
        return None


def _bend(corner: TurnGroup) -> Bend:
    radius, banking = measured(corner.radius, "m"), corner.banking
    return Bend(
        CORNER["radius"] if radius is None else (radius, radius),
        CORNER["banking"] if banking is None else (float(banking), float(banking)),
    )


def _stated(car: Car) -> dict[str, float]:
    width = measured(car.track_width, "m")
    ratios = dict(car.motion_ratio.items())
    found = {
        "mass": measured(car.mass, "kg"),
        "wheelbase": measured(car.wheelbase, "m"),
        "cg_height": measured(car.cg_height, "m"),
        "front_track": width,
        "rear_track": width,
        "front_motion": float(ratios["front"]) if "front" in ratios else None,
        "rear_motion": float(ratios["rear"]) if "rear" in ratios else None,
    }
    return {name: value for name, value in found.items() if value is not None}
