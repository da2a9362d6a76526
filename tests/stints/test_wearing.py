"""Wear with two setups: only what readings in whole percents can tell."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from producer.model.library import Case
from producer.stints.gather import evidence
from producer.stints.wearing import wears_more

Cases = Callable[..., Case]


def asked(case_of: Cases, made: Any, short: str, long: str, laps: tuple[int, int] = (20, 20)) -> str | None:
    stints = f"  - {{ setup: short, file: a.csv{short} }}\n  - {{ setup: long, file: b.csv{long} }}\n"
    files = {f"{name}.csv": made.csv([31.0] * count) for name, count in zip("ab", laps, strict=True)}
    found = evidence(case_of(stints, files))
    assert found is not None
    return wears_more(found, "short", "long", "rr")


def test_more_by_more_than_the_readings_may_be_off(case_of: Cases, made: Any) -> None:
    assert (
        asked(case_of, made, ", wear: { rr: 10 }", ", wear: { rr: 16 }") == "0.30 % a lap more (0.80 instead of 0.50)"
    )
    # 12 in 10 laps is more than 20 in 20.
    found = asked(case_of, made, ", wear: { rr: 20 }", ", wear: { rr: 12 }", (20, 10))
    assert found == "0.20 % a lap more (1.20 instead of 1.00)"


@pytest.mark.parametrize(
    ("short", "long", "laps"),
    [
        (", wear: { rr: 10 }", ", wear: { rr: 11 }", (20, 20)),  # 10.5 in both, perhaps
        (", wear: { rr: 10 }", ", wear: { rr: 8 }", (20, 20)),
        (", wear: { rr: 20 }", ", wear: { rr: 24 }", (20, 40)),
        (", wear: { rf: 10 }", ", wear: { rr: 20 }", (20, 20)),
        ("", ", wear: { rr: 20 }", (20, 20)),
        (", wear: { rr: 10 }, driving: smooth", ", wear: { rr: 20 }, driving: hard", (20, 20)),
        (", wear: { rr: 10 }", ", wear: { rr: 20 }, conditions: { tyre_use: usual }", (20, 20)),
    ],
)
def test_not_to_be_told(case_of: Cases, made: Any, short: str, long: str, laps: tuple[int, int]) -> None:
    assert asked(case_of, made, short, long, laps) is None
