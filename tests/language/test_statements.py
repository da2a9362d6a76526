"""What single sentences state: a table of the trade's ways to say it, and what must stay silent."""

from __future__ import annotations

import pytest

from producer.language.reading import reader
from producer.language.statements import statements
from producer.language.terms import Vocabulary
from producer.model.claim import Claim
from producer.model.garage import Garage


def told(one: Claim) -> str:
    """`spring.rf raise from 700 to 725 by 25 =750 tighter entry if tight entry`."""
    figures = (("from", one.frm), ("to", one.to), ("by", one.amount), ("=", one.value))
    parts = [one.parameter, one.direction or ""]
    parts += [f"{name} {value.normalize():f}" for name, value in figures if value is not None]
    parts += [one.feel or "", *one.where, f"if {one.if_feels}" if one.if_feels else ""]
    return " ".join(part for part in parts if part)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("left front seven twenty five right front seven seventy five", ["spring.lf = 725", "spring.rf = 775"]),
        ("750 RF, 700 LF, 275 RR", ["spring.rf = 750", "spring.lf = 700", "spring.rr = 275"]),
        ("RF 750 / LF 700", ["spring.rf = 750", "spring.lf = 700"]),
        ("LF 24, RF 44 psi", ["tyre_pressure.lf = 24", "tyre_pressure.rf = 44"]),
        ("the rears are 225 left and 275 right", ["spring.lr = 225", "spring.rr = 275"]),
        ("25.5 in the left rear, 42 in the right rear", ["tyre_pressure.lr = 25.5", "tyre_pressure.rr = 42"]),
        (
            "the panhard's at nine and a quarter on the left and nine and three quarters on the right",
            ["track_bar.left = 9.25", "track_bar.right = 9.75"],
        ),
        (
            "RF shock: compression 6 rebound 5",
            ["shock_compression.rf = 6", "shock_rebound.rf = 5"],
        ),
        (
            "camber on the right front is minus three and a half and the left front is plus three",
            ["camber.rf = -3.5", "camber.lf = 3"],
        ),
        ("Set both rear springs to 250.", ["spring.lr to 250", "spring.rr to 250"]),
        ("stiffen both fronts by 50", ["spring.lf raise by 50", "spring.rf raise by 50"]),
        ("RR spring 300 -> 275, calmer off", ["spring.rr lower from 300 to 275 tighter exit"]),
        ("cross +0.5", ["cross_weight raise by 0.5"]),
        ("LR spring -25", ["spring.lr lower by 25"]),
        ("nose weight came up half a point to fifty and a half", ["front_weight raise to 50.5 by 0.5"]),
        ("the wedge went from fifty one to fifty two", ["cross_weight raise from 51 to 52"]),
        ("put a 750 in the right front", ["spring.rf = 750"]),
        ("put twenty five more pounds in the right front spring", ["spring.rf raise by 25"]),
        ("i let a pound and a half out of the right rear", ["tyre_pressure.rr lower by 1.5"]),
        ("half a pound of air out of the right rear", ["tyre_pressure.rr lower by 0.5"]),
        ("a click out of left rear rebound", ["shock_rebound.lr lower by 1"]),
        ("i moved the brake bias forward two points", ["brake_bias raise by 2"]),
        ("Move the brake bias back to 60.", ["brake_bias lower to 60"]),
        ("lower the track bar a half inch on the left", ["track_bar.left lower by 0.5"]),
        ("raise the left side of the track bar two clicks", ["track_bar.left raise by 0.5"]),
        ("compression up one on the right front", ["shock_compression.rf raise by 1"]),
        ("twenty five pounds more on the right front", ["spring.rf raise by 25"]),
        ("two pounds less in the right front", ["tyre_pressure.rf lower by 2"]),
        ("i've got four hundred, sorry, four fifty in the right rear", ["spring.rr = 450"]),
        ("the right front spring is 750 and not 725", ["spring.rf = 750"]),
        ("we're at a 4.00 gear instead of the 3.90", ["final_drive = 4"]),
        ("a four eleven gear", ["final_drive = 4.11"]),
        ("go up on the gear to a four hundred", ["final_drive raise to 4"]),
        ("front toe's at a sixteenth", ["front_toe = 0.0625"]),
        ("7/8 front bar", ["front_bar = 0.875"]),
        ("The rear split is fifty pounds this time.", ["spring.rear_split = 50"]),
        ("twenty five pounds of front split", ["spring.front_split = 25"]),
        ("the left front is fifty pounds stiffer than the right front", ["spring.front_split = -50"]),
        ("the right rear pressure is 16 pounds higher than the left rear", ["tyre_pressure.rear_split = 16"]),
        ("more rear split helps it rotate through the center", ["spring.rear_split raise looser middle"]),
        ("Widen the rear split to 100", ["spring.rear_split raise to 100"]),
        ("less compression on the right front helps it turn in", ["shock_compression.rf lower looser entry"]),
        ("a bigger front bar takes the wiggle out on exit", ["front_bar raise tighter exit"]),
        ("With 43 psi in the right front it won't push in the middle.", ["tyre_pressure.rf = 43 looser middle"]),
        ("with 325 in the right rear the car won't turn in the center", ["spring.rr = 325 tighter middle"]),
        ("adding a half percent of cross makes it push in the middle", ["cross_weight raise by 0.5 tighter middle"]),
        (
            "It pushes in the middle, so I took a half percent of wedge out.",
            ["cross_weight lower by 0.5 looser middle"],
        ),
        ("I raised the cross a percent because it was loose off.", ["cross_weight raise by 1 tighter exit"]),
        (
            "soften the right front a step if it won't turn in the center",
            ["spring.rf lower by 25 if tight middle"],
        ),
        ("should it push on exit, go to a 4.00 gear", ["final_drive to 4 if tight exit"]),
        (
            "when it's tight in the middle of the corner go up twenty five pounds on the right rear spring",
            ["spring.rr raise by 25 if tight middle"],
        ),
        (
            "if it's tight in the middle, lower the cross; if it's loose off, raise it",
            ["cross_weight lower if tight middle", "cross_weight raise if loose exit"],
        ),
        ("brake bias 62 -> 64 if loose under braking", ["brake_bias raise from 62 to 64 if loose entry"]),
        ("take five percent of tape off", ["tape lower by 5"]),
        ("the right front spring is 730", ["spring.rf = 730"]),
        # Two setups in one sentence.
        (
            "The final drive is 4.00 on the short run and 3.90 on the long one.",
            ["final_drive = 4", "final_drive = 3.9"],
        ),
        ("the wedge is 51 for the short run, 52 for the long run", ["cross_weight = 51", "cross_weight = 52"]),
        # One verb for two settings.
        ("I lowered the left rear by 25 and the right rear by 50.", ["spring.lr lower by 25", "spring.rr lower by 50"]),
        (
            "for rebound i added two clicks on the left rear and one on the right rear",
            ["shock_rebound.lr raise by 2", "shock_rebound.rr raise by 1"],
        ),
        (
            "i went up a click on the left front and down two on the right front on compression",
            ["shock_compression.lf raise by 1", "shock_compression.rf lower by 2"],
        ),
        (
            "rebound is seven on the right front and four across the back",
            [
                "shock_rebound.rf = 7",
                "shock_rebound.lr = 4",
                "shock_rebound.rr = 4",
            ],
        ),
        (
            "The brake bias is 62; raise it to 63 if the car is loose on entry.",
            [
                "brake_bias = 62",
                "brake_bias raise to 63 if loose entry",
            ],
        ),
        ("take split out of the rear springs", ["spring.rear_split lower"]),
        ("The rear springs are split by 75 pounds.", ["spring.rear_split = 75"]),
        ("rear split +25", ["spring.rear_split raise by 25"]),
        ("closing the front split up", ["spring.front_split lower"]),
        ("bring the brake bias back to sixty", ["brake_bias lower to 60"]),
        ("twenty five out of the right front", ["spring.rf lower by 25"]),
        ("seven and a half in the left front spring", ["spring.lf = 750"]),
        ("the bias is sixty one no sixty two", ["brake_bias = 62"]),
        ("put a click of rebound in the left rear", ["shock_rebound.lr raise by 1"]),
        ("with the brake bias up at 66", ["brake_bias = 66"]),
        ("a smaller front bar turns better in the center", ["front_bar lower looser middle"]),
        ("camber's three on the left and minus three on the right", ["camber.lf = 3", "camber.rf = -3"]),
        ("cross weight is at 60", ["cross_weight = 60"]),
    ],
)
def test_states(vocabulary: Vocabulary, text: str, said: list[str]) -> None:
    assert [told(one.claim) for one in statements(text, vocabulary)] == said


@pytest.mark.parametrize(
    "text",
    [
        "drop a comment below if you want the right front spring numbers",
        "the tires drop off about two tenths after lap twenty",
        "we lowered our lap time by three tenths with that",
        "the right rear tire goes up to two hundred and ten degrees",
        "the right front was at 205 degrees after the run",
        "the left front had worn 12 percent and the right front 26",
        "i was up two spots when the caution came out on lap 31",
        "my force feedback is at 45 and my wheel rotation is 360",
        "it's a 1.1 mile track with 15 degrees of banking in three and four",
        "let me show you the springs page",
        "the cross is what makes this car work",
        "so the car was tight and then it went loose and then i crashed",
        "that's the left rear shock, we don't touch it",
        "no change on the track bar",
        "the right rear tyre lost 24 percent, the left rear only 15",
        "i cut the tape of the broadcast into three pieces",
        "there's a toe page and a camber page and i mix them up",
        "the left rear comes up off the ground",
        "leave the front bar alone",
        "what do you run for nose weight",
        "500 people said it's too loose",
        "seven fifty is a nice number",
        "we ran 35 laps on the right front tire and it was done",
        "Don't go past 45 psi in the right front.",
        "I would not go below 700 on the right front spring.",
        "I did not raise the cross weight.",
        "so that is a fifty pound spring change on the left front",
        "the right front spring is 725 or 750",
        "the rear end is stepping out on entry",
        "he's loose off of two every single lap",
        "right front 5",
        "two clicks on the right front",
        "springs at 700",
        "the stiffer right front spring from the other car is 25 stiffer than the left rear spring",
    ],
)
def test_stays_silent(vocabulary: Vocabulary, text: str) -> None:
    assert [told(one.claim) for one in statements(text, vocabulary)] == []


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("A little softer than usual, so the nose takes a set sooner.", ["spring.rf lower"]),
        ("I went up two steps, and it calmed down.", ["spring.rf raise by 50 tighter"]),
        ("It is at 750 pounds now.", ["spring.rf = 750"]),
        ("Softer by a step.", ["spring.rf lower by 25"]),
        ("I raised it for this place.", ["spring.rf raise"]),
        ("The right front at 750 bites.", ["spring.rf = 750 looser"]),
        ("The spring is a 750.", ["spring.rf = 750"]),
        ("With the cross at 52 it waits.", ["cross_weight = 52"]),
        ("I tried 750 on lap 52.", []),
        ("It moves me up 2 spots, and 750 of you know it.", []),
        ("A softer tire, a higher line, lower lap times.", []),
        ("The left rear was lifting, so it went up a step.", []),
        ("Put 40 pounds of fuel in it.", []),
        ("I lowered my hopes by two clicks.", []),
        ("It puts 40 pounds more load on it.", []),
    ],
)
def test_whose_is_it(vocabulary: Vocabulary, text: str, said: list[str]) -> None:
    assert [told(one.claim) for one in statements(text, vocabulary, ("spring.rf",))] == said


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("The split is 75 pounds.", ["spring.rear_split = 75"]),
        ("The split is 75.", ["spring.rear_split = 75"]),
        ("More split helps.", ["spring.rear_split raise"]),
        ("The front split is 25.", ["spring.front_split = 25"]),
        ("It splits the field.", []),
    ],
)
def test_the_split_a_reason_is_for(vocabulary: Vocabulary, text: str, said: list[str]) -> None:
    assert [told(one.claim) for one in statements(text, vocabulary, ("spring.rear_split",))] == said


@pytest.mark.parametrize(
    ("text", "hedge"),
    [
        ("if you raise the cross to 53 it gets lazy", "if"),
        ("I would go to 53 on the cross", "would"),
        ("the cross was at 53 before", "past"),
        ("he runs the cross at 53", "someone"),
        ("the cross is a percent higher than the default", "than"),
        ("take a percent of cross out if you race alone", "if"),
        ("going from 50 to 52 on the cross is worth a tenth", "worth"),
        ("raising the cross calms the nose", "general"),
        ("less wedge would free the middle", "general"),
        ("the more wedge you have, so much the better", "general"),
    ],
)
def test_hedges(vocabulary: Vocabulary, text: str, hedge: str) -> None:
    (found,) = statements(text, vocabulary)
    assert hedge in found.hedges


def test_places_of_the_parts(vocabulary: Vocabulary) -> None:
    text = "Hello. Drop the right front from 750 down to seven twenty-five, please."
    (found,) = statements(text, vocabulary)
    assert {name: text[a:b] for name, (a, b) in found.spans.items()} == {"frm": "750", "to": "seven twenty-five"}
    assert found.moved is not None
    assert text[slice(*found.moved)] == "Drop"
    assert text[slice(*found.sentence)].startswith("Drop the right front")


def test_a_page_of_settings_has_no_figure_of_its_own(vocabulary: Vocabulary) -> None:
    found = statements("All of it is up a click.", vocabulary, ("shock_rebound.lf", "shock_rebound.rf"))
    assert [told(one.claim) for one in found] == ["shock_rebound.lf raise", "shock_rebound.rf raise"]


def test_a_garage_keeps_its_reader(garage: Garage) -> None:
    assert reader(garage) is reader(garage)
    copied = garage.model_copy(update={"name": "Another"})
    assert reader(copied) is not reader(garage)
    assert reader(copied).vocabulary.garage is copied
    assert garage.model_copy() == garage
