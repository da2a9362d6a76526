"""What other programs are handed: the program's own sentences the channel's way, the author's words as they stand."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from producer.handling.advice import advise
from producer.handling.advice_json import advice_json
from producer.handling.explaining import explain
from producer.handling.explaining_json import explanation_json
from producer.handling.guide import guide
from producer.handling.guide_json import guide_json
from producer.model.library import Case
from tests.handling.advising import feels, opinions

Cases = Callable[..., Case]
# The rule says `the right rear tyre works harder`; the author spells as people do.
SAID = """
    reasons:
      - for: spring.rr
        if: [ { feels: tight exit, to: [325], say: "Mind the tyre, and the tire." } ]
"""
WAYS = pytest.mark.parametrize(("spelling", "tyre"), [("us", "tire"), ("uk", "tyre")])


def texts(data: Any, key: str = "") -> list[str]:
    """Every text in the data but the author's own."""
    if isinstance(data, dict):
        return [text for name, one in data.items() for text in texts(one, name)]
    if isinstance(data, list):
        return [text for one in data for text in texts(one, key)]
    return [data] if isinstance(data, str) and key != "say" else []


def holds_to(data: dict[str, Any], tyre: str) -> bool:
    """Whether the word is in it, and never in the other spelling."""
    said = " ".join(texts(data)).lower()
    other = "tire" if tyre == "tyre" else "tyre"
    return tyre in said and other not in said


@WAYS
def test_the_guide(case_of: Cases, spelling: str, tyre: str) -> None:
    case = case_of(SAID)
    data = guide_json(guide(case, case.sheets[0]), spelling)
    assert holds_to(data, tyre)
    assert [one["say"] for row in data["rows"] for one in row["changes"] if one["say"]] == [
        "Mind the tyre, and the tire."
    ]


@WAYS
def test_advice(case_of: Cases, spelling: str, tyre: str) -> None:
    case = case_of(SAID)
    plan = advise(case, case.sheets[0], feels("tight exit"), opinions())
    assert [one.parameter for one in plan.changes] == ["spring.rr"]
    data = advice_json(plan, "e", "short", spelling)
    assert holds_to(data, tyre)
    assert data["changes"][0]["say"] == "Mind the tyre, and the tire."
    noted = advice_json(replace(plan, steps=(), notes=("worn tyres only",)), "e", "short", spelling)
    assert noted["notes"] == [f"worn {tyre}s only"]


@WAYS
@pytest.mark.parametrize("address", ["spring.rr", "pressure.rr"])
def test_an_explanation(case_of: Cases, address: str, spelling: str, tyre: str) -> None:
    case = case_of(SAID)
    told = explain(case, case.sheets[0], address)
    data = explanation_json(told, case.track, "e", case.sheets[0], spelling)
    assert holds_to(data, tyre)
