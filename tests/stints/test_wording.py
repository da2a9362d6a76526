"""Figures and names in the middle of a sentence."""

from __future__ import annotations

import pytest

from producer.stints.wording import count, laps, the, thousandths


@pytest.mark.parametrize(
    ("numbers", "text"),
    [
        ((7,), "lap 7"),
        ((7, 9), "laps 7 and 9"),
        ((9, 7), "laps 7 and 9"),
        ((7, 8), "laps 7 and 8"),
        ((1, 7, 8), "laps 1, 7 and 8"),
        ((1, 2, 3, 7, 8), "laps 1 to 3, 7 and 8"),
        ((1, 2, 3, 9), "laps 1 to 3 and 9"),
        ((1, 5, 9), "laps 1, 5 and 9"),
    ],
)
def test_laps(numbers: tuple[int, ...], text: str) -> None:
    assert laps(numbers) == text


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("Long run", "the long run"),
        ("long run", "the long run"),
        ("Short-track setup", "the short-track setup"),
        ("Qualifying", "the qualifying setup"),
        ("Qualifying run", "the qualifying run"),
        ("RF sheet", "the RF sheet"),
        ("The quick one", "the quick one"),
        ("The Marrow special", "the Marrow special"),
        ("Jo's car", "Jo's car"),
        ("Jo\u2019s long run", "Jo\u2019s long run"),
        ("RR saver", "RR saver"),
        ("Baseline", "Baseline"),
        ("Plan B", "Plan B"),
        ("Race", "Race"),
        ("Setup", "Setup"),
        ("mine", "mine"),
        ("", ""),
    ],
)
def test_the(name: str, text: str) -> None:
    assert the(name) == text


def test_a_minus_is_a_minus() -> None:
    assert thousandths(-0.0344) == "\u22120.034\u00a0s"
    assert thousandths(-0.0001) == "0.000\u00a0s"
    assert (count(1, "lap"), count(3, "lap"), count(24, "lap")) == ("one lap", "three laps", "24\u00a0laps")
