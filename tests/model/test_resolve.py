"""Inheritance: values through `based_on`, what a reason compares, which reasons still hold."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.library.records import build
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.resolve import circle, plain_values, sheets
from producer.model.sheet import Sheet

GARAGE = """\
format: 1
garage: g
name: G
simulation: { version: "1" }
pages: [weights, chassis]
parameters:
  nose: { page: weights, name: Nose, unit: "%", min: 46, max: 56, step: 0.5, default: 50 }
  cross: { page: weights, name: Cross, unit: "%", min: 46, max: 56, step: 0.5 }
  spring:
    page: chassis
    name: spring
    unit: lb/in
    corners:
      lf: { min: 300, max: 1300, step: 25, default: 700 }
      rf: { min: 300, max: 1300, step: 25, default: 750 }
      lr: { min: 100, max: 500, step: 25, default: 225 }
      rr: { min: 100, max: 500, step: 25, default: 275 }
"""
HEAD = "format: 1\nepisode: e\ntitle: E\ntrack: t\ngarage: g\nsetups:\n"
SHORT = """\
  - setup: short
    name: Short
    values: { nose: 50.5, cross: 52, spring: { lf: 700, rf: 725, lr: 225, rr: 300 } }
"""


@pytest.fixture(scope="module")
def garage() -> Garage:
    record, _, found = build(Garage, "g.yaml", GARAGE)
    assert record is not None, found
    return record


def episode(setups: str) -> Episode:
    record, _, found = build(Episode, "e.yaml", HEAD + setups)
    assert record is not None, found
    return record


def resolved(garage: Garage, setups: str) -> dict[str, Sheet]:
    return {one.id: one for one in sheets(episode(setups), garage)}


def test_values_come_through(garage: Garage) -> None:
    found = resolved(
        garage,
        SHORT
        + "  - { setup: long, name: L, based_on: short, changes: { spring: { rf: 775 }, nose: 50 } }\n"
        + "  - { setup: quick, name: Q, based_on: long, changes: { spring: { rr: 350 } } }\n",
    )
    assert [found["quick"].value(one) for one in ("nose", "spring.rf", "spring.rr", "spring.lf")] == [50, 775, 350, 700]
    assert list(found["quick"].values) == list(garage.settings)  # the garage's order, whatever was written
    assert found["quick"].differs(found["short"]) == ("nose", "spring.rf", "spring.rr")
    assert found["quick"].base_setup == "long"
    assert found["quick"].base == found["long"].values
    assert found["short"].base_setup is None
    assert found["short"].base["spring.rf"] == 750
    assert found["quick"].value("spring.rear_split") == 125
    assert found["short"].shown("spring.rear_split") == "75\u00a0lb/in"


def test_the_order_in_the_file_does_not_matter(garage: Garage) -> None:
    long = "  - { setup: long, name: L, based_on: short, changes: { nose: 50 } }\n"
    before, after = resolved(garage, long + SHORT), resolved(garage, SHORT + long)
    assert before["long"].values == after["long"].values
    assert list(before) == ["long", "short"]


def test_what_has_no_value_is_not_set(garage: Garage) -> None:
    sheet = resolved(garage, "  - { setup: a, name: A, values: { nose: 50, wing: 3, spring: 5 } }\n")["a"]
    assert dict(sheet.values) == {"nose": 50}
    assert sheet.shown("cross") == sheet.figure("spring.rear_split") == "not set"


@pytest.mark.parametrize(
    ("setups", "left"),
    [
        ("  - { setup: a, name: A, based_on: a }\n", []),
        ("  - { setup: a, name: A, based_on: b }\n  - { setup: b, name: B, based_on: a }\n", []),
        ("  - { setup: a, name: A, based_on: nowhere }\n" + SHORT, ["short"]),
        ("  - { setup: c, name: C, based_on: a }\n  - { setup: a, name: A, based_on: b }\n"
         "  - { setup: b, name: B, based_on: a }\n" + SHORT, ["short"]),
    ],
)  # fmt: skip
def test_broken_chains_have_no_sheet(garage: Garage, setups: str, left: list[str]) -> None:
    assert list(resolved(garage, setups)) == left


def test_circles_are_told() -> None:
    one = episode(
        "  - { setup: c, name: C, based_on: a }\n  - { setup: a, name: A, based_on: b }\n"
        "  - { setup: b, name: B, based_on: a }\n" + SHORT
    )
    found = {setup.setup: circle(setup, one) for setup in one.setups}
    assert found == {"c": ("c", "a", "b", "a"), "a": ("a", "b", "a"), "b": ("b", "a", "b"), "short": ()}


def test_a_hundred_setups_one_on_the_other(garage: Garage) -> None:
    rows = [f"  - {{ setup: s{n}, name: S, based_on: s{n - 1}, changes: {{ nose: 51 }} }}\n" for n in range(99, 0, -1)]
    found = resolved(garage, "".join(rows) + SHORT.replace("short", "s0"))
    assert len(found) == 100
    assert found["s99"].value("cross") == 52


def movement(
    garage: Garage, reason: str, setups: str = SHORT, last: str = ""
) -> tuple[str, str, str | None, str] | None:
    sheet = resolved(garage, setups + f"    reasons:\n      - {{ {reason}, because: x }}\n" + last)
    moves = next(reversed([one for one in sheet.values() if one.setup.reasons])).reasons[0].movements
    return (str(moves[0].start), str(moves[0].end), moves[0].direction, moves[0].against) if moves else None


LONG = SHORT + "  - setup: long\n    name: L\n    based_on: short\n    changes: { spring: { rf: 775, rr: 275 } }\n"


@pytest.mark.parametrize(
    ("setups", "reason", "expected"),
    [
        (SHORT, "for: spring.rf", ("750", "725", "lower", "default")),
        (SHORT, "for: spring.rf, compared_with: 700", ("700", "725", "raise", "number")),
        (SHORT, "for: spring.rear_split", ("50", "75", "raise", "default")),
        (SHORT, "for: spring.rear_split, is: 75", ("50", "75", "raise", "default")),
        (SHORT, "for: spring.lf", ("700", "700", None, "default")),
        (SHORT, "for: cross", None),  # the garage gives no default: nothing to compare with
        (LONG, "for: spring.rf", ("725", "775", "raise", "short")),
        (LONG, "for: spring.rf, compared_with: default", ("750", "775", "raise", "default")),
        (LONG, "for: spring.rear_split", ("75", "50", "lower", "short")),
        (LONG, "for: cross", ("52", "52", None, "short")),
        (SHORT, "for: spring.rf, compared_with: long", ("800", "725", "lower", "long")),
        (SHORT, "for: spring.rf, compared_with: nobody", None),
    ],
)
def test_what_a_reason_compares(
    garage: Garage, setups: str, reason: str, expected: tuple[str, str, str | None, str] | None
) -> None:
    later = "  - { setup: long, name: L, values: { spring: { rf: 800 } } }\n" if setups is SHORT else ""
    assert movement(garage, reason, setups, later) == expected


INHERITED = (
    SHORT
    + """\
    reasons:
      - { for: spring.rf, because: rf }
      - { for: spring.rear_split, because: split }
      - { for: weights, because: page }
      - { for: [spring.lf, spring.rf], because: both }
  - setup: long
    name: L
    based_on: short
    changes: { spring: { rf: 775, rr: 300 }, cross: 52.5 }
    reasons:
      - { for: nose, because: mine }
"""
)


def test_reasons_are_inherited_for_what_is_unchanged(garage: Garage) -> None:
    sheet = resolved(garage, INHERITED)["long"]
    assert [(one.because, one.inherited, one.targets, one.covers) for one in sheet.reasons] == [
        ("mine", False, ("nose",), ("nose",)),
        # rr is written again at the value it had: the split is unchanged
        ("split", True, ("spring.rear_split",), ("spring.rr", "spring.lr")),
        ("both", True, ("spring.lf",), ("spring.lf",)),
    ]
    assert all(one.setup == "short" for one in sheet.reasons if one.inherited)
    assert not any("spring.rf" in one.covers for one in sheet.reasons)


def test_a_changed_corner_ends_the_split_s_reason(garage: Garage) -> None:
    sheet = resolved(garage, INHERITED.replace("rr: 300 }, cross", "rr: 325 }, cross"))["long"]
    assert "split" not in [one.because for one in sheet.reasons]


values = st.fixed_dictionaries(
    {}, optional={name: st.integers(100, 500) for name in ("lf", "rf", "lr", "rr")}
)  # fmt: skip


@given(st.lists(values, min_size=1, max_size=5))
def test_the_last_word_along_the_chain_counts(changes: list[dict[str, int]]) -> None:
    record, _, _ = build(Garage, "g.yaml", GARAGE)
    assert record is not None
    rows, expected = [SHORT], {"lf": 700, "rf": 725, "lr": 225, "rr": 300}
    before = "short"
    for number, change in enumerate(changes):
        written = ", ".join(f"{corner}: {value}" for corner, value in change.items())
        rows.append(
            f"  - {{ setup: s{number}, name: S, based_on: {before}, changes: {{ spring: {{ {written} }} }} }}\n"
        )
        expected |= change
        before = f"s{number}"
    one = episode("".join(rows))
    sheet = sheets(one, record)[-1]
    assert {corner: sheet.value(f"spring.{corner}") for corner in expected} == expected
    assert plain_values(one.setups[-1], one, record) == sheet.values
    assert sheet.value("spring.rear_split") == Decimal(expected["rr"] - expected["lr"])
