"""A card's data file."""

from __future__ import annotations

import hashlib
import json
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest
import yaml
from ruamel.yaml import YAML

from producer.model.dossier import Dossier
from producer.outputs.carddata import card_data
from producer.outputs.cardyaml import card_yaml
from tests.outputs.dossiers import sample_dossier
from tests.render.test_literal import ATTACKS

COVERED = ("episode", "track", "garage", "setup", "tested_with", "conditions", "values", "splits")


def text_of(dossier: Dossier, setup: int = 0) -> str:
    sheet = dossier.sheets[setup]
    data = card_data(dossier.garage, dossier.track, dossier.episode, sheet, dossier.conditions)
    return card_yaml(dossier, sheet, data)


def read(text: str) -> dict[str, Any]:
    """Read by a YAML 1.1 and a YAML 1.2 reader that are not ours: both take it for the same."""
    old, new = yaml.safe_load(text), YAML(typ="safe", pure=True).load(text)
    assert old == new
    return dict(new)


def shortest(data: Any) -> Any:
    """44.0 as 44, as the file's own comment says."""
    if isinstance(data, dict):
        return {key: shortest(one) for key, one in data.items()}
    return int(data) if isinstance(data, float) and data == int(data) else data


def test_the_digest_can_be_computed_again_from_the_file(dossier: Dossier) -> None:
    found = read(text_of(dossier))
    covered = shortest({key: found[key] for key in COVERED})
    canonical = json.dumps(covered, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode("utf-8")
    assert hashlib.sha256(canonical).hexdigest() == found["digest"]
    assert f"SHA-256 of {', '.join(COVERED)} as JSON" in text_of(dossier)


def test_holds_every_value_exactly(dossier: Dossier) -> None:
    found = read(text_of(dossier))
    for address, value in dossier.first.values.items():
        assert Decimal(str(found["values"][address]["value"])) == value
    assert found["setup"] == {"id": "short", "name": "Short run", "purpose": "short run", "tested": True}
    assert found["gearing"]["step_up"] == {"final_drive": 4.0, "rpm": 6934}


def test_draft_and_revision(dossier: Dossier) -> None:
    draft, published = read(text_of(dossier)), read(text_of(sample_dossier(revision=2)))
    assert (draft["revision"], draft.get("date")) == ("draft", None)
    assert (published["revision"], published["date"]) == (2, "2026-11-20")
    assert draft["digest"] == published["digest"]


def test_without_gearing_there_is_no_key(dossier: Dossier) -> None:
    assert "gearing" not in read(text_of(replace(dossier, gearing={})))


@pytest.mark.parametrize(
    "attack", [*ATTACKS, "no", "null", "1e3", "a: b # c", "- x", "\x85\u2028\ufeff", "\x07", "é漢😀"]
)
def test_any_name_stays_text(dossier: Dossier, attack: str) -> None:
    from producer.model.dossier import ConditionLine

    named = dossier.first.setup.model_copy(update={"name": attack})
    odd = replace(
        dossier,
        sheets=(replace(dossier.first, setup=named), *dossier.others),
        conditions=(ConditionLine(attack, attack),),
    )
    found = read(text_of(odd))
    assert found["setup"]["name"] == attack
    assert found["conditions"] == {attack: attack}
