"""Where a text names settings."""

from __future__ import annotations

import pytest

from producer.language.mentions import mentions
from producer.language.terms import Vocabulary
from producer.model.garage import Garage


@pytest.mark.parametrize(
    ("text", "addresses"),
    [
        ("the right front spring", ["spring.rf"]),
        ("right-front spring", ["spring.rf"]),
        ("the spring on the right front", ["spring.rf"]),
        ("RF spring", ["spring.rf"]),
        ("both front springs", ["spring.lf", "spring.rf"]),
        ("the front springs", ["spring.lf", "spring.rf"]),
        ("the springs out back", ["spring.lr", "spring.rr"]),
        ("left front and right rear springs", ["spring.lf", "spring.rr"]),
        ("right side pressures", ["tyre_pressure.rf", "tyre_pressure.rr"]),
        ("the rear spring split", []),
        ("left end of the track bar", ["track_bar.left"]),
        ("the track bar on the right", ["track_bar.right"]),
        ("panhard bar", []),
        ("wedge", ["cross_weight"]),
        ("cross", ["cross_weight"]),
        ("cross-weight", ["cross_weight"]),
        ("nose weight", ["front_weight"]),
        ("left rear rebound", ["shock_rebound.lr"]),
        ("compression on RF", ["shock_compression.rf"]),
        ("bump on the right front", ["shock_compression.rf"]),
        ("the tire pressure in the left rear", ["tyre_pressure.lr"]),
        ("the tyre pressure in the left rear", ["tyre_pressure.lr"]),
        ("front sway bar", ["front_bar"]),
        ("a 3.80 rear end", ["final_drive"]),
    ],
)
def test_what_a_cluster_names(vocabulary: Vocabulary, text: str, addresses: list[str]) -> None:
    (found,) = mentions(text, vocabulary)
    assert list(found.addresses) == addresses


@pytest.mark.parametrize(
    "text",
    [
        "the right front tire",
        "right front tyre temps",
        "all right so",
        "right now",
        "the rear end steps out",
        "we cross the line",
        "bump it up",
        "third gear",
        "split this one",
        "no pressure",
    ],
)
def test_no_setting_is_named(vocabulary: Vocabulary, text: str) -> None:
    assert [one for one in mentions(text, vocabulary) if one.addresses or one.parts or one.parameter] == []


def test_spans_are_the_words(vocabulary: Vocabulary) -> None:
    text = "So, the spring on the right front – and the wedge."
    assert [text[one.start : one.end] for one in mentions(text, vocabulary)] == ["spring on the right front", "wedge"]


def test_a_corner_of_a_parameter_without_corners_is_another_mention(vocabulary: Vocabulary) -> None:
    first, second = mentions("tape RF", vocabulary)
    assert (first.addresses, second.parts) == (("tape",), ("rf",))


def test_the_trade_has_words_for_roles(garage: Garage, vocabulary: Vocabulary) -> None:
    assert mentions("RF comp", vocabulary)[0].addresses == ("shock_compression.rf",)
    renamed = garage.parameters["shock_compression"].model_copy(update={"name": "squeeze", "say": (), "role": None})
    other = garage.model_copy(update={"parameters": {**garage.parameters, "shock_compression": renamed}})
    assert mentions("RF comp", Vocabulary(other))[0].addresses == ()
    assert mentions("RF squeeze", Vocabulary(other))[0].addresses == ("shock_compression.rf",)
