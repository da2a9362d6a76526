"""The program's own words in the author's spelling."""

from __future__ import annotations

import pytest

from producer.basics.spelling import spell


@pytest.mark.parametrize(
    ("text", "us", "uk"),
    [
        ("tyre", "tire", "tyre"),
        ("Tyres and the centre", "Tires and the center", "Tyres and the centre"),
        ("tire wear in color", "tire wear in color", "tyre wear in colour"),
        ("kilometres", "kilometres", "kilometres"),  # whole words only
        ("entire satire retired", "entire satire retired", "entire satire retired"),
        ("a metre, 2 litres, gray", "a meter, 2 liters, gray", "a metre, 2 litres, grey"),
        ("", "", ""),
    ],
)
def test_spelling(text: str, us: str, uk: str) -> None:
    assert spell(text, "us") == us
    assert spell(text, "uk") == uk


def test_there_and_back() -> None:
    text = "Tyre pressure at the centre, in colour: grey, 3 litres, 2 metres"
    assert spell(spell(text, "us"), "uk") == text
