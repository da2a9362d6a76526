"""From an episode to its evidence: several setups, order, laws that hold for any two stints."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from producer.model.library import Case
from producer.stints.gather import evidence, reading_findings
from producer.stints.stints_json import stints_json

Cases = Callable[..., Case]
QUALIFYING = "  - { setup: quick, name: Qualifying, purpose: qualifying, based_on: short, changes: {} }\n"


def laps(made: Any, seed: int, start: float, falloff: float, count: int = 25) -> str:
    return str(made.csv(made.times(seed, count, start, falloff)))


def test_no_stints_no_evidence(case_of: Cases) -> None:
    assert evidence(case_of("  []\n", {})) is None


def test_the_first_setup_is_compared_with_each_other_one(case_of: Cases, made: Any) -> None:
    stints = "  - { setup: long, file: c.csv }\n  - { setup: quick, file: b.csv }\n  - { setup: short, file: a.csv }\n"
    files = {name: laps(made, seed, 31, 0.03) for seed, name in enumerate(("a.csv", "b.csv", "c.csv"))}
    found = evidence(case_of(stints, files, setups=QUALIFYING))
    assert found is not None
    # The episode's order, whatever that of the stints.
    assert [one.setup for one in found.lines] == ["short", "long", "quick"]
    assert [(one.first, one.second) for one in found.comparisons] == [("short", "long"), ("short", "quick")]
    assert [one.setup for one in found.stints] == ["long", "quick", "short"]


def test_short_and_long_are_compared_behind_another_first(case_of: Cases, made: Any) -> None:
    stints = "".join(f"  - {{ setup: {one}, file: {one}.csv }}\n" for one in ("quick", "short", "long"))
    files = {f"{one}.csv": laps(made, seed, 31, 0.03) for seed, one in enumerate(("quick", "short", "long"))}
    found = evidence(case_of(stints, files, setups=QUALIFYING, first=True))
    assert found is not None
    pairs = [(one.first, one.second) for one in found.comparisons]
    assert pairs == [("quick", "short"), ("quick", "long"), ("short", "long")]


@pytest.mark.parametrize("seed", range(20))
def test_turned_round_it_says_the_same(case_of: Cases, made: Any, seed: int) -> None:
    """Second against first is first against second with the other sign."""
    one, other = laps(made, 2 * seed, 31, 0.05), laps(made, 2 * seed + 1, 31.2, 0.03)
    stints = "  - { setup: short, file: a.csv }\n  - { setup: long, file: b.csv }\n"
    found = evidence(case_of(stints, {"a.csv": one, "b.csv": other}))
    turned = evidence(case_of(stints, {"a.csv": other, "b.csv": one}))
    assert found is not None
    assert turned is not None
    forth, back = found.comparison, turned.comparison
    assert forth is not None
    assert back is not None
    assert forth.crossover_lap == pytest.approx(back.crossover_lap)
    assert tuple(forth.interval or ()) == pytest.approx(tuple(back.interval or ()))
    assert [one.seconds for one in forth.totals] == pytest.approx([-one.seconds for one in back.totals])
    assert forth.falloff_difference == pytest.approx(-back.falloff_difference)
    assert not (forth.ahead_from_lap and back.ahead_from_lap)


@pytest.mark.parametrize("seed", range(20))
def test_totals_are_what_the_lines_add_up_to(case_of: Cases, made: Any, seed: int) -> None:
    files = {"a.csv": laps(made, 2 * seed, 31, 0.05), "b.csv": laps(made, 2 * seed + 1, 31.2, 0.03)}
    found = evidence(case_of("  - { setup: short, file: a.csv }\n  - { setup: long, file: b.csv }\n", files))
    assert found is not None
    assert found.comparison is not None
    short, long = found.lines
    for one in found.comparison.totals:
        added = sum(long.line.at(lap) - short.line.at(lap) for lap in range(1, one.laps + 1))
        assert one.seconds == pytest.approx(added, abs=1e-9)
    ahead = found.comparison.ahead_from_lap
    if ahead is not None and ahead > 1:
        gaps = [sum(long.line.at(n) - short.line.at(n) for n in range(1, lap + 1)) for lap in (ahead - 1, ahead)]
        assert gaps[0] >= -1e-9
        assert gaps[1] < 0


def test_laps_that_are_all_the_same_keep_their_pace(case_of: Cases, made: Any) -> None:
    found = evidence(case_of("  - { setup: short, file: a.csv }\n", {"a.csv": made.csv([31.5] * 20)}))
    assert found is not None
    assert found.stints[0].may[0] == "The short run starts at 31.50\u00a0s and keeps that pace."
    assert found.stints[0].may_not == ()


def test_a_bend_and_a_doubtful_lap_are_told(case_of: Cases, made: Any) -> None:
    bent = made.csv(made.times(3, 40, 31, 0.02, bend=(23, 0.08)))
    found = evidence(case_of("  - { setup: short, file: a.csv }\n", {"a.csv": bent}))
    assert found is not None
    assert any(one.startswith("From about lap 2") for one in found.stints[0].may)
    assert 20 <= stints_json(found, "us")["stints"][0]["breakpoint"]["lap"] <= 26


def test_a_file_is_complained_about_once(case_of: Cases) -> None:
    case = case_of("  - { setup: short, file: a.csv }\n  - { setup: long, file: a.csv }\n", {"a.csv": "1,31\n2,oops\n"})
    assert [(one.code, one.where) for one in reading_findings(case)] == [("lap-unreadable", "stints[0].file")]


@pytest.mark.parametrize(("units", "unit"), [("us", "gal"), ("metric", "L")])
def test_fuel_is_in_the_stint_s_unit_else_the_channel_s(case_of: Cases, units: str, unit: str) -> None:
    fuelled = "lap,time,fuel\n" + "".join(f"{lap},{31 + lap * 0.03:.2f},{40 - lap}\n" for lap in range(1, 21))
    found = evidence(case_of("  - { setup: short, file: a.csv }\n", {"a.csv": fuelled}, units=units))
    own = evidence(case_of("  - { setup: short, file: a.csv, fuel: 100 kg }\n", {"a.csv": fuelled}, units=units))
    assert found is not None
    assert own is not None
    assert (found.stints[0].fuel_unit, own.stints[0].fuel_unit) == (unit, "kg")
    gains = [one.stints[0].pace.fuel.gain for one in (found, own)]
    weight = {"gal": 3.785411784 * 0.74, "L": 0.74}[unit]
    assert gains[0] / gains[1] == pytest.approx(weight)


def test_the_author_s_seconds_for_a_lap_of_fuel(case_of: Cases, made: Any) -> None:
    files = {"a.csv": laps(made, 1, 31, 0.03)}
    found = evidence(case_of("  - { setup: short, file: a.csv, lap_of_fuel: 0.006 }\n", files))
    assert found is not None
    assert any("by the author's 0.006\u00a0s a lap of fuel" in one for one in found.stints[0].may)
