"""The place of a stretch of text inside every kind of scalar."""

from __future__ import annotations

from typing import Any

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from producer.library import nodes
from producer.library.nodes import read_nodes

LOADERS = [getattr(yaml, "CSafeLoader", yaml.SafeLoader), yaml.SafeLoader]


def place(text: str, word: str, path: tuple[str | int, ...] = ("a",)) -> tuple[int, int, int]:
    _, places, _ = read_nodes("a.yaml", text)
    held = places.texts[path]
    start = held.index(word)
    found = places.inside(path, start, start + len(word))
    return found.line, found.column, found.width


@pytest.mark.parametrize("loader", LOADERS, ids=["fast", "pure"])
@pytest.mark.parametrize(
    ("text", "word", "expected"),
    [
        ("a: drop it to 250 now\n", "250", (1, 15, 3)),
        ("a: 'drop it to 250 now'\n", "250", (1, 16, 3)),
        ('a: "drop it to 250 now"\n', "250", (1, 16, 3)),
        ("a: 'it''s at 250'\n", "250", (1, 14, 3)),
        ("a: 'it''s at 250'\n", "it's", (1, 5, 5)),
        ('a: "a \\"big\\" step, 250"\n', "250", (1, 21, 3)),
        ("a: drop it\n  to 250 now\n", "250", (2, 6, 3)),
        ("a: drop it\n  to 250 now\n", "it\u0020to", (1, 9, 2)),  # over a line end: marked on its first line
        ("a: |\n  drop it\n  to 250 now\n", "250", (3, 6, 3)),
        ("a: |\n  250 at first\n  then 250\n", "then 250", (3, 3, 8)),
        ("a: >\n  drop it\n  to 250 now\n", "250", (3, 6, 3)),
        ("a: >-\n  drop it\n\n  to 250 now\n", "250", (4, 6, 3)),
        ("a: |2\n   drop it\n  to 250\n", "250", (3, 6, 3)),
        ("a: >   # folded 250\n  drop it to 250\n", "250", (2, 14, 3)),
        ("a: |\r\n  drop it\r\n  to 250 now\r\n", "250", (3, 6, 3)),
        ("a: \"the \\u00e9nd at 250\"\n", "the", (1, 5, 3)),
        ("é: ☃ then 250\n", "250", (1, 11, 3)),
        ("{a: x 250, b: 250}\n", "250", (1, 7, 3)),
    ],
)  # fmt: skip
def test_inside(
    loader: Any, text: str, word: str, expected: tuple[int, int, int], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(nodes, "LOADER", loader)
    assert place(text, word, ("é",) if text.startswith("é") else ("a",)) == expected


def test_what_is_not_there_is_the_thing_around_it() -> None:
    _, places, _ = read_nodes("a.yaml", "a:\n  b: word\n")
    assert str(places.inside(("a", "c"), 0, 3)) == "a.yaml:2:3"
    assert str(places.value(())) == "a.yaml:1:1"
    assert places.line(2) == "  b: word"
    assert places.line(0) == places.line(99) == ""


words = st.lists(st.text(alphabet="abc123.,", min_size=1, max_size=6), min_size=1, max_size=12)
styles = st.sampled_from(["a: |\n  {}\n", "a: >\n  {}\n", "a: '{}'\n", 'a: "{}"\n', "a:\n  b:\n    a: |\n      {}\n"])


@given(words, styles, st.data())
def test_the_mark_covers_the_word(text: list[str], style: str, data: st.DataObject) -> None:
    """The characters marked in the file are the characters meant in the text."""
    source = style.format(" ".join(text))
    _, places, _ = read_nodes("a.yaml", source)
    path: tuple[str, ...] = ("a", "b", "a") if "b:" in style else ("a",)
    held = places.texts[path]
    number = data.draw(st.integers(0, len(text) - 1))
    start = sum(len(word) + 1 for word in text[:number])
    found = places.inside(path, start, start + len(text[number]))
    row = source.splitlines()[found.line - 1]
    assert held[start : start + len(text[number])] == text[number]
    assert row[found.column - 1 : found.column - 1 + found.width] == text[number]
