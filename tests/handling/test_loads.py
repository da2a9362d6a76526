"""The loads of the four tyres: closed forms, what must be conserved, and other people's solvers as referees.

Closed forms: Gillespie, Fundamentals of Vehicle Dynamics (1992); Milliken & Milliken, Race Car Vehicle Dynamics (1995);
both from memory.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import minimize

from producer.handling.car import GRAVITY, Car, Forces, Turn, corners
from producer.handling.loads import attitude, forces, loads, positions, rigid, roll_arm, standing, wheel_rates
from producer.handling.weights import corner_weights
from tests.handling.cars import RIGID, car, four, one, pushed, turn

AIR = {"front_downforce": 0.5, "rear_downforce": 0.7, "drag_area": 0.9}
ASKEW: dict[str, Any] = {
    "unsprung_front": 90.0, "unsprung_rear": 130.0, "front": 0.52, "left": 0.55, "cross": 0.51, "front_track": 1.55,
    "rear_track": 1.62, "spring": (120e3, 140e3, 40e3, 55e3), "front_motion": 0.7, "rear_motion": 0.9,
    "front_bar": 30e3, "rear_bar": 8e3, "track_bar": 0.25, "front_roll_centre": 0.05, "anti_dive": 0.2,
    "anti_squat": 0.4, "compression": (6e3, 5e3, 5e3, 4e3), "rebound": (7e3, 6e3, 4e3, 5e3), **AIR,
}  # fmt: skip
SHARE = st.floats(0.45, 0.55)
CARS = st.fixed_dictionaries(
    {
        "mass": st.floats(1000, 1800),
        "unsprung_front": st.floats(0, 120),
        "unsprung_rear": st.floats(0, 160),
        "front": SHARE,
        "left": SHARE,
        "cross": SHARE,
        "front_track": st.floats(1.4, 1.7),
        "rear_track": st.floats(1.4, 1.7),
        "cg_height": st.floats(0.3, 0.5),
        "front_roll_centre": st.floats(-0.05, 0.15),
        "track_bar": st.floats(0.1, 0.35),
        "spring": st.tuples(*[st.floats(40e3, 200e3)] * 4),
        "front_bar": st.floats(0, 60e3),
        "rear_bar": st.floats(0, 20e3),
        "compression": st.tuples(*[st.floats(0, 8e3)] * 4),
        "rebound": st.tuples(*[st.floats(0, 8e3)] * 4),
        "anti_dive": st.floats(0, 0.3),
        "anti_squat": st.floats(0, 0.6),
    }
)
PUSHES = st.fixed_dictionaries(
    {
        "sideways": st.floats(-15, 15),
        "forward": st.floats(-6000, 6000),
        "pressing": st.floats(12e3, 30e3),
        "front_downforce": st.floats(0, 3000),
        "rear_downforce": st.floats(0, 4000),
    }
)
ROLLING = {"roll_rate": 0.06, "pitch_rate": 0.03}


def loaded(some: Car, acting: Forces, driven: Turn | None = None) -> list[float]:
    return four(loads(some, driven or turn(), acting))


def damping(some: Car, driven: Turn) -> Any:
    """What the dampers press on the wheels: the loads with them less the loads of rigid springs without."""
    x, y = positions(some)
    velocity = driven.roll_rate * y + driven.pitch_rate * x
    return velocity * np.where(velocity > 0, some.compression, some.rebound)


class TestStanding:
    @given(front=SHARE, left=SHARE, cross=SHARE)
    def test_as_on_the_exact_scales(self, front: float, left: float, cross: float) -> None:
        some = car(front=front, left=left, cross=cross)
        percent = [Decimal(share) * 100 for share in (front, left, cross)]
        exact = corner_weights(Decimal(15000), *percent)
        assert four(standing(some, one(15000))) == pytest.approx([float(load) for load in exact.values()], rel=1e-12)

    def test_a_car_at_rest_on_the_flat_stands_as_on_the_scales(self) -> None:
        some = car(**ASKEW)
        assert loaded(some, pushed(some)) == pytest.approx(four(standing(some, some.mass * GRAVITY)), rel=1e-12)

    def test_parked_on_a_banking_it_leans_down_the_hill(self) -> None:
        some, steep = car(), turn(banking=20)
        found = loaded(some, forces(some, steep, one(0)), steep)
        assert sum(found) == pytest.approx(1500 * GRAVITY * np.cos(np.deg2rad(20)))
        assert found[0] > found[1]
        assert found[2] > found[3]


class TestBankedTurn:
    def test_flat(self) -> None:
        acting = forces(car(), turn(radius=100), one(20))
        assert acting.sideways.item() == pytest.approx(4.0)
        assert acting.pressing.item() == pytest.approx(1500 * GRAVITY)

    @given(radius=st.floats(40, 350), banking=st.floats(0, 36), speed=st.floats(0, 100))
    def test_turning_and_weight_are_only_seen_from_another_plane(
        self, radius: float, banking: float, speed: float
    ) -> None:
        """The two forces in the plane of the car have the length of the two in the world's."""
        acting = forces(car(), turn(radius, banking), one(speed))
        seen = np.hypot(acting.sideways.item(), acting.pressing.item() / 1500)
        assert seen == pytest.approx(np.hypot(speed**2 / radius, GRAVITY))

    def test_what_drives_brakes_and_slows(self) -> None:
        some = car(drive=6000, **AIR)
        out = forces(some, turn(throttle=0.5), one(40))
        assert out.forward.item() == pytest.approx(3000 - 0.6 * 0.9 * 1600)
        into = forces(some, turn(brake=0.2), one(40))
        assert into.forward.item() == pytest.approx(-0.2 * 1500 * GRAVITY - 0.6 * 0.9 * 1600)
        assert (into.front_downforce.item(), into.rear_downforce.item()) == pytest.approx((800, 1120))


class TestRates:
    def test_a_spring_over_its_motion_ratio_and_on_its_tyre(self) -> None:
        some = car(spring=(160e3,) * 4, front_motion=0.5, rear_motion=1.0, tyre_rate=160e3)
        # 160 x 0.25 = 40 on 160: 32. And 160 on 160: 80.
        assert four(wheel_rates(some)) == pytest.approx([32e3, 32e3, 80e3, 80e3])

    @given(spring=st.floats(1e4, 5e5), tyre=st.floats(1e5, 1e6))
    def test_never_stiffer_than_either(self, spring: float, tyre: float) -> None:
        assert four(wheel_rates(car(spring=(spring,) * 4, tyre_rate=tyre)))[0] < min(spring, tyre)


class TestSideways:
    def test_what_goes_across_is_mass_x_acceleration_x_height_over_track_and_what_the_lean_adds(self) -> None:
        some = car()
        acting = pushed(some, sideways=6.0)
        roll = attitude(some, acting, one(0) * np.zeros((4, 1, 1, 1)))[1].item()
        lf, rf, lr, rr = loaded(some, acting)
        leaning = 1500 * GRAVITY * 0.35 * roll
        assert (rf - lf + rr - lr) / 2 == pytest.approx((1500 * 6.0 * 0.45 + leaning) / 1.6, rel=1e-12)
        # The angle itself: m a d / (k - m g d), k = four springs in series with tyres on half a track each.
        stiff = 4 * (80e3 * 300e3 / 380e3) * 0.8**2
        assert roll == pytest.approx(1500 * 6.0 * 0.35 / (stiff - 1500 * GRAVITY * 0.35), rel=1e-12)

    def test_a_car_that_does_not_lean_transfers_m_a_h_over_t(self) -> None:
        some = car(spring=(1e12,) * 4, tyre_rate=RIGID)
        lf, rf, lr, rr = loaded(some, pushed(some, sideways=6.0))
        assert (rf - lf + rr - lr) / 2 == pytest.approx(1500 * 6.0 * 0.45 / 1.6, rel=1e-6)

    def test_a_car_whose_roll_axis_goes_through_its_centre_of_gravity_does_not_lean(self) -> None:
        some = car(front_roll_centre=0.45, track_bar=0.45)
        acting = pushed(some, sideways=6.0)
        assert attitude(some, acting, np.zeros((4, 1, 1, 1)))[1].item() == pytest.approx(0, abs=1e-15)
        assert loaded(some, acting) == pytest.approx(four(standing(some, some.mass * GRAVITY) + rigid(some, acting)))

    def test_the_roll_arm_starts_where_the_springs_do(self) -> None:
        """1300 kg on springs at a height of (1500 x 0.45 - 200 x 0.3) / 1300, and a roll axis of 0.1 m."""
        some = car(unsprung_front=100, unsprung_rear=100)
        assert roll_arm(some).item() == pytest.approx((675 - 60) / 1300 - 0.1)

    @pytest.mark.parametrize("unsprung", [0.0, 60.0, 120.0])
    def test_unsprung_mass_keeps_what_the_car_weighs_and_its_height(self, unsprung: float) -> None:
        some = car(spring=(1e12,) * 4, tyre_rate=RIGID, unsprung_front=unsprung, unsprung_rear=unsprung)
        lf, rf, lr, rr = loaded(some, pushed(some, sideways=6.0))
        assert lf + rf + lr + rr == pytest.approx(1500 * GRAVITY)
        assert (rf - lf + rr - lr) / 2 == pytest.approx(1500 * 6.0 * 0.45 / 1.6, rel=1e-6)

    def test_the_stiffer_end_carries_more_of_it(self) -> None:
        some = car(front_bar=20e3)
        lf, rf, lr, rr = loaded(some, pushed(some, sideways=6.0))
        assert rf - lf > rr - lr
        some = car(rear_bar=20e3)
        lf, rf, lr, rr = loaded(some, pushed(some, sideways=6.0))
        assert rf - lf < rr - lr

    def test_a_bar_is_not_felt_by_a_car_that_does_not_roll(self) -> None:
        some = car(front_bar=20e3)
        down = pushed(some, pressing=25e3)
        assert loaded(some, down) == pytest.approx(loaded(replace(some, front_bar=one(0)), down))

    def test_banking_presses_at_a_centre_of_gravity_left_of_the_middle(self) -> None:
        """Equal springs in a car with 55 % on the left: pressed down it leans to the left."""
        some = car(left=0.55)
        roll = attitude(some, pushed(some, pressing=25e3), np.zeros((4, 1, 1, 1)))[1].item()
        assert roll < 0

    def test_a_left_spring_adds_load_only_while_it_is_compressed(self) -> None:
        """Which is why the left springs turn round with banking. Common practice, no source."""
        soft, stiff = car(left=0.54), car(left=0.54, spring=(100e3, 80e3, 80e3, 80e3))
        flat = [loaded(some, pushed(some, sideways=12.0))[0] for some in (soft, stiff)]
        steep = [loaded(some, pushed(some, sideways=3.0, pressing=30e3))[0] for some in (soft, stiff)]
        assert flat[1] < flat[0]
        assert steep[1] > steep[0]


class TestForwards:
    @pytest.mark.parametrize("anti", [0.0, 0.3, 1.0])
    @pytest.mark.parametrize("forward", [-5000.0, 5000.0])
    @pytest.mark.parametrize("spring", [(80e3,) * 4, (120e3, 120e3, 40e3, 40e3)])
    def test_an_axle_gains_m_a_h_over_l_whatever_the_links_and_springs(
        self, anti: float, forward: float, spring: tuple[float, ...]
    ) -> None:
        some = car(anti_dive=anti, anti_squat=anti, spring=spring, front=0.52, cross=0.5)
        rest, found = four(standing(some, some.mass * GRAVITY)), loaded(some, pushed(some, forward=forward))
        assert found[0] + found[1] - rest[0] - rest[1] == pytest.approx(-forward * 0.45 / 2.75)
        assert found[2] + found[3] - rest[2] - rest[3] == pytest.approx(forward * 0.45 / 2.75)

    def test_links_that_carry_all_of_it_leave_the_nose_where_it_is(self) -> None:
        for some, forward in ((car(anti_dive=1.0), -5000.0), (car(anti_squat=1.0), 5000.0)):
            pitch = attitude(some, pushed(some, forward=forward), np.zeros((4, 1, 1, 1)))[2].item()
            assert pitch == pytest.approx(0, abs=1e-15)

    def test_brakes_dip_the_nose_and_gas_lifts_it(self) -> None:
        some = car()
        dipped, lifted = (attitude(some, pushed(some, forward=f), np.zeros((4, 1, 1, 1)))[2].item() for f in (-1, 1))
        assert dipped > 0 > lifted

    def test_downforce_presses_on_its_own_axle(self) -> None:
        some = car()
        rest = four(standing(some, some.mass * GRAVITY))
        found = loaded(some, pushed(some, front_downforce=1000, rear_downforce=600))
        assert [a - b for a, b in zip(found, rest, strict=True)] == pytest.approx([500, 500, 300, 300])


class TestDampers:
    def test_none_is_as_good_as_a_car_at_rest_in_its_attitude(self) -> None:
        some = car(**{**ASKEW, "compression": (0.0,) * 4, "rebound": (0.0,) * 4})
        acting = pushed(some, sideways=8.0, forward=-3000)
        assert loaded(some, acting, turn(**ROLLING)) == loaded(some, acting)

    def test_still_ones_do_nothing(self) -> None:
        some = car(**ASKEW)
        bare = replace(some, compression=some.compression * 0, rebound=some.rebound * 0)
        acting = pushed(some, sideways=8.0)
        assert loaded(some, acting) == loaded(bare, acting)

    @pytest.mark.parametrize(
        ("corner", "way"), [(0, "rebound"), (1, "compression"), (2, "rebound"), (3, "compression")]
    )
    def test_a_car_that_rolls_right_compresses_right_and_rebounds_left(self, corner: int, way: str) -> None:
        rolling, some = turn(roll_rate=0.05), car()
        other = "rebound" if way == "compression" else "compression"
        figures = [0.0] * 4
        figures[corner] = 6e3
        acting, rest = pushed(some), loaded(some, pushed(some))
        assert loaded(car(**{other: tuple(figures)}), acting, rolling) == rest
        moved = loaded(car(**{way: tuple(figures)}), acting, rolling)
        assert (moved[corner] > rest[corner]) is (way == "compression")

    def test_a_nose_that_dips_compresses_the_front(self) -> None:
        some = car(compression=(6e3, 6e3, 0, 0), rebound=(0, 0, 0, 0))
        pressed = damping(some, turn(pitch_rate=0.05))
        assert four(pressed)[:2] == pytest.approx([6e3 * 0.05 * 2.75 / 2] * 2)


class TestLaws:
    @given(figures=CARS, push=PUSHES)
    def test_the_four_carry_what_presses_down(self, figures: dict[str, Any], push: dict[str, float]) -> None:
        some = car(**figures)
        acting = pushed(some, **push)
        down = push["pressing"] + push["front_downforce"] + push["rear_downforce"]
        assert sum(loaded(some, acting, turn(**ROLLING))) == pytest.approx(down, rel=1e-9)

    @given(figures=CARS, push=PUSHES)
    def test_moments_balance_about_the_middle_of_the_road(
        self, figures: dict[str, Any], push: dict[str, float]
    ) -> None:
        """Across: the weight at its place and height, leaned. Along: brakes and drive at their height, downforce."""
        some, driven = car(**figures), turn(**ROLLING)
        acting = pushed(some, **push)
        x, y = positions(some)
        _, roll, _ = attitude(some, acting, damping(some, driven))
        found, weight = loads(some, driven, acting), some.mass * GRAVITY
        sprung = some.mass - some.unsprung_front - some.unsprung_rear
        high = some.mass * acting.sideways * some.cg_height + sprung * GRAVITY * roll_arm(some) * roll
        aside = -(acting.pressing - weight) * (some.left - 0.5) * some.front_track
        across = (standing(some, weight) * y).sum(axis=0) + high + aside
        along = acting.front_downforce * x[0] + acting.rear_downforce * x[2] - acting.forward * some.cg_height
        assert (found * y).sum(axis=0).item() == pytest.approx(across.item(), rel=1e-9, abs=1e-5)
        assert (found * x).sum(axis=0).item() == pytest.approx(along.item(), rel=1e-9, abs=1e-5)

    @given(figures=CARS, push=PUSHES)
    def test_a_mirrored_car_turns_right_as_the_car_turns_left(
        self, figures: dict[str, Any], push: dict[str, float]
    ) -> None:
        def swap(four: tuple[float, ...]) -> tuple[float, ...]:
            return (four[1], four[0], four[3], four[2])

        sides = {name: swap(figures[name]) for name in ("spring", "compression", "rebound")}
        mirrored = car(**{**figures, **sides, "left": 1 - figures["left"], "cross": 1 - figures["cross"]})
        some = car(**figures)
        found = loaded(some, pushed(some, **push), turn(roll_rate=0.06, pitch_rate=0.03))
        other = pushed(mirrored, **{**push, "sideways": -push["sideways"]})
        back = loaded(mirrored, other, turn(roll_rate=-0.06, pitch_rate=0.03))
        assert found == pytest.approx(list(swap(tuple(back))), rel=1e-9, abs=1e-6)

    @given(figures=CARS, push=PUSHES)
    def test_what_pushes_twice_moves_twice_as_much(self, figures: dict[str, Any], push: dict[str, float]) -> None:
        """The model is linear in what pushes, as long as it is not driven by dampers."""
        some = car(**{**figures, "anti_squat": figures["anti_dive"]})
        weight = float(some.mass.item()) * GRAVITY
        twice = {name: 2 * value for name, value in push.items()} | {"pressing": 2 * push["pressing"] - weight}
        rest = np.array(four(standing(some, some.mass * GRAVITY)))
        by_one, by_two = (np.array(loaded(some, pushed(some, **by))) - rest for by in (push, twice))
        assert by_two == pytest.approx(2 * by_one, rel=1e-9, abs=1e-6)


def energy(at: Any, some: Car, acting: Forces, pressed: Any) -> float:
    """What is stored in springs and bars less what the forces have done, by heave, roll and pitch."""
    heave, roll, pitch = at
    x, y = (one.reshape(4) for one in positions(some))
    travel = heave + roll * y + pitch * x
    front, rear = travel[1] - travel[0], travel[3] - travel[2]
    sprung = (some.mass - some.unsprung_front - some.unsprung_rear).item()
    arm, weight = roll_arm(some).item(), some.mass.item() * GRAVITY
    stored = (wheel_rates(some).reshape(4) * travel**2).sum() / 2
    stored += (some.front_bar.item() * front**2 + some.rear_bar.item() * rear**2) / 2
    stored -= sprung * GRAVITY * arm * roll**2 / 2
    extra, aside = acting.pressing.item() - weight, -(some.left.item() - 0.5) * some.front_track.item()
    anti = some.anti_dive.item() if acting.forward.item() < 0 else some.anti_squat.item()
    done = extra * (heave + aside * roll) + sprung * acting.sideways.item() * arm * roll
    done += acting.front_downforce.item() * (heave + pitch * x[0])
    done += acting.rear_downforce.item() * (heave + pitch * x[2])
    done -= (1 - anti) * acting.forward.item() * some.cg_height.item() * pitch
    return float(stored - done + (pressed.reshape(4) * travel).sum())


@pytest.mark.parametrize("push", [{"sideways": 9.0}, {"sideways": 5.0, "forward": -4000.0, "pressing": 24e3}])
def test_the_attitude_is_where_the_energy_is_least(push: dict[str, float]) -> None:
    """Referee: SciPy's minimiser, on an energy written down apart from the model's equations."""
    some, driven = car(**ASKEW), turn(**ROLLING)
    acting = pushed(some, front_downforce=900, rear_downforce=1200, **push)
    pressed = damping(some, driven)
    found = minimize(energy, np.zeros(3), args=(some, acting, pressed), method="Nelder-Mead",
                     options={"xatol": 1e-10, "fatol": 1e-9, "maxiter": 4000, "maxfev": 4000})  # fmt: skip
    assert found.success
    ours = [float(way.item()) for way in attitude(some, acting, pressed)]
    assert ours == pytest.approx(found.x.tolist(), abs=1e-6)


def test_many_cars_at_once_are_as_good_as_one_by_one() -> None:
    """(changes, phases, cars): nothing of one car gets into another."""
    grid = {
        "cg_height": np.linspace(0.35, 0.45, 5).reshape(1, 1, 5),
        "front_bar": np.array([1e4, 3e4]).reshape(2, 1, 1),
    }
    some = replace(car(**ASKEW), **grid)
    driven = replace(turn(**ROLLING), banking=np.deg2rad([5.0, 10.0, 5.0]).reshape(1, 3, 1))
    together = loads(some, driven, forces(some, driven, one(45)))
    assert together.shape == (4, 2, 3, 5)
    for change, phase, each in np.ndindex(2, 3, 5):
        alone = car(
            **{**ASKEW, "cg_height": grid["cg_height"][0, 0, each], "front_bar": grid["front_bar"][change, 0, 0]}
        )
        on = turn(banking=(5.0, 10.0, 5.0)[phase], **ROLLING)
        expected = loaded(alone, forces(alone, on, one(45)), on)
        assert together[:, change, phase, each].tolist() == pytest.approx(expected, rel=1e-12)


def test_corners_stand_in_the_order_of_the_trade() -> None:
    assert corners(one(1), one(2), one(3), np.zeros((1, 3, 1))).shape == (4, 1, 3, 1)
    x, y = (four(part) for part in positions(car(front=0.52)))
    assert x == pytest.approx([1.32, 1.32, -1.43, -1.43])
    assert y == pytest.approx([-0.8, 0.8, -0.8, 0.8])
