"""Axle load transfer against a multi-body car of 29 states: commonroad-vehicle-models (BSD 3-Clause, Technical
University of Munich; M. Althoff and G. Würsching, CommonRoad: Vehicle Models, 2020).

Its three passenger cars are driven into steady corners and onto the brakes, at seeded speeds and steering angles, and
integrated with SciPy until they are settled. The loads of their tyres are then compared with ours at the acceleration
they reached: what goes across each axle, and from one axle to the other, within 7 %. What is left between the two:
their tyres give way sideways and narrow the track, their sines and cosines are not small, and they lift the forces
along the car to the height of the sprung mass.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import cos, sin
from typing import Any

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.integrate import solve_ivp
from vehiclemodels.init_mb import init_mb
from vehiclemodels.vehicle_dynamics_mb import vehicle_dynamics_mb
from vehiclemodels.vehicle_parameters import setup_vehicle_parameters

from producer.handling.car import Car
from producer.handling.loads import loads
from tests.handling.cars import car, four, pushed, turn

WITHIN = 0.07
CARS = (1, 2, 3)
SEED = 20_264
# Places in the state of the other model.
STEERING, SPEED, YAW_RATE, FALLEN_FRONT, HIGH_FRONT, FALLEN_REAR, HIGH_REAR = 2, 3, 5, 13, 16, 18, 21

State = NDArray[np.float64]
Driver = Callable[[State], list[float]]


@dataclass(frozen=True)
class Settled:
    """The four loads (N) and the accelerations that the multi-body car has come to, m/s^2; to the left is positive."""

    loads: NDArray[np.float64]
    sideways: float
    forward: float


def tyre_loads(x: State, p: Any) -> NDArray[np.float64]:
    """LF, RF, LR, RR: how far each tyre is pressed in, times its rate. `p` are the other model's parameters."""
    found = []
    for height, roll, width in (
        (x[HIGH_FRONT], x[FALLEN_FRONT], p.T_f),
        (x[HIGH_REAR], x[FALLEN_REAR], p.T_r),
    ):
        found += [(height + p.R_w * (cos(roll) - 1) + side * width / 2 * sin(roll)) * p.K_zt for side in (-1, 1)]
    return np.array(found)


def drive(p: Any, speed: float, driver: Driver, seconds: float) -> Settled:
    def moving(_: float, x: State) -> list[float]:
        return list(vehicle_dynamics_mb(list(x), driver(x), p))

    start = init_mb([0, 0, 0, speed, 0, 0, 0], p)
    driven = solve_ivp(moving, (0, seconds), start, method="LSODA", rtol=1e-7, atol=1e-8)
    assert driven.success
    x = driven.y[:, -1]
    return Settled(tyre_loads(x, p), float(-x[SPEED] * x[YAW_RATE]), float(moving(0, x)[SPEED]))


def cornering(p: Any, speed: float, steering: float) -> Settled:
    """Steered to the left (below zero there) and held at its speed for as long as it takes to settle."""

    def driver(x: State) -> list[float]:
        return [float(np.clip(5 * (-steering - x[STEERING]), -0.05, 0.05)), 2 * (speed - x[SPEED])]

    return drive(p, speed, driver, 6.0)


def braking(p: Any, speed: float, slowing: float) -> Settled:
    return drive(p, speed, lambda _: [0.0, -slowing], 3.0)


def ours(p: Any) -> Car:
    """Our car from the other model's figures."""
    wheelbase = p.a + p.b
    mass = p.m_s + p.m_uf + p.m_ur
    return car(
        mass=mass,
        unsprung_front=p.m_uf,
        unsprung_rear=p.m_ur,
        unsprung_height=p.R_w,
        cg_height=(p.m_s * p.h_s + (p.m_uf + p.m_ur) * p.R_w) / mass,
        wheelbase=wheelbase,
        front=(p.m_s * p.b / wheelbase + p.m_uf) / mass,
        front_track=p.T_f,
        rear_track=p.T_r,
        front_roll_centre=p.h_raf,
        track_bar=p.h_rar,
        spring=(p.K_sf, p.K_sf, p.K_sr, p.K_sr),
        tyre_rate=p.K_zt,
        front_bar=bar(p.K_sf, -p.K_tsf, p.T_f, p.K_zt),
        rear_bar=bar(p.K_sr, -p.K_tsr, p.T_r, p.K_zt),
    )


def bar(spring: float, torsion: float, width: float, tyre: float) -> float:
    """The rate of a bar on the road, N/m: theirs (N m/rad) twists on the axle and so stands on the tyres too, ours is
    stated where it acts on the road."""
    on_axle, on_tyres = spring * width**2 / 2 + torsion, tyre * width**2 / 2
    together = on_axle * on_tyres / (on_axle + on_tyres)
    return (together - spring * tyre / (spring + tyre) * width**2 / 2) / width**2


def across(found: Any) -> NDArray[np.float64]:
    """From the left to the right wheel of each axle."""
    lf, rf, lr, rr = found
    return np.array([rf - lf, rr - lr]) / 2


def ahead(found: Any) -> float:
    """What the front axle carries more than the rear."""
    lf, rf, lr, rr = found
    return float(lf + rf - lr - rr) / 2


def draws(low: tuple[float, float], high: tuple[float, float]) -> list[Any]:
    dice = np.random.RandomState(SEED)
    return [
        pytest.param(number, *(float(one) for one in dice.uniform(low, high)), id=f"car{number}-{each}")
        for number in CARS
        for each in range(4)
    ]


@pytest.mark.parametrize(("number", "speed", "steering"), draws((14.0, 0.015), (20.0, 0.045)))
def test_steady_cornering(number: int, speed: float, steering: float) -> None:
    p = setup_vehicle_parameters(number)
    theirs, alike = cornering(p, speed, steering), ours(p)
    assert 1.0 < theirs.sideways < 7.5
    found = four(loads(alike, turn(), pushed(alike, sideways=theirs.sideways)))
    assert sum(found) == pytest.approx(theirs.loads.sum(), rel=0.001)
    assert across(found) == pytest.approx(across(theirs.loads), rel=WITHIN)


@pytest.mark.parametrize(("number", "speed", "slowing"), draws((22.0, 1.0), (32.0, 6.0)))
def test_braking(number: int, speed: float, slowing: float) -> None:
    p = setup_vehicle_parameters(number)
    theirs, alike = braking(p, speed, slowing), ours(p)
    assert theirs.forward == pytest.approx(-slowing, rel=0.1)
    rest = four(loads(alike, turn(), pushed(alike)))
    found = four(loads(alike, turn(), pushed(alike, forward=alike.mass.item() * theirs.forward)))
    assert sum(found) == pytest.approx(theirs.loads.sum(), rel=0.005)
    assert ahead(found) - ahead(rest) == pytest.approx(ahead(theirs.loads) - ahead(rest), rel=WITHIN)


@pytest.mark.parametrize("number", CARS)
def test_a_car_that_rolls_along_straight_presses_on_its_axles_as_ours_does(number: int) -> None:
    p = setup_vehicle_parameters(number)
    theirs, found = cornering(p, 15.0, 0.0).loads, four(loads(ours(p), turn(), pushed(ours(p))))
    assert found[0] + found[1] == pytest.approx(theirs[0] + theirs[1], rel=0.005)
    assert found[2] + found[3] == pytest.approx(theirs[2] + theirs[3], rel=0.005)
