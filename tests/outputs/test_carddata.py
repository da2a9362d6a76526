"""A card as data and its digest."""

from __future__ import annotations

import hashlib
import json
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from producer.model.dossier import ConditionLine, Dossier
from producer.outputs.carddata import card_data, digest, episode_digest
from tests.outputs.dossiers import CONDITIONS, with_values


def data(dossier: Dossier, setup: int = 0) -> dict[str, Any]:
    return card_data(dossier.garage, dossier.track, dossier.episode, dossier.sheets[setup], dossier.conditions)


def test_holds_every_value_with_its_unit_and_what_follows_from_it(dossier: Dossier) -> None:
    found = data(dossier)
    assert list(found["values"]) == list(dossier.garage.settings)
    assert found["values"]["spring.rf"] == {"name": "Right front spring", "value": 700, "unit": "lb/in"}
    assert found["values"]["camber.rf"]["value"] == -3.5
    assert found["splits"]["spring.rear_split"]["value"] == 75
    assert found["conditions"] == {"Tyre use": "hard (me, field)", "Use speed": "double"}


def shortest(value: Decimal) -> int | float:
    return int(value) if value == int(value) else float(value)


def test_digest_is_that_of_the_canonical_json(dossier: Dossier) -> None:
    found = data(dossier)
    text = json.dumps(found, sort_keys=True, separators=(",", ":"), ensure_ascii=False, default=shortest)
    assert digest(found) == hashlib.sha256(text.encode("utf-8")).hexdigest()


def test_digest_does_not_depend_on_how_a_figure_is_written(dossier: Dossier) -> None:
    assert digest(data(with_values(dossier, "short", {"final_drive": "3.9"}))) == digest(
        data(with_values(dossier, "short", {"final_drive": "3.90"}))
    )


@pytest.mark.parametrize(
    "change",
    [
        pytest.param(lambda d: with_values(d, "short", {"tape": "50"}), id="a value"),
        pytest.param(lambda d: replace(d, conditions=(*CONDITIONS, ConditionLine("Air", "hot"))), id="a condition"),
        pytest.param(
            lambda d: replace(d, episode=d.episode.model_copy(update={"tested_with": "2.5"})), id="the version driven"
        ),
        pytest.param(lambda d: replace(d, track=d.track.model_copy(update={"name": "Other"})), id="the track's name"),
    ],
)
def test_digest_moves_with_what_the_card_says(dossier: Dossier, change: Any) -> None:
    assert digest(data(change(dossier))) != digest(data(dossier))


@pytest.mark.parametrize(
    "change",
    [
        pytest.param(lambda d: replace(d, credits=("@someone",)), id="who is thanked"),
        pytest.param(
            lambda d: replace(d, episode=d.episode.model_copy(update={"title": "Another"})), id="the episode's title"
        ),
        pytest.param(lambda d: replace(d, stamps={}), id="the revision"),
        pytest.param(lambda d: with_values(d, "long", {"tape": "50"}), id="the other setup"),
    ],
)
def test_digest_stays_with_everything_else(dossier: Dossier, change: Any) -> None:
    assert digest(data(change(dossier))) == digest(data(dossier))


def test_digest_of_an_episode_knows_the_order_of_its_cards(dossier: Dossier) -> None:
    first, second = data(dossier), data(dossier, 1)
    assert episode_digest([first, second]) != episode_digest([second, first])
    assert episode_digest([first]) != digest(first)
