"""What is told of the settings a message speaks of."""

from __future__ import annotations

import pytest

from producer.jobs.prose import filled
from producer.model.library import Case, Library
from producer.replies.asked_about import addresses, answers, every_value, values_of

GANNET = "gannet-bowl-grand-sedan"


@pytest.fixture
def case(log: Library) -> Case:
    return log.case(filled(log.case(log.episodes[GANNET])))


@pytest.mark.parametrize(
    ("named", "found"),
    [
        (["tape"], ["tape"]),
        (["spring.rf", "spring"], ["spring.rf", "spring.lf", "spring.lr", "spring.rr"]),
        (["track_bar.right"], ["track_bar.right"]),
        (["track_bar"], ["track_bar.left", "track_bar.right"]),
        (["wing", "spring.zz", "spr"], []),
    ],
)
def test_addresses(case: Case, named: list[str], found: list[str]) -> None:
    assert list(addresses(case.sheets[0], named)) == found


def test_a_setting_without_a_value_is_not_told(log: Library) -> None:
    idea = log.case(log.episodes["lantern-flats-grand-sedan"])
    assert addresses(idea.sheets[0], ["tape"]) == ()


def test_values_with_what_the_other_setups_have(case: Case) -> None:
    assert list(values_of(case, case.sheets[0], ["tape", "left_weight"])) == [
        "Grille tape: 60 % (40 % in the long run setup)",
        "Left weight: 54.0 %",
    ]
    assert list(values_of(case, case.sheets[1], ["tape"])) == ["Grille tape: 40 % (60 % in the short run setup)"]


def test_an_answer_has_the_authors_reason(case: Case) -> None:
    ((name, figure, words),) = answers(case, case.sheets[0], ["final_drive"])
    assert (name, figure) == ("Final drive", "3.40:1")
    assert words.startswith("A long gear, lower in number than the default")
    assert "{{" not in words


def test_all_corners_are_one_answer_and_one_corners_reason_is_not_theirs(case: Case) -> None:
    ((name, figure, words),) = answers(case, case.sheets[0], ["spring"])
    assert (name, figure, words) == ("Spring", "LF 825, RF 950, LR 200, RR 350 lb/in", "")
    ((_, _, both),) = answers(case, case.sheets[0], ["pressure.rf", "pressure.rr"])
    assert both.startswith("On banking this steep")


def test_at_most_three_are_answered(case: Case) -> None:
    assert len(list(answers(case, case.sheets[0], ["tape", "spring", "final_drive", "cross_weight"]))) == 3


def test_every_value_is_a_line_a_page(case: Case) -> None:
    lines = list(every_value(case.sheets[0]))
    assert [one.split(":")[0] for one in lines] == ["Wheels", "Scales", "Undercar", "Shocks", "Drive"]
    assert "final drive 3.40:1" in lines[-1]
