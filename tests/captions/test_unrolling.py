"""Rolling captions unrolled; words without times get their share."""

from __future__ import annotations

import pytest

from producer.captions.reading import read_captions

Cue = tuple[int, int, str]


def srt(cues: list[Cue]) -> bytes:
    def stamp(ms: int) -> str:
        return f"00:00:{ms // 1000:02d},{ms % 1000:03d}"

    rows = [f"{number}\n{stamp(s)} --> {stamp(e)}\n{text}\n" for number, (s, e, text) in enumerate(cues, 1)]
    return "\n".join(rows).encode()


def said(cues: list[Cue]) -> list[str]:
    return [line.text for line in read_captions(srt(cues), "x.srt").said]


ROLLING = [
    ("rolls, with finished lines between", [
        (0, 2000, "okay so"), (2000, 2010, "okay so"), (2010, 4000, "okay so\nin three"), (4000, 4010, "in three"),
        (4010, 6000, "in three\nthe bar"),
    ], ["okay so", "in three", "the bar"]),
    ("rolls straight on", [
        (0, 2000, "okay so"), (2000, 4000, "okay so\nin three"), (4000, 6000, "in three\nthe bar"),
    ], ["okay so", "in three", "the bar"]),
    ("a line said twice", [
        (0, 2000, "okay so"), (2000, 4000, "okay so\nokay so"), (4000, 6000, "okay so\nthe bar"),
    ], ["okay so", "okay so", "the bar"]),
    ("three lines", [
        (0, 1000, "a b"), (1000, 2000, "a b\nc d"), (2000, 3000, "a b\nc d\ne f"), (3000, 4000, "c d\ne f\ng h"),
    ], ["a b", "c d", "e f", "g h"]),
]  # fmt: skip
PLAIN = [
    ("said twice", [(0, 1000, "Go."), (1000, 2000, "Go."), (2000, 3000, "Go.")], ["Go.", "Go.", "Go."]),
    ("one line taken up", [
        (0, 1000, "So."), (1000, 2000, "So.\nWe go."), (2000, 3000, "Now."), (3000, 4000, "Left."),
        (4000, 5000, "Right."), (5000, 6000, "Done."),
    ], ["So.", "So. We go.", "Now.", "Left.", "Right.", "Done."]),
    ("two lines a cue", [(0, 1000, "a\nb"), (1000, 2000, "c\nd")], ["a b", "c d"]),
]  # fmt: skip


@pytest.mark.parametrize(("cues", "lines"), [row[1:] for row in ROLLING], ids=[row[0] for row in ROLLING])
def test_a_line_is_said_once(cues: list[Cue], lines: list[str]) -> None:
    assert said(cues) == lines


@pytest.mark.parametrize(("cues", "lines"), [row[1:] for row in PLAIN], ids=[row[0] for row in PLAIN])
def test_what_does_not_roll_stays(cues: list[Cue], lines: list[str]) -> None:
    assert said(cues) == lines


AUTOMATIC = """WEBVTT
Kind: captions

00:00:00.000 --> 00:00:02.000
 
okay<00:00:01.000><c> so</c>

00:00:02.000 --> 00:00:02.010
okay so
 

00:00:09.000 --> 00:00:10.000
okay so
right

00:00:10.000 --> 00:00:12.000
right
right<00:00:11.000><c> here</c>
"""  # noqa: W293 - a line of one blank is what such files hold


def test_automatic_captions() -> None:
    read = read_captions(AUTOMATIC.encode(), "x.vtt")
    words = [(word.text, word.start_ms, word.timed) for word in read.words]
    assert words == [
        ("okay", 0, True), ("so", 1000, True),
        # After a silence nothing in the file tells a line that still stands there from one said again.
        ("okay", 9000, True), ("so", 9357, False), ("right", 9571, False),
        ("right", 10_000, True), ("here", 11_000, True),
    ]  # fmt: skip
    assert [cue.text for cue in read.cues] == ["okay so", "okay so", "okay so\nright", "right\nright here"]


def test_words_share_their_cue_by_letters() -> None:
    read = read_captions(srt([(1000, 2000, "a bbb\ncc d"), (3000, 3000, "x y")]), "x.srt")
    assert [(word.text, word.start_ms, word.timed) for word in read.words] == [
        ("a", 1000, True), ("bbb", 1181, False), ("cc", 1545, False), ("d", 1818, False),
        ("x", 3000, True), ("y", 3000, False),
    ]  # fmt: skip
