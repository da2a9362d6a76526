"""The model's answers over the crowd."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from producer.handling.answering import CARS, _pays, answer
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


def test_however_many_threads_the_answer_is_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    many = replace(OPEN, moves=(*({"cross": 0.001 * n} for n in range(1, 40)), {"front": 0.01}, {"spring.rf": -9e9}))
    monkeypatch.setattr("os.cpu_count", lambda: None)
    alone = answer(many)
    monkeypatch.setattr("os.cpu_count", lambda: 64)
    assert answer(many) == alone
    assert len(alone.opinions) == len(many.moves)


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
    for address, count, phase, pays in (
        ("spring.rr", 1, "middle", "rr"),
        ("spring.rr", -1, "middle", "rf"),
        ("front_weight", 1, "entry", "rf"),
        ("front_weight", -1, "entry", "rr"),
        ("cross_weight", 1, "exit", "rf"),
        ("cross_weight", -1, "exit", "rr"),
        ("brake_bias", 1, "entry", "rf"),
        ("brake_bias", -1, "entry", "rr"),
        ("brake_bias", 1, "middle", None),
        ("final_drive", 1, "exit", "rr"),
        # Less drive: every tyre but the left front is relieved, and that one gains a sixth of what a rear one loses.
        ("final_drive", -1, "exit", None),
        ("final_drive", -2, "exit", None),
        ("final_drive", -1, "middle", None),
    ):
        assert getattr(found.clicks[address][count], phase).pays == pays, (address, count, phase)


@pytest.mark.parametrize(
    ("harder", "pays"),
    [
        ((-51.0, -93.0, 52.0, 93.0), "rr"),
        ((-8.0, 9.0, 11.0, -11.0), "rf"),
        ((-2.5, -3.9, 1.0, 2.6), "rr"),
        ((8.7, -4.0, -32.8, -54.9), None),
        ((24.0, 0.0, 0.0, -100.0), None),
        ((26.0, 0.0, 0.0, -100.0), "lf"),
        ((0.4, 0.0, 0.0, 0.0), None),
        ((0.6, 0.0, 0.0, 0.0), "lf"),
        ((-1.0, -2.0, -3.0, -4.0), None),
        ((0.0, 0.0, 0.0, 0.0), None),
    ],
)
def test_who_pays_for_what_is_moved_and_nobody_for_what_is_taken_away(
    harder: tuple[float, ...], pays: str | None
) -> None:
    """The work that each tyre gains, N, in a left turn: LF, RF, LR, RR."""
    assert _pays(np.array(harder), np.array([2000.0, 6000.0, 1500.0, 5500.0])) == pays


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
