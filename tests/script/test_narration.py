"""The whole story: the order of sections, every value said, the rest told once."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from producer.model.dossier import ConditionLine
from tests.script.conftest import CHANNEL, Told

LONG = """
- setup: long
  name: Long run
  purpose: long run
  based_on: short
  changes: { cross_weight: 52.5, spring: { rf: 725 } }
  reasons:
    - for: cross_weight
      because: More wedge for worn tires.
"""
Tell = Callable[..., Told]


def test_the_order_is_opening_conditions_pages_of_the_garage_the_others_closing(tell: Tell) -> None:
    told = tell(more=LONG, top="tested_with: '1.0'")
    assert [one.id for one in told.narration.sections] == [
        "opening", "conditions", "short.scales", "short.under_floor", "short.shocks", "short.drive",
        "long.scales", "long.under_floor", "closing",
    ]  # fmt: skip
    assert told.section("short.under_floor").title == "Short run: under floor"


def test_every_value_of_the_first_setup_is_said_in_a_value_passage(tell: Tell) -> None:
    told = tell(more=LONG)
    first = told.case.sheets[0]
    said = {
        address: passage.text
        for section in told.narration.sections
        if section.setup == "short"
        for passage in section.passages
        if passage.kind == "value"
        for address in passage.settings
    }
    assert set(first.values) <= set(said)
    assert all(first.figure(address) in text for address, text in said.items())


def test_the_other_setup_is_told_where_it_differs_and_nowhere_else(tell: Tell) -> None:
    told = tell(more=LONG)
    settings = [
        address
        for section in told.narration.sections
        if section.setup == "long"
        for passage in section.passages
        for address in passage.settings
    ]
    assert settings == ["cross_weight", "spring.rf"]
    assert "two changes" in told.texts("long.scales")[0]
    assert told.texts("long.scales", "value") == ["Cross weight, from 52.0 up to 52.5\u00a0percent."]
    assert told.texts("long.scales", "reason") == ["More wedge for worn tires."]


def test_a_qualifying_setup_is_called_one(tell: Tell) -> None:
    more = "- { setup: one, name: Qualifying, purpose: qualifying, based_on: short, changes: { cross_weight: 53 } }"
    whole = tell(more=more).whole
    assert "There are two setups here: the short run and the qualifying setup." in whole
    assert "Now the qualifying setup. It is the short run with a single change" in whole


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ("{ cross_weight: 52 }", "It has the same numbers as the short run."),
        ("{ cross_weight: 53 }", "with a single change"),
    ],
)
def test_no_change_and_one_change_are_said_as_such(tell: Tell, changes: str, says: str) -> None:
    told = tell(more=f"- {{ setup: long, name: Long run, purpose: long run, based_on: short, changes: {changes} }}")
    assert says in told.whole


def test_a_setup_with_the_same_numbers_has_one_section_of_its_own(tell: Tell) -> None:
    told = tell(more="- { setup: long, name: Long run, based_on: short, changes: { cross_weight: 52 } }")
    assert [one.id for one in told.narration.sections if one.setup == "long"] == ["long"]


def test_a_missing_value_is_passed_over(tell: Tell) -> None:
    told = tell(values=" { cross_weight: 52, spring: { rf: 700 } }\n")
    assert [one.id for one in told.narration.sections] == ["opening", "short.scales", "short.under_floor", "closing"]
    assert told.texts("short.under_floor", "value") == ["Right front spring, 700\u00a0pounds per inch."]


def test_no_setup_is_a_mistake_of_ours(tell: Tell) -> None:
    from producer.script.narration import narrate

    told = tell()
    track, garage = told.case.track, told.case.garage
    assert track is not None
    assert garage is not None
    with pytest.raises(ValueError, match="no setup"):
        narrate(told.channel, track, garage, told.case.episode, (), {}, {}, ())


def test_an_untested_setup_says_so_and_a_tested_one_does_not(tell: Tell) -> None:
    warning = "I have not driven this one yet"
    assert warning in tell(first="name: Short run\ntested: false").whole
    assert warning not in tell().whole


@pytest.mark.parametrize(
    ("top", "says"),
    [
        ("number: 7", "This is episode 7: Test Oval in the Test Car."),
        ("", "This one is Test Oval in the Test Car."),
        ("talking_points: { opening: You *asked* for it. }", "You asked for it."),
        ("talking_points: { closing: Now go and drive. }", "Now go and drive."),
        ("approach: |\n  Brake early.\n\n  Wait.", "Brake early.\nWait."),
        ("", "One last thing, as always. Numbers for a simulation. Not advice for a real car."),
    ],
)
def test_what_is_said_around_the_garage(tell: Tell, top: str, says: str) -> None:
    assert says in tell(top=top).whole


def test_it_begins_with_the_greeting_and_ends_with_the_sign_off(tell: Tell) -> None:
    passages = tell().passages()
    assert passages[0].text == "Hello again."
    assert passages[-1].text == "Keep it off the wall."
    assert passages[-2].kind == "caution"


@pytest.mark.parametrize(
    ("closing", "ours"),
    [
        ("Start with the short run.", True),
        ("Change one thing at a time.", False),
        ("And a *single* change at a time, please.", False),
        ("One lap at a time.", True),
    ],
)
def test_one_change_at_a_time_is_said_once(tell: Tell, closing: str, ours: bool) -> None:
    told = tell(top=f"talking_points: {{ closing: '{closing}' }}")
    assert ("write down what it did" in told.whole) is ours


@pytest.mark.parametrize(
    ("handles", "says"),
    [
        (("@bea",), "Thank you to @bea for asking."),
        (("@bea", "@hal"), "Thank you to @bea and @hal for asking."),
        (("@bea", "@hal", "@ty"), "Thank you to @bea, @hal and @ty for asking."),
    ],
)
def test_those_who_asked_are_thanked(tell: Tell, handles: tuple[str, ...], says: str) -> None:
    assert says in tell(handles=handles).whole


def test_nobody_is_thanked_where_nobody_consented(tell: Tell) -> None:
    assert "Thank you" not in tell().whole


@pytest.mark.parametrize(
    ("conditions", "says"),
    [
        ("{ tyre_use: { me: hard, field: hard } }", "tire use hard for me and for the field."),
        ("{ tyre_use: { me: hard, field: gentle } }", "tire use hard for me, gentle for the field."),
        ("{ tyre_use: hard, speed: double }", "tire use hard; speed double."),
    ],
)
def test_conditions_are_said_as_they_were_set(tell: Tell, conditions: str, says: str) -> None:
    lines = (ConditionLine("Tyre use", "x"), ConditionLine("Speed", "double"))
    told = tell(top=f"conditions: {conditions}", conditions=lines[: 1 + ("speed" in conditions)])
    assert told.texts("conditions", "conditions")[0].endswith(says)


def test_the_version_is_said_with_the_conditions_or_alone(tell: Tell) -> None:
    line = (ConditionLine("Speed", "double"),)
    both = tell(top="tested_with: '2.4'\nconditions: { speed: double }", conditions=line)
    assert both.texts("conditions")[0].endswith("speed double. That was on version 2.4 of the simulation.")
    assert tell(top="tested_with: '2.4'").texts("conditions") == ["That was on version 2.4 of the simulation."]


def test_ours_is_spelled_the_channels_way_and_the_authors_is_left_alone(tell: Tell) -> None:
    reasons = (
        "- { for: cross_weight, because: The tyres and the tires., if: { feels: loose exit, tyres: worn, say: Wait. } }"
    )
    reasons = reasons.replace("if: {", "if: [{").replace("Wait. } }", "Wait. }] }")
    british = tell(reasons, channel=CHANNEL + "spelling: uk\n").whole
    american = tell(reasons).whole
    assert "worn tyres" in british
    assert "worn tires" in american
    assert all("The tyres and the tires." in one for one in (british, american))


def test_the_same_library_gives_the_same_words(tell: Tell) -> None:
    assert tell(more=LONG).narration == tell(more=LONG).narration
