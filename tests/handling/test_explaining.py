"""What raising one setting does, by each voice: from text, with opinions of the model written by hand."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from decimal import Decimal

import pytest

from producer.handling.answering import answer
from producer.handling.asking import ask
from producer.handling.explained import banking, by_author, by_left, by_model, by_rule, parting, statics
from producer.handling.explaining import Explanation, explain, flat_opinion, without_banking
from producer.handling.explaining_json import explanation_json
from producer.handling.opinions import opinions
from producer.model.library import Case
from producer.model.opinion import Opinion, Opinions, PhaseOpinion
from producer.model.track import Track
from producer.model.words import Phase

Cases = Callable[..., Case]
HALF: dict[Phase, float] = {"entry": 0.25, "middle": 0.25, "exit": 0.25}
TIGHTER = PhaseOpinion(0.97, 0.03, 0.5, "rf")
LOOSER = PhaseOpinion(0.0, 1.0, -0.5, "rr")
DOUBT = PhaseOpinion(0.6, 0.3, 0.1, "rf")
NOTHING = PhaseOpinion(0.0, 0.0, 0.0)
SMALL = PhaseOpinion(1.0, 0.0, 0.001, "rf")


def reasons(*lines: str) -> str:
    return "    reasons:\n" + "".join(f"      - {{ {one} }}\n" for one in lines)


def told(
    case: Case, address: str, clicks: Mapping[tuple[str, int], Opinion] | None = None, flat: Opinion | None = None
) -> Explanation:
    known: dict[str, dict[int, Opinion]] = {}
    for (setting, count), one in (clicks or {}).items():
        known.setdefault(setting, {})[count] = one
    return explain(case, case.sheets[0], address, Opinions(1000, known, half_percent=HALF), flat)


# --- the author ---


@pytest.mark.parametrize(
    ("address", "reason", "lines"),
    [
        (
            "spring.rr",
            "for: spring.rr, effect: { middle: looser, exit: looser }",
            ["looser in the middle and on exit (stated where it was raised from 275 to 300\u00a0lb/in)"],
        ),
        (
            "spring.rf",
            "for: spring.rf, effect: { entry: looser, exit: none }",
            [
                "tighter on entry, nothing on exit (stated where it was lowered from 750 to 700\u00a0lb/in, "
                "turned round)"
            ],
        ),
        (
            "spring.rf",
            "for: [spring.rf, spring.rr], effect: { middle: looser }",
            [
                "tighter in the middle (stated where it was lowered from 750 to 700\u00a0lb/in, "
                "together with the right rear spring, turned round)"
            ],
        ),
        (
            "spring.rear_split",
            "for: spring.rear_split, is: 75, effect: { middle: looser }",
            ["looser in the middle (stated where it was raised from 50 to 75\u00a0lb/in)"],
        ),
        (
            "cross_weight",
            "for: cross_weight, if: [{ feels: tight middle, to: [51.5, 51], tyres: worn, device: pad }]",
            ["if tight in the middle, on worn tyres, with a pad: 51.5, then 51.0\u00a0%"],
        ),
        (
            "spring.rear_split",
            "for: spring.rear_split, if: [{ feels: very tight, to: [100, 125], corner: lr }]",
            ["if very tight: the left rear spring 200, then 175\u00a0lb/in"],
        ),
        (
            "brake_bias",
            "for: brake_bias, if: [{ feels: loose entry, direction: raise }]",
            ["if loose on entry: 63\u00a0%"],
        ),
        # Nothing moved, nothing stated, or another setting.
        ("brake_bias", "for: brake_bias, effect: { entry: tighter }", []),
        ("spring.rr", "for: spring.rr, because: So it is.", []),
        ("spring.rr", "for: spring.rf, effect: { entry: looser }", []),
    ],
)
def test_the_author(case_of: Cases, address: str, reason: str, lines: list[str]) -> None:
    case = case_of(reasons(reason))
    found = by_author(case.sheets[0], told(case, address))
    assert list(found) == (lines or ["states no effect of moving it and gives no advice about it"])


def test_an_advice_at_the_limit_has_nothing_left(case_of: Cases) -> None:
    advice = reasons("for: brake_bias, if: [{ feels: loose entry, direction: raise }]")
    case = case_of(advice, edit=("brake_bias: 62", "brake_bias: 80"))
    assert by_author(case.sheets[0], told(case, "brake_bias")) == ("if loose on entry: nothing is left that way",)


# --- the rule ---


@pytest.mark.parametrize(
    ("address", "first"),
    [
        ("spring.rf", "tighter on entry, in the middle and on exit"),
        ("front_weight", "tighter on entry and in the middle"),
        ("final_drive", "looser on exit"),
        ("spring.rear_split", "looser on entry, in the middle and on exit"),
        ("tape", "no opinion"),
        ("left_weight", "no opinion"),
        ("gadget", "the tuning rules do not know it"),
    ],
)
def test_the_rule(case_of: Cases, address: str, first: str) -> None:
    case = case_of()
    found = by_rule(told(case, address))
    assert found[0] == first
    assert any(one.startswith("source: ") for one in found) == (first not in ("no opinion", found[-1]))


def test_the_garage_s_own_word_is_the_rule(case_of: Cases) -> None:
    own = "handling:\n  track_bar.left: { entry: none, middle: looser, exit: tighter, also: felt late }\n"
    found = by_rule(told(case_of(garage=own), "track_bar.left"))
    assert found[0] == "tighter on exit, looser in the middle, nothing on entry"
    assert found[1] == "felt late"
    assert found[2].startswith("source: the handling block of Test Car")


# --- the model ---


def test_the_model_says_how_many_cars_how_much_and_who_pays(case_of: Cases) -> None:
    clicks = {("spring.rr", 1): Opinion(LOOSER, DOUBT, TIGHTER)}
    assert by_model(told(case_of(), "spring.rr", clicks)) == (
        "on entry: looser in all plausible cars, about as much as one percent of cross weight; "
        "the right rear tyre pays",
        "in the middle: depends on the car: tighter in 60 of 100, looser in 30 of 100, nothing in 10 of 100",
        "on exit: tighter in 97 of 100 plausible cars, about as much as one percent of cross weight; "
        "the right front tyre pays",
    )


def test_phases_that_are_alike_are_told_together(case_of: Cases) -> None:
    clicks = {("brake_bias", 1): Opinion(SMALL, NOTHING, NOTHING)}
    assert by_model(told(case_of(), "brake_bias", clicks)) == (
        "on entry: tighter in all plausible cars, hardly enough to feel",
        "in the middle and on exit: nothing happens",
    )


def test_where_the_garage_settles_the_phase_the_model_does_not_count(case_of: Cases) -> None:
    case = case_of(garage="handling: { track_bar.left: { entry: none } }\n")
    explanation = told(case, "track_bar.left", {("track_bar.left", 1): Opinion(TIGHTER, LOOSER, LOOSER)})
    assert by_model(explanation)[0] == "on entry: the garage settles that nothing happens; the model does not count"
    assert parting(explanation) == ()


@pytest.mark.parametrize(
    ("address", "edit", "why"),
    [
        ("tape", ("", ""), "no opinion: it does not read this setting"),
        ("gadget", ("", ""), "no opinion: the setup has no value for it"),
        ("brake_bias", ("brake_bias: 62", "brake_bias: 62.5"), "no opinion: it has no click to move"),
    ],
)
def test_why_there_is_no_opinion(case_of: Cases, address: str, edit: tuple[str, str], why: str) -> None:
    assert by_model(told(case_of(edit=edit), address)) == (why,)


def test_without_plausible_cars_there_is_no_opinion(case_of: Cases) -> None:
    case = case_of()
    none = explain(case, case.sheets[0], "spring.rf", Opinions(0))
    assert by_model(none) == ("no opinion: too few plausible cars have such a setup at this track",)
    assert by_model(explain(case, case.sheets[0], "spring.rf")) == ("no opinion: it was not asked",)


def test_at_the_upper_limit_a_click_down_is_turned_round(case_of: Cases) -> None:
    case = case_of(edit=("brake_bias: 62", "brake_bias: 80"))
    explanation = told(case, "brake_bias", {("brake_bias", -1): Opinion(LOOSER, NOTHING, NOTHING)})
    click = explanation.click
    assert click is not None
    assert (click.start, click.to) == (Decimal(79), Decimal(80))
    assert explanation.opinion is not None
    assert explanation.opinion.entry.sure == "tighter"


def test_a_split_moves_by_its_right_corner_and_tells_of_the_left(case_of: Cases) -> None:
    clicks = {
        ("spring.rr", 1): Opinion(LOOSER, LOOSER, LOOSER),
        ("spring.lr", -1): Opinion(LOOSER, LOOSER, NOTHING),
        ("spring.lr", 1): Opinion(TIGHTER, TIGHTER, TIGHTER),
    }
    explanation = told(case_of(), "spring.rear_split", clicks)
    assert (explanation.value, explanation.setting.address) == (Decimal(75), "spring.rr")
    assert by_model(explanation)[0].startswith("on entry, in the middle and on exit: looser")
    assert by_left(explanation) == (
        "by lowering the left corner instead: on entry and in the middle looser, about as much as one percent of "
        "cross weight; on exit nothing"
    )
    assert by_left(told(case_of(), "spring.rr", clicks)) == ""


# --- where they part ---


@pytest.mark.parametrize(
    ("address", "reason", "model", "said"),
    [
        ("spring.rr", "", Opinion(LOOSER, LOOSER, LOOSER), []),
        (
            "spring.rr",
            "",
            Opinion(TIGHTER, TIGHTER, LOOSER),
            ["On entry and in the middle the rule says looser, the model tighter in nearly all plausible cars."],
        ),
        (
            "spring.rr",
            "",
            Opinion(DOUBT, LOOSER, NOTHING),
            [
                "On entry the rule says looser, by the model it depends on the car.",
                "On exit the rule says looser, the model nothing.",
            ],
        ),
        (
            "spring.rr",
            "for: spring.rr, effect: { exit: tighter }",
            Opinion(LOOSER, LOOSER, LOOSER),
            [
                "On exit the author says tighter, the rule looser.",
                "On exit the author says tighter, the model looser in nearly all plausible cars.",
            ],
        ),
        (
            "front_weight",
            "",
            Opinion(TIGHTER, TIGHTER, TIGHTER),
            [
                "On exit no rule speaks; the model has it tighter in nearly all plausible cars, which is told but "
                "never offered."
            ],
        ),
        # Nobody parts over what nobody feels, over doubt, or over what moved in company.
        ("front_weight", "", Opinion(TIGHTER, TIGHTER, SMALL), []),
        ("front_weight", "", Opinion(TIGHTER, TIGHTER, DOUBT), []),
        ("spring.rr", "for: [spring.rr, spring.rf], effect: { exit: tighter }", Opinion(LOOSER, LOOSER, LOOSER), []),
    ],
)
def test_where_the_voices_part(case_of: Cases, address: str, reason: str, model: Opinion, said: list[str]) -> None:
    case = case_of(reasons(reason) if reason else "")
    assert list(parting(told(case, address, {(address, 1): model}))) == said


# --- what the trade feels, and banking ---


@pytest.mark.parametrize(
    ("address", "model", "words"),
    [
        ("track_bar.left", Opinion(LOOSER, LOOSER, LOOSER), "each counts half, in every phase"),
        ("spring.lf", Opinion(LOOSER, LOOSER, DOUBT), "turns round with banking"),
        ("spring.rf", Opinion(TIGHTER, TIGHTER, TIGHTER), "moves all three the same way"),
        ("left_weight", Opinion(TIGHTER, DOUBT, LOOSER), "Braking and driving act on a weight left of the middle"),
        ("brake_bias", Opinion(TIGHTER, NOTHING, NOTHING), "while you brake and only then"),
        ("final_drive", Opinion(NOTHING, NOTHING, LOOSER), "how hard the rear tyres are driven"),
        ("compression.rf", Opinion(TIGHTER, NOTHING, NOTHING), "only while the car rolls and pitches"),
        ("spring.rf", Opinion(TIGHTER, TIGHTER, DOUBT), ""),
        ("spring.rf", None, ""),
    ],
)
def test_what_statics_cannot_know_is_said(case_of: Cases, address: str, model: Opinion | None, words: str) -> None:
    found = statics(told(case_of(), address, {(address, 1): model} if model else {}))
    assert words in found
    assert bool(words) == bool(found)


def third(one: PhaseOpinion) -> PhaseOpinion:
    return replace(one, size=one.size / 3)


HERE = Opinion(LOOSER, LOOSER, LOOSER)


@pytest.mark.parametrize(
    ("flat", "said"),
    [
        (
            Opinion(third(LOOSER), third(LOOSER), LOOSER),
            "a click is worth, against a flat track, about three times as much on entry and in the middle and about "
            "as much on exit.",
        ),
        (
            Opinion(LOOSER, TIGHTER, DOUBT),
            "a click is worth, against a flat track, about as much on entry; in the middle a click makes the car "
            "looser, where on a flat track it makes the car tighter; on exit a click makes the car looser, where on a "
            "flat track what it does depends on the car.",
        ),
    ],
)
def test_what_banking_does(case_of: Cases, flat: Opinion, said: str) -> None:
    case = case_of(banking=(19, 20))
    assert banking(case.track, told(case, "spring.rr", {("spring.rr", 1): HERE}, flat)) == (
        f"With 19 to 20 degrees of banking at Oval, {said}",
    )


@pytest.mark.parametrize(
    ("banked", "span"),
    [
        ((-5, 36), "\u22125 to 36"),
        ((-10,), "\u221210"),
        ((-10, 0.5, -3), "\u221210 to 0.5"),
        ((14.5, 2, 9), "2 to 14.5"),
        ((7, 7), "7"),
    ],
)
def test_how_banked_it_is(case_of: Cases, banked: tuple[float, ...], span: str) -> None:
    (found,) = banking(*where_banked(case_of(banking=banked)))
    assert found.startswith(f"With {span} degrees of banking at Oval, a click is worth")


def where_banked(case: Case) -> tuple[Track | None, Explanation]:
    return case.track, told(case, "spring.rr", {("spring.rr", 1): HERE}, HERE)


@pytest.mark.parametrize(
    ("banked", "flat", "said"),
    [
        ((0, 0.5), HERE, ("Oval is flat: there is no banking to speak of.",)),
        ((-0.5,), HERE, ("Oval is flat: there is no banking to speak of.",)),
        ((15,), None, ()),
        ((), HERE, ()),
    ],
)
def test_without_banking_or_without_asking(
    case_of: Cases, banked: tuple[float, ...], flat: Opinion | None, said: tuple[str, ...]
) -> None:
    case = case_of(banking=banked)
    assert banking(case.track, told(case, "spring.rr", {("spring.rr", 1): HERE}, flat)) == said


def test_the_same_click_is_asked_without_banking(case_of: Cases) -> None:
    """A right rear click on twenty degrees is worth two to four times what it is on a flat track."""
    case = case_of(banking=(20, 20))
    sheet = case.sheets[0]
    asked = ask(case, sheet)
    question = without_banking(asked, sheet, "spring.rear_split")
    assert question is not None
    assert {one.banking for one in question.bends} == {(0.0, 0.0)}
    assert [one.radius for one in question.bends] == [one.radius for one in asked.question.bends]
    flat = flat_opinion(asked, sheet, "spring.rear_split", answer(question).opinions)
    found = answer(asked.question)
    here = opinions(asked, found.cars, found.opinions).click("spring.rr", 1)
    assert flat is not None
    assert here is not None
    assert 2 < here.middle.size / flat.middle.size < 6
    # The flat track itself, asked whole, answers the same.
    level = case_of(banking=(0, 0))
    asked_there = ask(level, level.sheets[0])
    there = answer(asked_there.question)
    assert opinions(asked_there, there.cars, there.opinions).click("spring.rr", 1) == flat


def test_nobody_is_asked_of_what_the_model_does_not_read(case_of: Cases) -> None:
    case = case_of()
    asked = ask(case, case.sheets[0])
    assert without_banking(asked, case.sheets[0], "tape") is None
    open_track = case_of(banking=())
    assert without_banking(ask(open_track, open_track.sheets[0]), open_track.sheets[0], "spring.rr") is None
    assert flat_opinion(asked, case.sheets[0], "spring.rr", ()) is None


def test_at_the_limit_the_flat_answer_is_turned_too(case_of: Cases) -> None:
    case = case_of(edit=("brake_bias: 62", "brake_bias: 80"))
    asked, sheet = ask(case, case.sheets[0]), case.sheets[0]
    question = without_banking(asked, sheet, "brake_bias")
    assert question is not None
    (move,) = question.moves
    assert move["bias"] < 0
    flat = flat_opinion(asked, sheet, "brake_bias", (Opinion(LOOSER, NOTHING, NOTHING),))
    assert flat is not None
    assert flat.entry.sure == "tighter"


# --- as data ---


def test_the_data_keeps_the_voices_apart(case_of: Cases) -> None:
    case = case_of(reasons("for: spring.rr, effect: { exit: looser }, if: [{ feels: tight exit, to: [325] }]"))
    explanation = told(case, "spring.rr", {("spring.rr", 1): HERE}, HERE)
    data = explanation_json(explanation, case.track, "short-oval", case.sheets[0], "uk")
    assert (data["format"], data["parameter"], data["value"], data["unit"]) == (1, "spring.rr", 300, "lb/in")
    assert data["click"] == {"parameter": "spring.rr", "from": 300, "to": 325}
    assert data["author"]["effects"][0]["raising"] == {"entry": None, "middle": None, "exit": "looser"}
    assert data["author"]["advice"][0]["to"] == [325]
    assert {data["rule"][phase] for phase in HALF} == {"looser"}
    assert data["model"]["exit"] == {"tighter": 0.0, "looser": 1.0, "size": -0.5, "times": -2.0, "pays": "rr"}
    assert data["left"] is None
    assert len(data["banking"]) == 1
    silent = explanation_json(told(case, "gadget"), case.track, "short-oval", case.sheets[0], "uk")
    assert (silent["value"], silent["click"], silent["rule"], silent["model"], silent["flat"]) == (None,) * 5
