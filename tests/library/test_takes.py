"""Which caption files are an episode's takes, and in which order they count."""

from __future__ import annotations

from pathlib import Path

import pytest

from producer.library.load import load

EPISODE = "gannet-bowl-grand-sedan"
CUE = "1\n00:00:01,000 --> 00:00:02,000\nHello.\n"


def found(library: Path) -> list[tuple[str, str]]:
    return [(one.of, one.file.split("/")[1]) for one in load(library)[0].takes.get(EPISODE, ())]


@pytest.mark.parametrize(
    ("names", "order"),
    [
        ([], []),
        (["take.srt"], [("raw", "take.srt")]),
        (["take-2.srt", "take.srt", "cut.vtt"], [("raw", "take.srt"), ("raw", "take-2.srt"), ("cut", "cut.vtt")]),
        (["take.srt", "take.vtt"], [("raw", "take.vtt")]),
        (["Take.SRT", "take-2.SRT"], [("raw", "Take.SRT"), ("raw", "take-2.SRT")]),
        (["take.srt", "take2.srt", "take10.srt"], [("raw", "take.srt"), ("raw", "take2.srt"), ("raw", "take10.srt")]),
        # the same take in another format or language is no pick-up
        (["Take.SRT", "take.en.vtt"], [("raw", "take.en.vtt")]),
        (["take.de.vtt", "take.en-GB.srt"], [("raw", "take.en-GB.srt")]),
        (["take.de.vtt", "take.srt"], [("raw", "take.srt")]),
        (["take.fr.vtt"], [("raw", "take.fr.vtt")]),
        (["take.srt", "take-2.en.vtt", "take-2.srt"], [("raw", "take.srt"), ("raw", "take-2.en.vtt")]),
        (["take.srt", "take.shocks.srt"], [("raw", "take.srt"), ("raw", "take.shocks.srt")]),
        (["mistake.srt", "takes.srt", "take.txt", "cutting.srt", "take2b.srt"], []),
    ],
)
def test_files_are_found_by_name(library: Path, names: list[str], order: list[tuple[str, str]]) -> None:
    for name in names:
        (library / EPISODE / name).write_text(CUE, encoding="utf-8")
    assert found(library) == order


def test_files_that_are_named_come_first(library: Path) -> None:
    for name in ("take.srt", "night.srt", "last.vtt"):
        (library / EPISODE / name).write_text(CUE, encoding="utf-8")
    own = library / EPISODE / "episode.yaml"
    text = own.read_text(encoding="utf-8")
    own.write_text(f"{text}takes: [{{ file: night.srt, of: raw }}, {{ file: last.vtt, of: cut }}]\n", encoding="utf-8")
    assert found(library) == [("raw", "night.srt"), ("raw", "take.srt"), ("cut", "last.vtt")]


def test_one_that_is_named_is_not_found_again_in_another_format(library: Path) -> None:
    for name in ("take.srt", "take.vtt", "take-2.srt"):
        (library / EPISODE / name).write_text(CUE, encoding="utf-8")
    own = library / EPISODE / "episode.yaml"
    own.write_text(f"{own.read_text(encoding='utf-8')}takes: [{{ file: take.srt, of: raw }}]\n", encoding="utf-8")
    assert found(library) == [("raw", "take.srt"), ("raw", "take-2.srt")]


def test_one_that_is_named_and_not_there_is_complained_of(library: Path) -> None:
    own = library / EPISODE / "episode.yaml"
    own.write_text(f"{own.read_text(encoding='utf-8')}takes: [{{ file: night.srt, of: raw }}]\n", encoding="utf-8")
    assert [one.code for one in load(library)[1]] == ["missing-file"]
    assert found(library) == []
