"""The trade's fixed words."""

from __future__ import annotations

from decimal import Decimal

import pytest

from producer.model.words import Complaint, complaint, direction_of, sign, turned


@pytest.mark.parametrize(
    ("text", "expected", "again"),
    [
        ("loose entry", Complaint("loose", "entry"), "loose entry"),
        ("very tight exit", Complaint("tight", "exit", "very"), "very tight exit"),
        ("a little loose middle", Complaint("loose", "middle", "little"), "a little loose middle"),
        ("Slightly  LOOSE", Complaint("loose", None, "little"), "a little loose"),
        ("tight", Complaint("tight", None), "tight"),
    ],
)
def test_complaints(text: str, expected: Complaint, again: str) -> None:
    assert complaint(text) == expected
    assert str(expected) == again
    assert complaint(again) == expected


@pytest.mark.parametrize(
    "text", ["", "loos entry", "entry loose", "loose entry exit", "very", "very loose corner", "tight,entry", "x" * 999]
)
def test_what_is_no_complaint(text: str) -> None:
    with pytest.raises(ValueError, match="is not a feel like"):
        complaint(text)


@pytest.mark.parametrize(("number", "way", "expected"), [("2", "raise", 1), ("-0.5", "lower", -1), ("0.00", None, 0)])
def test_directions(number: str, way: str | None, expected: int) -> None:
    assert direction_of(Decimal(number)) == way
    assert sign(Decimal(number)) == expected


def test_the_opposite_movement_has_the_opposite_effect() -> None:
    assert turned("tighter", "raise") == turned("looser", "lower") == "tighter"
    assert turned("tighter", "lower") == "looser"
    assert turned("none", "lower") == "none"
