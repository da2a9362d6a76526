"""Effects, advice and gears: what the samples in the docstrings leave open."""

from __future__ import annotations

from importlib import import_module
from pathlib import Path

import pytest

from producer.basics.finding import Finding
from producer.library.records import build
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.library import Case, Library
from producer.model.record import Record
from producer.model.track import Track

BASE = Path(__file__).parent / "base"
HEAD = "format: 1\nepisode: one\ntitle: One\ntrack: marrow-creek\ngarage: grand-sedan\n"
SETUPS = """setups:
  - setup: short
    name: Short run
    values:
      spring: { lf: 700, rf: 700, lr: 225, rr: 300 }
      track_bar: { left: 9.5, right: 10 }
      shock_compression: { lf: 5, rf: 6, lr: 4, rr: 12 }
      cross_weight: 52
      tape: 40
      final_drive: 4.00
"""
CHECKS = (
    "effect_against_rule", "effects_contradict", "advice_past_limit", "advice_off_step", "advice_wrong_way",
    "advice_makes_it_worse", "over_rev",
)  # fmt: skip


def read(kind: type[Record], file: str, text: str) -> Record:
    record, _, findings = build(kind, file, text)
    assert record is not None, findings
    return record


def library(episodes: dict[str, str], handling: str = "") -> Library:
    garage = (BASE / "garages" / "grand-sedan.yaml").read_text(encoding="utf-8")
    track = (BASE / "tracks" / "marrow-creek.yaml").read_text(encoding="utf-8")
    if handling:
        garage = garage.replace("\nhandling:\n", f"\nhandling:\n  {handling}\n")
    return Library(
        None,
        {"grand-sedan": read(Garage, "garages/grand-sedan.yaml", garage)},
        {"marrow-creek": read(Track, "tracks/marrow-creek.yaml", track)},
        {name: read(Episode, f"{name}/episode.yaml", text) for name, text in episodes.items()},
        {},
        {},
    )


def case_of(reasons: str, more: str = "", handling: str = "") -> Case:
    shelf = library({"one": f"{HEAD}{SETUPS}    reasons:{indented(reasons)}{more}"}, handling)
    return shelf.case(shelf.episodes["one"])


def indented(text: str) -> str:
    return " []\n" if not text.strip() else "".join(f"\n      {line}" for line in text.strip("\n").splitlines()) + "\n"


def found(case: Case) -> list[tuple[str, str, str]]:
    """Code, severity and where, of all seven checks."""
    told: list[Finding] = []
    for name in CHECKS:
        told += import_module(f"producer.checks.{name}").check_episode(case)
    return [(one.code, one.severity.value, one.where.rpartition("reasons")[2] or one.where) for one in told]


SPEAK = [
    # effect-against-rule
    ("- { for: spring.rr, effect: { exit: tighter } }", "effect-against-rule", "[0].effect.exit"),
    ("- { for: spring.rr, compared_with: 325, effect: { exit: looser } }", "effect-against-rule", "[0].effect.exit"),
    ("- { for: [spring.rr, track_bar.right], effect: { exit: tighter } }", "effect-against-rule", "[0].effect.exit"),
    ("- { for: spring, effect: { middle: none, entry: tighter } }", "effect-against-rule", "[0].effect.entry"),
    # advice-past-limit
    ("- { for: shock_compression.rr, if: [ { feels: tight exit, to: [13] } ] }", "advice-past-limit",
     "[0].if[0].to[0]"),
    ("- { for: shock_compression.rr, if: [ { feels: tight exit, direction: raise } ] }", "advice-past-limit",
     "[0].if[0].direction"),
    ("- { for: final_drive, if: [ { feels: tight exit, to: [4.11, 4.25] } ] }", "advice-past-limit", "[0].if[0].to[1]"),
    ("- { for: spring.rear_split, if: [ { feels: loose exit, to: [-25, -275], corner: lr } ] }", "advice-past-limit",
     "[0].if[0].to[1]"),
    # advice-off-step
    ("- { for: cross_weight, if: [ { feels: loose exit, to: 52.25 } ] }", "advice-off-step", "[0].if[0].to[0]"),
    ("- { for: [spring.rf, spring.lf], if: [ { feels: loose exit, to: [730] } ] }", "advice-off-step",
     "[0].if[0].to[0]"),
    ("- { for: spring.rear_split, if: [ { feels: loose exit, direction: lower, corner: lf } ] }", "advice-off-step",
     "[0].if[0].corner"),
    # advice-wrong-way
    ("- { for: tape, if: [ { feels: tight exit, direction: lower, to: [45] } ] }", "advice-wrong-way",
     "[0].if[0].direction"),
    ("- { for: tape, if: [ { feels: tight exit, to: [45, 45] } ] }", "advice-wrong-way", "[0].if[0].to[1]"),
    ("- { for: spring.front_split, if: [ { feels: loose exit, to: [50, 25] } ] }", "advice-wrong-way",
     "[0].if[0].to[1]"),
    # advice-makes-it-worse
    ("- { for: spring.rear_split, if: [ { feels: loose exit, to: [100] } ] }", "advice-makes-it-worse",
     "[0].if[0].to[0]"),
    ("- { for: spring.rear_split, if: [ { feels: loose exit, to: [100], corner: lr } ] }", "advice-makes-it-worse",
     "[0].if[0].to[0]"),
    ("- { for: spring.rr, if: [ { feels: very loose, direction: raise } ] }", "advice-makes-it-worse",
     "[0].if[0].direction"),
    ("- { for: [spring.rr, track_bar.right], if: [ { feels: loose middle, direction: raise } ] }",
     "advice-makes-it-worse", "[0].if[0].direction"),
]  # fmt: skip


@pytest.mark.parametrize(("reasons", "code", "where"), SPEAK)
def test_speaks(reasons: str, code: str, where: str) -> None:
    severity = "error" if code in ("advice-past-limit", "advice-off-step", "advice-wrong-way") else "warning"
    assert found(case_of(reasons)) == [(code, severity, where)]


SILENT = [
    "- { for: [spring.rf, cross_weight], effect: { middle: looser } }",  # softer, but more cross
    "- { for: [spring.rf, cross_weight], effect: { middle: tighter } }",
    "- { for: spring.rr, effect: { exit: looser } }",
    "- { for: spring.rr, effect: { exit: none } }",  # the author claims nothing
    "- { for: spring.rr, compared_with: 300, effect: { exit: tighter } }",  # nothing moved
    "- { for: spring.lr, effect: { middle: tighter } }",  # at the default
    "- { for: spring.lf, compared_with: 725, effect: { entry: looser } }",  # the two ends are banked differently
    "- { for: spring.lr, compared_with: 250, effect: { entry: tighter, exit: tighter } }",
    "- { for: dampers, effect: { entry: tighter } }",
    "- { for: dampers, if: [ { feels: loose entry, direction: raise } ] }",  # one is at its limit, others are not
    "- { for: tape, if: [ { feels: loose entry, say: Look at the temperature. } ] }",
    "- { for: tape, if: [ { feels: loose entry, to: [45, 50] }, { feels: tight entry, to: [35, 30] } ] }",
    "- { for: track_bar.right, if: [ { feels: tight exit, to: [10.25, 10.50] } ] }",
    "- { for: [spring.rf, spring.rr], if: [ { feels: loose middle, direction: raise } ] }",  # one of them helps
    "- { for: spring.rear_split, if: [ { feels: loose exit, to: [50, 25], corner: lr } ] }",
    "- { for: spring.rear_split, if: [ { feels: tight exit, direction: raise, to: [100], corner: lr } ] }",
    "- { for: spring.rr, if: [ { feels: loose exit, to: [275] } ] }",
    "- { for: front_weight, if: [ { feels: loose entry, to: [50.5] } ] }",  # no value here: another finding says so
    "- { for: nonsense, effect: { exit: tighter }, if: [ { feels: loose entry, to: [50.5] } ] }",
]


@pytest.mark.parametrize("reasons", SILENT)
def test_silent(reasons: str) -> None:
    assert found(case_of(reasons)) == []


def test_the_garages_own_word_comes_first() -> None:
    reasons = "- { for: spring.rr, effect: { exit: tighter }, if: [ { feels: loose exit, to: [325] } ] }"
    assert found(case_of(reasons, handling="spring.rr: { exit: tighter }")) == []
    nothing = case_of(reasons, handling="spring.rr: { exit: none }")
    assert found(nothing) == [("effect-against-rule", "warning", "[0].effect.exit")]


LONG = """  - setup: long
    name: Long run
    based_on: short
    changes: { tape: 35 }
"""


def test_inherited_reasons_are_spoken_of_once() -> None:
    reasons = "- { for: spring.rr, effect: { exit: tighter }, if: [ { feels: loose exit, to: [310, 325] } ] }"
    assert sorted(one[0] for one in found(case_of(reasons, LONG))) == [
        "advice-makes-it-worse", "advice-off-step", "effect-against-rule",
    ]  # fmt: skip


def test_advice_that_reaches_the_limiter_in_an_inheriting_setup() -> None:
    reasons = "- { for: final_drive, if: [ { feels: tight exit, direction: raise } ] }"
    stint = "stints: [ { setup: long, file: a.csv, top_speed: 165 mph }, { setup: short, file: b.csv } ]\n"
    assert found(case_of(reasons, LONG + stint)) == [("over-rev", "warning", "[0].if[0].direction")]
    both = stint.replace("b.csv }", "b.csv, top_speed: 166 mph }")
    assert len(found(case_of(reasons, LONG + both))) == 1
    assert found(case_of(reasons, LONG + stint.replace("165", "163"))) == []


def test_without_a_known_car_no_gear_is_spoken_of() -> None:
    case = case_of("", "stints: [ { setup: short, file: a.csv, top_speed: 900 mph } ]\n")
    assert found(case) == [("over-rev", "warning", "setups.short.values.final_drive")]
    assert case.garage is not None
    car = case.garage.car.model_copy(update={"rev_limit": None})
    bare = Library(
        None,
        {"grand-sedan": case.garage.model_copy(update={"car": car})},
        case.library.tracks,
        case.library.episodes,
        {},
        {},
    )
    assert found(bare.case(case.episode)) == []


def other(name: str, reasons: str, track: str = "marrow-creek") -> str:
    head = HEAD.replace("episode: one", f"episode: {name}").replace("track: marrow-creek", f"track: {track}")
    return f"{head}{SETUPS}    reasons:{indented(reasons)}"


@pytest.mark.parametrize(
    ("first", "second", "track", "told"),
    [
        ("cross_weight, effect: { exit: tighter }", "cross_weight, effect: { exit: looser }", "marrow-creek", 1),
        ("cross_weight, effect: { exit: tighter }", "cross_weight, effect: { exit: looser }", "elsewhere", 1),
        ("cross_weight, effect: { exit: tighter }", "cross_weight, effect: { entry: looser }", "marrow-creek", 0),
        ("cross_weight, effect: { exit: tighter }",
         "cross_weight, compared_with: 53, effect: { exit: looser }", "marrow-creek", 0),
        ("cross_weight, effect: { exit: tighter }", "cross_weight, effect: { exit: none }", "marrow-creek", 0),
        # What goes with banking is compared on the same track only.
        ("spring.lr, compared_with: 200, effect: { exit: tighter }",
         "spring.lr, compared_with: 200, effect: { exit: looser }", "marrow-creek", 1),
        ("spring.lr, compared_with: 200, effect: { exit: tighter }",
         "spring.lr, compared_with: 200, effect: { exit: looser }", "elsewhere", 0),
    ],
)  # fmt: skip
def test_across_episodes_it_is_a_note(first: str, second: str, track: str, told: int) -> None:
    check = import_module("producer.checks.effects_contradict")
    shelf = library(
        {"one": other("one", f"- {{ for: {first} }}"), "two": other("two", f"- {{ for: {second} }}", track)}
    )
    notes = list(check.check_library(shelf))
    assert [one.severity.value for one in notes] == ["note"] * told
    assert all(one.place.file == "two/episode.yaml" for one in notes)
    assert all(one.related[0].file == "one/episode.yaml" for one in notes)
    assert not [one for case in map(shelf.case, shelf.episodes.values()) for one in check.check_episode(case)]


@pytest.mark.parametrize(
    ("what", "said"),
    [
        ("cross_weight", "raising the cross weight makes the car tighter on exit"),
        ("[spring.rr, track_bar.right]", "raising the right rear spring and the track bar, right end makes the car"),
        ("[spring.rr, spring.rf]", "raising the right rear spring and lowering the right front spring make the car"),
        ("[spring.rr, spring.rf, track_bar.right]",
         "raising the right rear spring, with the other 2 settings moved as here, makes the car"),
    ],
)  # fmt: skip
def test_a_contradiction_says_what_moves_together(what: str, said: str) -> None:
    reasons = "\n".join(f"- {{ for: {what}, effect: {{ exit: {effect} }} }}" for effect in ("looser", "tighter"))
    shelf = library({"one": other("one", reasons)})
    check = import_module("producer.checks.effects_contradict")
    (one,) = check.check_episode(shelf.case(shelf.episodes["one"]))
    assert said in one.message


def test_an_episode_without_a_garage_is_left_alone() -> None:
    shelf = library({"one": other("one", "").replace("garage: grand-sedan", "garage: nowhere")})
    assert found(shelf.case(shelf.episodes["one"])) == []
