"""The model's answers over the crowd."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from producer.handling.answering import CARS, answer
from producer.handling.asking import HALF_PERCENT, Question, ask
from producer.handling.opinions import opinions
from producer.handling.ranges import CAR, Bend
from producer.model.library import Case
from producer.model.opinion import Opinion, Opinions, PhaseOpinion
from producer.model.words import PHASES

CaseOf = Callable[..., Case]
OPEN = Question(CAR, (Bend((80.0, 300.0), (0.0, 20.0)),), {}, (HALF_PERCENT,))


def thought(case: Case) -> Opinions:
    asked = ask(case, case.sheets[0])
    found = answer(asked.question)
    return opinions(asked, found.cars, found.opinions)


def test_a_thousand_cars_answer() -> None:
    found = answer(OPEN)
    assert found.cars == CARS == 1000
    assert len(found.opinions) == 1


def test_no_answer_depends_on_what_else_is_asked() -> None:
    many = replace(OPEN, moves=(*({"front": 0.001 * n} for n in range(1, 30)), HALF_PERCENT, {"bias": 0.01}))
    assert answer(many).opinions[-2] == answer(OPEN).opinions[0]


def test_shares_are_shares_and_nothing_is_both() -> None:
    for one in answer(
        replace(OPEN, moves=({"left": 0.005}, {"spring.lf": 4000.0}, {"compression.lf": 900.0}))
    ).opinions:
        for phase in PHASES:
            at = one.at(phase)
            assert 0 <= at.tighter <= 1
            assert 0 <= at.looser <= 1
            assert at.tighter + at.looser <= 1.0001


def test_there_and_back_are_opposites() -> None:
    there, back = answer(replace(OPEN, moves=({"cross": 0.001}, {"cross": -0.001}))).opinions
    for phase in PHASES:
        assert there.at(phase).tighter == pytest.approx(back.at(phase).looser, abs=0.01)
        assert there.at(phase).size == pytest.approx(-back.at(phase).size, rel=0.02)


def test_nothing_moved_is_nothing_done() -> None:
    (one,) = answer(replace(OPEN, moves=({"front": 0.0},))).opinions
    assert one == Opinion(*[PhaseOpinion(0.0, 0.0, 0.0, None)] * 3)


def test_a_car_that_cannot_stand_on_four_wheels_has_no_opinion() -> None:
    assert answer(replace(OPEN, stated={"front": 0.99, "left": 0.99, "cross": 0.5})) == type(answer(OPEN))(0, ())


def test_an_opinion_without_cars_is_empty(case_of: CaseOf) -> None:
    found = opinions(ask(case_of(), case_of().sheets[0]), 0, ())
    assert found == Opinions(0)
    assert found.click("spring.rf", 1) is None


def test_clicks_reasons_and_setups_find_their_own_answers(case_of: CaseOf) -> None:
    """A reason's answer is turned: it was asked as the way back."""
    more = """
    reasons:
      - { for: cross_weight, because: So. }
  - setup: long
    name: Long run
    based_on: short
    changes: { cross_weight: 51 }
"""
    found = thought(case_of(more))
    # 52 against the default 50, and to 51: by size four halves of a percent up, two down.
    half, up, down = found.half_percent["middle"], found.reasons[0].middle, found.others["long"].middle
    assert up.size == pytest.approx(4 * half, rel=0.05)
    assert down.size == pytest.approx(-2 * half, rel=0.05)
    assert up.tighter == pytest.approx(1.0)
    assert found.clicks["cross_weight"][1].middle.size == pytest.approx(half, rel=0.001)


def test_the_tyre_that_pays(case_of: CaseOf) -> None:
    found = thought(case_of())
    assert found.clicks["spring.rr"][1].middle.pays == "rr"
    assert found.clicks["front_weight"][1].entry.pays == "rf"
    assert found.clicks["brake_bias"][1].entry.pays == "rf"
    assert found.clicks["brake_bias"][1].middle.pays is None
    assert found.clicks["final_drive"][1].exit.pays == "rr"


@settings(max_examples=40)
@given(
    st.dictionaries(st.sampled_from(sorted({*CAR} - {"track_bar.left"})), st.floats(1e-6, 1e6), max_size=6),
    st.tuples(st.floats(1, 5000), st.floats(-20, 89)),
    st.dictionaries(
        st.sampled_from(["front", "spring.rf", "front_bar_size", "final"]), st.floats(-1e6, 1e6), max_size=2
    ),
)
def test_odd_cars_get_a_sober_answer_or_none(
    stated: dict[str, float], corner: tuple[float, float], move: dict[str, float]
) -> None:
    radius, banking = corner
    found = answer(Question(CAR, (Bend((radius, radius), (banking, banking)),), stated, (move,)))
    for one in found.opinions:
        for phase in PHASES:
            at = one.at(phase)
            assert 0 <= at.tighter <= 1
            assert 0 <= at.looser <= 1
            assert at.size == at.size  # a number
