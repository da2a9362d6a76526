"""The chassis model against worked examples (tests/data/checks.csv names the source of each and whether it was opened).

Each goes through the model's own functions on a car built from the example's figures. Where an example takes another
gravity than the standard one its speeds are scaled by the root of it, which leaves the example what it is.
"""

from __future__ import annotations

import csv
from collections.abc import Callable, Mapping
from math import degrees, pi, radians, sqrt
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq

from producer.handling.car import GRAVITY, Car, Forces
from producer.handling.chassis import USED, grip, speeds
from producer.handling.loads import attitude, forces, loads, rigid, standing, wheel_rates
from tests.handling.cars import RIGID, car, four, one, pushed, turn

TESTS = Path(__file__).parents[1]
DATA = TESTS / "data" / "checks.csv"
BOOK = 9.80  # m/s^2, of the banked turns
KMH = 1 / 3.6


def rows() -> dict[str, tuple[float, float]]:
    """Expected value and tolerance by name."""
    with DATA.open(encoding="utf-8", newline="") as file:
        return {found["name"]: (float(found["expected"]), float(found["tolerance"])) for found in csv.DictReader(file)}


class BankedTurns:
    """`forces` seen at the example's gravity: what turns and what presses, per unit of mass."""

    @staticmethod
    def seen(speed: float, radius: float, banking: float) -> tuple[float, float]:
        some = car()
        acting = forces(some, turn(radius, banking), one(speed * sqrt(GRAVITY / BOOK)))
        return acting.sideways.item() * BOOK / GRAVITY, acting.pressing.item() / 1500 * BOOK / GRAVITY

    def ideal_speed(self, radius: float, banking: float) -> float:
        """Where nothing pulls the car across the banking."""
        return float(brentq(lambda speed: self.seen(speed, radius, banking)[0], 1, 200))

    def friction(self, speed: float, radius: float, banking: float = 0.0) -> float:
        sideways, pressing = self.seen(speed, radius, banking)
        return abs(sideways) / pressing

    def banking(self, speed: float, radius: float) -> float:
        return float(brentq(lambda banking: self.seen(speed, radius, banking)[0], 0, 80))

    def radius(self, speed: float, banking: float) -> float:
        return float(brentq(lambda radius: self.seen(speed, radius, banking)[0], 1, 5000))

    def limit(self, mu: float, radius: float) -> float:
        """The model's driver uses nine tenths of the grip; the example's uses all of it."""
        return speeds(car(sensitivity=0.0, grip=mu / USED), turn(radius)).item() * sqrt(BOOK / GRAVITY)

    def values(self) -> dict[str, float]:
        return {
            "banked_ideal_speed_31deg": self.ideal_speed(100, 31),
            "banked_ideal_speed_65deg": self.ideal_speed(100, 65),
            "banked_ideal_speed_15deg": self.ideal_speed(100, 15),
            "rail_bank_speed": self.ideal_speed(500, 5),
            "banked_min_friction_slow": self.friction(20 * KMH, 100, 15),
            "banked_ideal_angle_highway": self.banking(105 * KMH, 1200),
            "banked_radius_75deg": self.radius(30, 75),
            "banked_centripetal_75deg": self.seen(30, self.radius(30, 75), 0)[0],
            "flat_centripetal_force": 900 * self.seen(25, 500, 0)[0],
            "flat_min_friction": self.friction(25, 500),
            "flat_min_friction_2": self.friction(96.8 * KMH, 182.9),
            "flat_max_speed": self.limit(0.70, 65),
        }


def axle(mass: float, front: float, wheelbase: float, height: float, forward: float, ends: slice) -> float:
    """Load of an axle while the car gains `forward` m/s^2."""
    some = car(mass=mass, front=front, wheelbase=wheelbase, cg_height=height)
    return sum(four(loads(some, turn(), pushed(some, forward=mass * forward)))[ends])


class LeaningCar:
    """Automotive Chassis Engineering: 1280 kg on springs, 140 and 180 kg not, 0.6 g, an arm of 0.365 m."""

    SIDEWAYS = 0.6 * 9.81
    STIFFNESS = 28650.0  # N m/rad, both axles

    def example(self, rear: float = 0.5, **changed: Any) -> Car:
        """The car with a share of the roll stiffness at the rear; its springs stand alone on the road."""
        height = (1280 * (0.365 + 0.54 * 0.07 + 0.46 * 0.32) + 320 * changed.get("unsprung_height", 0.3)) / 1600
        each = [2 * self.STIFFNESS * share / 1.46**2 for share in (1 - rear, rear)]
        figures: dict[str, Any] = {
            "mass": 1600, "front": (1280 * 0.54 + 140) / 1600, "unsprung_front": 140, "unsprung_rear": 180,
            "front_track": 1.46, "rear_track": 1.46, "front_roll_centre": 0.07, "track_bar": 0.32,
            "cg_height": height, "spring": (each[0], each[0], each[1], each[1]), "tyre_rate": RIGID,
        }  # fmt: skip
        return car(**{**figures, **changed})

    def across(self, some: Car, way: Callable[[Car, Forces], Any], end: slice) -> float:
        """What goes across an axle, N, the way that `way` carries it."""
        left, right = four(way(some, pushed(some, sideways=self.SIDEWAYS)))[end]
        return (right - left) / 2

    def whole(self, some: Car, acting: Forces) -> Any:
        return loads(some, turn(), acting) - standing(some, some.mass * GRAVITY)

    def rear_total(self) -> float:
        """The springs are chosen so that they carry the example's 671 N; the rest is the model's, and so is the sum."""

        def carried(rear: float) -> float:
            some = self.example(rear)
            return self.across(some, self.whole, REAR) - self.across(some, rigid, REAR)

        return self.across(self.example(brentq(lambda rear: carried(rear) - 671, 0.05, 0.95)), self.whole, REAR)

    def springs(self) -> float:
        """What the springs of both axles carry; the sum does not depend on how they share the stiffness."""
        some = self.example()
        return sum(self.across(some, self.whole, end) - self.across(some, rigid, end) for end in (FRONT, REAR))

    def gradient(self) -> float:
        some = self.example()
        return float(attitude(some, pushed(some, sideways=1.0), np.zeros((4, 1, 1, 1)))[1].item())

    def values(self) -> dict[str, float]:
        sprung, unsprung = {"unsprung_height": 0.0}, {"front_roll_centre": 0.0, "track_bar": 0.0}
        return {
            "llt_geometric_front": self.across(self.example(**sprung), rigid, FRONT),
            "llt_geometric_rear": self.across(self.example(**sprung), rigid, REAR),
            "llt_unsprung_front": self.across(self.example(**unsprung, unsprung_height=0.28), rigid, FRONT),
            "llt_unsprung_rear": self.across(self.example(**unsprung, unsprung_height=0.30), rigid, REAR),
            "llt_rear_total": self.rear_total(),
            "roll_gradient_rad": self.gradient(),
            "roll_gradient_deg_per_g": degrees(self.gradient()) * 9.81,
        }


FRONT, REAR = slice(0, 2), slice(2, 4)
STOCK: Mapping[str, Any] = {
    "springs": (48.9e3, 80.2e3), "motion": (0.92, 0.59), "bars": ((23, 1008, 0.096), (19, 1026, 0.201)),
    "height": 0.533, "centres": (0.096, 0.168),
}  # fmt: skip
MODIFIED: Mapping[str, Any] = {
    "springs": (65.7e3, 113.8e3), "motion": (0.96, 0.56), "bars": ((23, 1008, 0.096), (24, 1026, 0.184)),
    "height": 0.480, "centres": (-0.064, 0.120),
}  # fmt: skip


def bar(size: tuple[float, float, float]) -> float:
    """N/m at the wheels of a round bar of steel: diameter and length in mm, its twist in degrees per mm of travel."""
    diameter, length, twist = size
    torsion = pi * (diameter / 1000) ** 4 * 80e9 / (32 * length / 1000)
    return float(torsion * radians(twist * 1000) ** 2)


class SharedTransfer:
    """Simplified steady-state lateral load transfer analysis: one car, stock and modified."""

    def example(self, figures: Mapping[str, Any], stiffer: float = 1.0) -> Car:
        """`stiffer` springs and bars: the source leaves out that a leaning car's weight rolls it further."""
        front, rear = (rate * stiffer for rate in figures["springs"])
        bars = [bar(size) * stiffer for size in figures["bars"]]
        return car(
            mass=1288, front=0.61, front_track=1.482, rear_track=1.481, spring=(front, front, rear, rear),
            front_motion=figures["motion"][0], rear_motion=figures["motion"][1], front_bar=bars[0], rear_bar=bars[1],
            cg_height=figures["height"], front_roll_centre=figures["centres"][0], track_bar=figures["centres"][1],
            tyre_rate=RIGID,
        )  # fmt: skip

    def across(self, some: Car, sideways: float = 1.0) -> tuple[float, float]:
        acting = pushed(some, sideways=sideways)
        lf, rf, lr, rr = four(loads(some, turn(), acting) - standing(some, some.mass * GRAVITY))
        return (rf - lf) / 2, (rr - lr) / 2

    def stiffness(self, figures: Mapping[str, Any]) -> tuple[float, float]:
        """N m per degree of each axle: what it carries through its springs and bar, by the angle."""
        some = self.example({**figures, "centres": (0.0, 0.0)})
        roll = degrees(attitude(some, pushed(some, sideways=1.0), np.zeros((4, 1, 1, 1)))[1].item())
        front, rear = self.across(some)
        return front * 1.482 / roll, rear * 1.481 / roll

    def transfer(self, figures: Mapping[str, Any]) -> float:
        front, rear = self.across(self.example(figures, stiffer=1e6))
        return 100 * rear / (front + rear)

    def moment(self) -> float:
        front, rear = self.across(self.example(STOCK, stiffer=1e9))
        return front * 1.482 + rear * 1.481

    def values(self) -> dict[str, float]:
        (front, rear), (front_mod, rear_mod) = self.stiffness(STOCK), self.stiffness(MODIFIED)
        return {
            "roll_stiffness_front_stock": front,
            "roll_stiffness_rear_stock": rear,
            "roll_stiffness_front_mod": front_mod,
            "roll_stiffness_rear_mod": rear_mod,
            "roll_stiffness_distribution_rear_stock": 100 * rear / (front + rear),
            "roll_stiffness_distribution_rear_mod": 100 * rear_mod / (front_mod + rear_mod),
            "lltd_rear_stock": self.transfer(STOCK),
            "lltd_rear_mod": self.transfer(MODIFIED),
            "spring_rate_distribution_rear_stock": rear_share(self.example({**STOCK, "motion": (1.0, 1.0)})),
            "wheel_rate_distribution_rear_stock": rear_share(self.example(STOCK)),
            "wheel_rate_distribution_rear_mod": rear_share(self.example(MODIFIED)),
            "llt_moment_identity": self.moment(),
        }


def rear_share(some: Car) -> float:
    lf, _, lr, _ = four(wheel_rates(some))
    return 100 * lr / (lf + lr)


def mu_of_load(load: float, reference: float, mu: float, slope: float) -> float:
    """mu = mu0 + slope (F - F0) / F0: the model's load sensitivity is -slope / mu0."""
    some = car(grip=mu, sensitivity=-slope / mu, reference_load=reference)
    return four(grip(some, np.full((4, 1, 1, 1), load)))[0] / load


CASES: dict[str, float] = {
    **BankedTurns().values(),
    **LeaningCar().values(),
    **SharedTransfer().values(),
    "axle_load_under_accel": axle(1000, 0.55, 2.5, 0.4, 5.0, FRONT),
    "axle_load_rear_accel": axle(1200, 0.60, 2.7, 0.35, 4.0, REAR),
    "load_sensitivity_mf_2000N": mu_of_load(2000, 4000, 0.8785, -0.06452),
}

# The source adds parts that it has rounded to whole newtons.
ROUNDED = {"llt_rear_total": 1.0}

# Three published points of a tyre; the model's line goes through two of them, so a figure of all three is not its own.
TYRE = {900: 1.10, 1350: 1.08, 1800: 0.97}
BENT = {"load_sensitivity_pair_loss", "load_sensitivity_power_exponent"}

# Who handles the other rows. Every row of the file is somebody's: a new one asks for a decision.
ELSEWHERE: Mapping[str, set[str]] = {
    "outside/test_weights.py": {
        "cg_from_front_share", "cg_from_wheel_loads_a1", "cg_from_wheel_loads_a2", "cg_from_axle_share",
        "cross_weight_percent", "corner_weight_diag_A", "corner_weight_diag_B", "corner_weight_target_LF",
    },
    "outside/test_gearing.py": {
        "tyre_angular_speed", "tyre_rpm_truck", "mph_from_rpm_od", "mph_from_rpm_direct", "rpm_from_mph_od",
        "mph_constant_336", "rpm_at_60mph_28in_350", "mph_per_rpm_radius_const", "tyre_rpm_200mph",
    },
    "outside/test_units.py": {
        "lbf_to_N", "lb_per_in_to_N_per_mm", "psi_to_kPa", "inch_to_mm", "mph_to_kmh", "mph_to_mps", "lb_to_kg",
        "lbfft_to_Nm", "degF_to_degC_212", "degF_to_degC_minus40", "degF_interval",
    },
}  # fmt: skip
# Laps and narration: their parts have tests of their own.
LAPS = ("norris_", "longley_", "theil_sen_", "ezekiel_", "two_sample_", "grubbs_", "modified_z_", "crossover_")
OTHERS = {"speech_seconds"}
# The program computes no distance from turns of a wheel, and has no opinion about stagger.
NOBODY = {"wheel_distance", "stagger_natural_radius_in", "stagger_circumference"}


@pytest.mark.parametrize("name", CASES)
def test_worked_example(name: str) -> None:
    expected, tolerance = rows()[name]
    assert abs(CASES[name] - expected) <= ROUNDED.get(name, tolerance)


def test_springs_carry_what_the_source_says_they_do() -> None:
    """1556 N in front and 671 N at the rear, with the roll angle rounded to half a degree: within one per cent."""
    assert LeaningCar().springs() == pytest.approx(1556 + 671, rel=0.01)


def test_a_straight_line_through_the_two_ends_of_a_published_tyre() -> None:
    """It holds at both ends; in the middle it is a twentieth low; its slope on logarithms is that of a common tyre."""
    slope = (TYRE[1800] - TYRE[900]) / (1800 - 900) * 1350
    mu = {load: mu_of_load(load, 1350, (TYRE[900] + TYRE[1800]) / 2, slope) for load in TYRE}
    assert (mu[900], mu[1800]) == pytest.approx((TYRE[900], TYRE[1800]))
    assert mu[1350] == pytest.approx(TYRE[1350], rel=0.05)
    exponent = np.polyfit(np.log(list(mu)), np.log([load * mu[load] for load in mu]), 1)[0]
    assert exponent == pytest.approx(rows()["load_sensitivity_power_exponent"][0], abs=0.01)
    assert 0.7 < exponent < 0.9


def test_every_row_is_somebodys() -> None:
    ours = set(CASES) | BENT
    others = set().union(*ELSEWHERE.values()) | OTHERS | NOBODY
    assert ours.isdisjoint(others)
    left = set(rows()) - ours - others
    assert {name for name in left if not name.startswith(LAPS)} == set()
    assert ours | others <= set(rows())


@pytest.mark.parametrize("path", ELSEWHERE)
def test_and_is_handled_there(path: str) -> None:
    text = (TESTS / path).read_text(encoding="utf-8")
    assert {name for name in ELSEWHERE[path] if name not in text} == set()
