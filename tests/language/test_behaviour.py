"""Who does what: the verbs of a class are read alike, and a remedy or a denial turns them."""

from __future__ import annotations

import pytest

from producer.language.behaviour import inflected
from producer.language.feels import effect
from producer.language.items import items
from producer.language.stretches import stretches
from producer.language.terms import Vocabulary
from producer.language.tokens import sentences


def heard(text: str, vocabulary: Vocabulary) -> str:
    (sentence,) = sentences(text)
    found = next((one for run, _ in stretches(items(sentence, vocabulary)) for one in [effect(run)] if one), None)
    return " ".join(("tighter" if found.polarity > 0 else "looser", *found.where)) if found else ""


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("it keeps the back end underneath you on exit", "tighter exit"),
        ("it holds the nose down through the center", "looser middle"),
        ("it settles the tail down going in", "tighter entry"),
        ("it helps the front bite in the middle", "looser middle"),
        ("it will not turn in the center", "tighter middle"),
        ("it stops the rear from sliding on exit", "tighter exit"),
        ("it stops the nose from sliding in the middle", "looser middle"),
        ("it doesn't drive up the track off the corner", "looser exit"),
        ("the back won't pass me on entry", "tighter entry"),
        ("it makes the front end skate in the middle", "tighter middle"),
        ("it just kept coming around on exit", "looser exit"),
        ("it won't be as stable going in", "looser entry"),
        ("it keeps it stable going in", "tighter entry"),
        ("it won't roll over and snap loose in the center", "tighter middle"),
        ("it keeps the car from turning in too quick and getting loose", "tighter entry"),
        ("it keeps me from lighting up the rear tires off the corner", "tighter exit"),
    ],
)
def test_effects(vocabulary: Vocabulary, text: str, said: str) -> None:
    assert heard(text, vocabulary) == said


@pytest.mark.parametrize(
    "text",
    [
        "the nose comes around on exit",
        "it did not cure the loose entry",
        "turn it down in the middle",
        "if you want it to turn in the middle",
        "a tighter radius on exit",
        "i was so nervous on entry",
        "tighten up the intro in the middle",
        "he put it back in line on exit",
        "the right rear spring slides in on the left",
    ],
)
def test_no_effects(vocabulary: Vocabulary, text: str) -> None:
    assert heard(text, vocabulary) == ""


def test_forms_of_verbs() -> None:
    assert inflected("slip slide") == {"slip", "slips", "slipping", "slipped", "slide", "slides", "sliding", "slid"}
    assert inflected("wash push") >= {"washes", "washing", "washed", "pushes", "pushing"}
    assert inflected("keep tie settle") >= {"kept", "tying", "tied", "settling", "settled"}
