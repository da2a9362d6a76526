"""Cues settled from wanted times: the cases, and that no two are ever shown at once."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.captions.settling import settle
from producer.captions.speed import too_fast
from producer.captions.srt import to_srt
from producer.model.cue import Cue, ReadingProfile

WEB = ReadingProfile.web()
SIX = "a b c d e f"  # needs 2000 ms


def spans(*cues: tuple[int, int, str]) -> list[tuple[int, int]]:
    settled = settle([Cue(start, end, (text,)) for start, end, text in cues], WEB)
    return [(cue.start_ms, cue.end_ms) for cue in settled]


CASES = [
    # as long as reading takes
    ([(1000, 0, SIX)], [(1000, 3000)]),
    # as long as wanted, up to the longest
    ([(1000, 4000, SIX)], [(1000, 4000)]),
    ([(1000, 60_000, SIX)], [(1000, 8000)]),
    # a short word has its shortest time
    ([(0, 0, "Hi")], [(0, 833)]),
    # gaps: large enough stays, too small is closed
    ([(0, 0, SIX), (2500, 0, SIX)], [(0, 2000), (2500, 4500)]),
    ([(0, 0, SIX), (2499, 0, SIX)], [(0, 2499), (2499, 4499)]),
    ([(0, 0, SIX), (2000, 0, SIX)], [(0, 2000), (2000, 4000)]),
    # or opened, where closing makes it too long
    ([(0, 60_000, SIX), (7100, 0, SIX)], [(0, 6600), (7100, 9100)]),
    # the next start cuts a cue short
    ([(0, 0, SIX), (1500, 0, SIX)], [(0, 1500), (1500, 3500)]),
    # never under the shortest: the next one waits
    ([(0, 0, SIX), (100, 0, SIX)], [(0, 833), (833, 2833)]),
    ([(0, 0, SIX), (0, 0, SIX), (0, 0, SIX)], [(0, 833), (833, 1666), (1666, 3666)]),
    # in order of start, nothing before zero
    ([(5000, 0, SIX), (-400, 0, SIX)], [(0, 2000), (5000, 7000)]),
    # without words
    ([(0, 5000, " "), (100, 0, SIX)], [(100, 2100)]),
    ([], []),
]


@pytest.mark.parametrize(("wanted", "settled"), CASES)
def test_settled(wanted: list[tuple[int, int, str]], settled: list[tuple[int, int]]) -> None:
    assert spans(*wanted) == settled


def test_lines_that_keep_the_profile_stay() -> None:
    assert settle([Cue(0, 0, ("Right front", "750 lb/in"))], WEB)[0].lines == ("Right front", "750 lb/in")


def test_a_long_text_becomes_several_cues_without_a_gap() -> None:
    text = "The bar helps it turn, and the spring keeps the nose down when you pick up the throttle in turn three."
    first, second = settle([Cue(1000, 0, (text,))], WEB)
    assert first.end_ms == second.start_ms
    assert too_fast(first, WEB) is None
    assert too_fast(second, WEB) is None


def test_a_long_text_shares_the_time_there_is() -> None:
    text = "The bar helps it turn, and the spring keeps the nose down when you pick up the throttle in turn three."
    settled = settle([Cue(0, 0, (text,)), Cue(3000, 0, ("Next",))], WEB)
    assert [cue.start_ms for cue in settled][-1] == 3000
    assert all(cue.duration_ms >= 833 for cue in settled)


WORDS = st.sampled_from(["the", "spring", "750 lb/in", "off.", "51.5 %", "stabilises"])
TIMES = st.integers(0, 60_000)
TEXTS = st.lists(WORDS, max_size=30).map(" ".join)
CUES = st.lists(st.builds(lambda start, end, text: Cue(start, end, (text,)), TIMES, TIMES, TEXTS))
PROFILES = st.builds(
    ReadingProfile,
    characters_per_line=st.integers(10, 45),
    shortest_ms=st.integers(1, 1500),
    gap_ms=st.integers(0, 900),
    longest_ms=st.integers(2400, 9000),
)


@given(CUES, PROFILES)
def test_settled_cues_are_always_legal(cues: list[Cue], profile: ReadingProfile) -> None:
    settled = settle(cues, profile)
    for cue in settled:
        assert profile.shortest_ms <= cue.duration_ms <= profile.longest_ms
        assert len(cue.lines) <= profile.lines
    for before, after in pairwise(settled):
        gap = after.start_ms - before.end_ms
        assert gap == 0 or gap >= max(1, profile.gap_ms)
    to_srt(settled)


@given(CUES)
def test_words_are_kept_in_order(cues: list[Cue]) -> None:
    wanted = " ".join(cue.text for cue in sorted(cues, key=lambda cue: cue.start_ms)).split()
    assert " ".join(cue.text for cue in settle(cues, WEB)).split() == wanted


@given(CUES)
def test_settling_twice_changes_nothing(cues: list[Cue]) -> None:
    once = settle(cues, WEB)
    assert settle(once, WEB) == once


@given(st.lists(st.integers(1000, 20_000), max_size=20))
def test_starts_are_kept_where_there_is_room(steps: list[int]) -> None:
    starts = [sum(steps[: number + 1]) for number in range(len(steps))]
    assert [cue.start_ms for cue in settle([Cue(start, 0, ("Bar up",)) for start in starts], WEB)] == starts
