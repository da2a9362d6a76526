"""What is told of a take: slips of every kind, and what must stay silent."""

from __future__ import annotations

from decimal import Decimal

import pytest

from producer.model.take import Take, TakeFinding
from tests.take.conftest import Heard

CODES = ("said-differs", "not-said")
SCALES = "The scales page. {} Left weight is at 55 percent. Cross weight: 52 percent."
UNDERCAR = (
    "On to the undercar page. Springs, left front 725, right front {rf}, left rear 225 and right rear 275. "
    "That makes the rear split {split} pounds per inch. Front bar, an inch and a half. Bar preload is at 1 click. "
    "Track bar, left end nine and a half, right end ten and a quarter. {more}"
)


def told_of(take: Take) -> list[tuple[str, str, str | None, object]]:
    return [_row(one) for one in take.findings if one.code in CODES]


def _row(one: TakeFinding) -> tuple[str, str, str | None, object]:
    said = str(one.said) if isinstance(one.said, Decimal) else one.said
    return one.code, one.about, one.parameter, said


def undercar(rf: str = "775", split: str = "50", more: str = "") -> str:
    return UNDERCAR.format(rf=rf, split=split, more=more)


def test_the_script_read_as_it_stands_says_nothing(told: Heard) -> None:
    take = told()
    assert take.findings == ()
    assert [one.placed_by for one in take.sections] == ["words"] * 14


@pytest.mark.parametrize(
    ("section", "text", "parameter", "said"),
    [
        ("short__scales", SCALES.format("Front weight, 50 percent."), "front_weight", "50"),
        ("short__scales", SCALES.format("Front weight. Fifty percent."), "front_weight", "50"),
        ("short__scales", SCALES.format("I run fifty one and a half on the front weight."), "front_weight", "51.5"),
        ("short__scales", SCALES.format("Nose weight is at 60."), "front_weight", "60"),
        ("short__undercar", undercar(rf="725"), "spring.rf", "725"),
        ("short__undercar", undercar(rf="seven fifty"), "spring.rf", "750"),
        ("short__undercar", undercar(split="75"), "spring.rear_split", "75"),
        ("long__drive", "On the drive page: grille tape, from 40 down to 30 percent. Final drive is three eighty five.",
         "final_drive", "3.85"),
        ("long__wheels", "Now the long run. On the wheels page: right rear pressure, from 40 down to 38 psi.",
         "pressure.rr", "38.0"),
    ],
)  # fmt: skip
def test_a_figure_that_is_not_the_sheet_s(told: Heard, section: str, text: str, parameter: str, said: str) -> None:
    assert [
        (about, where, Decimal(str(figure)))
        for code, about, where, figure in told_of(told(**{section: text}))
        if code == "said-differs"
    ] == [("parameter", parameter, Decimal(said))]


@pytest.mark.parametrize(
    "text",
    [
        undercar(rf="seven hundred, sorry, seven seventy five"),
        undercar(rf="700, I mean 775"),
        undercar(rf="seven seventy five"),
        undercar(more="Over a long run the right front spring could be softer."),
        undercar(more="I tried 800 on the right front spring and it was worse."),
        undercar(more="The default right front spring is 850, I run 775."),
        undercar(more="If it is loose going in, go to 800 on the right front spring."),
        undercar(more="Tight in the middle? Take the right front spring down to 750."),
        undercar(more="And for the long run, 750 on the right front spring."),
        undercar(more="Lap 52 was a 31.4, and we had 25 viewers."),
        undercar(more="The right front spring is at 725. The right front spring is at 775."),
        undercar(more="He runs 900 in the right front."),
        undercar(more="Between the rear springs there are 50 pounds."),
        undercar(more="I softened the right front, it was 850 before."),
    ],
)
def test_what_is_no_slip(told: Heard, text: str) -> None:
    assert told_of(told(short__undercar=text)) == []


@pytest.mark.parametrize(
    ("text", "parameter", "said"),
    [
        (undercar(more="If it is loose going in, go to 850 on the right front spring."), "spring.rf", "850"),
        (undercar(more="If it is loose going in: put a step back in the right front spring. That is 800, then 875."),
         "spring.rf", "875"),
        (undercar(more="If it is loose going in, lower the right front spring."), "spring.rf", "down"),
        (undercar(more="I run the right front spring stiffer than the default."), "spring.rf", "up"),
    ],
)  # fmt: skip
def test_advice_and_directions_against_what_is_written(told: Heard, text: str, parameter: str, said: str) -> None:
    found = told_of(told(short__undercar=text))
    assert [(one[0], one[2], str(one[3])) for one in found] == [("said-differs", parameter, said)]


@pytest.mark.parametrize(
    "more",
    [
        "If it is loose going in: put a step back in the right front spring. That is 800, then 825.",
        "If it is loose going in, raise the right front spring.",
        "I run the right front spring softer than the default.",
        "Raising the right front spring makes it push.",
        "If you want, you could go stiffer on the right front spring.",
    ],
)
def test_advice_and_directions_as_written(told: Heard, more: str) -> None:
    assert told_of(told(short__undercar=undercar(more=more))) == []


def test_an_advice_ends_where_the_next_setting_is_named(told: Heard) -> None:
    text = (
        "On to the undercar page. Springs, left front 725, right front 775, left rear 225 and right rear 275. "
        "That makes the rear split 50 pounds per inch. Front bar, an inch and a half. Bar preload is at 1 click. "
        "Track bar, left end. It's at nine and a half. If it is loose going in, try 9.25 on the left end of the track "
        "bar. Right end of tthe track bar. It's at nine and three quarters."
    )
    found = [row for row in told_of(told(short__undercar=text)) if row[2] == "track_bar.right"]
    assert found == [("said-differs", "parameter", "track_bar.right", "9.75")]


def test_a_movement_told_from_another_figure(told: Heard) -> None:
    text = "On the scales page: cross weight, from 51.5 up to 52.5 percent."
    assert told_of(told(long__scales=text)) == [("said-differs", "parameter", "cross_weight", "51.5")]


@pytest.mark.parametrize(
    ("driven", "expected"),
    [
        ("tire wear fast for me and for the field; fuel use double; weather mild", []),
        ("fast tire wear, double fuel use, and mild weather", []),
        ("tire wear normal; fuel use double; weather mild", [("said-differs", "condition", None, "normal")]),
        ("tire wear fast; fuel use double", [("not-said", "condition", None, None)]),
        ("tire wear normal, sorry, fast; fuel use double; weather mild", []),
    ],
)
def test_conditions(told: Heard, driven: str, expected: list[tuple[object, ...]]) -> None:
    text = f"Here is how I tested it: {driven}. That was on version 3.1 of the simulation."
    assert told_of(told(conditions=text)) == expected


def test_the_version(told: Heard) -> None:
    text = "I tested it with tire wear fast, fuel use double, weather mild, on version three point two."
    assert told_of(told(conditions=text)) == [("said-differs", "condition", None, "3.2")]


@pytest.mark.parametrize(
    ("opening", "expected"),
    [
        ("This is episode 7: Lantern Flats in the Grand Sedan.", ["Lantern Flats"]),
        ("Welcome to Marrow Creek in the Club Coupe.", ["Club Coupe"]),
        ("This is Marrow Creek in the Grand Sedan, and last week we were at Lantern Flats.", []),
        ("Marrow Creek in the Grand Sedan. If you want Gannet Bowl, it is on the channel.", []),
    ],
)
def test_the_names_of_track_and_class(told: Heard, opening: str, expected: list[str]) -> None:
    take = told(opening=f"Evening, all. Jo here, with the notebook open. {opening} There are two setups here.")
    assert [one.said for one in take.findings if one.about == "name"] == expected
    assert [one for one in told_of(take) if one[1] != "name"] == []


@pytest.mark.parametrize(
    ("closing", "missing"),
    [
        ("One last thing. Numbers for a simulation. Not advice for a real car. Good night.", False),
        ("These are for the simulation only, please, and not for any real car.", False),
        ("In a real car none of this holds, it is a simulation.", False),
        ("One last thing. Be kind to the right rear.", True),
        (
            "This is a simulation, and you all know that by now, so enough of that, good night to all of you, be real.",
            True,
        ),
    ],
)
def test_the_caution(told: Heard, closing: str, missing: bool) -> None:
    take = told(closing=f"Both cars are on the cards, with the same numbers you have just heard. {closing}")
    assert [one.about for one in take.findings if one.code in CODES] == (["caution"] if missing else [])


def test_a_page_that_was_left_out(told: Heard) -> None:
    take = told(short__shocks="")
    assert [one.section for one in take.sections if one.start_ms is None] == ["short.shocks"]
    assert {one.parameter for one in take.findings if one.about == "parameter"} == {
        f"{name}.{corner}" for name in ("compression", "rebound") for corner in ("lf", "rf", "lr", "rr")
    }
    assert all(one.code == "not-said" and one.at_ms is None and one.setup == "short" for one in take.findings)


def test_one_setting_that_was_left_out(told: Heard) -> None:
    text = "The scales page. Front weight, 50.5 percent. Cross weight: 52 percent. Wedge is the big hammer."
    assert told_of(told(short__scales=text)) == [("not-said", "parameter", "left_weight", None)]


def test_a_slip_has_its_time_and_a_sentence_to_say(told: Heard) -> None:
    take = told(short__scales=SCALES.format("Front weight, 50 percent."))
    (one,) = [x for x in take.findings if x.code == "said-differs"]
    scales = next(x for x in take.sections if x.section == "short.scales")
    assert scales.start_ms is not None
    assert one.at_ms is not None
    assert 0 < one.at_ms - scales.start_ms < 3000
    assert one.message == "Front weight (Short run): said 50, the sheet has 50.5\u00a0%"
    assert one.again == "Front weight, 50.5 percent."
    assert (one.setup, one.expected, one.place.file) == ("short", Decimal("50.5"), "take.srt")


def test_a_section_said_twice_counts_the_last_time(told: Heard, sedan: object) -> None:
    wrong = SCALES.format("Front weight, 50 percent. Nose weight is my entry knob.")
    right = SCALES.format("Front weight, 50.5 percent. Nose weight is my entry knob.")
    take = told(short__scales=f"{wrong} Let me do that again. {right}")
    assert told_of(take) == []


def test_order(told: Heard) -> None:
    names = ("opening", "conditions", "short.scales", "short.wheels", "short.undercar", "short.shocks", "short.drive")
    rest = ("long.wheels", "long.scales", "long.undercar", "long.shocks", "long.drive", "laps", "closing")
    take = told(order=(*names, *rest))
    assert [one.code for one in take.findings] == ["told-out-of-order"]
    assert all(one.start_ms is not None for one in take.sections)
    assert take.narration is not None
    assert [one.id for one in take.narration.sections] == [*names, *rest]


def test_pick_ups_strike_out_what_they_mend(told: Heard) -> None:
    wrong = {"short__scales": SCALES.format("Front weight, 50 percent."), "short__shocks": ""}
    first = told(**wrong)
    mended = told(
        "Front weight, 50.5 percent.",
        "The shocks page. Compression, left front 4, right front 4, left rear 5 and right rear 4. "
        "Rebound, left front 7, right front 5, left rear 4 and right rear 5.",
        **wrong,
    )
    assert len(told_of(first)) == 10
    assert told_of(mended) == []
    assert mended.pick_ups == ("take-2.srt", "take-3.srt")


def test_a_pick_up_with_a_slip_of_its_own(told: Heard) -> None:
    take = told("Front weight, 51.5 percent.", short__scales=SCALES.format("Front weight, 50 percent."))
    assert [(one.said, one.place.file) for one in take.findings] == [
        (Decimal("51.5"), "take-2.srt"), (Decimal(50), "take.srt"),
    ]  # fmt: skip


def test_a_cut_counts_alone(told: Heard, sedan: object) -> None:
    take = told(short__scales=SCALES.format("Front weight, 50 percent."), cut="Front weight, 50.5 percent. Good night.")
    assert (take.of, take.file) == ("cut", "cut.srt")


def test_captions_of_another_episode_get_one_clear_word(told: Heard, shelf: dict[str, object]) -> None:
    from producer.take.take import hear
    from tests.take.conftest import GARAGES, TRACKS, read
    from tests.take.takes import script_texts

    other = read("take.srt", *script_texts(shelf["gannet-bowl-grand-sedan"]).values())  # type: ignore[arg-type]
    take = hear([other], shelf["marrow-creek-grand-sedan"], TRACKS, GARAGES)  # type: ignore[arg-type]
    assert take is not None
    (one,) = take.findings
    assert (one.code, str(one.severity)) == ("other-episode", "error")
    assert one.message.startswith("these captions are not of 'marrow-creek-grand-sedan'")
    assert "they speak of Gannet Bowl" in one.message
    assert (take.sections, take.timeline) == ((), None)


def test_both_setups_told_at_once(told: Heard) -> None:
    """As from notes: each page once, the long run's figures where they differ."""
    take = told(
        order=("opening", "conditions", "short.wheels", "short.scales", "short.undercar", "closing"),
        short__wheels="The wheels page. Pressure, left front 20.5, right front 44, left rear 22 and right rear 40, and "
        "for the long run 39. Camber, left front four and a quarter, right front minus three and a half. "
        "Front toe, .10.",
        short__scales="The scales page. Front weight, 50.5. Left weight, 55. Cross weight, 52, and 52.5 "
        "for the long run.",
        short__undercar=undercar(more="For the long run the right front spring is 750 and the right rear spring 250."),
    )
    assert [one for one in told_of(take) if one[0] == "said-differs"] == []
    unsaid = {(one.parameter, one.setup) for one in take.findings if one.about == "parameter"}
    assert not {one for one in unsaid if one[0] in {"pressure.rr", "cross_weight", "spring.rf", "spring.rr"}}
    assert ("final_drive", "long") in unsaid
