"""Two setups held against each other, by lines drawn by hand: what is computed, and what is said of it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from producer.model.lap_figures import beyond_doubt
from producer.model.library import Case
from producer.model.stints import Comparison, Interval, Total
from producer.stints.gather import evidence

Two = Callable[..., Case]
Drawn = tuple[int, float, float]


def line(laps: int, start: float, falloff: float, wiggle: float = 0.0) -> list[float]:
    """Laps on a line, and a little above and below it in turn."""
    around = (0.0, 1.0, -1.0, 0.5, -0.5)
    return [start + falloff * lap + wiggle * around[lap % 5] for lap in range(1, laps + 1)]


def comparison(case: Case) -> Comparison:
    found = evidence(case)
    assert found is not None
    assert found.comparison is not None
    return found.comparison


def test_the_worked_example(two: Two) -> None:
    """30.00 + 0.050 n against 30.30 + 0.030 n: equal pace at lap 15, level totals after 29, ahead from 30."""
    found = comparison(two(line(40, 30.00, 0.050), line(40, 30.30, 0.030)))
    assert found.crossover_lap == pytest.approx(15)
    assert found.interval is not None
    assert tuple(found.interval) == pytest.approx((15, 15), abs=1e-3)
    assert found.ahead_from_lap == 30
    totals = {one.laps: one.seconds for one in found.totals}
    # 0.3 n - 0.02 n (n + 1) / 2
    assert totals == pytest.approx({10: 1.9, 20: 1.8, 40: -4.4})
    assert found.falloff_difference == pytest.approx(-0.02)
    assert found.laps == 40
    assert found.title == "Long run is ahead from lap 30"


def test_its_sentences(two: Two) -> None:
    found = comparison(two(line(40, 30.00, 0.050, 0.08), line(40, 30.30, 0.030, 0.08)))
    assert found.crossover_text.startswith("Equal pace at lap 15 (95 %: lap 13 to 16, Fieller).")
    assert found.ahead_text.startswith("Total time: the long run is ahead from lap 30 (95 %: lap ")
    assert found.paragraph == (
        "Over ten laps the long run is 1.9\u00a0s slower, give or take 0.4. "
        "The long run is the quicker of the two from about lap 15. "
        "In total time the long run is ahead from about lap 30. "
        "Over forty laps the long run is 4.4\u00a0s faster, give or take 1.0."
    )
    assert "Over ten laps the long run is 1.9\u00a0s slower, give or take 0.4." in found.may
    assert "The long run falls off by 0.020\u00a0s a lap less, give or take 0.002\u00a0s." not in found.may
    assert "The long run falls off by 0.020\u00a0s a lap less, give or take 0.002." in found.may
    assert found.may_not[0].startswith("Nothing about more than 40\u00a0laps")


@pytest.mark.parametrize(
    ("short", "long", "crossover", "ahead", "title"),
    [
        # The second is quicker from the first lap on.
        ((20, 31, 0.03), (20, 30.8, 0.02), None, 1, "Long run is ahead from the first lap"),
        # It never is.
        ((20, 31, 0.03), (20, 31.5, 0.04), None, None, "Short run is ahead for all 20\u00a0laps"),
        # It begins ahead, is caught in pace, and still is ahead in the end.
        ((18, 31, 0.02), (18, 30.7, 0.05), 10, 1, "Long run is ahead from the first lap"),
        # It begins ahead, is caught, and is behind in the end.
        ((40, 31, 0.02), (40, 30.7, 0.05), 10, None, "Short run is ahead from lap 20"),
        # Its pace is better at lap 15 of 20, its total not yet.
        ((20, 30, 0.05), (20, 30.3, 0.03), 15, None, "Long run is quicker from lap 15, not ahead by lap 20"),
        # Equal pace would come past what was driven.
        ((20, 30, 0.05), (20, 30.6, 0.03), None, None, "Short run is ahead for all 20\u00a0laps"),
        # Nothing parts them.
        ((20, 30, 0.05), (20, 30, 0.05), None, None, "Short run and Long run cannot be told apart"),
    ],
)
def test_how_it_may_go(
    two: Two, short: Drawn, long: Drawn, crossover: float | None, ahead: int | None, title: str
) -> None:
    found = comparison(two(line(*short, 0.02), line(*long, 0.02)))
    assert found.crossover_lap == (pytest.approx(crossover, abs=0.1) if crossover else None)
    assert (found.interval is None) == (crossover is None)
    assert found.ahead_from_lap == ahead
    assert found.title == title


def test_paces_that_meet_nobody_knows_where_are_not_claimed_to(two: Two) -> None:
    """Equal pace has its interval, but that is as long as the stint."""
    found = comparison(two(line(20, 30, 0.04, 0.2), line(20, 30.1, 0.02, 0.2)))
    assert found.crossover_lap is not None
    assert found.interval is not None
    assert not found.paces_cross
    assert found.crossover_text == "Equal pace at lap 5 (95 %: from before lap 1 to lap 10, Fieller)."
    assert "Who is quicker from which lap: equal pace may lie anywhere from before lap 1 to lap 10." in found.may_not
    assert not any("the quicker of the two" in one for one in (*found.may, found.paragraph, found.title))


def test_laps_that_turn_are_said_not_to_be_straight(two: Two, made: Any) -> None:
    bent = made.times(3, 40, 31.0, 0.02, bend=(23, 0.06))
    found = comparison(two(line(40, 31, 0.03, 0.05), bent))
    (said,) = (one for one in found.may_not if "straight" in one)
    assert said.startswith("How far apart single laps are: the laps of the long run turn at about lap 2")
    straight = comparison(two(line(40, 31, 0.03, 0.05), line(40, 31, 0.04, 0.05)))
    assert not any("straight" in one for one in straight.may_not)


def test_a_setup_driven_once_is_one_evening(case_of: Callable[..., Case], made: Any) -> None:
    stints = "".join(f"  - {{ setup: {setup}, file: {file}.csv }}\n" for setup, file in
                     (("short", "a"), ("short", "b"), ("long", "c"), ("long", "d")))  # fmt: skip
    files = {f"{file}.csv": made.csv(line(20, 30, 0.05, 0.02)) for file in "abcd"}
    once = "Nothing about another evening: {} was driven once, and only the scatter from lap to lap is counted."
    for count, said in (
        (4, "Nothing about another driver: only the scatter from lap to lap is counted."),
        (3, once.format("the long run")),
    ):
        kept = "".join(stints.splitlines(keepends=True)[:count])
        assert comparison(case_of(kept, files)).may_not[-1] == said


def test_it_makes_no_difference_which_setup_is_written_first(two: Two) -> None:
    short, long = line(40, 30.00, 0.050, 0.08), line(40, 30.30, 0.030, 0.08)
    found, turned = comparison(two(short, long)), comparison(two(long, short))
    assert (turned.ahead_from_lap, turned.first_ahead_from) == (None, found.ahead_from_lap)
    assert turned.first_ahead_interval == found.ahead_interval
    assert turned.title == "Short run is ahead from lap 30"  # the names stay, the laps are the other's
    assert turned.ahead_text == found.ahead_text.replace("long", "short")
    assert "In total time the short run is ahead from about lap 30." in turned.paragraph
    assert (found.passing, turned.passing) == (
        ("second", 30, found.ahead_interval),
        ("first", 30, found.ahead_interval),
    )


def test_nobody_passes_who_leads_from_the_start_or_only_by_chance(two: Two) -> None:
    assert comparison(two(line(20, 31, 0.03, 0.02), line(20, 30.8, 0.02, 0.02))).passing is None
    assert comparison(two(line(20, 31, 0.03, 0.02), line(20, 31.5, 0.04, 0.02))).passing is None
    level = comparison(two(line(20, 31, 0.02, 0.3), line(20, 30.9, 0.03, 0.3)))
    assert (level.passing, level.first_ahead_from) == (None, None)


def test_what_is_beyond_doubt_does_not_look_like_a_doubt() -> None:
    sure, level = Total(10, -0.53, Interval(-1.02, -0.04)), Total(10, -0.48, Interval(-0.98, 0.02))
    assert (sure.sure, sure.figures) == (True, ("0.53", "0.49"))
    assert (level.sure, level.figures) == (False, ("0.5", "0.5"))
    assert Total(10, -3.1, Interval(-3.8, -2.4)).figures == ("3.1", "0.7")
    assert beyond_doubt(-0.0034, 0.0031) == ("0.0034", "0.0031")
    assert beyond_doubt(0.0364, 0.0021) == ("0.036", "0.002")
    assert beyond_doubt(0.001, 0.0000) == ("0.001", "0.001")


def test_past_the_laps_driven_is_said_to_be_a_guess(two: Two) -> None:
    found = comparison(two(line(20, 30, 0.05, 0.02), line(20, 30.6, 0.03, 0.02)))
    assert (round(found.crossover_beyond or 0), found.ahead_beyond) == (30, 60)
    assert found.crossover_text.endswith("if both went on as they did, at about lap 30, not driven.")
    assert found.ahead_text.endswith("if both went on as they did, from about lap 60, not driven.")
    assert not any("30" in one or "60" in one for one in found.may)


def test_a_crossing_far_past_the_laps_driven_is_not_even_guessed(two: Two) -> None:
    found = comparison(two(line(20, 30, 0.05, 0.02), line(20, 31.2, 0.03, 0.02)))
    assert (found.crossover_beyond, found.ahead_beyond) == (None, None)
    assert found.crossover_text == "Equal pace: none within the 20\u00a0laps driven."
    assert found.ahead_text == "Total time: the long run is not ahead within the 20\u00a0laps driven."


def test_only_laps_that_both_have_driven_count(two: Two) -> None:
    found = comparison(two(line(40, 30, 0.05, 0.02), line(15, 30.3, 0.03, 0.02)))
    assert found.laps == 15
    assert [one.laps for one in found.totals] == [10, 15]
    assert any("more than 15" in one for one in found.may_not)


def test_nothing_is_claimed_from_few_laps(two: Two) -> None:
    found = comparison(two(line(20, 30, 0.05, 0.02), line(8, 30.3, 0.03, 0.02)))
    assert (found.may, found.title) == ((), "Too few laps for a comparison")
    assert "The long run has eight laps that count; a claim needs 10." in found.may_not
    assert "too few laps" in found.paragraph
    assert found.crossover_text == "Equal pace: not told from so few laps."


def test_one_setup_alone_is_compared_with_nothing(case_of: Callable[..., Case], made: Any) -> None:
    laps = made.csv(line(20, 30, 0.05, 0.02))
    for files in ({"a.csv": laps}, {"a.csv": laps, "b.csv": "1,31.5\n2,31.6\n"}, {"a.csv": laps, "b.csv": "x"}):
        found = evidence(case_of("  - { setup: short, file: a.csv }\n  - { setup: long, file: b.csv }\n", files))
        assert found is not None
        assert (found.comparison, len(found.lines), len(found.stints)) == (None, 1, 2)
        assert found.stints[1].refusal


@pytest.mark.parametrize(
    ("more", "said"),
    [
        (", conditions: { tyre_use: gentle }", "Tyre use for me was gentle in one and hard in the other."),
        (", conditions: { tyre_use: { field: usual } }", "Tyre use for field was usual in one and hard in the other."),
    ],
)
def test_other_conditions_are_no_evidence(two: Two, more: str, said: str) -> None:
    found = comparison(two(line(20, 30, 0.05, 0.02), line(20, 30.3, 0.03, 0.02), more))
    assert not found.comparable
    assert said in found.why_not
    assert (found.may, found.title) == ((), "Driven differently: no comparison")
    assert "driven differently" in found.paragraph
    assert said in found.may_not
    assert found.ahead_text == "Total time: not told, they were driven differently."


def test_another_driving_style_is_no_evidence(case_of: Callable[..., Case], made: Any) -> None:
    stints = "  - { setup: short, file: a.csv, driving: smooth }\n  - { setup: long, file: b.csv, driving: hard }\n"
    files = {"a.csv": made.csv(line(20, 30, 0.05, 0.02)), "b.csv": made.csv(line(20, 30.3, 0.03, 0.02))}
    found = comparison(case_of(stints, files))
    assert not found.comparable
    assert "three to four tenths a lap (common practice, no source)" in found.why_not[0]
    assert comparison(case_of(stints.replace("hard", " Smooth"), files)).comparable
    assert comparison(case_of(stints.replace(", driving: hard", ""), files)).comparable


def test_of_several_stints_those_driven_alike_are_taken(case_of: Callable[..., Case], made: Any) -> None:
    stints = (
        "  - { setup: short, file: a.csv, driving: hard }\n"
        "  - { setup: short, file: b.csv, driving: smooth }\n"
        "  - { setup: long, file: c.csv, driving: smooth }\n"
    )
    files = {
        "a.csv": made.csv(line(40, 29, 0.05, 0.02)),
        "b.csv": made.csv(line(20, 30, 0.05, 0.02)),
        "c.csv": made.csv(line(20, 30.3, 0.03, 0.02)),
    }
    found = evidence(case_of(stints, files))
    assert found is not None
    assert [one.stints for one in found.lines] == [(1,), (2,)]
    assert found.comparison is not None
    assert found.comparison.crossover_lap == pytest.approx(15, abs=0.1)
    assert [one.number for one in found.stints] == [1, 2, 1]


def test_two_stints_of_one_setup_make_one_line(case_of: Callable[..., Case], made: Any) -> None:
    stints = (
        "  - { setup: short, file: a.csv, fuel: 18 gal }\n"
        "  - { setup: short, file: b.csv }\n"
        "  - { setup: long, file: c.csv, fuel: 20 gal }\n"
    )
    files = {
        "a.csv": made.csv(line(20, 30.0, 0.05, 0.02)),
        "b.csv": made.csv(line(20, 30.1, 0.05, 0.02)),
        "c.csv": made.csv(line(20, 30.3, 0.03, 0.02)),
    }
    found = evidence(case_of(stints, files))
    assert found is not None
    assert found.lines[0].laps == 40
    assert found.lines[0].line.at(0) == pytest.approx(30.05, abs=0.01)
    assert len(found.lines[0].band) == 20
    assert found.comparison is not None
    assert found.comparison.notes == (
        "The long run began with 20\u00a0gal of fuel, the short run with 18\u00a0gal.",
        "The two stints of the short run are 0.10\u00a0s a lap apart at lap 10.",
    )
