"""What is advised, by the rules, in the author's order, and what is said where nothing is."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping

import pytest

from producer.handling.advice import advise
from producer.handling.advice_json import advice_json
from producer.model.advice import Plan
from producer.model.library import Case
from producer.model.opinion import Opinions
from producer.model.words import PHASES
from tests.handling.advising import USUAL, Sizes, feels, opinions, told

Cases = Callable[..., Case]


def plan(
    case: Case, text: str, sizes: Mapping[str, Sizes] = USUAL, shares: Mapping[str, float] | None = None, **asked: str
) -> Plan:
    return advise(case, case.sheets[0], feels(text), opinions(sizes, shares), **asked)


def reasons(*advice: str) -> str:
    """One reason each, `cross_weight: feels: loose exit, to: [53]`."""
    rows = (one.split(": ", 1) for one in advice)
    return "    reasons:\n" + "".join(f"      - for: {name}\n        if: [ {{ {rest} }} ]\n" for name, rest in rows)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("tight entry", "cross_weight 52 -> 51.5"),
        ("tight middle", "cross_weight 52 -> 51.5"),
        ("tight exit", "cross_weight 52 -> 51.5"),
        ("loose entry", "cross_weight 52 -> 52.5"),
        ("loose middle", "cross_weight 52 -> 52.5"),
        ("loose exit", "cross_weight 52 -> 52.5"),
        # Half of that is two clicks of the right front spring.
        ("a little tight entry", "spring.rf 700 -> 650"),
        # Twice of that is one click of front weight, or two of cross weight.
        ("very tight entry", "front_weight 50.5 -> 50.0"),
        ("very loose exit", "cross_weight 52 -> 53.0"),
        # Nobody said where: what does as much in every part of the corner.
        ("tight", "cross_weight 52 -> 51.5"),
        ("very loose", "cross_weight 52 -> 53.0"),
        # Said twice, meant once, as strong as it was said.
        ("tight entry, very tight entry", "front_weight 50.5 -> 50.0"),
        # One setting that helps both beats two.
        ("tight entry, tight exit", "cross_weight 52 -> 51.5"),
    ],
)
def test_one_setting_that_does_as_much_as_is_wanted(case_of: Cases, text: str, expected: str) -> None:
    found = plan(case_of(), text)
    assert told(found) == [f"rule {expected}"]
    assert found.unanswered == ()
    assert found.notes == ()


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("tight entry, loose exit", ["brake_bias 62 -> 60", "compression.lr 4 -> 5"]),
        ("loose exit, tight entry", ["compression.lr 4 -> 5", "brake_bias 62 -> 60"]),
        ("loose entry, tight exit", ["brake_bias 62 -> 64", "compression.lr 4 -> 3"]),
        ("a little tight entry, very loose exit", ["brake_bias 62 -> 61", "compression.lr 4 -> 6"]),
        ("very loose entry, tight exit", ["brake_bias 62 -> 65", "compression.lr 4 -> 3"]),
        # `tight` leaves the exit to the one who says more.
        ("tight, loose exit", ["brake_bias 62 -> 60", "compression.lr 4 -> 5"]),
    ],
)
def test_opposite_feels_take_a_setting_each(case_of: Cases, text: str, expected: list[str]) -> None:
    found = plan(case_of(), text)
    assert told(found) == [f"rule {one}" for one in expected]
    assert found.unanswered == ()


def test_what_is_expected_is_the_sum_and_unknown_only_where_nobody_gives_a_size(case_of: Cases) -> None:
    found = plan(case_of(), "tight entry, loose exit")
    assert found.expected == {"entry": -0.9, "middle": 0, "exit": 0.9}
    case = case_of(reasons("tape: feels: loose exit, direction: raise"))
    assert plan(case, "loose exit").expected == dict.fromkeys(PHASES)
    both = plan(case, "loose exit, tight entry")
    assert told(both) == ["author tape 40 -> 45", "rule brake_bias 62 -> 60"]
    assert both.expected == {"entry": -0.9, "middle": 0, "exit": 0}


def test_each_change_says_how_sure_the_model_is_of_what_it_is_for(case_of: Cases) -> None:
    (one,) = plan(case_of(), "tight entry", shares={"cross_weight": 0.7}).changes
    assert (one.parameter, one.agreement) == ("cross_weight", 0.7)


@pytest.mark.parametrize(
    ("edit", "text", "expected"),
    [
        (("cross_weight: 52", "cross_weight: 46"), "tight exit", "compression.lr 4 -> 3"),
        (("cross_weight: 52", "cross_weight: 46"), "tight middle", "track_bar.left 9.5 -> 10.00"),
        (("cross_weight: 52", "cross_weight: 56"), "loose entry", "brake_bias 62 -> 64"),
        (("cross_weight: 52", "cross_weight: 51.9"), "loose entry", "brake_bias 62 -> 64"),
        (("cross_weight: 52", ""), "loose entry", "brake_bias 62 -> 64"),
    ],
)
def test_at_a_limit_off_the_grid_or_without_a_value_another_is_taken(
    case_of: Cases, edit: tuple[str, str], text: str, expected: str
) -> None:
    assert told(plan(case_of(edit=edit), text)) == [f"rule {expected}"]


def only(*names: str) -> dict[str, Sizes]:
    return {one: USUAL[one] for one in names}


def test_two_clicks_are_the_most_and_three_for_very(case_of: Cases) -> None:
    sizes = {"spring.rf": (0.1, 0.1, 0.1)}
    assert told(plan(case_of(), "tight exit", sizes)) == ["rule spring.rf 700 -> 650"]
    assert told(plan(case_of(), "very tight exit", sizes)) == ["rule spring.rf 700 -> 625"]
    near = case_of(edit=("rf: 700", "rf: 325"))
    assert told(plan(near, "very tight exit", sizes)) == ["rule spring.rf 325 -> 300"]


def test_a_gear_is_not_taken_to_the_limiter(case_of: Cases) -> None:
    stint = "stints: [ { setup: short, file: a.csv, top_speed: 170 mph } ]\n"  # 4.00: 8302 rpm of 8200
    sizes = only("final_drive")
    assert told(plan(case_of(), "tight exit", sizes)) == ["rule final_drive 3.90 -> 4.00"]
    held = plan(case_of(stint), "tight exit", sizes)
    assert (held.changes, len(held.unanswered)) == ((), 1)
    assert told(plan(case_of(stint), "loose exit", sizes)) == ["rule final_drive 3.90 -> 3.80"]
    own = plan(case_of(reasons("final_drive: feels: tight exit, to: [4.00]") + stint), "tight exit", sizes)
    assert own.changes == ()
    assert own.notes[0] == (
        "of your advice for tight on exit this reaches the rev limiter at the top speed that was driven: "
        "the final drive from 3.90:1 to 4.00:1"
    )


# What may never be offered.


def test_without_a_size_a_rule_is_not_enough(case_of: Cases) -> None:
    found = plan(case_of(), "tight exit", {})
    assert (found.changes, [one.why for one in found.unanswered]) == ((), ["unsized"])
    assert advise(case_of(), case_of().sheets[0], feels("tight exit")).changes == ()


@pytest.mark.parametrize("name", ["tape", "gadget", "left_weight", "spring.lf", "pressure.lf", "compression.lf"])
@pytest.mark.parametrize("text", ["tight entry", "loose middle", "very tight exit", "loose"])
def test_where_no_rule_has_a_letter_a_size_is_not_enough(case_of: Cases, name: str, text: str) -> None:
    case = case_of(edit=("tape: 40", "tape: 40\n      gadget: 5"))
    assert plan(case, text, {name: (1.0, 1.0, 1.0)}).changes == ()


def test_a_phase_that_the_garage_settles_is_neither_offered_nor_argued_about(case_of: Cases) -> None:
    sizes = only("cross_weight")
    settled = case_of(garage="handling: { weight.cross: { exit: none } }\n")
    assert plan(settled, "tight exit", sizes).changes == ()
    # In a settled phase the model's size does not count, and its opinion feeds nothing.
    found = plan(settled, "tight entry, loose exit", sizes)
    assert told(found) == ["rule cross_weight 52 -> 51.5"]
    assert found.expected == {"entry": -1, "middle": -1, "exit": 0}
    assert [str(one.complaint) for one in found.unanswered] == ["loose exit"]


@pytest.mark.parametrize(("share", "whys"), [(0.85, ["against", "unsized"]), (0.84, ["unsized"])])
def test_what_the_model_is_sure_feeds_a_complaint_is_not_offered(case_of: Cases, share: float, whys: list[str]) -> None:
    # The rule is silent about front weight on exit.
    found = plan(case_of(), "tight entry, loose exit", only("front_weight"), {"front_weight": share})
    assert [one.why for one in found.unanswered] == whys
    assert len(found.changes) == 2 - len(whys)


def test_a_size_against_the_rule_is_not_offered(case_of: Cases) -> None:
    found = plan(case_of(), "tight entry", {"brake_bias": (-0.4, 0, 0)}, {"brake_bias": 0.6})
    assert (found.changes, [one.why for one in found.unanswered]) == ((), ["doubted"])


# The author.


def test_the_author_stands_alone_where_that_is_enough(case_of: Cases) -> None:
    case = case_of(reasons("spring.rf: feels: tight entry, to: [675, 650]", "brake_bias: feels: tight entry, to: [60]"))
    found = plan(case, "tight entry")
    assert told(found) == ["author spring.rf 700 -> 675"]
    assert found.notes == (
        "if that is not enough, the next to try, as you advise: the brake bias from 62 to 60\u00a0%",
    )
    assert told(plan(case, "very tight entry")) == ["author spring.rf 700 -> 650"]
    both = plan(case, "tight entry, tight middle")
    assert told(both) == ["author spring.rf 700 -> 675"]
    assert both.unanswered == ()


def test_the_author_comes_first_and_the_rule_adds_what_is_missing(case_of: Cases) -> None:
    case = case_of(reasons("compression.lr: feels: loose exit, direction: raise"))
    assert told(plan(case, "tight entry, loose exit")) == ["author compression.lr 4 -> 5", "rule brake_bias 62 -> 60"]


def test_two_advices_for_two_feels_in_the_order_of_the_feels(case_of: Cases) -> None:
    case = case_of(
        reasons("compression.lr: feels: loose exit, direction: raise", "brake_bias: feels: tight entry, to: [61]")
    )
    assert told(plan(case, "tight entry, loose exit")) == ["author brake_bias 62 -> 61", "author compression.lr 4 -> 5"]


def test_one_advice_that_is_enough_for_all_stands_alone(case_of: Cases) -> None:
    case = case_of(reasons("brake_bias: feels: tight entry, to: [61]", "spring.rf: feels: tight middle, to: [675]"))
    assert told(plan(case, "tight entry, tight middle")) == ["author spring.rf 700 -> 675"]


def test_a_split_moves_by_the_advice_s_corner_else_the_right_one(case_of: Cases) -> None:
    right = case_of(reasons("spring.rear_split: feels: loose exit, to: [50]"))
    assert told(plan(right, "loose exit")) == ["author spring.rr 300 -> 275"]
    left = case_of(reasons("spring.rear_split: feels: loose exit, to: [50], corner: lr"))
    assert told(plan(left, "loose exit")) == ["author spring.lr 225 -> 250"]
    assert plan(left, "loose exit").changes[0].also.startswith("the rear spring split becomes 50")


def test_tyres_and_device_leave_out_advice_for_others(case_of: Cases) -> None:
    case = case_of(
        reasons("spring.rf: feels: tight entry, to: [675], tyres: worn", "brake_bias: feels: tight entry, to: [61]")
    )
    assert told(plan(case, "tight entry", tyres="worn")) == ["author spring.rf 700 -> 675"]
    assert told(plan(case, "tight entry", tyres="new")) == ["author brake_bias 62 -> 61"]
    # What nobody has said comes last.
    assert told(plan(case, "tight entry")) == ["author brake_bias 62 -> 61"]
    pad = case_of(reasons("spring.rf: feels: tight entry, to: [675], device: pad"))
    assert told(plan(pad, "tight entry", device="wheel")) == ["rule cross_weight 52 -> 51.5"]


@pytest.mark.parametrize(
    ("advice", "note"),
    [
        ("brake_bias: feels: tight entry, to: [62]", "the brake bias is at 62\u00a0% already"),
        ("brake_bias: feels: tight entry, to: [49]", "49\u00a0% is past the limit of the brake bias"),
        ("brake_bias: feels: tight entry, to: [60.5]", "60\u00a0% is no click of the brake bias"),
        ("brake_bias: feels: tight entry, direction: lower, to: [63]", "the brake bias is past 63\u00a0% already"),
        ("brake_bias: feels: tight entry, to: [63]",
         "going from 62\u00a0% to 63\u00a0%, the brake bias makes it worse by rule"),
    ],
)  # fmt: skip
def test_advice_that_cannot_be_followed_stands_in_the_notes(case_of: Cases, advice: str, note: str) -> None:
    found = plan(case_of(reasons(advice)), "tight entry")
    assert told(found) == ["rule cross_weight 52 -> 51.5"]
    assert found.notes == (f"of your advice for tight on entry this is left out: {note}",)


def test_advice_for_a_phase_that_the_garage_settles_stands_in_the_notes(case_of: Cases) -> None:
    case = case_of(
        reasons("track_bar.left: feels: tight exit, direction: raise"),
        garage="handling: { track_bar.left: { exit: none } }\n",
    )
    found = plan(case, "tight exit")
    assert told(found) == ["rule cross_weight 52 -> 51.5"]
    assert found.notes == (
        "of your advice for tight on exit this is left out: going from 9.50\u00a0in to 9.75\u00a0in, "
        "the track bar, left end does nothing there by the garage's handling block",
    )


def test_advice_at_the_end_of_its_setting_stands_in_the_notes(case_of: Cases) -> None:
    case = case_of(
        reasons("brake_bias: feels: tight entry, direction: lower"), edit=("brake_bias: 62", "brake_bias: 50")
    )
    assert plan(case, "tight entry").notes == (
        "of your advice for tight on entry this is left out: the brake bias has no click left",
    )


def test_advice_that_feeds_another_feel_stands_in_the_notes(case_of: Cases) -> None:
    case = case_of(
        reasons("spring.rf: feels: tight entry, to: [675]", "front_weight: feels: tight entry, direction: lower")
    )
    found = plan(case, "tight entry, loose exit")
    assert told(found) == ["rule brake_bias 62 -> 60", "rule compression.lr 4 -> 5"]
    assert found.notes == (
        "of your advice for tight on entry this would make loose on exit worse, by the tuning rules: "
        "the right front spring from 700 to 675\u00a0lb/in",
        "of your advice for tight on entry this would make loose on exit worse, in nearly all plausible cars: "
        "the front weight from 50.5 to 50.0\u00a0%",
    )


def test_the_author_s_word_stands_where_nobody_gives_a_size(case_of: Cases) -> None:
    case = case_of(
        reasons("gadget: feels: tight entry, direction: raise"), edit=("tape: 40", "tape: 40\n      gadget: 5")
    )
    found = plan(case, "tight entry")
    assert told(found) == ["author gadget 5 -> 6"]
    assert (found.unanswered, found.notes, found.changes[0].agreement) == ((), (), None)


def test_the_author_s_word_stands_where_the_model_sees_nothing(case_of: Cases) -> None:
    case = case_of(reasons("brake_bias: feels: tight exit, to: [61]"))
    found = plan(case, "tight exit")
    assert told(found) == ["author brake_bias 62 -> 61"]
    assert found.unanswered == ()
    assert found.notes == ("your advice for tight on exit stands; the chassis model sees no effect of it there",)


def test_where_the_model_doubts_the_author_another_setting_makes_up_for_it(case_of: Cases) -> None:
    case = case_of(reasons("tape: feels: tight entry, direction: raise"))
    doubted = {**only("brake_bias"), "tape": (0.25, 0.0, 0.0)}
    found = plan(case, "tight entry", doubted, {"tape": 0.6})
    assert told(found) == ["author tape 40 -> 45", "rule brake_bias 62 -> 60"]
    assert found.unanswered == ()
    alone = plan(case, "tight entry", {"tape": (0.25, 0.0, 0.0)}, {"tape": 0.6})
    assert told(alone) == ["author tape 40 -> 45"]
    assert [one.why for one in alone.unanswered] == ["doubted"]


# What stays unanswered.


@pytest.mark.parametrize(
    ("text", "unanswered", "note"),
    [
        ("tight entry, loose entry", ["tight entry", "loose entry"],
         "tight on entry and loose on entry pull against each other: what helps the one feeds the other"),
        ("tight middle, loose entry", ["tight middle"],
         "tight in the middle and loose on entry pull against each other: what helps the one feeds the other"),
        ("tight, loose entry, loose middle, loose exit", ["tight"],
         "tight and loose on entry, loose in the middle and loose on exit pull against each other: "
         "what helps the one feeds the other"),
    ],
)  # fmt: skip
def test_feels_that_pull_against_each_other(case_of: Cases, text: str, unanswered: list[str], note: str) -> None:
    found = plan(case_of(), text)
    assert [str(one.complaint) for one in found.unanswered] == unanswered
    assert note in found.notes


def test_without_plausible_cars_the_notes_say_so(case_of: Cases) -> None:
    case = case_of(reasons("brake_bias: feels: tight entry, to: [61]"))
    found = advise(case, case.sheets[0], feels("tight entry, tight exit"), Opinions(0))
    assert told(found) == ["author brake_bias 62 -> 61"]
    assert found.cars == 0
    assert found.notes == (
        "too few plausible cars have such a setup at this track, so the chassis model gives no sizes",
        "tight on exit: without sizes a rule alone is not enough; the guide lists what the rules name",
    )
    # Not asked is another matter.
    assert advise(case, case.sheets[0], feels("tight exit")).notes == (
        "tight on exit: nobody knows how much the settings do that the rules name; the guide lists them",
    )


@pytest.mark.parametrize(
    ("text", "advice", "note"),
    [
        ("tight", "brake_bias: feels: tight, to: [61]",
         "tight: what is changed helps on entry, but does nothing to speak of in the middle and on exit"),
        ("very loose", "compression.lr: feels: loose exit, direction: raise",
         "very loose: what is changed helps on exit, but does nothing to speak of on entry and in the middle"),
        ("tight, loose exit", "brake_bias: feels: tight, to: [61]",
         "tight: what is changed helps on entry, but does nothing to speak of in the middle"),
        # Nobody gives a size, and no rule speaks: the author's word is all there is.
        ("tight", "tape: feels: tight, to: [50]",
         "tight: what is changed has no size and no rule on entry, in the middle and on exit"),
    ],
)  # fmt: skip
def test_where_a_feel_without_its_place_is_helped(case_of: Cases, text: str, advice: str, note: str) -> None:
    found = plan(case_of(reasons(advice)), text)
    assert note in found.notes
    assert "very loose" not in [str(one.complaint) for one in found.unanswered]


@pytest.mark.parametrize(
    ("text", "advice"),
    [
        ("tight", "cross_weight: feels: tight, to: [51.5]"),
        ("tight", "pressure.rr: feels: tight, direction: raise"),  # no size, but a rule for every part
        ("tight entry", "brake_bias: feels: tight, to: [61]"),
        ("tight, loose middle, loose exit", "brake_bias: feels: tight, to: [61]"),
    ],
)
def test_a_feel_that_is_helped_wherever_it_is_meant_needs_no_note(case_of: Cases, text: str, advice: str) -> None:
    assert not [one for one in plan(case_of(reasons(advice)), text).notes if "what is changed" in one]


def test_nothing_left_inside_the_limits_is_said(case_of: Cases) -> None:
    found = plan(case_of(edit=("brake_bias: 62", "brake_bias: 50")), "tight entry, loose exit", only("brake_bias"))
    assert (
        "loose on exit: nobody knows how much the settings do that the rules name; the guide lists them" in found.notes
    )
    silent = case_of(edit=(VALUES, "      brake_bias: 50\n"))
    assert plan(silent, "tight entry").notes == (
        "tight on entry: nothing that helps has a click left inside the limits",
    )
    assert plan(silent, "tight exit").notes == ("tight on exit: no rule speaks of it",)


VALUES = """\
      front_weight: 50.5
      left_weight: 54
      cross_weight: 52
      spring: { lf: 725, rf: 700, lr: 225, rr: 300 }
      pressure: { lf: 24, rf: 43, lr: 25, rr: 41 }
      compression: { lf: 5, rf: 5, lr: 4, rr: 4 }
      track_bar: { left: 9.5, right: 9.5 }
      brake_bias: 62
      tape: 40
      final_drive: 3.90
"""


def test_shape_for_other_programs(case_of: Cases) -> None:
    shaped = json.loads(json.dumps(advice_json(plan(case_of(), "tight middle, loose entry"), "e", "short", "uk")))
    (change,) = shaped.pop("changes")
    assert change["parameter"] == "brake_bias"
    assert change["effects"] == {"entry": 0.9, "middle": 0.0, "exit": 0.0}
    assert change["answers"] == ["loose entry"]
    assert change["pays"] == {"entry": "rf", "middle": None, "exit": None}
    assert shaped == {
        "format": 1, "episode": "e", "setup": "short", "feels": ["tight middle", "loose entry"],
        "expected": {"entry": 0.9, "middle": 0.0, "exit": 0.0},
        "half_percent": {"entry": 1.0, "middle": 1.0, "exit": 1.0},
        "unanswered": ["tight middle"],
        "notes": ["tight in the middle and loose on entry pull against each other: what helps the one feeds the other"],
    }  # fmt: skip
