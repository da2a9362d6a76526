"""Bytes to text, and which kind of file it is."""

from __future__ import annotations

import pytest

from producer.captions.complaints import Complaints
from producer.captions.opening import caption_kind, caption_text, has_signature, lines_of

BYTES = [
    (b"51\xc2\xbd", "51½", []),
    (b"\xef\xbb\xbfa\xc3\xa9", "aé", []),
    ("51½".encode("utf-16"), "51½", [("not-utf8", 1)]),
    ("a\n51½ \u2019".encode("cp1252"), "a\n51½ \u2019", [("not-utf8", 2)]),
    (b"a\r\nb\rc\n\x81", "a\r\nb\rc\n\ufffd", [("not-utf8", 4)]),
    (b"a\x00b", "a\ufffdb", []),
    (b"", "", []),
]


@pytest.mark.parametrize(("data", "text", "complaints"), BYTES)
def test_bytes(data: bytes, text: str, complaints: list[tuple[str, int]]) -> None:
    found = Complaints("x.srt")
    assert caption_text(data, found) == text
    assert [(one.code, one.place.line) for one in found.findings()] == complaints


@pytest.mark.parametrize(
    ("text", "file", "kind"),
    [
        ("WEBVTT\n", "x.srt", "vtt"),
        ("WEBVTT", "x", "vtt"),
        ("WEBVTT title\n", "x", "vtt"),
        ("1\n", "X.VTT", "vtt"),
        ("WEBVTTS\n", "x.srt", "srt"),
        ("1\n", "x.srt", "srt"),
        ("", "standard input", "srt"),
    ],
)
def test_the_kind(text: str, file: str, kind: str) -> None:
    assert caption_kind(text, file) == kind


@pytest.mark.parametrize(
    ("text", "signed"),
    [("WEBVTT", True), ("WEBVTT\tx", True), (" WEBVTT", False), ("webvtt", False), ("WEBVTT\f", False), ("\n", False)],
)
def test_the_signature(text: str, signed: bool) -> None:
    assert has_signature(text) is signed


def test_lines_are_counted_as_an_editor_does() -> None:
    assert lines_of("a\r\nb\rc\nd\x0be\u2028f", "vtt") == ["a", "b", "c", "d\x0be\u2028f"]
    assert lines_of("a\r\r\nb\r\r\n", "srt") == ["a", "b", ""]
    assert lines_of("a\r\r\nb", "vtt") == ["a", "", "b"]
