"""What a click does and what parts two setups, as pictures: what is chosen, what is said, and how it is drawn."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path

import pytest

from producer.basics.figures import NO_BREAK
from producer.model.dossier import Dossier
from producer.model.garage import Garage, Override
from producer.model.opinion import Opinion, Opinions, PhaseOpinion
from producer.outputs.balance_picture import DOUBT, MOST, between_picture, clicks_picture
from producer.outputs.picture import Picture
from producer.render.kit import Kit
from tests.outputs.thinking import CLICKS, HALF, opinion, opinions, phase, thinking
from tests.render.charts.laws import troubles

GOLDEN = Path(__file__).parent / "golden"


def clicks(dossier: Dossier, told: dict[str, Opinion] | None = None, **parts: object) -> Picture:
    found = clicks_picture(thinking(dossier, told or CLICKS, **parts), dossier.first)  # type: ignore[arg-type]
    assert found is not None
    return found


def between(dossier: Dossier, *halves: float, **parts: float) -> str:
    return title(dossier, opinion(*halves, **parts))


def title(dossier: Dossier, one: Opinion) -> str:
    found = between_picture(thinking(dossier, between=one), dossier.others[0], dossier.first)
    assert found is not None
    assert found.wide.alt == found.narrow.alt == f"{found.title}."
    return found.title


@pytest.mark.parametrize("name", ["clicks-wide.svg", "clicks-narrow.svg", "between-wide.svg", "between-narrow.svg"])
def test_charts_are_as_they_were_agreed(dossier: Dossier, kit: Kit, name: str) -> None:
    """`UPDATE_GOLDEN=1` writes them anew; look at them before they are committed."""
    whole = thinking(dossier, between=Opinion(phase(2.2), phase(-0.4, 0.6, 0.2), phase(4.2, 0.99, 0.4)))
    kind, _, shape = name.removesuffix(".svg").partition("-")
    found = clicks(dossier) if kind == "clicks" else between_picture(whole, whole.others[0], whole.first)
    assert found is not None
    made = kit.svg(found.wide if shape == "wide" else found.narrow)
    path = GOLDEN / name
    if os.environ.get("UPDATE_GOLDEN"):
        path.write_bytes(made.encode("utf-8"))
    assert made == path.read_text(encoding="utf-8")


def test_the_big_ones_come_first_and_the_title_names_them(dossier: Dossier) -> None:
    found = clicks(dossier)
    assert found.title == (
        "What one click up does at Marrow Creek: front weight, right rear spring and cross weight do most"
    )
    assert [row.split(" (")[0] for row in found.rows[:4]] == [
        "Front weight", "Right rear spring", "Cross weight", "Left rear compression",
    ]  # fmt: skip
    assert found.wide.alt.startswith(found.title)


def test_sizes_are_in_halves_of_a_percent_of_cross_weight(dossier: Dossier) -> None:
    rows = clicks(dossier).rows
    assert rows[0] == (
        f"Front weight (50.5 to 51.0{NO_BREAK}%): tighter on entry, about as much as three quarters of a percent of "
        "cross weight; tighter in the middle, about as much as one percent of cross weight; tighter on exit, about as "
        "much as half a percent of cross weight."
    )
    assert any("tighter in all three phases, about as much as half a percent of cross weight." in row for row in rows)


def test_the_same_in_words_is_words(dossier: Dossier) -> None:
    """The bars say `2.3×`, which beside `tighter` would read as 2.3 times as tight."""
    found = clicks(dossier)
    pair = between_picture(thinking(dossier), dossier.others[0], dossier.first)
    assert pair is not None
    assert not [row for row in (*found.rows, *pair.rows) if "×" in row]
    for drawing in (found.wide, found.narrow, pair.wide, pair.narrow):
        figures = [one.text for one in drawing.texts if "×" in one.text]
        assert figures
        assert not [one for one in figures if "tighter" in one or "looser" in one]


def test_the_measure_is_that_of_each_phase(dossier: Dossier) -> None:
    whole = thinking(dossier)
    doubled = {one: opinions(half=2.0) for one in whole.opinions}
    found = clicks_picture(replace(whole, opinions=doubled), whole.first)
    assert found is not None
    assert "tighter on entry and in the middle, about as much as half a percent of cross weight" in found.rows[0]


def test_doubt_is_said_in_row_note_and_chart(dossier: Dossier) -> None:
    found = clicks(dossier)
    row = next(one for one in found.rows if one.startswith("Left front spring"))
    tenth = "about as much as a tenth of a percent of cross weight"
    assert row.endswith(
        f"looser on entry, {tenth}, but it {DOUBT}; it {DOUBT} in the middle; tighter on exit, {tenth}, but it {DOUBT}."
    )
    assert "Hatched: it depends on the car." in found.notes
    assert [one.filled for one in found.narrow.boxes].count(False) == 2
    sure = clicks(dossier, {"cross_weight": opinion(1, 1, 1)})
    assert "Hatched" not in " ".join(sure.notes)
    # A bar too short to draw says its doubt in words; nothing is hatched then.
    bare = clicks(dossier, {"cross_weight": Opinion(phase(1), phase(0.02, 0.5, 0.2), phase(1))})
    assert "Hatched" not in " ".join(bare.notes)
    assert all(one.filled for one in sure.wide.boxes)


def test_whose_opinion_it_is_and_what_is_not_in_it(dossier: Dossier) -> None:
    notes = clicks(dossier).notes
    assert notes[0].startswith("The chassis model’s second opinion, the middle one of 1,000 plausible cars")
    assert "Smaller: final drive." in notes
    assert notes[-1] == "The model has no opinion on pressure, camber, grille tape and steering lock."


def test_no_more_than_a_dozen(dossier: Dossier) -> None:
    every = {address: opinion(1 + number / 10, 0, 0) for number, address in enumerate(dossier.garage.settings)}
    found = clicks(dossier, every)
    assert len(found.rows) == MOST < len(every)
    rest = next(one for one in found.notes if one.startswith("Smaller: "))
    assert rest.count(",") + rest.count(" and ") + 1 == len(every) - MOST
    assert troubles(found.wide) == troubles(found.narrow) == []


def test_what_the_garage_settles_is_not_argued_about(dossier: Dossier) -> None:
    garage = dossier.garage
    own = {"weight.cross": Override(entry="none"), "weight.front": Override(entry="looser")}
    settled = garage.model_copy(update={"handling": own})
    sheets = tuple(replace(one, garage=settled) for one in dossier.sheets)
    found = clicks(replace(dossier, garage=settled, sheets=sheets))
    row = next(one for one in found.rows if one.startswith("Cross weight"))
    assert "nothing on entry; tighter in the middle and on exit, about as much as half a percent" in row
    assert "The garage says that nothing happens: cross weight on entry." in found.notes
    assert "The usual rule says the opposite: front weight on entry." in found.notes


def settled_as_nothing(dossier: Dossier, role: str, *phases: str) -> Dossier:
    own = {role: Override.model_validate(dict.fromkeys(phases, "none"))}
    garage = dossier.garage.model_copy(update={"handling": own})
    sheets = tuple(replace(one, garage=garage) for one in dossier.sheets)
    return replace(dossier, garage=garage, sheets=sheets)


def test_what_the_garage_settles_everywhere_is_not_among_the_small_ones(dossier: Dossier) -> None:
    notes = clicks(settled_as_nothing(dossier, "track_bar.left", "entry", "middle", "exit")).notes
    assert "The garage says that nothing happens: left end of the track bar in all three phases." in notes
    assert "Smaller: final drive." in notes


def test_what_is_small_beside_a_settled_phase_is_small(dossier: Dossier) -> None:
    told = {**CLICKS, "track_bar.left": opinion(2, 0.01, 0.01)}
    notes = clicks(settled_as_nothing(dossier, "track_bar.left", "entry"), told).notes
    assert "The garage says that nothing happens: left end of the track bar on entry." in notes
    assert "Smaller: final drive and left end of the track bar." in notes


def test_names_with_commas_do_not_run_into_one_another(dossier: Dossier) -> None:
    found = clicks(dossier, {one: opinion(1, 1, 1) for one in ("cross_weight", "track_bar.left", "brake_bias")})
    assert "cross weight, left end of the track bar and brake bias do most" in found.title.replace(NO_BREAK, " ")
    fields = {name: getattr(dossier.garage, name) for name in Garage.model_fields}
    wedge = dossier.garage.parameters["cross_weight"].model_copy(update={"name": "Cross weight, wedge"})
    garage = Garage.model_construct(**{**fields, "parameters": {**fields["parameters"], "cross_weight": wedge}})
    found = clicks(replace(dossier, garage=garage), {one: opinion(1, 1, 1) for one in ("cross_weight", "brake_bias")})
    assert found.title.endswith("cross weight, wedge; brake bias do most")


def test_at_the_upper_limit_a_click_down_is_turned(dossier: Dossier) -> None:
    whole = thinking(dossier)
    limit = Opinions(1000, {"cross_weight": {-1: opinion(-1, -1, -1)}}, {}, {}, HALF)
    found = clicks_picture(replace(whole, opinions={whole.first.id: limit}), whole.first)
    assert found is not None
    assert found.rows == (
        "Cross weight (at its limit): tighter in all three phases, about as much as half a percent of cross weight.",
    )
    assert "Where a setting is at its limit, a click down is shown turned round." in found.notes


@pytest.mark.parametrize(
    ("halves", "said"),
    [
        (
            (2.2, 2.6, 4.2),
            "tighter than Short run in all three phases, most on exit: "
            "about as much as two percent of cross weight",
        ),
        (
            (1.0, 1.05, 1.1),
            "tighter than Short run in all three phases, about alike: about as much as half a percent of cross weight",
        ),
        (
            (-3.0, -1.0, -2.0),
            "looser than Short run in all three phases, most on entry: "
            "about as much as one and a half percent of cross weight",
        ),
        (
            (1.0, -3.0, -2.0),
            "tighter than Short run on entry and looser in the middle and on exit, most in the middle: "
            "about as much as one and a half percent of cross weight",
        ),
        ((0, 0, 1.5), "tighter than Short run on exit: about as much as three quarters of a percent of cross weight"),
        ((0, 0, 0), "balanced like Short run"),
        ((0.01, 0.02, -0.01), "balanced like Short run"),
    ],
)  # fmt: skip
def test_the_title_says_the_finding(dossier: Dossier, halves: tuple[float, float, float], said: str) -> None:
    assert between(dossier, *halves) == f"Long run is {said}"


def test_the_title_says_the_doubt(dossier: Dossier) -> None:
    part = Opinion(phase(2.0), phase(2.0, 0.99, 0.2), phase(-1.0, 0.6, 0.4))
    assert title(dossier, part) == (
        "Long run is tighter than Short run on entry and in the middle, about alike: "
        "about as much as one percent of cross weight; on exit it depends on the car"
    )
    assert (
        between(dossier, 1, 1, 1, agreement=0.6)
        == "Whether Long run is tighter or looser than Short run depends on the car"
    )


def test_both_cards_of_a_pair_say_the_same_size(dossier: Dossier) -> None:
    """What the later setup was asked is measured at its own values and may differ by a little."""
    whole = thinking(dossier)
    other = dossier.others[0].id
    whole = replace(whole, opinions={**whole.opinions, other: opinions(others={whole.first.id: opinion(-9, -9, -9)})})
    there, back = (
        between_picture(whole, *pair) for pair in ((whole.others[0], whole.first), (whole.first, whole.others[0]))
    )
    assert there is not None
    assert back is not None
    assert there.title.replace("Long run is tighter than Short run", "") == back.title.replace(
        "Short run is looser than Long run", ""
    )
    assert (there.rank, back.rank) == ("second", "first")


@pytest.mark.parametrize(
    "whole",
    [
        {},
        {"short": Opinions(0), "long": Opinions(3)},
        {"short": Opinions(9, {"cross_weight": {1: opinion(1, 1, 1)}}, {}, {}, {**HALF, "entry": 0.0})},
    ],
)
def test_without_an_opinion_there_is_no_picture(dossier: Dossier, whole: dict[str, Opinions]) -> None:
    silent = replace(dossier, opinions=whole)
    assert clicks_picture(silent, silent.first) is None
    assert between_picture(silent, silent.others[0], silent.first) is None


@pytest.mark.parametrize("size", [1e-12, 0.04, 1e3, 1e200])
def test_odd_sizes_are_told_and_drawn(dossier: Dossier, size: float) -> None:
    huge = Opinion(PhaseOpinion(1, 0, size), PhaseOpinion(0, 1, -size), PhaseOpinion(0.5, 0.5, size))
    found = clicks_picture(thinking(dossier, {"cross_weight": huge, "front_weight": opinion(1, 1, 1)}), dossier.first)
    pair = between_picture(thinking(dossier, between=huge), dossier.others[0], dossier.first)
    for one in (found, pair):
        assert one is not None
        assert troubles(one.wide) == troubles(one.narrow) == []


def test_everything_stays_apart(dossier: Dossier) -> None:
    found = clicks(dossier)
    pair = between_picture(thinking(dossier), dossier.others[0], dossier.first)
    assert pair is not None
    for drawing in (found.wide, found.narrow, pair.wide, pair.narrow):
        assert troubles(drawing) == []
