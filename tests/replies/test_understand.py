"""What a message asks for, what it leaves out, what is asked back."""

from __future__ import annotations

from typing import Any

import pytest

from producer.model.library import Library
from producer.model.message import Felt, Message
from producer.model.request import Request
from producer.replies.choose import Choice
from producer.replies.understand import Understood, kind, missing, questions, understood, understood_json


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


def test_a_question_that_is_answered_needs_no_feel() -> None:
    assert missing(asked(asks="help"), KNOWN, False, answered=True) == ()


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
    request = asked(feels=["a little loose entry"], tyres="new", device="pad")
    assert understood_json(Understood(request, (), ("spring.rr",)), KNOWN, ("tyres",)) == {
        "feels": [{"feel": "loose", "where": "entry", "how_much": "little", "tyres": "new", "pedal": None}],
        "asks": "help",
        "device": "pad",
        "parameters_named": ["spring.rr"],
        "track": "gannet-bowl",
        "garage": "grand-sedan",
        "missing": ["tyres"],
    }


FELT = Felt("tight", "exit", "very", "worn", "throttle", 0, 5)
SAID = Message((FELT,), "help", "wheel", "worn", ("spring",), "gannet bowl", "gannet-bowl", "grand-sedan")


def test_what_is_read_fills_what_the_author_left_out(log: Library) -> None:
    whole = understood(asked(), SAID, log)
    assert whole.request.feels == (FELT.complaint,)
    assert (whole.request.asks, whole.request.tyres, whole.request.device) == ("help", "worn", "wheel")
    assert (whole.request.track, whole.request.garage, whole.named) == ("gannet-bowl", "grand-sedan", ("spring",))
    feel = understood_json(whole, KNOWN, ())["feels"]
    assert feel == [{"feel": "tight", "where": "exit", "how_much": "very", "tyres": "worn", "pedal": "throttle"}]


@pytest.mark.parametrize(
    "parts",
    [
        {"feels": ["loose entry"]},
        {"asks": "thanks"},
        {"tyres": "new"},
        {"device": "pad"},
        {"track": "marrow-creek"},
        {"garage": "club-coupe"},
    ],
)
def test_what_the_author_wrote_wins(log: Library, parts: dict[str, Any]) -> None:
    own, whole = asked(**parts), understood(asked(**parts), SAID, log)
    (key,) = parts
    assert getattr(whole.request, key) == getattr(own, key)
    assert whole.felt == (() if "feels" in parts else (FELT,))


def test_the_author_may_write_a_name_for_an_id(log: Library) -> None:
    whole = understood(asked(track="Gannet  bowl", garage="CLUB Coupe"), Message(), log)
    assert (whole.request.track, whole.request.garage) == ("gannet-bowl", "club-coupe")
    assert understood(asked(track="Oak Hollow"), SAID, log).request.track == "Oak Hollow"


def test_an_episode_that_the_author_names_settles_the_track(log: Library) -> None:
    whole = understood(asked(episode="lantern-flats-club-coupe"), SAID, log)
    assert (whole.request.track, whole.request.garage) == (None, None)


@pytest.mark.parametrize(
    ("said", "asks"),
    [
        (Message((FELT,), "other"), "help"),
        (Message((FELT,), "thanks"), "help"),
        (Message((FELT,), "track request"), "track request"),
        (Message((), "thanks"), "thanks"),
        (Message((), "other", track="oak hollow"), "other"),
        (Message((), "correction"), "correction"),
    ],
)
def test_a_complaint_is_a_cry_for_help(log: Library, said: Message, asks: str) -> None:
    assert understood(asked(), said, log).request.asks == asks


def test_a_track_that_the_library_lacks_is_named_as_written(log: Library) -> None:
    assert understood(asked(), Message(track="oak hollow"), log).request.track == "oak hollow"
    assert understood(asked(text="gannet in the sedan"), Message(), log).request.track == "gannet-bowl"
    assert understood(asked(text="gannet in the sedan"), Message(), log).request.garage == "grand-sedan"
    assert understood(asked(), Message(track="Gannet"), log).request.track == "gannet-bowl"
    assert understood(asked(), Message(track="gannet hills"), log).request.track == "gannet hills"
    assert understood(asked(), Message(track="pinewick"), log).request.track == "pinewick"


@pytest.mark.parametrize(
    ("text", "tyres"),
    [
        ("tight in the middle after 20 laps", "worn"),
        ("loose off after about 15 or so laps", "worn"),
        ("good at first, 25 laps in it pushes", "worn"),
        ("tight from lap 30 on", "worn"),
        ("loose for the first 20 laps", None),
        ("tight after 3 laps", None),
        ("loose after 2 laps, and worse after 20 laps", None),
        ("i ran 40 laps and it is tight in", None),
        ("tight off turn 12, lap times are bad", None),
    ],
)
def test_laps_tell_the_tyres(text: str, tyres: str | None, log: Library) -> None:
    assert understood(asked(text=text, feels=["tight"]), Message((), "help"), log).request.tyres == tyres


def test_what_is_said_of_the_tyres_counts_before_the_laps(log: Library) -> None:
    said = Message((), "help", tyres="new")
    assert understood(asked(text="tight after 20 laps"), said, log).request.tyres == "new"
