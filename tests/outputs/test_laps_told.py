"""What the test laps say, in writing: notes, outline and card tell what is carried, and nothing where nothing is."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from producer.model.channel import CardOptions
from producer.model.dossier import Dossier
from producer.model.stints import Comparison, Evidence, Interval, Total
from producer.outputs import notes, outline
from producer.outputs.card import texts_of
from producer.outputs.cardview import card
from producer.outputs.laps_told import laps_told
from producer.render.kit import Kit
from tests.outputs.driven import comparison, driven, evidence, stint

SHORT, LONG = stint("short", "Short run"), stint("long", "Long run", index=1)
SAID = "In total time the long run is ahead from about lap 19."


def with_laps(dossier: Dossier, **parts: Any) -> Dossier:
    return driven(dossier, evidence(SHORT, LONG, compared=comparison(**parts)))


def on_cards(dossier: Dossier, channel: bool | None, episode: bool | None) -> Dossier:
    """The dossier with the wish of the channel and of the episode for what stands on its cards."""
    return replace(
        dossier,
        channel=dossier.channel.model_copy(update={"card": CardOptions(test_laps=channel)}),
        episode=dossier.episode.model_copy(update={"card": CardOptions(test_laps=episode)}),
    )


def written(dossier: Dossier, kit: Kit) -> dict[str, str]:
    made = (*notes.documents(dossier, kit), *outline.documents(dossier, kit), *texts_of(dossier, kit, "long"))
    return {one.path: one.data.decode("utf-8") for one in made}


def test_the_notes_have_a_paragraph_of_their_own(dossier: Dossier, kit: Kit) -> None:
    text = written(with_laps(dossier), kit)["notes.txt"]
    assert f"\n\nTest laps: short run 20, long run 20\n{SAID} The color of the flag was green.\n\n" in text
    assert "\n\n\n" not in text


def test_the_outline_says_what_may_be_said_and_what_not(dossier: Dossier, kit: Kit) -> None:
    text = written(with_laps(dossier), kit)["outline.md"]
    block = text.partition("## What the test laps carry")[2].partition("## To record")[0]
    assert block == (
        "\n\nLaps driven: short run 20, long run 20.\n\nMay be said:\n\n- The long run saves its tires.\n\n"
        "Not to be said:\n\n- Nothing about more than 20 laps.\n\n"
    )


def test_two_stints_of_a_setup_are_counted_together(dossier: Dossier) -> None:
    again = stint("short", "Short run", number=2, index=2, last=12)
    found = evidence(SHORT, LONG, again, compared=comparison())
    lines = tuple(replace(one, stints=(0, 2)) if one.setup == "short" else one for one in found.lines)
    told = laps_told(driven(dossier, replace(found, lines=lines)))
    assert told is not None
    assert told.driven == "short run 32 in two stints, long run 20"


@pytest.mark.parametrize(
    "nothing",
    [
        Evidence("test", ()),
        evidence(replace(SHORT, may=()), replace(LONG, may=()), compared=comparison(enough=False, may=())),
        evidence(replace(SHORT, may=(), pace=None)),
        evidence(stint("other", "Another car")),
    ],
)
def test_where_nothing_is_carried_nothing_changes(dossier: Dossier, kit: Kit, nothing: Evidence) -> None:
    asked = on_cards(dossier, True, None)
    assert written(driven(asked, nothing), kit) == written(asked, kit)


def test_a_setup_by_itself_is_told_by_its_pace(dossier: Dossier) -> None:
    told = laps_told(driven(dossier, evidence(replace(SHORT, may=("It starts at 31.", "It scatters.")), LONG)))
    assert told is not None
    assert told.sentences == ("It starts at 31.", "The long run saves its tires.")
    assert told.may == ("It starts at 31.", "It scatters.", "The long run saves its tires.")


def test_what_was_driven_differently_is_told_as_such(dossier: Dossier, kit: Kit) -> None:
    words = "The short run and the long run were driven differently, so their laps say nothing about which is better."
    refused = with_laps(dossier, comparable=False, may=(), paragraph=words, why_not=("Tyre use: gentle, then hard.",))
    made = written(refused, kit)
    assert words in made["notes.txt"]
    assert "- Tire use: gentle, then hard." in made["outline.md"].partition("Not to be said")[2]
    assert "ahead from" not in made["notes.txt"]


@pytest.mark.parametrize(
    ("channel", "episode", "wanted"),
    [
        (None, None, False),
        (False, None, False),
        (None, False, False),
        (True, False, False),
        (True, None, True),
        (None, True, True),
        (False, True, True),
    ],
)
def test_on_the_card_where_the_author_wants_it(
    dossier: Dossier, kit: Kit, channel: bool | None, episode: bool | None, wanted: bool
) -> None:
    asked = on_cards(with_laps(dossier), channel, episode)
    plain, made = written(dossier, kit), written(asked, kit)
    for name in ("card-long.txt", "card-long.html", "card-long.yaml"):
        assert (SAID in made[name]) is wanted, name
        assert wanted or made[name] == plain[name]
    assert plain["card-long.yaml"].splitlines()[5] in made["card-long.yaml"]  # the digest


def test_a_card_names_the_laps_before_what_they_say(dossier: Dossier) -> None:
    shown = card(on_cards(with_laps(dossier), True, None), dossier.sheets[0])
    assert shown.laps[:2] == ("Test laps: short run 20, long run 20.", SAID)


def test_a_card_tells_its_own_setup_alone(dossier: Dossier) -> None:
    both = on_cards(driven(dossier, evidence(replace(SHORT, may=("It starts at 31.",)), LONG)), True, None)
    assert card(both, dossier.sheets[0]).laps == ("Test laps: short run 20.", "It starts at 31.")


@pytest.mark.parametrize("file", ["card-long.png", "card-long-wide.png", "card-long.pdf"])
def test_a_card_with_laps_can_be_drawn(dossier: Dossier, kit: Kit, file: str) -> None:
    from producer.outputs.card import of_setup

    asked = on_cards(with_laps(dossier), True, None)
    made = {one.path: one.data for one in of_setup(asked, kit, "long")}
    plain = {one.path: one.data for one in of_setup(dossier, kit, "long")}
    assert made[file] != plain[file]


SURE, LEVEL = Interval(-0.9, -0.1), Interval(-0.5, 0.5)


@pytest.mark.parametrize(
    ("totals", "told"),
    [
        ((), ()),
        ((Total(20, 0.0, LEVEL),), ()),
        ((Total(20, -0.5, SURE),), (20,)),
        ((Total(10, -0.4, SURE), Total(20, -0.5, SURE)), (20,)),
        ((Total(10, 0.5, Interval(0.1, 0.9)), Total(20, -0.5, SURE)), (10, 20)),
        ((Total(10, 0.5, Interval(0.1, 0.9)), Total(20, 0.0, LEVEL), Total(38, -0.5, SURE)), (10, 38)),
        ((Total(10, 0.5, Interval(0.1, 0.9)), Total(20, 0.0, LEVEL)), (10,)),
        ((Total(10, 0.5, None), Total(20, -0.5, SURE)), (20,)),
    ],
)
def test_which_totals_are_worth_a_sentence(totals: tuple[Total, ...], told: tuple[int, ...]) -> None:
    found: Callable[..., Comparison] = comparison
    assert tuple(one.laps for one in found(totals=totals).telling) == told
