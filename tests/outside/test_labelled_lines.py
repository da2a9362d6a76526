"""Prose and messages against labels written apart from the reader, by the rules of `tests/data/claims/LABELS.md`.

Two sets: `data/claims/`, labelled by somebody else, and `data/*-own.jsonl`, written by us in rounds, each before
the reader had seen it. What each round scored at first sight stands in `tests/data/README.md`; the floors here keep
what the grammar has learnt since.
"""

from __future__ import annotations

import json
from collections import Counter
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
import yaml

from producer.language.claims import claims
from producer.language.messages import MessageReader, message_reader
from producer.language.terms import Vocabulary
from producer.model.claim import Claim
from producer.model.garage import Garage
from producer.model.message import Message
from producer.model.track import Track

DATA = Path(__file__).parents[1] / "data"
GIVEN, OWN = "claims/{}.jsonl", "{}-own.jsonl"
Line = dict[str, Any]


def lines(name: str, kind: str) -> list[Line]:
    return [json.loads(one) for one in (DATA / name.format(kind)).read_text(encoding="utf-8").splitlines()]


@pytest.fixture(scope="module")
def garage() -> Garage:
    # BaseLoader: every scalar is text, as our own reader hands it on.
    text = (DATA / "claims" / "garage.yaml").read_text(encoding="utf-8")
    return Garage.model_validate(yaml.load(text, Loader=yaml.BaseLoader))  # noqa: S506


@pytest.fixture(scope="module")
def reader(garage: Garage) -> MessageReader:
    names = {"marrow-creek": "Marrow Creek", "copper-hollow": "Copper Hollow"}
    tracks = {one: Track.model_validate({"format": "1", "track": one, "name": name}) for one, name in names.items()}
    return message_reader({garage.garage: garage}, tracks)


def _figure(value: Decimal | float | None) -> Decimal | None:
    return None if value is None else Decimal(str(value)).normalize()


def _said(one: Claim) -> tuple[Any, ...]:
    ends = one.to if one.to is not None else one.value
    figures = (_figure(one.frm), _figure(ends), _figure(one.amount))
    return (one.parameter, one.direction, *figures, one.feel, tuple(sorted(one.where)), one.if_feels)


def _labelled(one: Line) -> tuple[Any, ...]:
    figures = (_figure(one.get("from")), _figure(one.get("to", one.get("value"))), _figure(one.get("amount")))
    where = tuple(sorted(one.get("where", ())))
    return (one["parameter"], one.get("direction"), *figures, one.get("feel"), where, one.get("if_feels"))


def _score(line: Line, vocabulary: Vocabulary) -> Counter[str]:
    """Found, wrong, missed: all but the exact span agrees, and the spans overlap."""
    open_labels = list(line["claims"])
    score: Counter[str] = Counter()
    for one in claims(line["text"], vocabulary):
        fits = (x for x in open_labels if _labelled(x) == _said(one) and x["start"] < one.end and one.start < x["end"])
        match = next(fits, None)
        score["wrong" if match is None else "found"] += 1
        if match is not None:
            open_labels.remove(match)
    score["missed"] = len(open_labels)
    return score


@pytest.mark.parametrize(("name", "precision", "recall"), [(GIVEN, 0.97, 0.95), (OWN, 0.98, 0.95)])
def test_claims(garage: Garage, name: str, precision: float, recall: float) -> None:
    vocabulary = Vocabulary(garage)
    total: Counter[str] = Counter()
    for line in lines(name, "claims"):
        total += _score(line, vocabulary)
    print(dict(total))
    assert total["found"] / (total["found"] + total["wrong"]) >= precision
    assert total["found"] / (total["found"] + total["missed"]) >= recall


@pytest.mark.parametrize("name", [GIVEN, OWN])
def test_claimless_lines_stay_silent(garage: Garage, name: str) -> None:
    vocabulary = Vocabulary(garage)
    silent = [line for line in lines(name, "claims") if not line["claims"]]
    speaking = [line["id"] for line in silent if claims(line["text"], vocabulary)]
    assert len(silent) >= 20
    assert len(speaking) <= len(silent) // 100, speaking


@pytest.mark.parametrize("name", [GIVEN, OWN])
def test_labels_point_at_their_words(name: str) -> None:
    for line in lines(name, "claims"):
        for one in line["claims"]:
            assert line["text"][one["start"] : one["end"]] == one["text"], line["id"]


def _whole(one: Message, wanted: Line) -> bool:
    feels = Counter((x["feel"], x["where"], x["how_much"]) for x in wanted["feels"])
    said = Counter((x.feel, x.where, x.how_much) for x in one.feels)
    return said == feels and one.asks == wanted["asks"] and one.device == wanted["device"]


def _details(one: Message, line: Line) -> dict[str, bool]:
    wanted = line["understood"]
    felt = [(x.tyres, x.pedal) for x in one.feels]
    return {
        "parameters": list(one.parameters_named) == wanted["parameters_named"],
        "track": one.track == line.get("track"),
        "tyres and pedal": felt == [(x["tyres"], x["pedal"]) for x in wanted["feels"]],
    }


@pytest.mark.parametrize(("name", "floor"), [(GIVEN, 0.95), (OWN, 0.95)])
def test_messages(reader: MessageReader, name: str, floor: float) -> None:
    every = lines(name, "messages")
    read = [(reader.read(line["text"]), line) for line in every]
    missed = [line["text"] for one, line in read if not _whole(one, line["understood"])]
    assert len(missed) <= (1 - floor) * len(every), missed
    details: Counter[str] = Counter()
    for one, line in read:
        details.update(what for what, good in _details(one, line).items() if good)
    assert all(count >= floor * len(every) for count in details.values()), details
