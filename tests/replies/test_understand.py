"""What a message asks for, what it leaves out, what is asked back."""

from __future__ import annotations

from typing import Any

import pytest

from producer.model.request import Request
from producer.replies.choose import Choice
from producer.replies.understand import kind, missing, questions, understood_json


def asked(**parts: Any) -> Request:
    return Request.model_validate({"id": "req-x", "received": "2026-10-01", "from": "@x", "text": "hi", **parts})


KNOWN = Choice("gannet-bowl", "grand-sedan")


@pytest.mark.parametrize(
    ("parts", "means"),
    [
        ({}, "other"),
        ({"feels": ["tight"]}, "help"),
        ({"feels": ["tight"], "asks": "track request"}, "track request"),
        ({"asks": "thanks"}, "thanks"),
    ],
)
def test_kind(parts: dict[str, Any], means: str) -> None:
    assert kind(asked(**parts)) == means


@pytest.mark.parametrize(
    ("parts", "choice", "matters", "lacking"),
    [
        ({"asks": "help", "feels": ["tight entry"]}, KNOWN, False, ()),
        ({"asks": "help", "feels": ["tight entry"], "tyres": "new"}, KNOWN, True, ()),
        ({"asks": "help", "feels": ["tight entry"]}, KNOWN, True, ("tyres",)),
        ({"asks": "help", "feels": ["tight"]}, KNOWN, False, ("where",)),
        ({"asks": "help"}, KNOWN, False, ("feel",)),
        ({"asks": "help"}, Choice(None, None), False, ("feel", "track", "garage")),
        ({"asks": "track request"}, KNOWN, False, ()),
        ({"asks": "track request"}, Choice(None, "grand-sedan"), False, ("track",)),
        ({"asks": "correction"}, Choice("gannet-bowl", None), False, ("garage",)),
        ({"asks": "thanks"}, Choice(None, None), False, ()),
        ({"asks": "other"}, Choice(None, None), False, ()),
    ],
)
def test_missing(parts: dict[str, Any], choice: Choice, matters: bool, lacking: tuple[str, ...]) -> None:
    assert missing(asked(**parts), choice, matters) == lacking


@pytest.mark.parametrize(
    ("lacking", "asks"),
    [
        ((), ()),
        (("track",), ("Which track is it?",)),
        (("garage",), ("Which car class are you in: the Club Coupe or the Grand Sedan?",)),
        (("where",), ("Where in the corner is it tight: on entry, in the middle or on exit?",)),
        (
            ("feel", "track", "garage", "tyres"),
            (
                "Is the car tight or loose, and is it on entry, in the middle or on exit?",
                "Which track is it, and which car class?",
            ),
        ),
    ],
)
def test_at_most_two_questions(lacking: tuple[str, ...], asks: tuple[str, ...]) -> None:
    assert questions(lacking, asked(feels=["tight"]), ("Club Coupe", "Grand Sedan")) == asks


def test_where_names_each_feel_once() -> None:
    both = asked(feels=["tight", "very tight", "loose", "loose exit"])
    assert questions(("where",), both, ())[0].startswith("Where in the corner is it tight and loose:")


def test_understood_json() -> None:
    request = asked(feels=["a little loose entry"], tyres="new")
    assert understood_json(request, KNOWN, ("tyres",)) == {
        "feels": [{"feel": "loose", "where": "entry", "how_much": "little", "tyres": "new", "pedal": None}],
        "track": "gannet-bowl",
        "garage": "grand-sedan",
        "missing": ["tyres"],
    }
