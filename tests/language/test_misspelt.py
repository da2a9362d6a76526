"""Hurried spelling made plain, and ordinary words left alone."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.language.misspelt import mended
from producer.language.tokens import words


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("loosse", "loose"),
        ("losse", "loose"),
        ("looooose", "loose"),
        ("midle", "middle"),
        ("understears", "understeers"),
        ("overstearing", "oversteering"),
        ("tyers", "tyres"),
        ("tiers", "tires"),
        ("throtle", "throttle"),
        ("contoller", "controller"),
        ("realy", "really"),
        ("wayyyy", "way"),
        ("soooo", "so"),
        ("gettin", "getting"),
        ("goin", "going"),
        ("thru", "through"),
        ("plz", "please"),
        ("wont", "won't"),
        ("dosent", "doesn't"),
        ("u", "you"),
        ("sugestions", "suggestions"),
    ],
)
def test_is_mended(written: str, meant: str) -> None:
    assert mended(words(written)).text == [meant]


@pytest.mark.parametrize(
    "word",
    [
        "lose",
        "tries",
        "tired",
        "think",
        "thinks",
        "weigh",
        "string",
        "charge",
        "chance",
        "title",
        "pleased",
        "breaking",
        "bushes",
        "titer",
        "lap",
        "marrow",
        "seven",
        "hollow",
        "spinner",
        "right",
        "night",
    ],
)
def test_is_left_alone(word: str) -> None:
    assert mended(words(word)).text == [word]


@pytest.mark.parametrize(("text", "at", "meant"), [("its lose off 4", 1, "loose"), ("i lose the rear", 1, "lose")])
def test_lose_is_loose_only_of_the_car(text: str, at: int, meant: str) -> None:
    assert mended(words(text)).text[at] == meant


@given(st.text(max_size=200))
def test_places_stay(text: str) -> None:
    before = words(text)
    after = mended(before)
    assert (after.start, after.end, len(after)) == (before.start, before.end, len(before))
