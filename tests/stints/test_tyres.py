"""Temperatures and wear: what is said, which way to move, and what stays silent."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

import pytest

from producer.jobs.evidence import evidence_of
from producer.model.library import Case
from producer.model.stints import Stint
from producer.model.tyre_readings import TyreFinding
from producer.stints.gather import evidence

Cases = Callable[..., Case]
EVEN = "Front and rear wear evenly."
FRONT = "The front tyres wear 8.0 points more than the rear ones: over a long run the car gets tighter."
REAR = "The rear tyres wear 7.5 points more than the front ones: over a long run the car gets looser."
LAPS = "".join(f"{lap},{31 + lap / 50:.2f}\n" for lap in range(1, 21))


def stint(case_of: Cases, more: str, units: str = "us") -> Stint:
    found = evidence(case_of(f"  - {{ setup: short, file: a.csv, {more} }}\n", {"a.csv": LAPS}, units=units))
    assert found is not None
    return found.stints[0]


def said(found: Stint) -> list[tuple[str, str | None, str | None]]:
    return [(one.about, one.corner, one.way) for one in found.tyres.findings if one.about != "sides"]


@pytest.mark.parametrize(
    ("heat", "expected"),
    [
        ("rf: [200, 206, 202]", []),
        ("rf: [200, 206.5, 203]", []),
        ("rf: [200, 206.1, 202]", [("pressure", "rf", "lower")]),
        ("rf: [206, 200, 206]", [("pressure", "rf", "raise")]),
        ("lr: [180, 190, 180]", [("pressure", "lr", "lower")]),
        ("rf: [190, 200, 210]", []),
        ("rf: [190, 200, 210.5]", [("camber", "rf", "raise")]),
        ("rf: [212, 200, 190]", [("camber", "rf", "lower")]),
        ("lf: [205, 195, 184]", [("camber", "lf", "lower")]),
        ("lf: [184, 195, 205]", [("camber", "lf", "raise")]),
        ("rf: [190, 215, 215]", [("pressure", "rf", "lower"), ("camber", "rf", "raise")]),
        ("rf: [190, 200]", []),
    ],
)
def test_pressure_and_camber(case_of: Cases, heat: str, expected: list[tuple[str, str, str]]) -> None:
    assert said(stint(case_of, f"temperatures: {{ {heat} }}")) == expected


@pytest.mark.parametrize(
    ("wear", "says"),
    [
        ("rf: 21, rr: 19", "The right front tyre gives up first: 21\u00a0% used after 20 laps, all of it by about "
         "lap 95 if it goes on like that."),
        ("lf: 9, rf: 21, rr: 21", "The right front and right rear tyres give up first: 21\u00a0% used after 20 laps, "
         "all of them by about lap 95 if they go on like that."),
        ("lf: 9, rf: 9, lr: 9", "The left front, right front and left rear tyres give up first: 9\u00a0% used"),
        ("lf: 0, rf: 0", "No tyre shows wear."),
    ],
)  # fmt: skip
def test_which_tyre_gives_up_first(case_of: Cases, wear: str, says: str) -> None:
    found = stint(case_of, f"wear: {{ {wear} }}").tyres.wear
    assert found is not None
    assert found.text.startswith(says)


@pytest.mark.parametrize(
    ("heat", "expected"), [("[90, 95, 101.1]", []), ("[90, 95, 101.2]", [("camber", "rf", "raise")])]
)
def test_limits_are_differences_of_temperature(case_of: Cases, heat: str, expected: list[object]) -> None:
    """20 °F apart are 11.1 °C apart, not minus 6.7 °C."""
    assert said(stint(case_of, f"temperatures: {{ rf: {heat} }}", "metric")) == expected


def test_sentences(case_of: Cases) -> None:
    found = stint(case_of, "temperatures: { lf: [205, 195, 184], rf: [200, 208, 202] }")
    texts = [one.text for one in found.tyres.findings]
    assert texts == [
        "The outside of the left front tyre is 21\u00a0°F hotter than its inside: less camber there.",
        "The middle of the right front tyre is 7\u00a0°F hotter than its edges: less pressure there.",
    ]
    assert found.tyres.temperatures[0].spread == 21
    assert found.tyres.temperatures[0].finding == texts[0]


def test_sides_and_ends(case_of: Cases) -> None:
    heat = "lf: [180, 180, 180], rf: [230, 230, 230], lr: [170, 170, 170], rr: [{0}, {0}, {0}]"
    hot = stint(case_of, f"temperatures: {{ {heat.format(200)} }}").tyres.findings
    assert [one.text for one in hot] == [
        "The right side runs 40\u00a0°F hotter than the left.",
        "The front tyres run 20\u00a0°F hotter than the rear ones: the front of the car works harder, "
        "as on a car that is tight.",
    ]
    even = stint(case_of, f"temperatures: {{ {heat.format(225)} }}").tyres.findings
    assert [one.about for one in even] == ["sides"]


@pytest.mark.parametrize(
    ("wear", "front_to_rear", "first", "lasts", "text"),
    [
        ("lf: 12, rf: 21, lr: 11, rr: 19", "1.5", "rf", 95, EVEN),
        ("lf: 12, rf: 26, lr: 9, rr: 19", "5", "rf", 76, EVEN),
        ("lf: 14, rf: 30, lr: 9, rr: 19", "8", "rf", 66, FRONT),
        ("lf: 8, rf: 14, lr: 12, rr: 25", "-7.5", "rr", 80, REAR),
    ],
)
def test_wear(case_of: Cases, wear: str, front_to_rear: str, first: str, lasts: int, text: str) -> None:
    found = stint(case_of, f"wear: {{ {wear} }}").tyres
    assert found.wear is not None
    assert (found.wear.front_to_rear, found.wear.first) == (Decimal(front_to_rear), first)
    assert found.wear.lasts == lasts
    assert [one.text for one in found.findings] == [text]


@pytest.mark.parametrize("wear", ["rf: 21", "lf: 0, rf: 0, lr: 0, rr: 0"])
def test_wear_that_says_little(case_of: Cases, wear: str) -> None:
    found = stint(case_of, f"wear: {{ {wear} }}").tyres.wear
    assert found is not None
    assert found.front_to_rear == (None if wear == "rf: 21" else 0)
    assert (found.first is None) == (wear != "rf: 21")


def test_how_long_they_last_is_not_guessed_from_a_few_laps(case_of: Cases) -> None:
    stints = "  - { setup: short, file: a.csv, wear: { rf: 8, rr: 9 } }\n"
    found = evidence(case_of(stints, {"a.csv": "".join(f"{lap},31.5\n" for lap in range(1, 10))}))
    assert found is not None
    worn = found.stints[0].tyres.wear
    assert worn is not None
    assert (worn.lasts, worn.text) == (None, "The right rear tyre is used most: 9\u00a0%.")


def test_nothing_was_noted(case_of: Cases) -> None:
    found = stint(case_of, "driving: smooth").tyres
    assert (found.temperatures, found.wear, found.findings) == ((), None, ())


def answers(case: Case) -> list[tuple[str, str, str] | None]:
    found = evidence_of(case)
    assert found is not None
    moved = [one.change for one in found.stints[0].tyres.findings if one.way]
    return [(one.parameter, str(one.start), str(one.to)) if one else None for one in moved]


@pytest.mark.parametrize(
    ("heat", "expected"),
    [
        ("rf: [200, 208, 202]", ("pressure.rf", "43", "42.5")),
        ("rf: [208, 200, 208]", None),  # at the garage's limit already
        ("rf: [180, 195, 205]", ("camber.rf", "-3", "-2.75")),
        ("lf: [205, 195, 180]", ("camber.lf", "3", "2.75")),
        ("lf: [190, 200, 190]", None),  # the setup has no value for it
        ("lr: [190, 200, 190]", None),  # the garage has no such setting
        ("lr: [180, 190, 201]", None),
    ],
)
def test_one_click_on_the_garage_s_grid(case_of: Cases, heat: str, expected: tuple[str, str, str] | None) -> None:
    case = case_of(f"  - {{ setup: short, file: a.csv, temperatures: {{ {heat} }} }}\n", {"a.csv": LAPS})
    assert answers(case) == [expected]


def test_no_finding_moves_what_it_does_not_name(case_of: Cases) -> None:
    found: tuple[TyreFinding, ...] = stint(case_of, "wear: { lf: 1, rf: 30, lr: 1, rr: 1 }").tyres.findings
    assert [(one.role, one.way, one.change) for one in found] == [("", None, None)]
