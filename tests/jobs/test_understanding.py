"""The shapes that other programs rely on, and what people read instead."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from producer.basics.errors import ProducerError
from producer.jobs import claims as job
from producer.jobs.message import Reading

CLAIM = {
    "text", "start", "end", "parameter", "direction", "from", "to", "amount", "value", "feel", "where", "if_feels",
}  # fmt: skip
FELT = {"feel", "where", "how_much", "tyres", "pedal"}


@pytest.fixture(scope="module")
def shop(demo: Path) -> job.Shop:
    return job.shop(demo, "grand-sedan")


def test_claims_have_the_agreed_shape(shop: job.Shop) -> None:
    text = "The right front spring goes from 700 to 725, and it is tighter off."
    shape = job.shape(text, shop.garages["grand-sedan"])
    (one,) = shape["claims"]
    assert (shape["format"], set(one)) == (1, CLAIM)
    assert one["text"] == text[one["start"] : one["end"]]
    said = {"parameter": "spring.rf", "direction": "raise", "from": 700, "to": 725, "feel": "tighter"}
    assert {name: one[name] for name in said} == said
    assert (one["amount"], one["value"], one["where"], one["if_feels"]) == (None, None, ["exit"], None)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "if it is tight going in, drop the right front to 725",
            "Right front spring: lower to 725\u00a0lb/in; if it is tight entry",
        ),
        ("cross is at 51.5, which frees up the middle", "Cross weight: 51.5\u00a0%; looser in the middle"),
        ("what a race", "nothing is claimed about a setting"),
    ],
)
def test_claims_are_told(shop: job.Shop, text: str, told: str) -> None:
    assert job.told(text, shop.garages["grand-sedan"]).splitlines()[-1].strip() == told


def test_a_message_has_the_agreed_shape(shop: job.Shop) -> None:
    shape = Reading(shop).shape("way 2 loose off 4 on old tires, wheel user, any ideas??")
    said = shape["understood"]
    assert shape["format"] == 1
    assert {"feels", "asks", "device", "parameters_named", "track", "garage"} <= set(said)
    (felt,) = said["feels"]
    assert set(felt) >= FELT
    assert [felt[name] for name in ("feel", "where", "how_much", "tyres", "pedal")] == [
        "loose", "exit", "very", "worn", None,
    ]  # fmt: skip
    assert (said["asks"], said["device"], said["parameters_named"]) == ("help", "wheel", [])


def test_a_message_is_told(shop: job.Shop) -> None:
    told = Reading(shop).told("a bit loose off at marow creek, do i need wedge? pad user in the grand sedan")
    assert told.splitlines() == [
        "asks for help",
        "a little loose on exit",
        "plays with a pad",
        "names Cross weight",
        "names the track marow creek (marrow-creek)",
        "names the class Grand Sedan",
    ]


def test_one_object_a_line_and_as_many_as_lines(shop: job.Shop) -> None:
    text = "wedge 51\n\nlap 52\nno stop at the end"
    rows = job.by_line(text, lambda one: job.shape(one, shop.garages["grand-sedan"])).split("\n")
    assert [len(json.loads(row)["claims"]) for row in rows] == [1, 0, 0, 0]
    assert job.by_line("", lambda _: {}) == ""


def test_a_garage_may_be_a_file(demo: Path) -> None:
    found = job.shop(None, str(demo / "garages" / "grand-sedan.yaml"))
    assert (found.garage, list(found.tracks)) == ("grand-sedan", [])


def test_what_is_not_there_is_said(demo: Path, tmp_path: Path) -> None:
    with pytest.raises(ProducerError, match="there is: club-coupe, grand-sedan"):
        job.shop(demo, "grand-sedna")
    (tmp_path / "odd.yaml").write_text("format: 1\n", encoding="utf-8")
    with pytest.raises(ProducerError, match="cannot be read as a garage"):
        job.shop(None, str(tmp_path / "odd.yaml"))
    with pytest.raises(ProducerError, match="there is no track 'nowhere'"):
        Reading(job.shop(demo, "grand-sedan"), "nowhere")


@pytest.mark.parametrize(
    ("data", "text"), [(b"\xef\xbb\xbfa\r\nb", "a\nb"), (b"a\rb", "a\nb"), ("½ – é".encode(), "½ – é"), (b"", "")]
)
def test_text_as_it_came(data: bytes, text: str) -> None:
    assert job.prose(data, "x") == text


def test_what_is_no_text_is_said_with_its_line() -> None:
    with pytest.raises(ProducerError, match="x is not UTF-8 text from line 2 on"):
        job.prose(b"a\n\xff", "x")
