"""Text made fit for a payload, the order of cues, time stamps."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.captions.payload import CaptionError, clean_line, clean_lines, time_stamp, written
from producer.model.cue import Cue

CLEANED = [
    (("one", "two"), ("one", "two")),
    (("one\ntwo",), ("one", "two")),
    (("one\r\ntwo\rthree",), ("one", "two", "three")),
    (("one\u2028two\x85three\x0bfour",), ("one", "two", "three", "four")),
    (("one", "", "  ", "two"), ("one", "two")),
    (("  one\ttwo ",), ("one two",)),
    (("o\x00n\x07e\x9f\ufeff",), ("one",)),
    (("750\u00a0lb/in",), ("750\u00a0lb/in",)),
    (("half \ud83d pair",), ("half \ufffd pair",)),
    (("\U0001f3c1 flag",), ("\U0001f3c1 flag",)),
    ((), ()),
    (("\n \t",), ()),
]


@pytest.mark.parametrize(("lines", "clean"), CLEANED)
def test_lines_are_made_fit(lines: tuple[str, ...], clean: tuple[str, ...]) -> None:
    assert clean_lines(lines) == clean


def test_one_line_of_several() -> None:
    assert clean_line(" one\n\ntwo ") == "one two"


@given(st.lists(st.text(st.characters())))
def test_any_text_becomes_legal(lines: list[str]) -> None:
    clean = clean_lines(lines)
    assert all(line and line == line.strip() and len(line.splitlines()) == 1 for line in clean)
    assert clean_lines(clean) == clean
    "\n".join(clean).encode("utf-8")


@pytest.mark.parametrize(
    ("ms", "stamp"),
    [
        (0, "00:00:00.000"),
        (999, "00:00:00.999"),
        (61_001, "00:01:01.001"),
        (3_600_000, "01:00:00.000"),
        (359_999_999, "99:59:59.999"),
        (360_000_000, "100:00:00.000"),
    ],
)
def test_time_stamps(ms: int, stamp: str) -> None:
    assert time_stamp(ms, ".") == stamp


WRONG_TIMES = [
    ([Cue(-1, 5, ("a",))], "before zero"),
    ([Cue(5, 5, ("a",))], "no later than it starts"),
    ([Cue(5, 4, ("a",))], "no later than it starts"),
    ([Cue(5, 9, ("a",)), Cue(4, 9, ("a",))], "cue 2 starts at 4 ms"),
    ([Cue(5, 5, ())], "no later than it starts"),
]


@pytest.mark.parametrize(("cues", "message"), WRONG_TIMES)
def test_times_that_cannot_be_written(cues: list[Cue], message: str) -> None:
    with pytest.raises(CaptionError, match=message):
        tuple(written(cues))


RIGHT_TIMES = [
    [Cue(0, 1, ("a",))],
    [Cue(0, 9, ("a",)), Cue(0, 9, ("b",))],
    [Cue(0, 9, ("a",)), Cue(3, 5, ("b",))],
    [Cue(0, 9, ("a",)), Cue(9, 12, ("b",))],
]


@pytest.mark.parametrize("cues", RIGHT_TIMES)
def test_times_that_can_be_written(cues: list[Cue]) -> None:
    assert list(written(cues)) == cues


def test_a_cue_without_text_is_left_out() -> None:
    assert list(written([Cue(0, 1, ()), Cue(1, 2, (" ",)), Cue(2, 3, ("a",))])) == [Cue(2, 3, ("a",))]
