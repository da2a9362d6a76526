"""Further raw files: what they mend is struck from the list, and told with where they say it."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from producer.model.take import Take

Heard = Callable[..., Take]
SCALES = "The scales page. {} Left weight, 55 percent. Cross weight: 52 percent."
ADVISED = (
    "Front weight, 50.5 percent. If it is loose going in: half a percent on the nose. That is {}. "
    "Left weight, 55 percent. Cross weight: 52 percent."
)


def left(take: Take) -> list[tuple[str, str | None]]:
    return [(one.about, one.parameter) for one in take.findings if one.code in {"said-differs", "not-said"}]


def test_where_a_pick_up_says_it(told: Heard) -> None:
    take = told("Short run. Front weight, 50.5 percent.", short__scales=SCALES.format("Front weight, 50 percent."))
    assert left(take) == []
    (one,) = take.mended
    assert (one.finding.parameter, one.finding.setup, one.file) == ("front_weight", "short", "take-2.srt")
    assert one.finding.at_ms is not None
    assert 0 <= one.start_ms < 3000


@pytest.mark.parametrize(
    "pick_up",
    [
        "Long run. Final drive, from 4.15 down to 4.00.",
        "Final drive, from 4.15 down to 4.00.",
        "The drive page. Final drive, from 4.15 down to 4.00.",  # a page is no setup
        "Final drive, four to one.",
    ],
)
def test_a_later_setup_s_setting(told: Heard, pick_up: str) -> None:
    wrong = {"long__drive": "On the drive page: final drive, from 4.15 down to 3.85. A lower ratio."}
    assert ("parameter", "final_drive") in left(told(**wrong))
    take = told(pick_up, **wrong)
    assert ("parameter", "final_drive") not in left(take)
    assert {(one.finding.parameter, one.finding.setup) for one in take.mended} >= {("final_drive", "long")}


def test_the_last_pick_up_that_says_it_counts(told: Heard) -> None:
    wrong = SCALES.format("Front weight, 50 percent.")
    take = told("Front weight, 50.5 percent.", "Front weight, 50.5 percent.", short__scales=wrong)
    assert [one.file for one in take.mended] == ["take-3.srt"]


def test_what_was_not_said(told: Heard) -> None:
    take = told("Front weight, 50.5 percent.", short__scales=SCALES.format("So."))
    assert left(take) == []
    assert [(one.finding.code, one.finding.at_ms) for one in take.mended] == [("not-said", None)]


def test_advice(told: Heard) -> None:
    wrong = ADVISED.format("52")
    assert left(told(short__scales=wrong)) == [("parameter", "front_weight")]
    value = told("Front weight, 50.5 percent.", short__scales=wrong)
    assert left(value) == [("parameter", "front_weight")], "the value alone mends no advice"
    mended = told("If it is loose going in, go up to 51 on the front weight.", short__scales=wrong)
    assert left(mended) == []
    assert [one.file for one in mended.mended] == ["take-2.srt"]


@pytest.mark.parametrize(
    ("pick_up", "expected"),
    [
        ("This is Marrow Creek.", []),
        ("In the Grand Sedan, front weight is 50.5 percent.", ["Lantern Flats"]),  # the class's name mends no track
        ("Front weight, 50.5 percent.", ["Lantern Flats"]),
    ],
)
def test_the_name_of_the_track(told: Heard, pick_up: str, expected: list[str]) -> None:
    opening = "Evening, all. Jo here. This is episode 7: Lantern Flats in the Grand Sedan. There are two setups here."
    take = told(pick_up, opening=opening)
    assert [one.said for one in take.findings if one.about == "name"] == expected


@pytest.mark.parametrize(
    "pick_up", ["Front weight, 51.5 percent.", "Long run. Front weight, 50.5 percent.", "Cross weight, 52 percent."]
)
def test_what_mends_nothing(told: Heard, pick_up: str) -> None:
    take = told(pick_up, short__scales=SCALES.format("Front weight, 50 percent."))
    assert ("parameter", "front_weight") in left(take)
    assert take.mended == ()


def test_without_a_pick_up_nothing_is_mended(told: Heard) -> None:
    assert told(short__scales=SCALES.format("Front weight, 50 percent.")).mended == ()


def test_the_caution(told: Heard) -> None:
    closing = "Both cars are on the cards, with the same numbers you have just heard. Good night."
    assert left(told(closing=closing)) == [("caution", None)]
    take = told("Front weight, 50.5 percent. Numbers for a simulation. Not advice for a real car.", closing=closing)
    assert left(take) == []
    assert [(one.finding.about, one.file) for one in take.mended] == [("caution", "take-2.srt")]
    assert take.mended[0].start_ms > 1000


@pytest.mark.parametrize(
    ("driven", "mended"),
    [
        ("tire wear normal; fuel use double; weather mild", "said-differs"),
        ("fuel use double; weather mild", "not-said"),
    ],
)
def test_a_condition(told: Heard, driven: str, mended: str) -> None:
    conditions = f"Here is how I tested it: {driven}. That was on version 3.1 of the simulation."
    assert left(told(conditions=conditions)) == [("condition", None)]
    take = told("Tire wear fast for me and for the field.", conditions=conditions)
    assert left(take) == []
    assert [(one.finding.about, one.finding.code, one.file) for one in take.mended] == [
        ("condition", mended, "take-2.srt")
    ]


def test_a_condition_that_is_said_again_as_it_was_mends_nothing(told: Heard) -> None:
    assert told("Tire wear fast for me and for the field. Weather mild.").mended == ()
