from __future__ import annotations

import json
from collections.abc import Callable
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from producer.handling.guide import guide
from producer.handling.guide_json import guide_json, json_number
from producer.handling.rules import feeds, rule
from producer.library.records import build
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.guide import Change, Guide
from producer.model.library import Case, Library
from producer.model.track import Track
from producer.model.words import FEELS, PHASES, Complaint

Cases = Callable[..., Case]
GARAGE = (Path(__file__).parent / "garage.yaml").read_text(encoding="utf-8")


def row(found: Guide, feels: str, where: str) -> list[str]:
    (one,) = (one for one in found.rows if (one.feels, one.where) == (feels, where))
    return [f"{c.voice} {c.parameter} {c.start} -> {c.to}" for c in one.changes]


def first(case: Case) -> Guide:
    return guide(case, case.sheets[0])


def test_six_rows_in_order(case_of: Cases) -> None:
    found = first(case_of())
    assert (found.episode, found.setup) == ("short-oval", "short")
    assert [(one.feels, one.where) for one in found.rows] == [(feel, phase) for feel in FEELS for phase in PHASES]


@pytest.mark.parametrize(
    ("feels", "where", "expected"),
    [
        # One phase, two phases, then three; pages tyres, ballast, suspension, dampers, driveline.
        ("tight", "entry", ["compression.rf 5 -> 4", "brake_bias 62 -> 61", "front_weight 50.5 -> 50.0",
                            "pressure.rf 43 -> 42.5"]),
        ("tight", "middle", ["spring.lr 225 -> 200", "front_weight 50.5 -> 50.0", "pressure.rf 43 -> 42.5",
                             "pressure.rr 41 -> 41.5"]),
        ("loose", "exit", ["compression.lr 4 -> 5", "final_drive 3.90 -> 3.80", "pressure.rf 43 -> 43.5",
                           "pressure.rr 41 -> 40.5"]),
    ],
)  # fmt: skip
def test_by_rule_alone(case_of: Cases, feels: str, where: str, expected: list[str]) -> None:
    assert row(first(case_of()), feels, where) == [f"rule {one}" for one in expected]


ADVICE = """
    reasons:
      - for: cross_weight
        if:
          - { feels: loose exit, to: [53] }
      - for: spring.rear_split
        if:
          - { feels: loose exit, to: [25] }
      - for: final_drive
        if:
          - { feels: loose exit, to: [4.00] }
"""


def test_the_author_comes_first_and_advice_that_feeds_is_left_to_the_rule(case_of: Cases) -> None:
    assert row(first(case_of(ADVICE)), "loose", "exit") == [
        "author cross_weight 52 -> 53",
        "author spring.rr 300 -> 250",
        "rule compression.lr 4 -> 5",
        "rule final_drive 3.90 -> 3.80",
    ]


def test_what_the_garage_settles_as_none_is_not_offered(case_of: Cases) -> None:
    case = case_of(garage="handling: { final_drive: { exit: none }, shock_compression.lr: { exit: none } }\n")
    assert "final_drive" not in " ".join(row(first(case), "loose", "exit"))
    assert "compression.lr" not in " ".join(row(first(case), "loose", "exit"))


def test_the_author_s_advice_for_a_settled_phase_is_not_shown_either(case_of: Cases) -> None:
    own = "    reasons:\n      - { for: track_bar.left, if: [ { feels: tight exit, direction: raise } ] }\n"
    free, settled = case_of(own), case_of(own, garage="handling: { track_bar.left: { exit: none } }\n")
    assert row(first(free), "tight", "exit")[0] == "author track_bar.left 9.5 -> 9.75"
    assert not [one for one in row(first(settled), "tight", "exit") if "track_bar.left" in one]


def conditional(*advice: str) -> str:
    """A reason each, `spring.rf raise tyres worn`: advice against a car that is loose on exit."""

    def one(name: str, way: str, *only: str) -> str:
        condition = f", {only[0]}: {only[1]}" if only else ""
        return f"      - {{ for: {name}, if: [ {{ feels: loose exit, direction: {way}{condition} }} ] }}\n"

    return "    reasons:\n" + "".join(one(*text.split()) for text in advice)


FOUR = ("spring.rf raise tyres worn", "spring.rr lower tyres worn", "cross_weight raise device pad",
        "track_bar.right lower tyres new")  # fmt: skip


@pytest.mark.parametrize(
    ("advice", "expected"),
    [
        # The author's own for everybody comes first, however late it is written.
        ((*FOUR, "final_drive lower"),
         ["author final_drive", "author spring.rf", "author spring.rr", "author cross_weight"]),
        (("final_drive lower", *FOUR, "compression.lr raise"),
         ["author final_drive", "author compression.lr", "author spring.rf", "author spring.rr"]),
        # Without one the rule has the last place.
        (FOUR, ["author spring.rf", "author spring.rr", "author cross_weight", "rule compression.lr"]),
        (FOUR[:3], ["author spring.rf", "author spring.rr", "author cross_weight", "rule compression.lr"]),
        (FOUR[:1], ["author spring.rf", "rule compression.lr", "rule final_drive", "rule pressure.rf"]),
    ],
)  # fmt: skip
def test_a_row_always_has_something_for_everybody(case_of: Cases, advice: tuple[str, ...], expected: list[str]) -> None:
    told = row(first(case_of(conditional(*advice))), "loose", "exit")
    assert [" ".join(one.split()[:2]) for one in told] == expected


def test_at_a_limit_nothing_is_offered(case_of: Cases) -> None:
    case = case_of(edit=("final_drive: 3.90", "final_drive: 4.11"))
    assert not [one for one in row(first(case), "tight", "exit") if "final_drive" in one]
    assert [one for one in row(first(case), "loose", "exit") if "final_drive 4.11 -> 4.00" in one]


def test_a_value_off_the_grid_is_not_moved(case_of: Cases) -> None:
    case = case_of(edit=("final_drive: 3.90", "final_drive: 3.95"))
    assert not [one for one in row(first(case), "loose", "exit") if "final_drive" in one]


def test_a_gear_at_the_limiter_is_not_offered(case_of: Cases) -> None:
    stint = "stints: [ { setup: short, file: a.csv, top_speed: 170 mph } ]\n"  # 4.00: 8302 rpm of 8200
    assert "rule final_drive 3.90 -> 4.00" in row(first(case_of()), "tight", "exit")
    assert not [one for one in row(first(case_of(stint)), "tight", "exit") if "final_drive" in one]
    assert "rule final_drive 3.90 -> 3.80" in row(first(case_of(stint)), "loose", "exit")


def test_shape_for_other_programs(case_of: Cases) -> None:
    shaped = json.loads(json.dumps(guide_json(first(case_of(ADVICE)), "uk")))
    assert list(shaped) == ["format", "episode", "setup", "rows"]
    last = shaped["rows"][-1]
    assert (last["feels"], last["where"]) == ("loose", "exit")
    cross, spring = last["changes"][:2]
    assert cross == {
        "parameter": "cross_weight", "from": 52, "to": 53, "clicks": 2, "unit": "%", "voice": "author",
        "agreement": None, "effects": {"entry": None, "middle": None, "exit": None}, "headroom": 6,
        "also": "slower rotation, more stable",
        "rule": {"entry": "tighter", "middle": "tighter", "exit": "tighter"},
        "say": "", "tyres": None, "device": None,
    }  # fmt: skip
    assert (spring["parameter"], spring["from"], spring["to"], spring["clicks"]) == ("spring.rr", 300, 250, -2)
    assert spring["also"].startswith("the rear spring split becomes 25")


@pytest.mark.parametrize(("value", "shown"), [("750", "750"), ("52.0", "52"), ("3.90", "3.9"), ("-0.125", "-0.125")])
def test_json_number(value: str, shown: str) -> None:
    assert json.dumps(json_number(Decimal(value))) == shown


# Laws, on garages, values, tracks and advice of any kind.

effect = st.sampled_from(["tighter", "looser", "none"])
addresses = sorted(
    [*(f"spring.{c}" for c in ("lf", "rf", "lr", "rr")), "spring.rear_split", "cross_weight", "final_drive", "tape"]
)


@st.composite
def texts(draw: st.DrawFn) -> tuple[str, str, str]:
    """Garage, track and episode."""
    overrides = draw(st.dictionaries(st.sampled_from(addresses), st.dictionaries(st.sampled_from(PHASES), effect)))
    garage = GARAGE + ("handling: " + json.dumps(overrides) + "\n" if overrides else "")
    banking = draw(st.lists(st.integers(0, 36), max_size=3))
    corners = [{"turns": [n], "radius": "500 ft", "banking": b} for n, b in enumerate(banking)]
    track = f"format: 1\ntrack: oval\nname: Oval\nlength: 1 mi\ncorners: {json.dumps(corners)}\n"
    values = {
        "spring": {c: draw(st.integers(90, 1400)) // 25 * 25 for c in ("lf", "rf", "lr", "rr")},
        "cross_weight": draw(st.integers(90, 114)) / 2,
        "final_drive": draw(st.sampled_from(["3.70", "3.80", "3.90", "4.00", "4.11", "3.95"])),
        "tape": draw(st.integers(0, 100)),
    }
    reasons = [
        {"for": draw(st.sampled_from(addresses)), "if": draw(st.lists(advice(), max_size=3))}
        for _ in range(draw(st.integers(0, 5)))
    ]
    setup = {"setup": "short", "name": "Short", "values": values, "reasons": reasons}
    episode = f"format: 1\nepisode: e\ntitle: T\ntrack: oval\ngarage: test-car\nsetups: {json.dumps([setup])}\n"
    return garage, track, episode


def advice() -> st.SearchStrategy[dict[str, object]]:
    where = st.sampled_from(["", *(f" {phase}" for phase in PHASES)])
    feels = st.builds(lambda much, feel, part: f"{much}{feel}{part}", st.sampled_from(["", "very "]),
                      st.sampled_from(FEELS), where)  # fmt: skip
    stops = st.lists(st.integers(0, 60).map(lambda n: n * 25) | st.integers(-60, 60), min_size=1, max_size=3)
    return st.fixed_dictionaries(
        {"feels": feels},
        optional={
            "to": stops,
            "direction": st.sampled_from(["raise", "lower"]),
            "corner": st.sampled_from(["lr", "rr"]),
        },
    )


def case_from(garage: str, track: str, episode: str) -> Case:
    car, _, trouble = build(Garage, "garage.yaml", garage)
    oval, _, more = build(Track, "track.yaml", track)
    told, _, rest = build(Episode, "episode.yaml", episode)
    assert car is not None and oval is not None and told is not None, (trouble, more, rest)  # noqa: PT018
    return Library(None, {"test-car": car}, {"oval": oval}, {"e": told}, {}, {}).case(told)


def lawful(case: Case, change: Change, complaint: Complaint) -> None:
    sheet = case.sheets[0]
    setting = sheet.garage.settings[change.parameter]
    assert change.start == sheet.values[change.parameter]
    assert change.clicks == setting.grid.clicks(change.start, change.to) != 0
    index = setting.grid.index(change.to)
    assert index is not None
    assert 0 <= index <= setting.grid.last
    assert change.headroom == (setting.grid.last - index if change.clicks > 0 else index)
    assert not feeds(change, complaint)
    if change.voice == "rule":
        assert abs(change.clicks) == 1
        held = rule(sheet.garage, case.track, change.parameter)
        assert held is not None
        assert complaint.where in held.speaks_of
    # Without a model nobody gives a size, but for the garage where it says that nothing happens.
    assert change.effects == {phase: 0.0 if change.rule[phase] == "none" else None for phase in PHASES}


@settings(deadline=None, max_examples=150)
@given(texts())
def test_laws_of_the_guide(given_texts: tuple[str, str, str]) -> None:
    case = case_from(*given_texts)
    for one in first(case).rows:
        assert len(one.changes) <= 4
        assert len({change.parameter for change in one.changes}) == len(one.changes)
        assert [change.voice for change in one.changes] == sorted(change.voice for change in one.changes)
        for change in one.changes:
            lawful(case, change, Complaint(one.feels, one.where))
