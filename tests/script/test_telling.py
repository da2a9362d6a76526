"""Values in one breath, reasons once and after them, leads only where they are wanted."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from tests.script.conftest import GARAGE, VALUES, Told

Tell = Callable[..., Told]
FOUR = "Springs, in pounds per inch: left front 725, right front 700, left rear 225 and right rear 300."


def because(target: str, words: str, more: str = "") -> str:
    return f"- for: {target}\n  because: {words}\n{more}"


@pytest.mark.parametrize(
    ("section", "says"),
    [
        ("short.scales", "Cross weight: 52.0\u00a0percent."),
        ("short.scales", "Camber, in degrees: left front 4.00 and right front \u22123.50."),
        ("short.under_floor", FOUR),
        ("short.under_floor", "That makes the rear split 75\u00a0pounds per inch."),
        ("short.under_floor", "Track bar, in inches: left end 9.50 and right end 10.00."),
        ("short.shocks", "Compression, in clicks: left front 4 and right front 5."),
        ("short.drive", "Final drive is at 3.90."),
    ],
)
def test_how_values_are_said(tell: Tell, section: str, says: str) -> None:
    assert says in tell().texts(section, "value")


def test_patterns_take_turns(tell: Tell) -> None:
    assert tell().texts("short.scales", "value")[:2] == [
        "Cross weight: 52.0\u00a0percent.",
        "Front weight, 50.5\u00a0percent.",
    ]


def test_a_reason_for_the_only_setting_follows_it_without_a_lead(tell: Tell) -> None:
    told = tell(because("cross_weight", "It calms the car.")).texts("short.scales")
    assert told[2:5] == ["Cross weight: 52.0\u00a0percent.", "It calms the car.", "Front weight, 50.5\u00a0percent."]


def test_a_reason_for_one_corner_is_led_in_by_its_figure(tell: Tell) -> None:
    told = tell(because("spring.rf", "It turns.")).texts("short.under_floor")
    assert told[1:5] == [
        FOUR,
        "That makes the rear split 75\u00a0pounds per inch.",
        "The right front, 700.",
        "It turns.",
    ]


@pytest.mark.parametrize(
    ("corners", "lead"),
    [
        ("[spring.lf, spring.lr]", "The left front and left rear, both 225."),
        ("[spring.lf, spring.lr, spring.rr]", "The left front, left rear and right rear, all 225."),
        ("[spring.lf, spring.rf]", "The left front and right front, 225 and 700."),
        ("spring.lf", "The left front, 225."),
    ],
)
def test_equal_figures_are_said_once(tell: Tell, corners: str, lead: str) -> None:
    values = VALUES.replace("725", "225").replace("300", "225")
    told = tell(because(corners, "It turns."), values=values).texts("short.under_floor")
    assert lead in told


def test_a_reason_for_all_corners_needs_no_lead(tell: Tell) -> None:
    told = tell(because("spring", "All of them.")).texts("short.under_floor")
    assert told[1:4] == [FOUR, "That makes the rear split 75\u00a0pounds per inch.", "All of them."]


def test_a_reason_for_some_corners_names_them(tell: Tell) -> None:
    told = tell(because("[spring.lf, spring.lr]", "The left side.")).texts("short.under_floor")
    assert told[3:5] == ["The left front and left rear, 725 and 225.", "The left side."]


def test_reasons_stand_in_the_order_of_the_garage_a_split_after_its_corners(tell: Tell) -> None:
    reasons = (
        because("spring.rear_split", "The split.")
        + because("spring.rr", "The rear.")
        + because("spring.lf", "The front.")
    )
    assert tell(reasons).texts("short.under_floor", "reason") == ["The front.", "The rear.", "The split."]


def test_a_split_with_a_reason_is_said_there_and_only_there(tell: Tell) -> None:
    told = tell(because("spring.rear_split", "The split.")).texts("short.under_floor")
    at = told.index("The split.")
    assert told[at - 1] == "That makes the rear split 75\u00a0pounds per inch."
    assert sum("rear split" in text for text in told) == 1


def test_a_reason_for_a_page_waits_for_the_values_of_the_page(tell: Tell) -> None:
    told = tell(because("bump.rf", "One corner.") + because("shocks", "The page.")).texts("short.shocks")
    assert told[1:] == [
        "Compression, in clicks: left front 4 and right front 5.",
        "Rebound, in clicks: left front 6 and right front 7.",
        "The page.",
        "The right front compression, 5.",
        "One corner.",
    ]


def test_a_reason_over_two_pages_is_told_once_on_the_later_one(tell: Tell) -> None:
    told = tell(because("[cross_weight, final_drive]", "Both."))
    assert "Both." not in told.texts("short.scales")
    assert told.texts("short.drive").count("Both.") == 1


def test_many_settings_are_named_by_their_parameters(tell: Tell) -> None:
    told = tell(because("[spring, track_bar.left]", "Five of them.")).texts("short.under_floor")
    at = told.index("Five of them.")
    assert told[at - 1] == "Springs and track bar together."


def test_a_reason_without_words_says_its_effect(tell: Tell) -> None:
    reason = "- { for: cross_weight, effect: { entry: tighter, middle: tighter, exit: looser } }"
    assert tell(reason).texts("short.scales", "reason") == [
        "That makes the car tighter going in and in the middle, looser coming off."
    ]


@pytest.mark.parametrize("reason", ["- { for: spring.rf }", "- { for: spring.rf, effect: { entry: none } }"])
def test_a_reason_that_says_nothing_has_no_lead(tell: Tell, reason: str) -> None:
    assert tell(reason).texts("short.under_floor") == tell().texts("short.under_floor")


def test_paragraphs_of_a_reason_are_passages(tell: Tell) -> None:
    reason = "- for: cross_weight\n  because: |\n    One *thing*.\n\n    Another.\n"
    assert tell(reason).texts("short.scales", "reason") == ["One thing.", "Another."]


LONG = "- setup: long\n  name: Long run\n  purpose: long run\n  based_on: short\n  changes: {changes}\n"


@pytest.mark.parametrize(
    ("changes", "section", "says"),
    [
        ("{ cross_weight: 51 }", "long.scales", "Cross weight, from 52.0 down to 51.0\u00a0percent."),
        ("{ cross_weight: 53 }", "long.scales", "Cross weight, from 52.0 up to 53.0\u00a0percent."),
        ("{ camber: { rf: -4 } }", "long.scales", "Right front camber, from \u22123.50 to \u22124.00\u00a0degrees."),
        (
            "{ spring: { rf: 725, rr: 275 } }",
            "long.under_floor",
            "Springs, in pounds per inch: right front from 700 to 725 and right rear from 300 to 275.",
        ),
        (
            "{ track_bar: { left: 10 } }",
            "long.under_floor",
            "Left end of the track bar, from 9.50 up to 10.00\u00a0inches.",
        ),
        ("{ final_drive: 4.11 }", "long.drive", "Final drive, from 3.90 up to 4.11."),
    ],
)
def test_how_a_change_is_said(tell: Tell, changes: str, section: str, says: str) -> None:
    assert says in tell(more=LONG.format(changes=changes)).texts(section, "value")


def test_changes_with_reasons_of_their_own_are_told_one_by_one_then_the_split(tell: Tell) -> None:
    reasons = "".join(
        because(t, w) for t, w in [("spring.rear_split", "Less."), ("spring.lr", "Left."), ("spring.rr", "Right.")]
    )
    more = LONG.format(changes="{ spring: { lr: 250, rr: 275 } }") + "  reasons:\n" + "".join(
        f"    {line}\n" for line in reasons.splitlines() if line
    )  # fmt: skip
    assert tell(more=more).texts("long.under_floor")[2:] == [
        "Left rear spring, from 225 up to 250\u00a0pounds per inch.",
        "Left.",
        "Right rear spring, from 300 down to 275\u00a0pounds per inch.",
        "Right.",
        "So the rear split goes from 75 to 25\u00a0pounds per inch.",
        "Less.",
    ]


def test_a_reason_for_what_did_not_change_is_not_told_again(tell: Tell) -> None:
    told = tell(because("front_weight", "Steady."), more=LONG.format(changes="{ cross_weight: 51 }"))
    assert told.whole.count("Steady.") == 1


def test_a_third_setup_points_back_to_the_second_for_what_it_inherits(tell: Tell) -> None:
    more = (
        LONG.format(changes="{ cross_weight: 51 }")
        + "  reasons: [{ for: cross_weight, because: Less wedge. }]\n"
        + "- { setup: third, name: Qualifying, based_on: long, changes: { final_drive: 4.11 } }\n"
    )
    told = tell(more=more)
    assert told.whole.count("Less wedge.") == 1
    assert told.texts("third.scales", "reason") == ["As in the long run."]


def test_a_garage_without_springs_has_no_split_to_say(tell: Tell) -> None:
    told = tell(garage=GARAGE.replace("    role: spring\n", ""))
    assert not any("split" in one for one in told.texts("short.under_floor"))
