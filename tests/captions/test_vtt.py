"""WebVTT as written."""

from __future__ import annotations

import pytest

from producer.captions.payload import CaptionError
from producer.captions.vtt import chapters_vtt, to_vtt
from producer.model.cue import Chapter, Cue


def test_a_whole_file() -> None:
    cues = [Cue(0, 1500, ("Right front spring", "725\u00a0lb/in")), Cue(3_600_000, 3_602_500, ("Track bar",))]
    assert to_vtt(cues) == (
        "WEBVTT\n"
        "\n"
        "00:00:00.000 --> 00:00:01.500\n"
        "Right front spring\n"
        "725\u00a0lb/in\n"
        "\n"
        "01:00:00.000 --> 01:00:02.500\n"
        "Track bar\n"
    )


@pytest.mark.parametrize(
    ("note", "written"),
    [
        ("Times are estimated.", "NOTE Times are estimated.\n\n"),
        ("a\n\nb --> c", "NOTE a b to c\n\n"),
        ("", ""),
        (" \n", ""),
    ],
)
def test_a_comment_that_nobody_is_shown(note: str, written: str) -> None:
    cue = "00:00:00.000 --> 00:00:01.000\nx\n"
    assert to_vtt([Cue(0, 1000, ("x",))], note=note) == f"WEBVTT\n\n{written}{cue}"
    assert chapters_vtt([Chapter(0, "x")], 1000, note=note) == f"WEBVTT\n\n{written}{cue}"


PAYLOADS = [
    ("plain", "plain"),
    ("a < b & c > d", "a &lt; b &amp; c &gt; d"),
    ("750 --> 725", "750 --&gt; 725"),
    ("&lt;", "&amp;lt;"),
    ("<b>bold</b>", "&lt;b&gt;bold&lt;/b&gt;"),
    ("one\n\ntwo", "one\ntwo"),
    ("WEBVTT", "WEBVTT"),
    ("NOTE this", "NOTE this"),
]


@pytest.mark.parametrize(("text", "payload"), PAYLOADS)
def test_the_authors_text_is_made_legal(text: str, payload: str) -> None:
    assert to_vtt([Cue(0, 1000, (text,))]) == f"WEBVTT\n\n00:00:00.000 --> 00:00:01.000\n{payload}\n"


def test_nothing_to_write() -> None:
    assert to_vtt([]) == "WEBVTT\n"
    assert chapters_vtt([], 0) == "WEBVTT\n"


def test_overlapping_cues_are_legal() -> None:
    assert to_vtt([Cue(0, 9000, ("a",)), Cue(0, 100, ("b",))]).count("-->") == 2


def test_chapters_last_until_the_next_and_are_named() -> None:
    chapters = [Chapter(0, "Conditions <night> & air"), Chapter(12_000, " \n "), Chapter(30_000, "Two\nlines")]
    assert chapters_vtt(chapters, 61_500) == (
        "WEBVTT\n"
        "\n"
        "00:00:00.000 --> 00:00:12.000\n"
        "Conditions &lt;night&gt; &amp; air\n"
        "\n"
        "00:00:12.000 --> 00:00:30.000\n"
        "Chapter 2\n"
        "\n"
        "00:00:30.000 --> 00:01:01.500\n"
        "Two lines\n"
    )


@pytest.mark.parametrize(
    ("starts", "end_ms"),
    [((0, 0), 10), ((5, 3), 10), ((0, 10), 10), ((0, 10), 5), ((-1, 5), 10)],
)
def test_chapters_that_cannot_be_written(starts: tuple[int, ...], end_ms: int) -> None:
    with pytest.raises(CaptionError):
        chapters_vtt([Chapter(start, "x") for start in starts], end_ms)
