"""What all cue sheets share: order, frames, plain letters, chapters with ends."""

from __future__ import annotations

import pytest

from producer.basics.frame_rate import frame_rate
from producer.captions.marks import checked, frames_of, ordered, plain_ascii
from producer.captions.payload import CaptionError
from producer.model.cue import Chapter, Mark


def test_marks_are_put_in_order_with_clean_names() -> None:
    marks = [Mark(5, 9, "pick-up", "b\nc", " x "), Mark(5, 20, "section", "a"), Mark(0, 0, "caption", " \t")]
    assert ordered(marks) == (
        Mark(0, 0, "caption", "caption"),
        Mark(5, 20, "section", "a"),
        Mark(5, 9, "pick-up", "b c", "x"),
    )


@pytest.mark.parametrize(("start", "end"), [(-1, 5), (5, 4)])
def test_marks_that_cannot_be_written(start: int, end: int) -> None:
    with pytest.raises(CaptionError, match="cannot be written"):
        ordered([Mark(start, end, "section", "a")])


@pytest.mark.parametrize(("start", "end", "frames"), [(0, 0, (0, 1)), (0, 1000, (0, 29)), (1001, 2002, (30, 60))])
def test_frames(start: int, end: int, frames: tuple[int, int]) -> None:
    assert frames_of(Mark(start, end, "section", "a"), frame_rate("29.97")) == frames


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("Right front, 725\u00a0lb/in", "Right front, 725 lb/in"),
        ("\u22123.5\u00b0 camber", "-3.5 deg camber"),
        ("51½ % cross", "51 1/2 % cross"),
        ("½ turn, ⅜ in", "1/2 turn, 3/8 in"),
        ("750 \u2192 725", "750 to 725"),
        ("it\u2019s \u201cfree\u201d \u2013 Zoë", 'it\'s "free" - Zoe'),
        ("\U0001f3c1 flag", "? flag"),
        ("plain", "plain"),
        ("", ""),
    ],
)
def test_plain_letters(text: str, plain: str) -> None:
    assert plain_ascii(text) == plain


def test_chapters_end_where_the_next_begins() -> None:
    assert checked([Chapter(0, "a"), Chapter(10, "  ")], 30) == ((0, 10, "a"), (10, 30, "Chapter 2"))
    assert checked([], 0) == ()


@pytest.mark.parametrize(("starts", "end"), [((0, 0), 9), ((5, 3), 9), ((0, 9), 9), ((-1,), 9), ((0,), 0)])
def test_chapters_that_cannot_be_written(starts: tuple[int, ...], end: int) -> None:
    with pytest.raises(CaptionError, match="do not rise"):
        checked([Chapter(start, "a") for start in starts], end)
