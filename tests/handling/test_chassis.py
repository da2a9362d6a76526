"""The chassis model: speed, grip, reserves and balance, by closed forms and by what must hold in every car.

Closed forms: Gillespie, Fundamentals of Vehicle Dynamics (1992); Milliken & Milliken, Race Car Vehicle Dynamics (1995);
both from memory.
"""

from __future__ import annotations

from dataclasses import fields, replace
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.handling.asking import Question
from producer.handling.car import GRAVITY, Car, Turn
from producer.handling.chassis import FASTEST, SLOWEST, USED, State, grip, speeds, state
from producer.handling.loads import forces
from producer.handling.population import Crowd, crowd
from producer.handling.population import car as cars_of
from producer.handling.ranges import CAR, Bend
from tests.handling.cars import car, four, one, turn

BARE = {"sensitivity": 0.0, "grip": 1.2}
ENTRY = {"brake": 0.25, "roll_rate": 0.06, "pitch_rate": 0.03}
EXIT = {"throttle": 0.7, "roll_rate": -0.04, "pitch_rate": -0.02}


@pytest.fixture(scope="module")
def some() -> Crowd:
    """Three hundred cars of any kind on any corner."""
    return crowd(Question(CAR, (Bend((60.0, 350.0), (0.0, 30.0)),), {}, ()), 300)


def at(figures: dict[str, Any], driven: Turn) -> State:
    alone = car(**figures)
    return state(alone, driven, speeds(alone, driven))


class TestSpeed:
    @given(mu=st.floats(0.5, 1.6), radius=st.floats(70, 350))
    def test_flat_without_air_or_load_sensitivity(self, mu: float, radius: float) -> None:
        found = speeds(car(sensitivity=0.0, grip=mu, spring=(300e3,) * 4), turn(radius)).item()
        assert found == pytest.approx(np.sqrt(USED * mu * GRAVITY * radius), abs=1e-3)

    @given(mu=st.floats(0.5, 1.2), radius=st.floats(60, 200), banking=st.floats(0, 25))
    def test_banked(self, mu: float, radius: float, banking: float) -> None:
        """v^2 = r g (sin + mu cos) / (cos - mu sin)."""
        sin, cos = np.sin(np.deg2rad(banking)), np.cos(np.deg2rad(banking))
        expected = np.sqrt(radius * GRAVITY * (sin + USED * mu * cos) / (cos - USED * mu * sin))
        found = speeds(car(sensitivity=0.0, grip=mu, spring=(300e3,) * 4), turn(radius, banking)).item()
        assert found == pytest.approx(min(expected, FASTEST), abs=1e-3)

    def test_a_banking_that_holds_any_speed_gives_the_upper_end(self) -> None:
        assert speeds(car(sensitivity=0.0, grip=1.6), turn(300, 36)).item() == pytest.approx(FASTEST, abs=1e-3)

    def test_a_turn_too_tight_for_the_lower_end_gives_the_lower_end(self) -> None:
        assert speeds(car(**BARE), turn(5)).item() == pytest.approx(SLOWEST, abs=1e-3)

    def test_downforce_makes_it_faster_and_load_sensitivity_slower(self) -> None:
        plain = speeds(car(grip=1.2), turn()).item()
        assert speeds(car(grip=1.2, front_downforce=0.4, rear_downforce=0.4), turn()).item() > plain
        assert speeds(car(grip=1.2, sensitivity=0.18), turn()).item() < plain

    def test_nine_tenths_of_the_grip_are_used(self, some: Crowd) -> None:
        cars = cars_of(some.parts)
        speed = speeds(cars, some.turn)
        found, acting = state(cars, some.turn, speed), forces(cars, some.turn, speed)
        used = cars.mass * acting.sideways / grip(cars, found.loads).sum(axis=0)
        inside = (speed < FASTEST - 0.01) & (speed > SLOWEST + 0.01)
        assert inside.mean() > 0.9
        assert used[inside] == pytest.approx(np.full(int(inside.sum()), USED), abs=1e-5)


class TestGrip:
    def test_at_the_reference_load_it_is_mu_times_the_load(self) -> None:
        assert four(grip(car(grip=1.3), np.full((4, 1, 1, 1), 4500.0))) == pytest.approx([1.3 * 4500] * 4)

    def test_an_unloaded_tyre_holds_nothing_and_neither_does_one_below(self) -> None:
        loads = np.array([0.0, -500.0, 1.0, 4500.0]).reshape(4, 1, 1, 1)
        held = four(grip(car(), loads))
        assert held[:2] == [0.0, 0.0]
        assert held[2] > 0

    def test_no_load_is_so_high_that_it_pushes_back(self) -> None:
        assert four(grip(car(sensitivity=0.18), np.full((4, 1, 1, 1), 60e3))) == [0.0] * 4

    @given(load=st.floats(1500, 6000), moved=st.floats(100, 1400), sensitivity=st.floats(0.01, 0.18))
    def test_a_pair_loses_what_it_shares_unevenly(self, load: float, moved: float, sensitivity: float) -> None:
        """By 2 mu s d^2 / F0, d being the load moved."""
        pair = np.array([load, load, load - moved, load + moved]).reshape(4, 1, 1, 1)
        even, odd, less, more = four(grip(car(sensitivity=sensitivity, grip=1.3), pair))
        lost = 2 * 1.3 * sensitivity * moved**2 / 4500
        assert even + odd - less - more == pytest.approx(lost, rel=1e-6, abs=1e-6)


class TestBalance:
    @pytest.mark.parametrize("banking", [0, 15, 30])
    def test_a_car_alike_at_both_ends_is_neither_tight_nor_loose(self, banking: float) -> None:
        assert at({}, turn(banking=banking)).balance.item() == pytest.approx(0, abs=1e-9)

    @pytest.mark.parametrize("driven", [ENTRY, EXIT])
    def test_only_a_car_heavier_on_the_left_is_turned_by_brakes_and_gas(self, driven: dict[str, float]) -> None:
        """The front's share of what turns the car: brakes turn a heavier left out, gas turns it in."""

        def front(left: float) -> float:
            held = four(at({"left": left}, turn(**driven)).across)
            return (held[0] + held[1]) / sum(held)

        assert front(0.5) == pytest.approx(0.5, abs=1e-9)
        assert (front(0.56) > 0.5) is ("brake" in driven)

    def test_the_yaw_moment_is_the_force_times_the_way_from_the_middle(self) -> None:
        """Front needs less by F (left - half) x track / wheelbase, rear more by as much."""
        driven = turn(throttle=1.0)
        found = at({"left": 0.56, "drive": 5000}, driven)
        lateral = sum(four(found.across))
        moved = 5000 * 0.06 * 1.6 / 2.75
        assert sum(four(found.across)[:2]) == pytest.approx(lateral / 2 - moved)
        assert sum(four(found.across)[2:]) == pytest.approx(lateral / 2 + moved)

    def test_moving_grip_to_the_rear_tightens(self) -> None:
        stiff_front, stiff_rear = at({"front_bar": 20e3}, turn()), at({"rear_bar": 20e3}, turn())
        assert stiff_front.balance.item() > 0 > stiff_rear.balance.item()
        assert stiff_front.balance.item() == pytest.approx(-stiff_rear.balance.item(), rel=1e-9)

    def test_brakes_take_from_the_end_that_brakes(self) -> None:
        assert at({"bias": 1.0}, turn(brake=0.3)).balance.item() > at({"bias": 0.5}, turn(brake=0.3)).balance.item()

    def test_an_axle_that_brakes_with_all_it_has_keeps_nothing_to_turn(self) -> None:
        with np.errstate(invalid="ignore"):  # who of two tyres without grip turns the car is nobody's question
            found = state(car(bias=1.0), turn(brake=1.6), one(40))
        assert found.front_reserve.item() == 0.0
        assert found.rear_reserve.item() > 0

    def test_what_is_left_is_the_other_side_of_a_right_angle(self) -> None:
        alone, driven = car(), turn(brake=0.3)
        speed = speeds(alone, driven)
        found = state(alone, driven, speed)
        whole, lateral = four(grip(alone, found.loads)), forces(alone, driven, speed).sideways.item() * 1500
        left = [np.sqrt(g**2 - a**2) for g, a in zip(whole, four(found.along), strict=True)]
        assert found.front_reserve.item() == pytest.approx((left[0] + left[1]) / (lateral / 2))
        assert found.rear_reserve.item() == pytest.approx((left[2] + left[3]) / (lateral / 2))


class TestWork:
    def test_the_tyres_hold_what_the_turn_asks(self, some: Crowd) -> None:
        cars = cars_of(some.parts)
        speed = speeds(cars, some.turn)
        found, acting = state(cars, some.turn, speed), forces(cars, some.turn, speed)
        held = ((found.front_reserve > 0) & (found.rear_reserve > 0)).all(axis=(0, 1))
        assert held.mean() > 0.9
        lateral = np.broadcast_to(cars.mass * acting.sideways, found.across.shape[1:])
        assert found.across.sum(axis=0)[..., held] == pytest.approx(lateral[..., held], rel=1e-9)
        along = np.abs(found.along).sum(axis=0)[..., held]
        assert along == pytest.approx((acting.driving + acting.braking)[..., held], rel=1e-9)

    def test_work_is_along_and_across_together(self) -> None:
        found = at({}, turn(brake=0.3))
        assert four(found.work) == pytest.approx(np.hypot(four(found.along), four(found.across)).tolist())

    def test_brakes_go_by_their_bias_and_gas_to_the_rear(self) -> None:
        braking = np.abs(at({"bias": 0.7}, turn(brake=0.2)).along)
        assert four(braking) == pytest.approx([0.2 * 1500 * GRAVITY * share / 2 for share in (0.7, 0.7, 0.3, 0.3)])
        assert four(at({"drive": 6000}, turn(throttle=0.5)).along) == [0.0, 0.0, 1500.0, 1500.0]


def test_many_cars_at_once_are_as_good_as_one_by_one(some: Crowd) -> None:
    cars = cars_of(some.parts)
    together = state(cars, some.turn, speeds(cars, some.turn))
    for each in (0, 17, 299):
        alone = Car(*(_only(getattr(cars, one.name), each) for one in fields(cars)))
        on = Turn(*(_only(getattr(some.turn, one.name), each) for one in fields(some.turn)))
        found = state(alone, on, speeds(alone, on))
        assert found.balance[0, :, 0] == pytest.approx(together.balance[0, :, each], rel=1e-9)
        assert found.loads[..., 0] == pytest.approx(together.loads[..., each], rel=1e-9)


def _only(array: Any, each: int) -> Any:
    return array[..., each : each + 1] if array.shape[-1] > 1 else array


def test_a_change_that_changes_nothing_changes_nothing(some: Crowd) -> None:
    cars = cars_of(some.parts)
    speed = speeds(cars, some.turn)
    before = state(cars, some.turn, speed).balance
    after = state(replace(cars, spring=cars.spring + np.zeros((1, 2, 1, 1))), some.turn, speed).balance
    assert after.shape == (2, 3, 300)
    assert (after == before).all()
