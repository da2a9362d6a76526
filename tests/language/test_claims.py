"""Claims against the labelled sentences, and laws that hold for any text."""

from __future__ import annotations

import json
import time
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from producer.language.claims import claims
from producer.language.terms import Vocabulary
from producer.language.tokens import sentences
from producer.model.claim import Claim

LINES: list[dict[str, Any]] = [
    json.loads(line)
    for line in (Path(__file__).parents[1] / "data" / "claims" / "claims.jsonl").read_text("utf-8").splitlines()
]
Key = tuple[Any, ...]


def _number(value: Decimal | float | None) -> Decimal | None:
    return None if value is None else Decimal(str(value)).normalize()


def _said(one: Claim) -> Key:
    ends = _number(one.to if one.to is not None else one.value)
    numbers = (_number(one.frm), ends, _number(one.amount))
    return (one.parameter, one.direction, *numbers, one.feel, tuple(sorted(one.where)), one.if_feels)


def _labelled(one: dict[str, Any]) -> Key:
    ends = _number(one.get("to", one.get("value")))
    numbers = (_number(one.get("from")), ends, _number(one.get("amount")))
    where = tuple(sorted(one.get("where", ())))
    return (one["parameter"], one.get("direction"), *numbers, one.get("feel"), where, one.get("if_feels"))


def _score(line: dict[str, Any], vocabulary: Vocabulary) -> tuple[int, int, int]:
    """Found, wrong, missed: a claim is found where all but its exact span agrees and the spans overlap."""
    open_labels = list(line["claims"])
    found = wrong = 0
    for one in claims(line["text"], vocabulary):
        match = next(
            (
                label
                for label in open_labels
                if _labelled(label) == _said(one) and label["start"] < one.end and one.start < label["end"]
            ),
            None,
        )
        if match is None:
            wrong += 1
        else:
            open_labels.remove(match)
            found += 1
    return found, wrong, len(open_labels)


def test_precision_and_recall_do_not_fall(vocabulary: Vocabulary) -> None:
    scores = [_score(line, vocabulary) for line in LINES]
    found, wrong, missed = (sum(column) for column in zip(*scores, strict=True))
    assert found + missed > 70
    assert found / (found + wrong) >= 0.98
    assert found / (found + missed) >= 0.98


def test_claimless_lines_are_silent(vocabulary: Vocabulary) -> None:
    silent = [line for line in LINES if not line["claims"]]
    assert len(silent) >= 20
    speaking = [line["id"] for line in silent if claims(line["text"], vocabulary)]
    assert len(speaking) <= len(silent) // 100


@pytest.mark.benchmark
def test_speed(vocabulary: Vocabulary) -> None:
    texts = [line["text"] for line in LINES]
    count = sum(1 for text in texts for _ in sentences(text))
    begin = time.process_time()
    for _ in range(20):
        for text in texts:
            claims(text, vocabulary)
    print(f"{20 * count / (time.process_time() - begin):.0f} sentences/s")


@settings(deadline=None)
@given(st.text(max_size=300))
def test_any_text_is_read(vocabulary: Vocabulary, text: str) -> None:
    for one in claims(text, vocabulary, ("spring.rf",)):
        assert 0 <= one.start < one.end <= len(text)
        assert one.text == text[one.start : one.end]


_TRADE = """raise drop the right front left rear rf lr spring springs cross wedge by to from at 25 750 fifty one and a
half seven , . if it is tight loose going in off the gas not won't keeps more less stiffer than split percent clicks
which so take out put in back up down um lap 52 pounds sorry"""
_WORDS = st.sampled_from(_TRADE.split())


@settings(deadline=None)
@given(st.lists(_WORDS, max_size=60).map(" ".join))
def test_any_words_of_the_trade_are_read(vocabulary: Vocabulary, text: str) -> None:
    for one in claims(text, vocabulary):
        said = (one.frm, one.to, one.amount, one.value, one.direction, one.feel)
        assert any(x is not None for x in said)
        assert one.to is None or one.value is None
        assert one.amount is None or one.amount > 0
        assert one.parameter in vocabulary.grids


@settings(max_examples=8, deadline=None)
@given(st.lists(_WORDS, min_size=5, max_size=40).map(" ".join))
def test_noise_costs_one_pass(vocabulary: Vocabulary, piece: str) -> None:
    text = ((piece + " ") * (100_000 // len(piece) + 1))[:100_000]
    begin = time.process_time()
    claims(text, vocabulary, ("spring.rf",))
    assert time.process_time() - begin < 10
