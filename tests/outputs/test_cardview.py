"""What a card says, before it is set."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from producer.basics.units import Quantity
from producer.model.dossier import Dossier
from producer.model.gearing import Gearing
from producer.outputs.cardview import Block, Card, Cell, card
from tests.outputs.dossiers import sample_case, sample_dossier, with_values

NB = "\u00a0"
MINUS = "\u2212"


def short(dossier: Dossier) -> Card:
    return card(dossier, dossier.sheets[0])


def long(dossier: Dossier) -> Card:
    return card(dossier, dossier.sheets[1])


def blocks(view: Card) -> dict[str, Block]:
    return {block.name: block for page in view.pages for block in page.blocks}


def cells(view: Card) -> dict[str, Cell]:
    return {
        cell.address: cell for block in blocks(view).values() for row in block.rows for cell in row if cell is not None
    }


def test_pages_and_settings_stand_in_the_order_of_the_garage(dossier: Dossier) -> None:
    assert [page.name for page in short(dossier).pages] == ["Tires", "Ballast", "Suspension", "Dampers", "Driveline"]
    assert list(cells(short(dossier))) == list(dossier.garage.settings)


def test_page_names_follow_the_spelling(dossier: Dossier) -> None:
    british = replace(dossier, channel=dossier.channel.model_copy(update={"spelling": "uk"}))
    assert short(british).pages[0].name == "Tyres"
    assert short(british).conditions[0] == "Tyre use: hard (me, field)"
    assert short(dossier).conditions[0] == "Tire use: hard (me, field)"
    assert short(british).language == "en-GB"
    assert short(dossier).language == "en-US"


def test_corners_stand_as_on_the_car_seen_from_above(dossier: Dossier) -> None:
    spring = blocks(short(dossier))["Spring"]
    assert [[cell and cell.label for cell in row] for row in spring.rows] == [["LF", "RF"], ["LR", "RR"]]
    camber = blocks(short(dossier))["Camber"]
    assert [[cell and cell.full for cell in row] for row in camber.rows] == [["left front", "right front"]]
    bar = blocks(short(dossier))["Track bar"]
    assert [[cell and cell.label for cell in row] for row in bar.rows] == [["left", "right"]]


@pytest.mark.parametrize(
    ("address", "figure", "attached", "other"),
    [
        ("spring.rf", "700", "", f"122.6{NB}N/mm"),
        ("pressure.lr", "21.5", "", f"148.2{NB}kPa"),
        ("camber.rf", f"{MINUS}3.50", "", ""),
        ("track_bar.left", "9.25", "", f"235{NB}mm"),
        ("compression.lf", "5", "", ""),
        ("front_weight", "50.5", f"{NB}%", ""),
        ("final_drive", "3.90", ":1", ""),
        ("lock", "20", f"{NB}deg", ""),
    ],
)
def test_figures_with_the_decimals_of_their_step_and_both_systems(
    dossier: Dossier, address: str, figure: str, attached: str, other: str
) -> None:
    found = cells(short(dossier))[address]
    assert (found.figure, found.attached, found.other) == (figure, attached, other)


def test_differences_are_marked_at_the_figure_with_how_much(dossier: Dossier) -> None:
    marked = {address: cell.change for address, cell in cells(long(dossier)).items() if cell.change}
    assert marked == {
        "pressure.rr": f"{MINUS}1.0",
        "cross_weight": "+0.5",
        "spring.rf": "+25",
        "final_drive": f"{MINUS}0.10",
    }
    assert long(dossier).legend == f"differs from Short run; +{NB}means a larger number here"
    assert cells(short(dossier))["spring.rf"].change == f"{MINUS}25"
    assert (short(dossier).marks, short(dossier).rank, long(dossier).rank) == (True, "first", "second")


def test_a_setup_alone_marks_nothing(dossier: Dossier) -> None:
    alone = short(replace(dossier, sheets=dossier.sheets[:1]))
    assert (alone.legend, alone.marks) == ("", False)
    assert not any(cell.change for cell in cells(alone).values())


def test_two_equal_setups_say_so(dossier: Dossier) -> None:
    first = dossier.sheets[0]
    same = short(replace(dossier, sheets=(first, replace(first, setup=dossier.sheets[1].setup))))
    assert (same.legend, same.marks) == ("Every figure is the same as in Long run.", False)


def test_a_third_setup_is_compared_with_the_first(dossier: Dossier) -> None:
    third = replace(dossier.sheets[1], setup=dossier.sheets[1].setup.model_copy(update={"setup": "quali"}))
    three = replace(
        dossier, sheets=(*dossier.sheets, third), stamps={**dossier.stamps, "quali": dossier.stamps["long"]}
    )
    assert card(three, third).legend.startswith("differs from Short run")
    assert card(three, third).rank == "second"


def test_spring_splits_are_always_shown_and_others_where_a_reason_names_them(dossier: Dossier) -> None:
    assert blocks(short(dossier))["Spring"].splits == (
        f"Front{NB}split{NB}{MINUS}25{NB}lb/in",
        f"Rear{NB}split{NB}75{NB}lb/in",
    )
    assert blocks(short(dossier))["Pressure"].splits == ()
    reason = dossier.sheets[0].reasons[0]
    named = replace(dossier.sheets[0], reasons=(replace(reason, targets=("pressure.rear_split",)),))
    assert blocks(short(replace(dossier, sheets=(named,))))["Pressure"].splits == (f"Rear{NB}split{NB}17.5{NB}psi",)


def test_conditions_revision_and_version_are_always_there(dossier: Dossier) -> None:
    draft = short(dossier)
    assert draft.conditions == ("Tire use: hard (me, field)", "Use speed: double")
    assert draft.facts == ("draft", f"tested{NB}with{NB}version{NB}2.4")
    assert draft.origin == f"Second Groove Notebook, episode{NB}7"
    assert short(sample_dossier(revision=2)).facts[0] == f"revision{NB}2,{NB}2026-11-20"
    assert short(replace(dossier, conditions=())).conditions == ("Conditions: not written down",)


def test_untested_is_said_and_claims_no_test(dossier: Dossier) -> None:
    setup = dossier.first.setup.model_copy(update={"tested": False})
    view = short(replace(dossier, sheets=(replace(dossier.first, setup=setup), *dossier.others)))
    assert view.untested == "Untested: nobody has driven these numbers yet."
    assert view.facts[1] == f"limits{NB}of{NB}version{NB}2.4"
    assert short(dossier).untested == ""


def test_a_missing_value_is_not_set(dossier: Dossier) -> None:
    values = {address: value for address, value in dossier.first.values.items() if address != "spring.rf"}
    view = short(replace(dossier, sheets=(replace(dossier.first, values=values), *dossier.others)))
    found = cells(view)["spring.rf"]
    assert (found.figure, found.other, found.change) == ("not set", "", "")
    assert blocks(view)["Spring"].splits == (f"Rear{NB}split{NB}75{NB}lb/in",)


def gear(**changes: object) -> Gearing:
    whole = Gearing("final_drive", Decimal("3.90"), 476, "mph", Quantity(Decimal(142), "mph"), 6761, 8200, 1439)
    return replace(whole, **changes)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("gears", "sentences"),
    [
        (gear(), (f"Engine: 6761{NB}rpm at 142{NB}mph (229{NB}km/h), 1439 below the limiter.",)),
        (
            gear(per_unit="km/h", per_ten=296),
            (f"Engine: 6761{NB}rpm at 229{NB}km/h (142{NB}mph), 1439 below the limiter.",),
        ),
        (gear(margin=-40), (f"Engine: 6761{NB}rpm at 142{NB}mph (229{NB}km/h), 40 past the limiter.",)),
        (gear(margin=0), (f"Engine: 6761{NB}rpm at 142{NB}mph (229{NB}km/h), at the limiter.",)),
        (gear(margin=None), (f"Engine: 6761{NB}rpm at 142{NB}mph (229{NB}km/h).",)),
        (gear(rpm=None, top_speed=None), (f"Engine: 476{NB}rpm for every 10{NB}mph.",)),
    ],
)
def test_gearing(dossier: Dossier, gears: Gearing, sentences: tuple[str, ...]) -> None:
    assert short(replace(dossier, gearing={"short": gears})).gearing == sentences


def test_gearing_says_what_a_step_of_final_drive_does(dossier: Dossier) -> None:
    assert short(dossier).gearing == (
        f"Engine: 6761{NB}rpm at 142{NB}mph (229{NB}km/h), 1439 below the limiter.",
        f"Final drive a step down (3.80:1) gives 6587{NB}rpm; a step up (4.00:1) gives 6934{NB}rpm.",
    )
    assert short(replace(dossier, gearing={})).gearing == ()


def test_one_change_is_followed(dossier: Dossier) -> None:
    moved = with_values(dossier, "short", {"spring.rf": "650"})
    assert cells(short(moved))["spring.rf"].figure == "650"
    assert cells(long(moved))["spring.rf"].change == "+75"


def test_caution_is_the_channels() -> None:
    assert short(sample_dossier(sample_case())).caution == "Numbers for a simulation. Not advice for a real car."
