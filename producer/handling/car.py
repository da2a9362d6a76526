"""The car and the turn that the chassis model reasons about: many cars and many changes of one at once.

Conventions: left turn; x forward, y right, z down; lever arms from the car's centre line, so that y of the left wheels
is negative. A damper's speed is positive while its wheel moves up. Corners are always in the order LF, RF, LR, RR.
SI units: m, kg, N, N/m, N s/m, rad, s. Every field is an array that broadcasts with the others over
(changes, phases, cars); what belongs to a corner has the four corners as its first axis.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, TypeAlias

import numpy as np
from numpy.typing import NDArray

Array: TypeAlias = NDArray[np.float64]

GRAVITY = 9.80665  # m/s^2, standard gravity


@dataclass(frozen=True, slots=True)
class Car:
    """One car, or many. Shares are 0..1; `spring` N/m at the spring, `tyre_rate` and bars N/m at the wheels.

    A bar adds its rate x the difference between its two wheels' travel to one wheel and takes it from the other; its
    rate is as it acts on the road, the tyre's share in it.
    `track_bar` is the mean height of its ends: a bar acts along its line, so each end counts half, in every phase.
    `compression` acts where a wheel moves up, `rebound` where it moves down. `drive` is N at the rear wheels at full
    throttle, `bias` the front's share of the brakes. `cg_height` is that of the whole car; unsprung masses per axle.
    """

    mass: Array
    unsprung_front: Array
    unsprung_rear: Array
    unsprung_height: Array
    wheelbase: Array
    front_track: Array
    rear_track: Array
    cg_height: Array
    front_roll_centre: Array
    track_bar: Array
    front: Array
    left: Array
    cross: Array
    spring: Array
    front_motion: Array
    rear_motion: Array
    tyre_rate: Array
    front_bar: Array
    rear_bar: Array
    compression: Array
    rebound: Array
    bias: Array
    drive: Array
    grip: Array
    sensitivity: Array
    reference_load: Array
    anti_dive: Array
    anti_squat: Array
    front_downforce: Array
    rear_downforce: Array
    drag_area: Array


@dataclass(frozen=True, slots=True)
class Turn:
    """What the car goes through in each phase: radius (m), banking (rad), braking (g), throttle (0..1), and how
    fast it rolls to the right and dips its nose (rad/s)."""

    radius: Array
    banking: Array
    brake: Array
    throttle: Array
    roll_rate: Array
    pitch_rate: Array


@dataclass(frozen=True, slots=True)
class Forces:
    """What a turn asks at a speed, before any wheel is looked at: N, `sideways` m/s^2.

    `sideways` is the acceleration in the car's own plane, `pressing` what weighs on the car square to the road without
    downforce, `forward` drive less brakes less drag.
    """

    sideways: Array
    pressing: Array
    forward: Array
    braking: Array
    driving: Array
    front_downforce: Array
    rear_downforce: Array


def corners(lf: Any, rf: Any, lr: Any, rr: Any) -> Array:
    """Four arrays as one with the corners first."""
    return np.stack(np.broadcast_arrays(lf, rf, lr, rr)).astype(np.float64, copy=False)
