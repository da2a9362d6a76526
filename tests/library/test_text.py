"""Bytes to text: strict, with the place of what cannot be read."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.library.text import LARGEST, decode, read_text


@pytest.mark.parametrize(
    ("data", "text"),
    [
        (b"", ""),
        (b"format: 1\n", "format: 1\n"),
        (b"\xef\xbb\xbfformat: 1\r\n", "format: 1\r\n"),  # a mark is dropped, line ends are kept
        ("name: 21 °C – “far” 🏁\n".encode(), "name: 21 °C – “far” 🏁\n"),
        ("a: \ufeffb\n".encode(), "a: \ufeffb\n"),
        (b"\ta\n", "\ta\n"),  # what a tab means is for YAML to say
    ],
)
def test_reads(data: bytes, text: str) -> None:
    assert decode(data, "a.yaml") == (text, [])


@pytest.mark.parametrize(
    ("data", "code", "line", "column"),
    [
        (b"\xff\xfef\x00", "not-utf8", 1, 1),
        (b"a: 1\nb: caf\xe9\n", "not-utf8", 2, 7),
        (b"\xef\xbb\xbfa: 1\nb: caf\xe9\n", "not-utf8", 2, 7),
        (b"a: \xc3\xa9\xe9\n", "not-utf8", 1, 5),
        (b"a: 1\rb: \xe9\r", "not-utf8", 2, 4),
        (b"a: \xed\xa0\x80\n", "not-utf8", 1, 4),  # half of a surrogate pair
        (b"a: b\0\n", "odd-character", 1, 5),
        (b"a: 1\n\x0cb: 2\n", "odd-character", 2, 1),
        (b"a: \x1b[0m\n", "odd-character", 1, 4),
        ("a: x\u0085b\n".encode(), "odd-character", 1, 5),
        ("a: 1\r\nb: x\u2028y\n".encode(), "odd-character", 2, 5),
        ("a: x\u2029\n".encode(), "odd-character", 1, 5),
        ("a: x\ufffe\n".encode(), "odd-character", 1, 5),
    ],
)
def test_refuses_at_its_place(data: bytes, code: str, line: int, column: int) -> None:
    text, found = decode(data, "a.yaml")
    assert text is None
    assert [(one.code, one.place.file, one.place.line, one.place.column) for one in found] == [
        (code, "a.yaml", line, column)
    ]
    assert found[0].hint


def test_says_utf_16() -> None:
    _, found = decode("format: 1".encode("utf-16"), "a.yaml")
    assert "UTF-16" in found[0].hint


@given(st.binary(max_size=200))
def test_any_bytes_give_text_or_a_finding(data: bytes) -> None:
    text, found = decode(data, "a.yaml")
    assert (text is None) == bool(found)


def test_size_is_capped(tmp_path: Path) -> None:
    path = tmp_path / "large.yaml"
    path.write_bytes(b"#" * LARGEST)
    assert read_text(path, "large.yaml")[0] is not None
    path.write_bytes(b"#" * (LARGEST + 1))
    text, found = read_text(path, "large.yaml")
    assert text is None
    assert [one.code for one in found] == ["too-large"]


def test_a_file_the_system_keeps_back(tmp_path: Path) -> None:
    text, found = read_text(tmp_path / "gone.yaml", "gone.yaml")
    assert text is None
    assert [one.code for one in found] == ["unreadable-file"]
    assert str(found[0].place) == "gone.yaml:1:1"
