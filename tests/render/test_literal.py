"""Values as Typst literals: read back by Typst, they are the same values."""

from __future__ import annotations

import json
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.basics.finding import Severity
from producer.render.literal import typst_literal

ATTACKS = (
    "#let x = 1", "] [ #", '"quoted"', "back\\slash\\", "$ x $", "<script>alert(1)</script>", "`raw` *b* _i_",
    "#panic()", "{{ view }} {% x %}", "a & b < c", "Ünïcödé Ж Ω", "@ref <label>", "// comment /* x */",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Thing:
    """A view record."""

    name: str
    parts: tuple[int, ...]


@pytest.mark.parametrize(
    ("value", "literal"),
    [
        (None, "none"),
        (True, "true"),
        (False, "false"),
        (7, "7"),
        (-1.5, "-1.5"),
        (Decimal("3.90"), '"3.90"'),
        ("a", '"a"'),
        ('"\\', '"\\"\\\\"'),
        ("a\nb\tc", '"a\\nb\\tc"'),
        ("\u202eevil\x00", '"\\u{202e}evil\\u{0}"'),
        ((), "()"),
        (("a",), '("a", )'),
        ({}, "(:)"),
        ({"a b": 1}, '("a b": 1, )'),
        (Severity.NOTE, '"note"'),
        (Thing("x", (1, 2)), '("name": "x", "parts": (1, 2, ), )'),
    ],
)
def test_literal(value: object, literal: str) -> None:
    assert typst_literal(value) == literal


@pytest.mark.parametrize("value", [object(), {1, 2}, Thing, lambda: None])
def test_refuses_what_is_no_fact(value: object) -> None:
    with pytest.raises(TypeError, match="a template cannot show"):
        typst_literal(value)


def read_back(value: object) -> Any:
    import typst

    return json.loads(typst.eval(b"", typst_literal(value), format="json"))


@pytest.mark.parametrize("text", ATTACKS)
def test_attacks_stay_text(text: str) -> None:
    assert read_back({text: [text]}) == {text: [text]}


@given(st.text(st.characters(exclude_categories=("Cs",))))
def test_any_text_comes_back_as_it_was(text: str) -> None:
    assert read_back(text) == text
