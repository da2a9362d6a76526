"""Values into records: every trouble a finding at its own place, with what to do next."""

from __future__ import annotations

from decimal import Decimal

import pytest

from producer.basics.finding import Finding, Severity
from producer.library.records import build
from producer.model.channel import Channel
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.record import Record
from producer.model.request import RequestFile
from producer.model.track import Track

TRACK = "format: 1\ntrack: a\nname: A\nlength: 1 mi\ncorners: []\n"
EPISODE = """\
format: 1
episode: a
title: A
track: a
garage: g
setups:
  - setup: short
    name: Short run
    values: { front_weight: 50.5, spring: { lf: 700 } }
"""


def findings(kind: type[Record], text: str) -> list[Finding]:
    return build(kind, "a.yaml", text)[2]


def told(kind: type[Record], text: str) -> list[tuple[str, int, int]]:
    found = findings(kind, text)
    assert all(one.severity is Severity.ERROR and one.message and one.hint for one in found), found
    return [(one.code, one.place.line, one.place.column) for one in found]


@pytest.mark.parametrize(
    ("kind", "text", "expected"),
    [
        (Track, "", [("empty-file", 1, 1)]),
        (Track, "# nothing\n\n", [("empty-file", 1, 1)]),
        (Track, "- 1\n", [("wrong-kind", 1, 1)]),
        (Track, "word\n", [("wrong-kind", 1, 1)]),
        (Track, TRACK.replace("name: A\n", ""), [("missing-key", 1, 1)]),
        (Track, "# a comment\n" + TRACK.replace("name: A\n", ""), [("missing-key", 1, 1)]),
        (Track, TRACK.replace("name: A", "name:"), [("wrong-kind", 3, 6)]),
        (Track, TRACK.replace("name: A", "name: [A]"), [("wrong-kind", 3, 7)]),
        (Track, TRACK.replace("name: A", "name: {a: b}"), [("wrong-kind", 3, 7)]),
        (Track, TRACK.replace("1 mi", "one mile"), [("wrong-value", 4, 9)]),
        (Track, TRACK.replace("1 mi", "1 furlong"), [("wrong-value", 4, 9)]),
        (Track, TRACK.replace("1 mi", "[1]"), [("wrong-kind", 4, 9)]),
        (Track, TRACK.replace("[]", "none"), [("wrong-kind", 5, 10)]),
        (Track, TRACK.replace("[]", "[x]"), [("wrong-kind", 5, 11)]),
        (Track, TRACK.replace("format: 1", "format: 2"), [("wrong-value", 1, 9)]),
        (Track, TRACK.replace("track: a", "track: ../a"), [("wrong-value", 2, 8)]),
        (Track, TRACK.replace("track: a", "track: a/b"), [("wrong-value", 2, 8)]),
        (Track, TRACK + "nmae: B\n", [("unknown-key", 6, 1)]),
        (Track, TRACK.replace("[]", "[{turns: 1, radius: 9 ft, bank: 8}]"), [("unknown-key", 5, 36)]),
        (Track, TRACK.replace("[]", "[{turns: 1, radius: 9 ft, banking: steep}]"), [("wrong-kind", 5, 45)]),
        (Channel, "format: 1\nchannel: c\nname: C\npresenter: J\nunits: imperial\n", [("wrong-value", 5, 8)]),
        (Channel, "format: 1\nchannel: c\nname: C\npresenter: J\nvoice: { words_per_minute: 15 }\n",
         [("wrong-value", 5, 28)]),
        (Channel, "format: 1\nchannel: c\nname: C\npresenter: J\nplatform: { chapters: { least: 2.5 } }\n",
         [("wrong-kind", 5, 32)]),
        (RequestFile, "format: 1\nrequests:\n  - {id: a, received: 2026-13-01, from: x, text: y, credit: perhaps}\n",
         [("wrong-kind", 3, 23), ("wrong-kind", 3, 61)]),
        (Episode, EPISODE.replace("setups:", "setups: []\nsteups:"), [("wrong-value", 6, 9), ("unknown-key", 7, 1)]),
        (Episode, EPISODE + "    chnages: {}\n", [("unknown-key", 10, 5)]),
        (Episode, EPISODE.replace("700", "seven"), [("wrong-kind", 9, 49)]),
        (Episode, EPISODE.replace("50.5", "NaN"), [("wrong-kind", 9, 29)]),
        (Episode, EPISODE.replace("50.5", "-.inf"), [("wrong-kind", 9, 29)]),
        (Episode, EPISODE.replace("50.5", "1e999"), [("wrong-kind", 9, 29)]),
        (Episode, EPISODE.replace("50.5", "9" * 5000), [("wrong-kind", 9, 29)]),
        (Episode, EPISODE.replace("50.5", "0." + "3" * 5000), [("wrong-kind", 9, 29)]),
        (Episode, EPISODE + "allow: [ { code: off-step } ]\n", [("missing-key", 10, 10)]),
        (Episode, EPISODE + "video: { url: x, length: later }\n", [("wrong-value", 10, 26)]),
        (Episode, EPISODE + "  - { setup: long, name: Long, changes: { tape: 1 } }\n", [("wrong-value", 10, 5)]),
        (Episode, EPISODE + "  - { setup: long, name: Long }\n", [("wrong-value", 10, 5)]),
    ],
)  # fmt: skip
def test_wrong_in_its_place(kind: type[Record], text: str, expected: list[tuple[str, int, int]]) -> None:
    assert told(kind, text) == expected


@pytest.mark.parametrize(
    ("written", "hint"),
    [("nmae: B", "'name'"), ("lenght: 2 mi", "'length'"), ("zzz: 1", "track, name, length, corners")],
)
def test_the_nearest_key_is_named(written: str, hint: str) -> None:
    assert hint in findings(Track, TRACK + written + "\n")[0].hint


def test_what_is_missing_is_named_where_it_belongs() -> None:
    found = findings(Episode, EPISODE.replace("    name: Short run\n", "").replace("title: A\n", ""))
    assert [(one.where, str(one.place)) for one in found] == [
        ("title", "a.yaml:1:1"),
        ("setups.short.name", "a.yaml:6:5"),
    ]


def test_a_corner_that_no_car_has() -> None:
    text = """\
format: 1
garage: g
name: G
simulation: { version: "1" }
pages: [p]
parameters:
  spring: { page: p, name: spring, corners: { lf: { min: 1, max: 9, step: 1 }, xx: { min: 1, max: 9, step: 1 } } }
"""
    assert told(Garage, text) == [("unknown-key", 7, 80)]


@pytest.mark.parametrize(
    ("scale", "right"),
    [
        ("min: 1, max: 9, step: 1", True),
        ("min: 1, max: 1, step: 0.5", True),
        ("choices: [1, 2, 3.5]", True),
        ("choices: [1, 1]", False),
        ("choices: [2, 1]", False),
        ("min: 1, max: 9", False),
        ("min: 9, max: 1, step: 1", False),
        ("min: 1, max: 9, step: 0", False),
        ("min: 1, max: 9, step: -1", False),
        ("min: 0, max: 999999999, step: 0.000001", False),
        ("min: 1, max: 9, step: 1, choices: [1]", False),
        ("default: 5", False),
        ("corners: { lf: {} }", False),
        ("ends: { left: { min: 1, max: 2, step: 1 }, right: { default: 1 } }", False),
        ("say: [a]", False),
        ("min: 1, max: 9, step: 1, corners: { lf: { min: 1, max: 9, step: 1 } }", False),
    ],
)
def test_limits_that_can_be(scale: str, right: bool) -> None:
    text = f"""\
format: 1
garage: g
name: G
simulation: {{ version: "1" }}
pages: [p]
parameters:
  tape: {{ page: p, name: tape, {scale} }}
"""
    record, _, found = build(Garage, "a.yaml", text)
    assert (record is not None) is right
    assert [one.code for one in found] == ([] if right else ["wrong-value"])


def test_figures_are_exact_and_may_carry_their_unit() -> None:
    text = EPISODE.replace("50.5", "0.1").replace("700", "700.10 lb/in")
    record, _, found = build(Episode, "a.yaml", text)
    assert found == []
    assert record is not None
    assert record.setups[0].values == {"front_weight": Decimal("0.1"), "spring": {"lf": Decimal("700.10")}}


def test_a_record_knows_its_places_and_is_compared_without_them() -> None:
    record, _, _ = build(Episode, "a.yaml", EPISODE)
    again, _, _ = build(Episode, "b.yaml", "# moved down\n" + EPISODE)
    assert record is not None
    assert record == again
    setup = record.setups[0]
    assert str(setup.place("values", "spring", "lf")) == "a.yaml:9:49"
    assert str(setup.key_place("values", "spring")) == "a.yaml:9:35"
    assert str(setup.key_place("values", "tape")) == "a.yaml:9:5"
    assert str(record.key_place()) == "a.yaml:1:1"
    assert setup.where("values", "spring", "lf") == "setups.short.values.spring.lf"
    assert setup.written("values", "spring", "lf")
    assert not setup.written("values", "tape")
    with pytest.raises(ValueError, match="not read from a file"):
        Track.model_validate({"format": "1", "track": "a", "name": "A", "length": "1 mi", "corners": []}).place()


def test_records_cannot_be_changed() -> None:
    record, _, _ = build(Track, "a.yaml", TRACK)
    with pytest.raises(ValueError, match="frozen"):
        record.name = "B"  # type: ignore[union-attr, misc]


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        (EPISODE.partition("{")[0] + "\n      front_weight: 50,5\n", "the decimal sign is a point: 50.5"),
        (EPISODE.replace("lf: 700", "lf: 700,5"), "write a point: '.5'"),
        (EPISODE.replace("50.5", "\u22122"), "the minus of the keyboard: -2"),
        (EPISODE.replace("50.5", "heavy"), "a bare number"),
        (EPISODE + "    reasons: [{ for: a, because: b, if: [{ feels: tight, to: '750, 775' }] }]\n", "[750, 775]"),
        (EPISODE + "    reasons: [{ for: a, because: b, if: [{ feels: entry loose }] }]\n", "'tight' or 'loose'"),
        (EPISODE.replace("setup: short", "setup: Kurzer Lauf \u00fc"), "like 'Kurzer-Lauf-u'"),
        (EPISODE.replace("title: A", "title: A\nstatus: Scripted"), "did you mean 'scripted'?"),
        (EPISODE.replace("title: A", "title: A\nstatus: done"), "write one of idea"),
        (EPISODE.replace("format: 1", "format: 2"), "this program reads format 1"),
        (EPISODE.replace("format: 1\n", ""), "add 'format: 1'"),
    ],
)  # fmt: skip
def test_the_hint_says_what_to_type(text: str, hint: str) -> None:
    assert any(hint in one.hint for one in findings(Episode, text)), findings(Episode, text)


def test_a_wrong_word_is_not_led_astray() -> None:
    found = findings(Channel, "format: 1\nchannel: a\nname: A\npresenter: B\nunits: imperial\ncaution: C\n")
    assert [one.hint for one in found] == ["write one of us, metric"]
