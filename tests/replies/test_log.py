"""The request log: who is counted, what comes first and why, what is covered."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from itertools import count
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from producer.model.library import Library
from producer.model.request import Request
from producer.replies.log import Log, log
from producer.replies.log_text import log_json, log_text
from producer.replies.understand import Understood

TODAY = date(2026, 11, 1)
NUMBERS = count(1)
OAK = {"track": "oak hollow", "asks": "track request"}


def asked(**parts: Any) -> Request:
    plain = {"id": f"req-{next(NUMBERS)}", "received": "2026-10-01", "from": "@x", "text": "hi"}
    return Request.model_validate({key: one for key, one in {**plain, **parts}.items() if one is not None})


def of(library: Library, *parts: Mapping[str, Any]) -> Log:
    return log(library, [Understood(asked(**one)) for one in parts], TODAY)


@pytest.fixture(name="library")
def _library(log: Library) -> Library:
    return log


def rows(found: Log) -> list[tuple[str, str | None, int, int]]:
    return [(one.track, one.garage, one.asked, one.days) for one in found.wanted]


def test_the_demo_as_it_stands(library: Library) -> None:
    found = log(library, [Understood(one) for one in library.requests.values()], TODAY)
    assert rows(found) == [
        ("marrow-creek", "grand-sedan", 2, 42),
        ("lantern-flats", "club-coupe", 1, 21),
        ("lantern-flats", "grand-sedan", 1, 15),
    ]
    assert [one.underway for one in found.wanted] == [True, True, False]
    assert found.wanted[0].because == ("asked by 2 viewers", "waiting for 42 days", "recorded, planned for 2026-11-06")
    assert "a setup to start from: lantern-flats-club-coupe" in found.wanted[2].because
    assert [one.request for one in found.waiting] == ["req-102", "req-105", "req-107", "req-108", "req-109", "req-110"]


def test_spellings_are_joined_and_a_viewer_counts_once(library: Library) -> None:
    found = of(
        library,
        {**OAK, "from": "@gus", "received": "2026-10-20"},
        {**OAK, "track": "Oakhollow Speedway", "from": "@GUS", "received": "2026-10-10"},
        {**OAK, "track": "oak holow", "from": "@ann"},
        {**OAK, "from": None},
        {**OAK, "from": None},
    )
    assert rows(found) == [("oak hollow", None, 4, 31)]
    assert found.wanted[0].because[0] == "asked by 4 viewers, in 5 messages"
    assert "the class is not said: ask, or write 'garage:' into the request" in found.wanted[0].because
    assert "there is no file for Oak Hollow in tracks yet" in found.wanted[0].because


@pytest.mark.parametrize(
    ("parts", "wanted"),
    [
        (OAK, True),
        ({**OAK, "status": "planned"}, True),
        ({**OAK, "status": "answered"}, True),
        ({**OAK, "status": "declined"}, False),
        ({**OAK, "status": "published"}, False),
        ({**OAK, "asks": "thanks"}, False),
        ({**OAK, "asks": "other"}, False),
        ({**OAK, "asks": "correction"}, False),
        # Help that only an episode to come can give.
        ({**OAK, "asks": "help", "feels": ["loose exit"]}, True),
        ({"track": "marrow-creek", "garage": "club-coupe", "asks": "help"}, True),
        ({"track": "marrow-creek", "garage": "grand-sedan", "asks": "help"}, False),
        ({"episode": "gannet-bowl-grand-sedan", "asks": "help"}, False),
        # What is out is not wanted any more.
        ({"track": "gannet-bowl", "garage": "grand-sedan", "asks": "track request"}, False),
        ({"track": "gannet-bowl", "asks": "track request"}, False),
        ({"track": "gannet-bowl", "garage": "club-coupe", "asks": "track request"}, True),
        ({"asks": "track request"}, False),
    ],
)
def test_wanted(library: Library, parts: dict[str, Any], wanted: bool) -> None:
    assert bool(of(library, parts).wanted) is wanted


def test_more_viewers_come_first_then_the_longer_wait(library: Library) -> None:
    found = of(
        library,
        {**OAK, "garage": "grand-sedan", "received": "2026-09-01"},
        {**OAK, "garage": "club-coupe", "from": "@a", "received": "2026-10-30"},
        {**OAK, "garage": "club-coupe", "from": "@b", "received": "2026-10-30"},
        {**OAK, "track": "elk ridge", "garage": "club-coupe", "received": "2026-10-02"},
        {**OAK, "track": "far end", "garage": "club-coupe", "received": None},
        {**OAK, "track": "future", "garage": "club-coupe", "received": "2026-12-24"},
    )
    assert rows(found) == [
        ("oak hollow", "club-coupe", 2, 2),
        ("oak hollow", "grand-sedan", 1, 61),
        ("elk ridge", "club-coupe", 1, 30),
        ("far end", "club-coupe", 1, 0),
        ("future", "club-coupe", 1, 0),
    ]


def test_the_only_class_driven_there_is_meant(library: Library) -> None:
    coupe = {name: one for name, one in library.episodes.items() if name != "lantern-flats-grand-sedan"}
    alone = replace(library, episodes=coupe)
    (row,) = of(alone, {"track": "lantern-flats", "asks": "track request"}).wanted
    assert (row.garage, row.episode, row.status) == ("club-coupe", "lantern-flats-club-coupe", "scripted")


def test_who_waits_is_told_when_it_is_out(library: Library) -> None:
    out = {"track": "gannet-bowl", "garage": "grand-sedan", "asks": "track request"}
    found = of(library, out, {**out, "status": "answered"}, {**out, "asks": "help", "received": "2026-10-02"})
    assert [(one.asks, one.days, one.out) for one in found.waiting] == [
        ("track request", 31, "gannet-bowl-grand-sedan"),
        ("help", 30, None),
    ]
    assert f"answer with 'producer reply {found.waiting[0].request} --mark'" in log_text(found)


def test_a_day_that_has_passed_is_said(library: Library) -> None:
    found = log(library, [Understood(one) for one in library.requests.values()], date(2026, 11, 10))
    assert "recorded, planned for 2026-11-06, which has passed" in found.wanted[0].because


def test_coverage(library: Library) -> None:
    found = {(one.track, one.garage, one.purpose): (one.episode, one.status) for one in of(library).coverage}
    assert len(found) == 3 * 2 * 3
    assert found["gannet-bowl", "grand-sedan", "long run"] == ("gannet-bowl-grand-sedan", "published")
    assert found["lantern-flats", "grand-sedan", "short run"] == ("lantern-flats-grand-sedan", "idea")
    assert found["lantern-flats", "grand-sedan", "long run"] == (None, None)
    assert found["gannet-bowl", "club-coupe", "short run"] == (None, None)


def test_the_text_shows_everything_within_80_columns(library: Library) -> None:
    text = log_text(log(library, [Understood(one) for one in library.requests.values()], TODAY))
    assert [one for one in text.splitlines() if len(one) >= 80] == []
    assert text.startswith("3 messages without an answer, 3 waiting for an episode\n")
    assert "  1. Lantern Flats, Grand Sedan\n" in text
    assert "@keys_and_prayers" in text
    assert "  Gannet Bowl, Grand Sedan    published    published    -\n" in text


def test_an_empty_log_says_what_to_do(library: Library) -> None:
    text = log_text(of(library))
    assert text.startswith("nothing asked yet: 'producer requests --add' logs messages")
    assert "covered" in text


def test_the_json_names_nobody(library: Library) -> None:
    shape = log_json(log(library, [Understood(one) for one in library.requests.values()], TODAY))
    assert shape["wanted"][0] == {
        "track": "marrow-creek",
        "garage": "grand-sedan",
        "asked": 2,
        "waiting_days": 42,
        "requests": ["req-102", "req-105"],
        "because": ["asked by 2 viewers", "waiting for 42 days", "recorded, planned for 2026-11-06"],
        "episode": "marrow-creek-grand-sedan",
        "status": "recorded",
    }
    assert shape["next"] == [{"track": "lantern-flats", "garage": "grand-sedan"}]
    assert "@" not in str(shape)


PARTS = st.fixed_dictionaries(
    {
        "from": st.sampled_from(["@a", "@b", None]),
        "track": st.sampled_from(["gannet-bowl", "marrow-creek", "Oak Hollow", "oakhollow", "\u00e9", None]),
        "garage": st.sampled_from(["grand-sedan", "club-coupe", "truck", None]),
        "asks": st.sampled_from(["help", "track request", "thanks", "correction", "other", None]),
        "status": st.sampled_from(["new", "planned", "answered", "published", "declined"]),
        "received": st.sampled_from(["2026-01-01", "2026-10-01", None]),
    }
)


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(parts=st.lists(PARTS, max_size=12))
def test_what_holds_for_every_log(library: Library, parts: list[dict[str, Any]]) -> None:
    found = of(library, *parts)
    ranks = [(-one.asked, -one.days, one.track, one.garage or "") for one in found.wanted]
    assert ranks == sorted(ranks)
    named = [name for one in found.wanted for name in one.requests]
    assert len(named) == len(set(named))
    assert all(1 <= one.asked <= len(one.requests) for one in found.wanted)
    assert len({(one.track, one.garage) for one in found.wanted}) == len(found.wanted)
    assert sum(one["status"] in ("new", "planned") for one in parts) == len(found.waiting)
    assert all(len(line) <= 80 for line in log_text(found).splitlines())
