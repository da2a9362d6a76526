"""The chassis model against a prototype of its own design, written separately (tests/data/model-reference.csv).

Shares of the cars that get tighter or looser within 0.05, with the thousand cars that are asked; median sizes within a
tenth, or 0.01, with four thousand: the median of one thousand scatters by about as much.
"""

from __future__ import annotations

import csv
from collections.abc import Mapping
from pathlib import Path

import pytest

from producer.handling import answering
from producer.handling.answering import CARS, Answer, answer
from producer.model.opinion import Opinion
from producer.model.words import PHASES
from tests.handling.cars import BANDS, INCH, LB_IN, crowd_question

DATA = Path(__file__).parents[1] / "data" / "model-reference.csv"
DAMPERS = {"lf": 6e3, "rf": 6e3, "lr": 5e3, "rr": 5e3}  # N s/m
# The reference's setting -> the same step in the parts of the car.
MOVES: Mapping[str, Mapping[str, float]] = {
    **{f"spring.{corner}": {f"spring.{corner}": 25 * LB_IN} for corner in DAMPERS},
    **{f"weight.{share}": {share: 0.005} for share in ("front", "left", "cross")},
    "bar.front": {"front_bar_size": 0.10},
    "track_bar, one end": {"track_bar.left": 0.25 * INCH},
    "gear.final": {"final": 0.03},
    **{f"shock_compression.{corner}": {f"compression.{corner}": 0.2 * rate} for corner, rate in DAMPERS.items()},
    **{f"shock_rebound.{corner}": {f"rebound.{corner}": 0.2 * rate} for corner, rate in DAMPERS.items()},
    "rear split": {"spring.rr": 12.5 * LB_IN, "spring.lr": -12.5 * LB_IN},
    "front split": {"spring.rf": 12.5 * LB_IN, "spring.lf": -12.5 * LB_IN},
    "brake.front_bias": {"bias": 0.01},
}


def rows() -> list[dict[str, str]]:
    with DATA.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


@pytest.fixture(scope="module")
def answers() -> dict[tuple[int, int], Answer]:
    return ask()


@pytest.fixture(scope="module")
def more() -> dict[tuple[int, int], Answer]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(answering, "CARS", 4000)
        return ask()


def ask() -> dict[tuple[int, int], Answer]:
    return {band: answer(crowd_question(band, list(MOVES.values()))) for band in BANDS}


def opinion(answers: Mapping[tuple[int, int], Answer], one: Mapping[str, str]) -> Opinion:
    band = (int(one["banking_from_deg"]), int(one["banking_to_deg"]))
    return answers[band].opinions[list(MOVES).index(one["setting"])]


def test_every_band_and_setting_is_there() -> None:
    there = {(int(one["banking_from_deg"]), int(one["banking_to_deg"]), one["setting"]) for one in rows()}
    assert there == {(*band, setting) for band in BANDS for setting in MOVES}
    assert len(rows()) == len(there)


def test_a_thousand_cars_were_asked(answers: Mapping[tuple[int, int], Answer]) -> None:
    assert {one.cars for one in answers.values()} == {CARS}


@pytest.mark.parametrize("one", rows(), ids=lambda one: f"{one['banking_from_deg']}deg-{one['setting']}")
class TestRow:
    def test_shares(self, one: dict[str, str], answers: Mapping[tuple[int, int], Answer]) -> None:
        for phase in PHASES:
            found = opinion(answers, one).at(phase)
            assert found.tighter == pytest.approx(float(one[f"tighter_{phase}"]), abs=0.05), phase
            assert found.looser == pytest.approx(float(one[f"looser_{phase}"]), abs=0.05), phase

    def test_sizes(self, one: dict[str, str], more: Mapping[tuple[int, int], Answer]) -> None:
        for phase in PHASES:
            size = opinion(more, one).at(phase).size
            assert size == pytest.approx(float(one[f"median_{phase}"]), rel=0.10, abs=0.01), phase


def test_both_ends_of_the_track_bar_count_alike(answers: Mapping[tuple[int, int], Answer]) -> None:
    """A bar acts along its line: each end counts half, in every phase. The trade feels them apart; statics does not."""
    left, right = answer(
        crowd_question((12, 18), [{f"track_bar.{end}": 0.25 * INCH} for end in ("left", "right")])
    ).opinions
    assert left.sizes() == pytest.approx(right.sizes(), rel=1e-9)
