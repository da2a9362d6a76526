"""What the model is asked about a setup."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pytest

from producer.handling.asking import HALF_PERCENT, Asked, ask
from producer.model.library import Case

CaseOf = Callable[..., Case]
LBF_IN = 175.12683524647636  # N/m in one lb/in


def asked(case: Case, setup: int = 0) -> Asked:
    return ask(case, case.sheets[setup])


def click_moves(one: Asked) -> dict[tuple[str, int], Mapping[str, float]]:
    return dict(zip(one.clicks, one.question.moves[1:], strict=False))


def reason_moves(one: Asked) -> dict[int, Mapping[str, float]]:
    return dict(zip(one.reasons, one.question.moves[1 + len(one.clicks) :], strict=False))


def test_the_first_move_is_the_measure(case_of: CaseOf) -> None:
    assert asked(case_of()).question.moves[0] == HALF_PERCENT


def test_three_clicks_each_way_inside_the_limits(case_of: CaseOf) -> None:
    moves = click_moves(asked(case_of()))
    assert [count for address, count in moves if address == "spring.rf"] == [-3, -2, -1, 1, 2, 3]
    assert moves["spring.rf", 2] == pytest.approx({"spring.rf": 50 * LBF_IN})
    # Two choices above 3.90, two below.
    assert [count for address, count in moves if address == "final_drive"] == [-2, -1, 1, 2]
    assert moves["final_drive", -1] == pytest.approx({"final": -0.1})


@pytest.mark.parametrize("address", ["pressure.rf", "tape", "gadget"])
def test_what_the_model_does_not_read_is_not_asked(address: str, case_of: CaseOf) -> None:
    assert address not in {one for one, _ in asked(case_of()).clicks}


def test_a_setting_without_a_value_is_not_asked(case_of: CaseOf) -> None:
    found = asked(case_of(edit=("      brake_bias: 62\n", "")))
    assert "brake_bias" not in {one for one, _ in found.clicks}
    assert "bias" not in found.question.stated


ADVICE = """
    reasons:
      - for: spring.rf
        because: A reason.
        if: [{ feels: loose entry, direction: raise, to: [750, 875], say: Go up. }]
"""


def test_the_author_s_stops_are_asked_however_far(case_of: CaseOf) -> None:
    counts = [count for address, count in asked(case_of(ADVICE)).clicks if address == "spring.rf"]
    assert counts == [-3, -2, -1, 1, 2, 3, 7]


def reasons(*lines: str) -> str:
    return "    reasons:\n" + "".join(f"      - {{ {one}, because: So. }}\n" for one in lines)


@pytest.mark.parametrize(
    ("reason", "back"),
    [
        ("for: spring.rf", {"spring.rf": 50 * LBF_IN}),
        ("for: spring.rf, compared_with: 725", {"spring.rf": 25 * LBF_IN}),
        ("for: spring.rear_split", {"spring.rr": -25 * LBF_IN}),
        ("for: spring.rear_split, compared_with: 100", {"spring.rr": 25 * LBF_IN}),
        ("for: spring.front_split, compared_with: default", {"spring.lf": -25 * LBF_IN, "spring.rf": 50 * LBF_IN}),
        ("for: [spring.rf, cross_weight]", {"spring.rf": 50 * LBF_IN, "cross": -0.02}),
        ("for: [front_weight, tape]", {"front": -0.005}),
    ],
)
def test_a_reason_is_asked_as_the_way_back_to_where_it_started(
    reason: str, back: Mapping[str, float], case_of: CaseOf
) -> None:
    assert reason_moves(asked(case_of(reasons(reason)))) == {0: pytest.approx(back)}


@pytest.mark.parametrize(
    "reason",
    [
        "for: left_weight",  # where the garage has it
        "for: pressure.rf, compared_with: 40",
        "for: [spring.rf, pressure.rf], compared_with: 40",  # half of it the model does not see
        "for: gadget",
    ],
)
def test_a_reason_that_moved_nothing_the_model_reads_whole_is_not_asked(reason: str, case_of: CaseOf) -> None:
    assert reason_moves(asked(case_of(reasons(reason)))) == {}


OTHER = """
  - setup: long
    name: Long run
    based_on: short
    changes: { spring: { rf: 750 }, tape: 50 }
"""


def test_going_to_the_other_setup_is_asked_both_ways(case_of: CaseOf) -> None:
    case = case_of(OTHER)
    there, back = asked(case), asked(case, 1)
    assert there.others == ("long",)
    assert back.others == ("short",)
    assert there.question.moves[-1] == pytest.approx({"spring.rf": 50 * LBF_IN})
    assert back.question.moves[-1] == pytest.approx({"spring.rf": -50 * LBF_IN})


def test_a_setup_that_differs_in_nothing_the_model_reads_is_not_asked(case_of: CaseOf) -> None:
    assert asked(case_of(OTHER.replace("spring: { rf: 750 }, ", ""))).others == ()


def test_the_track_and_the_car_block_narrow_the_question(case_of: CaseOf) -> None:
    question = asked(case_of(banking=(8, 12))).question
    assert [one.banking for one in question.bends] == [(8.0, 8.0), (12.0, 12.0)]
    assert question.bends[0].radius == pytest.approx((152.4, 152.4))
    assert question.car["mass"] == (1500.0, 1500.0)
    assert question.car["rear_bar"] == (0.0, 0.0)
    assert question.car["wheelbase"] == (2.65, 2.85)


def test_a_track_without_corners_leaves_them_open(case_of: CaseOf) -> None:
    (bend,) = asked(case_of(banking=())).question.bends
    assert bend.radius == (40.0, 350.0)
    assert bend.banking == (0.0, 36.0)
