"""Chapters of a description: legal lists from any sections."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.captions.chapters import chapter_lines, clean_title, legal_chapters, stamp
from producer.model.cue import Chapter


def listed(sections: str, length: int, **limits: int) -> str:
    """`0 A / 12.5 B` in seconds -> `0:00 A / 0:12 B`, or the reason in brackets."""
    parts = [part.strip().partition(" ") for part in sections.split("/") if part.strip()]
    found = legal_chapters(
        [Chapter(int(float(start) * 1000), title) for start, _, title in parts], length * 1000, **limits
    )
    return " / ".join(chapter_lines(found.chapters)) or f"({found.reason})"


LEGAL = [
    ("0 A / 60 B / 90 C", 120, "0:00 A / 1:00 B / 1:30 C"),
    # the first is moved to zero
    ("4 A / 60 B / 90 C", 120, "0:00 A / 1:00 B / 1:30 C"),
    # floored, then counted
    ("0 A / 10.9 B / 20 C / 35 D", 120, "0:00 A / 0:10 B / 0:20 C / 0:35 D"),
    ("0 A / 10.1 B / 19.9 C / 35 D / 50 E", 120, "0:00 A / 0:19 C / 0:35 D / 0:50 E"),
    # a short one is joined with the one before, a short first one with the one after
    ("0 A / 60 B / 65 C / 90 D", 120, "0:00 A / 1:05 C / 1:30 D"),
    ("0 A / 60 B / 80 C / 85 D / 100 E", 120, "0:00 A / 1:00 B / 1:25 D / 1:40 E"),
    ("0 Hi / 5 A / 60 B / 90 C", 120, "0:00 A / 1:00 B / 1:30 C"),
    # the last against the length of the video
    ("0 A / 60 B / 90 C / 111 D", 120, "0:00 A / 1:00 B / 1:30 C"),
    ("0 A / 60 B / 90 C / 110 D", 120, "0:00 A / 1:00 B / 1:30 C / 1:50 D"),
    ("0 A / 60 B / 90 C / 500 D", 120, "0:00 A / 1:00 B / 1:30 C"),
    # without a title
    ("0 / 20 A / 60 B / 90 C / 100 <>", 120, "0:00 A / 1:00 B / 1:30 C"),
    # all short, but together long enough
    ("0 A / 8 B / 16 C / 24 D / 32 E / 40 F", 48, "0:00 A / 0:16 C / 0:32 E"),
    # order and angle brackets
    ("60 B <b> / 0 A>B / 3600 C", 4000, "0:00 A B / 1:00 B b / 1:00:00 C"),
]


@pytest.mark.parametrize(("sections", "length", "expected"), LEGAL)
def test_legal_lists(sections: str, length: int, expected: str) -> None:
    assert listed(sections, length) == expected


NEEDS = "; a list needs at least 3)"
NONE_LEGAL = [
    ("", 100, "(0 sections; a list of chapters needs at least 3)"),
    ("0 A", 100, "(1 section; a list of chapters needs at least 3)"),
    ("0 A / 20 B", 100, "(2 sections; a list of chapters needs at least 3)"),
    ("0 A / 9 B / 18 C", 25, "(only 1 chapter of at least 10 s can be made of 3 sections in 0:25" + NEEDS),
    ("0 A / 10 B / 20 C", 29, "(only 2 chapters of at least 10 s can be made of 3 sections in 0:29" + NEEDS),
    ("0 A / 1 B / 2 C", 0, "(0 sections; a list of chapters needs at least 3)"),
]  # fmt: skip


@pytest.mark.parametrize(("sections", "length", "reason"), NONE_LEGAL)
def test_no_legal_list(sections: str, length: int, reason: str) -> None:
    assert listed(sections, length) == reason


def test_other_limits() -> None:
    assert listed("0 A / 5 B", 10, least=2, seconds=5) == "0:00 A / 0:05 B"
    assert listed("0 A", 10, least=1, seconds=5) == "0:00 A"


@pytest.mark.parametrize(
    ("ms", "text"),
    [(0, "0:00"), (9_999, "0:09"), (60_000, "1:00"), (754_000, "12:34"), (3_599_999, "59:59"), (3_723_000, "1:02:03")],
)
def test_stamps(ms: int, text: str) -> None:
    assert stamp(ms) == text


@pytest.mark.parametrize(
    ("title", "clean"),
    [("Springs", "Springs"), ("<b>Up</b>", "b Up /b"), ("a\n<\tb", "a b"), ("<>", ""), ("51.5\u00a0%", "51.5\u00a0%")],
)
def test_titles(title: str, clean: str) -> None:
    assert clean_title(title) == clean


SECTIONS = st.lists(st.builds(Chapter, st.integers(0, 120_000), st.sampled_from(["A", "B", "<", ""])), max_size=12)


@given(SECTIONS, st.integers(0, 150_000), st.integers(1, 4), st.integers(1, 20))
def test_a_list_is_legal_or_none(sections: list[Chapter], length_ms: int, least: int, seconds: int) -> None:
    found = legal_chapters(sections, length_ms, least=least, seconds=seconds)
    assert bool(found.chapters) != bool(found.reason)
    if found.chapters:
        starts = [chapter.start_ms for chapter in found.chapters]
        assert starts[0] == 0
        assert len(starts) >= least
        edges = [*(start // 1000 for start in starts), length_ms // 1000]
        assert all(after - before >= seconds for before, after in pairwise(edges))
        assert all(start % 1000 == 0 for start in starts)
        assert all(chapter.title == clean_title(chapter.title) != "" for chapter in found.chapters)


@given(st.lists(st.integers(0, 80), min_size=1, max_size=7, unique=True), st.integers(20, 100))
def test_a_legal_list_is_found_where_one_exists(starts: list[int], length: int) -> None:
    """Against every choice of starts: zero and any two of the later ones."""
    starts.sort()
    inside = [start for start in starts if start < length]
    exists = any(one >= 10 and other - one >= 10 and length - other >= 10 for one in inside[1:] for other in inside[1:])
    found = legal_chapters([Chapter(start * 1000, "x") for start in starts], length * 1000)
    assert bool(found.chapters) == exists
