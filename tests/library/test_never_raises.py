"""Whatever is in the files, reading and checking give findings: never an exception."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from producer.basics.finding import Finding
from producer.checks.registry import run
from producer.library.load import load
from producer.library.records import build
from producer.library.text import decode
from producer.model.channel import Channel
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.request import RequestFile
from producer.model.track import Track

BASE = Path(__file__).parent.parent / "checks" / "base"
FILES = sorted(path.relative_to(BASE).as_posix() for path in BASE.rglob("*.yaml"))
KINDS = (Channel, Garage, Track, RequestFile, Episode)
PIECES = (
    "", "{", "}", "[", "]", "- ", ": ", "null", "~", "0", "-1", "1e9", ".nan", "9999999999", "[]", "{}", "{ lf: 1 }",
    "{ a: { b: [c] } }", "'", '"', "{{ spring.rf }}", '"{{ spring.rf | upper }}"', "&a 1", "*a", "!!int 1", "|\n", "\t",
    "\r", "\n", "é", "default", "short", "long", "spring.rf", "spring.rear_split", "yes", "725 lb/in", "12 furlongs",
    "[1, 2, 3, 4]", "2026-02-30",
)  # fmt: skip


def settled(found: list[Finding]) -> None:
    for one in found:
        assert one.message
        assert one.place.line >= 1


@st.composite
def damaged(draw: st.DrawFn, text: str) -> str:
    """A file with a few of its words, lines or stretches replaced, doubled or taken out."""
    for _ in range(draw(st.integers(1, 4))):
        if draw(st.booleans()):
            lines = text.splitlines(keepends=True) or [""]
            at, to = (draw(st.integers(0, len(lines) - 1)) for _ in range(2))
            lines[at : draw(st.sampled_from([at, at + 1, at + 2]))] = draw(st.sampled_from([[], [lines[to]]]))
            text = "".join(lines)
        else:
            start = draw(st.integers(0, len(text)))
            end = min(len(text), start + draw(st.integers(0, 12)))
            text = text[:start] + draw(st.sampled_from(PIECES)) + text[end:]
    return text


@settings(max_examples=150)
@given(st.data())
def test_a_damaged_library(data: st.DataObject) -> None:
    file = data.draw(st.sampled_from(FILES))
    text = data.draw(damaged((BASE / file).read_text(encoding="utf-8")))
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder) / "library"
        shutil.copytree(BASE, root)
        (root / file).write_text(text, encoding="utf-8", newline="")
        library, found = load(root)
        settled(found + run(library, {}))


VALUES = ("0", "x", "[]", "{}", "[a, {b: c}]", "{a: 1}", "null", "''", "1:30", "{lf: {x: y}}", "-0", "| \n  text")


@settings(max_examples=200)
@given(st.data())
def test_a_value_of_another_kind(data: st.DataObject) -> None:
    """Each value of the episode in turn becomes something else of a sound YAML file."""
    file = data.draw(st.sampled_from(FILES))
    lines = (BASE / file).read_text(encoding="utf-8").splitlines()
    at = data.draw(st.sampled_from([index for index, line in enumerate(lines) if ": " in line]))
    key = lines[at][: lines[at].index(": ")]
    lines[at] = f"{key}: {data.draw(st.sampled_from(VALUES))}"
    with tempfile.TemporaryDirectory() as folder:
        root = Path(folder) / "library"
        shutil.copytree(BASE, root)
        (root / file).write_text("\n".join(lines), encoding="utf-8", newline="")
        library, found = load(root)
        settled(found + run(library, {}))


@given(st.sampled_from(KINDS), st.text(max_size=200))
def test_any_text(kind: type[Episode], text: str) -> None:
    record, _, found = build(kind, "a.yaml", text)
    assert record is not None or found
    settled(found)


@given(st.sampled_from(KINDS), st.binary(max_size=200))
def test_any_bytes(kind: type[Episode], data: bytes) -> None:
    text, found = decode(data, "a.yaml")
    if text is not None:
        found = build(kind, "a.yaml", text)[2]
    settled(found)
