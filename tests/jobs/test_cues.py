"""A caption file shown as it is read."""

from __future__ import annotations

import pytest

from producer.captions.opening import LARGEST
from producer.jobs.cues import as_text, cues, shape

LONG = "So the right front spring goes down one step, and the car turns all the way through the middle, lap after lap."


def srt(*texts: str) -> bytes:
    rows = [f"{n}\n00:00:0{n},000 --> 00:00:0{n + 1},000\n{text}\n" for n, text in enumerate(texts, 1)]
    return "\n".join(rows).encode()


def test_within_80_columns() -> None:
    text = as_text(cues(srt(LONG, "Done."), "take.srt"))
    assert max(map(len, text.splitlines())) <= 80
    assert text.splitlines()[3].startswith(" " * 14)
    assert text.endswith("00:00:02.000  Done.")


@pytest.mark.parametrize("data", [b"", b"x", b" " * (LARGEST + 1)])
def test_nothing_read(data: bytes) -> None:
    found = cues(data, "take.srt")
    assert as_text(found) == ""
    assert shape(found) == {"format": 1, "kind": "srt", "cues": [], "said": []}


def test_lines_for_excerpts_are_those_of_an_editor() -> None:
    found = cues(b"\xef\xbb\xbf1\r\n00:00:01,000 --> 00:00:02,000\r\na\x0b b\xe2\x80\xa8c\r\nlast", "take.srt")
    places = found.files["take.srt"]
    assert [places.line(number) for number in (1, 3, 4, 5)] == ["1", "a  b c", "last", ""]


def test_the_files_words_are_told_from_shared_ones() -> None:
    assert "own times" not in as_text(cues(srt("Loose off."), "x.srt"))
    stamped = b"WEBVTT\n\n00:01.000 --> 00:02.000\nloose<00:01.500> off\n"
    assert "words have their own times" in as_text(cues(stamped, "x.vtt"))
