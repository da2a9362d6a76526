from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.basics.figures import MINUS
from producer.handling.rules import (
    RULES,
    cure,
    effect_of,
    feeds,
    feeds_by,
    goes_with_banking,
    helps,
    known_role,
    rule,
)
from producer.model.garage import Garage
from producer.model.guide import Change
from producer.model.track import Track
from producer.model.words import PHASES, complaint

Garages = Callable[[str], Garage]
Tracks = Callable[..., Track]


def letters(garage: Garage, track: Track | None, address: str) -> str:
    """The row as the table writes it: T, L, `.`, and `0` for settled as nothing."""
    shown = {"tighter": "T", "looser": "L", "none": "0", None: "."}
    return "".join(shown[effect_of(garage, track, address, "raise", phase)] for phase in PHASES)


@pytest.mark.parametrize(
    ("address", "banking", "expected"),
    [
        ("front_weight", (0,), "TT."),
        ("cross_weight", (0,), "TTT"),
        ("left_weight", (0,), "..."),
        ("spring.rf", (0,), "TTT"),
        ("spring.rr", (0,), "LLL"),
        ("spring.lf", (12, 12), "LL."),  # the lower edge belongs to the band
        ("spring.lf", (11.9, 11.9), "..."),
        ("spring.lf", (11.9, 20), "..."),  # the corners do not agree
        ("spring.lr", (12, 24), "TTT"),
        ("spring.lr", (6, 6), ".T."),
        ("spring.lr", (5.9,), "..."),
        ("spring.lr", (10, 15), ".T."),  # both corners say tighter in the middle
        ("spring.lr", (5, 15), "..."),
        ("spring.lr", (), "..."),
        ("pressure.rf", (0,), "TTT"),
        ("pressure.rr", (0,), "LLL"),
        ("pressure.lf", (0,), "..."),
        ("pressure.lr", (0,), "..."),
        ("compression.rf", (0,), "T.."),
        ("compression.lr", (0,), "..T"),
        ("compression.lf", (0,), "..."),
        ("track_bar.left", (0,), "LLL"),
        ("track_bar.right", (0,), "LLL"),
        ("brake_bias", (0,), "T.."),
        ("tape", (0,), "..."),
        ("final_drive", (0,), "..L"),
        ("spring.rear_split", (0,), "LLL"),
        ("spring.front_split", (0,), "TTT"),
        ("spring.rear_split", (20,), "LLL"),
        ("pressure.rear_split", (0,), "LLL"),
        ("compression.front_split", (0,), "T.."),
        ("gadget", (0,), "..."),
    ],
)
def test_built_in_row(
    garage_with: Garages, banked: Tracks, address: str, banking: tuple[float, ...], expected: str
) -> None:
    assert letters(garage_with(""), banked(*banking), address) == expected


def test_without_a_track_what_goes_with_banking_has_no_opinion(garage_with: Garages) -> None:
    assert letters(garage_with(""), None, "spring.lr") == "..."
    assert letters(garage_with(""), None, "spring.rf") == "TTT"


def test_unknown_role_and_unknown_address_have_no_row(garage_with: Garages) -> None:
    garage = garage_with("")
    assert rule(garage, None, "gadget") is None
    assert rule(garage, None, "nonsense") is None
    assert not known_role("gadget")
    assert known_role("camber.lf")
    assert not known_role("")


@pytest.mark.parametrize(
    ("handling", "address", "expected"),
    [
        ("track_bar.left: { entry: looser, middle: looser, exit: none }", "track_bar.left", "LL0"),
        ("track_bar.left: { exit: none }", "track_bar.left", "LL0"),
        ("track_bar.left: { exit: none }", "track_bar.right", "LLL"),
        ("tyre_pressure.lr: { middle: tighter }", "pressure.lr", ".T."),  # by role
        ("pressure.lr: { exit: tighter }", "pressure.lr", "..T"),  # by address
        ("{ tyre_pressure.rr: { entry: none }, pressure.rr: { entry: tighter } }", "pressure.rr", "TLL"),
        ("weight.front: { exit: tighter }", "front_weight", "TTT"),
        ("gadget: { entry: looser }", "gadget", "L.."),  # no role, but the garage's own word
        ("track_bar: { entry: none }", "track_bar.right", "0LL"),  # both ends
        ("spring.lr: { middle: looser }", "spring.rear_split", "L.L"),  # the left corner contradicts
        ("spring.lr: { middle: tighter }", "spring.rear_split", "LLL"),
        ("spring.rear_split: { exit: none }", "spring.rear_split", "LL0"),
        ("spring.rr: { exit: none }", "spring.rear_split", "LL0"),
        ("spring.rear_split: { exit: none }", "spring.rr", "LLL"),
    ],
)
def test_the_garage_has_the_first_word(garage_with: Garages, handling: str, address: str, expected: str) -> None:
    block = f"handling: {handling}\n" if handling.startswith("{") else f"handling:\n  {handling}\n"
    assert letters(garage_with(block), None, address) == expected


def test_an_override_keeps_or_replaces_what_else_to_know(garage_with: Garages) -> None:
    kept = rule(garage_with("handling: { spring.rr: { exit: none } }\n"), None, "spring.rr")
    own = rule(garage_with("handling: { spring.rr: { exit: none, also: quiet on exit } }\n"), None, "spring.rr")
    assert kept is not None
    assert own is not None
    assert kept.what_else("lower") == "smaller rear split"
    assert own.what_else("lower") == "quiet on exit"
    assert own.source.startswith("the handling block of Test Car")


def test_every_row_names_its_source_and_every_role_covers_each_banking_once() -> None:
    for role, rows in RULES.items():
        assert all(row.source and row.role == role for row in rows)
        assert len(rows) == 1 or all(row.banking for row in rows)
        for degrees in range(41):
            assert sum(row.banking is None or row.banking.holds(degrees) for row in rows) <= 1  # type: ignore[arg-type]


def test_what_else_is_told_for_the_way_it_moves() -> None:
    (row,) = RULES["gear.final"]
    assert "nearer the limiter" in row.what_else("raise")
    assert "further from the limiter" in row.what_else("lower")
    assert MINUS not in row.what_else("raise")


@given(st.sampled_from(sorted(RULES)), st.sampled_from(PHASES))
def test_lowering_is_the_opposite_of_raising(role: str, phase: str) -> None:
    opposite = {"tighter": "looser", "looser": "tighter", None: None, "none": "none"}
    for row in RULES[role]:
        assert row.effect(phase, "lower") == opposite[row.effect(phase)]  # type: ignore[arg-type]


def moved(**rule_says: str) -> Change:
    effects = {phase: rule_says.get(phase) for phase in PHASES}
    return Change("x", Decimal(1), Decimal(2), 1, "", "rule", 0, rule=effects)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("says", "feels", "helped", "fed"),
    [
        ({"entry": "looser"}, "tight entry", True, False),
        ({"entry": "looser"}, "loose entry", False, True),
        ({"entry": "looser"}, "very loose entry", False, True),
        ({"entry": "looser"}, "loose exit", False, False),
        ({"entry": "none"}, "tight entry", False, False),
        ({}, "tight", False, False),
        ({"entry": "looser"}, "tight", True, False),
        ({"entry": "looser", "exit": "tighter"}, "tight", False, False),
        ({"exit": "tighter"}, "tight", False, True),
    ],
)
def test_helps_and_feeds(says: dict[str, str], feels: str, helped: bool, fed: bool) -> None:
    change, felt = moved(**says), complaint(feels)
    assert (helps(change, felt), feeds(change, felt)) == (helped, fed)
    assert feeds_by(change.rule, felt) == fed


def test_cure() -> None:
    assert (cure("tight"), cure("loose")) == ("looser", "tighter")


def test_goes_with_banking(garage_with: Garages) -> None:
    garage = garage_with("")
    assert goes_with_banking(garage, "spring.lr")
    assert goes_with_banking(garage, "spring.rear_split")
    assert not goes_with_banking(garage, "spring.rf")
    assert not goes_with_banking(garage, "nonsense")
