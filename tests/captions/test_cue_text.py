"""A payload: what is shown, which words are in it, and the times between them."""

from __future__ import annotations

import pytest

from producer.captions.blocks import Block
from producer.captions.complaints import Complaints
from producer.captions.cue_text import CueText, cue_text
from producer.model.said import CaptionKind

Words = list[tuple[str, int | None]]


def read(raw: str, kind: CaptionKind = "vtt") -> tuple[CueText, list[tuple[str, int, int, int]]]:
    complaints = Complaints("x")
    payload = tuple(enumerate(raw.split("\n"), 4))
    text = cue_text(Block(0, 9000, 3, 20, payload), kind, complaints)
    places = [(one.code, one.place.line, one.place.column, one.place.width) for one in complaints.findings()]
    return text, places


def words(text: CueText) -> Words:
    return [word for line in text.lines for word in line.words]


SHOWN = [
    ("plain text", "vtt", ["plain text"]),
    ("two\nlines", "vtt", ["two", "lines"]),
    (" \nokay\n ", "vtt", ["okay"]),
    ("<v Jo>hello</v> <i>there</i>", "vtt", ["hello there"]),
    ("<c.red.big>a</c><b>b</b><u>c</u><lang en>d</lang>", "vtt", ["abcd"]),
    ("<ruby>a<rt>b</rt></ruby>", "vtt", ["ab"]),
    ("<>a</>", "vtt", ["a"]),
    ("&lt;300 &amp; soft&nbsp;spring &#65;", "vtt", ["<300 & soft\u00a0spring A"]),
    ("R & D, 5 > 3", "vtt", ["R & D, 5 > 3"]),
    ("<i>a</i> <font color='#fff'>b</font> {\\an8}c{y:i}d", "srt", ["a b cd"]),
    ("1 < 2 & 3 > 2", "srt", ["1 < 2 & 3 > 2"]),
    ("&lt;b&gt;", "srt", ["&lt;b&gt;"]),
    ("{a note}", "srt", ["{a note}"]),
    ("one<br/>two<BR>three", "srt", ["one", "two", "three"]),
    ("<p><span class='x'>one</span></p>", "srt", ["one"]),
    ("one <br>two", "vtt", ["one two"]),
    ("a\x07b", "srt", ["ab"]),
    ("", "vtt", []),
]


@pytest.mark.parametrize(("raw", "kind", "shown"), SHOWN)
def test_what_people_see(raw: str, kind: CaptionKind, shown: list[str]) -> None:
    text, complaints = read(raw, kind)
    assert list(text.shown) == shown
    assert [word for word, _ in words(text)] == [word for line in shown for word in line.split()]
    assert complaints == []


def test_hidden_words_are_said_and_complained_of() -> None:
    text, complaints = read("one\nHold wedge <49 & >47 percent.")
    assert text.shown == ("one", "Hold wedge 47 percent.")
    assert " ".join(word for word, _ in words(text)) == "one Hold wedge <49 & >47 percent."
    assert complaints == [("text-hidden", 5, 12, 7)]


@pytest.mark.parametrize(("raw", "hidden"), [("a <b", 2), ("a <49", 2), ("a <x>b</x>", 3), ("a <1.5>", 2)])
def test_only_markup_is_not_said(raw: str, hidden: int) -> None:
    text, complaints = read(raw)
    assert text.shown in {("a",), ("a b",)}
    assert [code for code, *_ in complaints] == ["text-hidden"] * (2 if hidden == 3 else 1)


TIMED = [
    ("a b", [("a", None), ("b", None)]),
    ("a<00:01.000> b<00:02.000><c> c</c>", [("a", None), ("b", 1000), ("c", 2000)]),
    ("<00:00:01.000>a b", [("a", 1000), ("b", 1000)]),
    ("trac<00:01.000>tor", [("tractor", None)]),
    ("a<00:01.000> b\nc <00:02.000>d", [("a", None), ("b", 1000), ("c", 1000), ("d", 2000)]),
    ("a<00:01.000><00:02.000> b", [("a", None), ("b", 2000)]),
    ("a<00:01.000>\nb", [("a", None), ("b", 1000)]),
]


@pytest.mark.parametrize(("raw", "expected"), TIMED)
def test_times_of_words(raw: str, expected: Words) -> None:
    text, complaints = read(raw)
    assert words(text) == expected
    assert complaints == []


def test_which_line_holds_a_time() -> None:
    text, _ = read("a b\nc<00:01.000> d\n ")
    assert [(line.text, line.stamped) for line in text.lines] == [("a b", False), ("c d", True), ("", False)]


@pytest.mark.parametrize("raw", ["a<00:02.000> b<00:01.000> c", "a<00:10.000> b", "a <00:01.000>b<00:00.500> c"])
def test_times_of_words_that_cannot_be(raw: str) -> None:
    text, complaints = read(raw)
    stamps = [stamp for _, stamp in words(text) if stamp is not None]
    assert stamps == sorted(stamps)
    assert [code for code, *_ in complaints] == ["word-time-odd"]
