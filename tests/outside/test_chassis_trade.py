"""What the trade knows, as a sign in a phase, against the chassis model's thousand cars.

Source: common practice, no source. Each fact holds in at least 85 % of the cars (the model is sure of it) in every band
of banking named; where the model is less sure than the trade, the test says so and why.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cache

import numpy as np
import pytest
from numpy.typing import NDArray

from producer.basics.units import Quantity
from producer.handling.answering import LEAST_LOAD, answer
from producer.handling.car import Array
from producer.handling.chassis import State, speeds, state
from producer.handling.gearing import rpm
from producer.handling.population import Crowd, car, crowd
from producer.model.opinion import SURE, Opinion
from producer.model.words import PHASES, Effect, Phase
from tests.handling.cars import BANDS, INCH, LB_IN, crowd_question

Band = tuple[int, int]
STEP = 25 * LB_IN
SPLIT_UP = {"spring.rr": STEP / 2, "spring.lr": -STEP / 2}
SPLIT_DOWN = {"spring.rr": -STEP / 2, "spring.lr": STEP / 2}
# The setup starts with the right front 50 lb/in above the left: from level to as far below it as it was above.
BELOW, ABOVE = {"spring.rf": -100 * LB_IN}, {"spring.rf": 0.0}
MOVES: Mapping[str, Mapping[str, float]] = {
    "more rear split": SPLIT_UP,
    "less rear split": SPLIT_DOWN,
    "front weight up": {"front": 0.005},
    "front weight down": {"front": -0.005},
    "cross weight up": {"cross": 0.005},
    "cross weight down": {"cross": -0.005},
    "bigger front bar": {"front_bar_size": (1.5 / 1.375) ** 4 - 1},
    "smaller front bar": {"front_bar_size": (1.25 / 1.375) ** 4 - 1},
    "track bar up": {"track_bar.left": 0.25 * INCH, "track_bar.right": 0.25 * INCH},
    "track bar down": {"track_bar.left": -0.25 * INCH, "track_bar.right": -0.25 * INCH},
    "front brake bias up": {"bias": 0.01},
    "front brake bias down": {"bias": -0.01},
    "lower final drive": {"final": -0.03},
    "higher final drive": {"final": 0.03},
    "RF from above the LF to below it": BELOW,
    "RF further above the LF": {"spring.rf": 50 * LB_IN},
}


@cache
def opinions(band: Band) -> dict[str, Opinion]:
    return dict(zip(MOVES, answer(crowd_question(band, list(MOVES.values()))).opinions, strict=True))


@dataclass(frozen=True)
class Driven:
    """The cars of a band as they are, and which of them keep all four wheels on the road."""

    crowd: Crowd
    speed: Array
    before: State
    firm: NDArray[np.bool_]


@cache
def driven(band: Band) -> Driven:
    some = crowd(crowd_question(band, ()), 1000)
    cars = car(some.parts)
    speed = speeds(cars, some.turn)
    before = state(cars, some.turn, speed)
    return Driven(some, speed, before, (before.loads > LEAST_LOAD).all(axis=(0, 1, 2)))


def change(band: Band, move: Mapping[str, float], of: Callable[[State], Array]) -> Array:
    """How a figure of the four tyres changes with a move: (corners, phases, cars)."""
    some = driven(band)
    parts = {name: value + move.get(name, 0.0) for name, value in some.crowd.parts.items()}
    after = state(car(parts), some.crowd.turn, some.speed)
    found = (of(after) - of(some.before))[:, 0][..., some.firm]
    return np.asarray(found)


def harder(band: Band, move: Mapping[str, float]) -> Array:
    """How much more each tyre is asked to hold, N."""
    return change(band, move, lambda one: one.work)


def heavier(band: Band, move: Mapping[str, float]) -> Array:
    """How much more each tyre carries, N."""
    return change(band, move, lambda one: one.loads)


@pytest.mark.parametrize("band", BANDS)
@pytest.mark.parametrize(
    ("move", "phases", "effect"),
    [
        ("more rear split", ("middle", "exit"), "looser"),
        ("less rear split", ("middle", "exit"), "tighter"),
        ("RF from above the LF to below it", ("entry",), "looser"),
        ("RF further above the LF", ("entry",), "tighter"),
        ("front weight up", ("entry",), "tighter"),
        ("front weight down", ("entry",), "looser"),
        ("cross weight up", PHASES, "tighter"),
        ("cross weight down", PHASES, "looser"),
        ("bigger front bar", PHASES, "tighter"),
        ("smaller front bar", PHASES, "looser"),
        ("track bar up", PHASES, "looser"),
        ("track bar down", PHASES, "tighter"),
        ("front brake bias up", ("entry",), "tighter"),
        ("front brake bias down", ("entry",), "looser"),
    ],
)
def test_the_model_is_sure_of_it(band: Band, move: str, phases: tuple[Phase, ...], effect: Effect) -> None:
    for phase in phases:
        assert opinions(band)[move].at(phase).agreement(effect) >= SURE, phase


@pytest.mark.parametrize("band", BANDS)
class TestOnlyThere:
    @pytest.mark.parametrize("move", ["front brake bias up", "front brake bias down"])
    def test_brake_bias_does_nothing_off_the_brakes(self, band: Band, move: str) -> None:
        for phase in ("middle", "exit"):
            assert opinions(band)[move].at(phase).agreement("none") == 1.0

    @pytest.mark.parametrize("move", ["lower final drive", "higher final drive"])
    def test_a_gear_does_nothing_off_the_gas(self, band: Band, move: str) -> None:
        for phase in ("entry", "middle"):
            assert opinions(band)[move].at(phase).agreement("none") == 1.0


class TestFinalDrive:
    """A numerically lower one: fewer rpm, and less push of the rear tyres off the corner."""

    @pytest.mark.parametrize(("lower", "higher"), [("3.70", "3.90"), ("4.10", "4.30")])
    def test_lowers_the_rpm(self, lower: str, higher: str) -> None:
        speed, around = Quantity(Decimal(150), "mph"), Quantity(Decimal(87), "in")
        assert rpm(speed, around, Decimal(1), Decimal(lower)) < rpm(speed, around, Decimal(1), Decimal(higher))

    @pytest.mark.parametrize(("band", "share"), [*(((low, high), SURE) for low, high in BANDS[:2]), ((12, 33), 0.75)])
    def test_tightens_the_exit(self, band: Band, share: float) -> None:
        """Sure to 12 degrees; on steeper banking it depends on the car: gas also turns a car in that is heavier on the
        left, which then counts for nearly as much."""
        assert opinions(band)["lower final drive"].exit.tighter >= share
        assert opinions(band)["higher final drive"].exit.looser >= share

    @pytest.mark.parametrize("band", BANDS)
    def test_and_asks_less_of_the_rear_tyres(self, band: Band) -> None:
        less, more = (harder(band, MOVES[f"{way} final drive"])[2:, 2] for way in ("lower", "higher"))
        assert (less < 0).mean() >= SURE
        assert (more > 0).mean() >= SURE


class TestRightRear:
    @pytest.mark.parametrize("band", BANDS)
    def test_a_smaller_rear_split_looks_after_it(self, band: Band) -> None:
        for phase in (1, 2):
            assert (harder(band, SPLIT_DOWN)[3, phase] < 0).mean() >= SURE
            assert (heavier(band, SPLIT_DOWN)[3, phase] < 0).mean() >= SURE

    @pytest.mark.parametrize("band", BANDS)
    def test_and_a_larger_one_costs_it(self, band: Band) -> None:
        for phase in (1, 2):
            assert (harder(band, SPLIT_UP)[3, phase] > 0).mean() >= SURE


class TestSteepAndFlat:
    def test_a_right_rear_spring_is_worth_two_to_four_times_as_much_at_twenty_degrees(self) -> None:
        flat, steep = (
            answer(crowd_question(band, [{"spring.rr": STEP}])).opinions[0].sizes() for band in (BANDS[0], BANDS[3])
        )
        for phase in PHASES:
            assert 2 <= round(steep[phase] / flat[phase]) <= 4

    def test_left_springs_turn_round_with_banking(self) -> None:
        """On the flat they are let go, on a steep banking they are compressed: a stiffer one then carries more."""
        left = [{"spring.lf": STEP}, {"spring.lr": STEP}]
        steep = answer(crowd_question((20, 30), left)).opinions
        assert steep[0].middle.sure == "looser"
        assert steep[1].middle.sure == "tighter"
        flat = answer(crowd_question((0, 3), left)).opinions
        assert flat[0].middle.sure != "looser"
        assert flat[1].middle.sure != "tighter"
