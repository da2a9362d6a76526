"""Figures whose owner their place tells: in the script's words, and in the turn of whoever talks freely."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pytest

from producer.model.dossier import Dossier
from producer.model.take import Take
from producer.take.take import hear
from tests.take.conftest import GARAGES, TRACKS, read
from tests.take.takes import script_texts

Heard = Callable[..., Take]
CODES = ("said-differs", "not-said")
TURNS = "The scales page. Front weight is at 50.5. {} Cross weight is at 52, and wedge is the big hammer."


def about(take: Take) -> list[tuple[str, str | None]]:
    return [(one.code, one.parameter) for one in take.findings if one.code in CODES]


def scales(sedan: Dossier, *changes: tuple[str, str]) -> str:
    text = script_texts(sedan)["short.scales"].replace("\u00a0", " ")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    return text


def test_a_slip_under_a_name_that_was_lost(told: Heard, sedan: Dossier) -> None:
    text = scales(sedan, ("Front weight", "Frond wait"), ("50.5", "49.5"))
    assert about(told(short__scales=text)) == [("said-differs", "front_weight")]


def test_a_lost_name_alone_is_no_slip(told: Heard, sedan: Dossier) -> None:
    assert about(told(short__scales=scales(sedan, ("Front weight", "Frond wait")))) == []


@pytest.mark.parametrize(
    "said",
    [
        "49.5, sorry, 50.5", "49.5, no, 50.5", "49.5, wait, 50.5", "49.5, I mean 50.5", "49.5, correction, 50.5",
        "49.5, no, scratch that, 50.5", "49.5 percent. Hang on, let me take that again. Front weight, 50.5",
        "forty nine and a half, no, fifty and a half",
    ],
)  # fmt: skip
def test_a_figure_put_right_at_once(told: Heard, sedan: Dossier, said: str) -> None:
    assert about(told(short__scales=scales(sedan, ("50.5", said)))) == []


def test_a_sentence_begun_again_moves_no_section(told: Heard, sedan: Dossier) -> None:
    whole = scales(sedan)
    first = " ".join(whole.split()[:9])
    once, again = told(), told(short__scales=f"{first} Sorry, let me do that again. {whole.partition('page. ')[2]}")
    starts = [[one.start_ms for one in take.sections if one.section == "short.scales"] for take in (once, again)]
    assert starts[0] == starts[1]
    assert about(again) == []


def test_a_figure_for_two_settings_at_once(shelf: Mapping[str, Dossier]) -> None:
    dossier = shelf["marrow-creek-club-coupe"]
    text = " ".join(script_texts(dossier).values())
    assert "both 17." in text
    take = hear([read("take.srt", text.replace("both 17.", "both 15."))], dossier, TRACKS, GARAGES)
    assert take is not None
    assert about(take) == [("said-differs", "pressure.lf"), ("said-differs", "pressure.lr")]


@pytest.mark.parametrize("said", ["The lost one is at 55.", "It's at 55.", "Lift wait 55.", "I run fifty five there."])
def test_what_is_told_in_its_turn(told: Heard, said: str) -> None:
    assert about(told(short__scales=TURNS.format(said))) == []


@pytest.mark.parametrize("said", ["And the left at 53.5.", "Left wait is at fifty three and a half."])
def test_a_slip_in_its_turn(told: Heard, said: str) -> None:
    assert [one[1] for one in about(told(short__scales=TURNS.format(said)))] == ["left_weight"]


@pytest.mark.parametrize("said", ["", "My neighbour is 53.", "I tried 53.5 there and it was worse."])
def test_what_is_not_told_in_its_turn(told: Heard, said: str) -> None:
    assert about(told(short__scales=TURNS.format(said))) == [("not-said", "left_weight")]
