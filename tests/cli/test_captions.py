"""`producer captions`: files named, pictures only where they are asked for."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

Run = Callable[..., Any]
EPISODE = "lantern-flats-club-coupe"


def test_files_are_named_and_no_picture_is_made(producer: Run, demo: Path, tmp_path: Path) -> None:
    ran = producer("captions", EPISODE, "-l", demo, "-o", tmp_path / "out")
    assert ran.code == 0
    named = {Path(line).name for line in ran.out.splitlines()}
    assert {"captions.srt", "cues.csv", "cues.otio", "cues.edl", "chapters.ffmeta", "chapters.json"} <= named
    assert all(Path(line).is_file() for line in ran.out.splitlines())
    assert not list(tmp_path.rglob("*.png"))


def test_pictures_where_they_are_asked_for(producer: Run, demo: Path, tmp_path: Path) -> None:
    ask = ("captions", EPISODE, "--overlays", "-l", demo, "-o", tmp_path / "out")
    ran = producer(*ask)
    count = len(list((tmp_path / "out" / EPISODE / "overlays").rglob("*.png")))
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.splitlines()[-1].startswith(f"{count} pictures in ")
    assert ran.out.endswith(f": {count} drawn, 0 unchanged\n")
    assert producer(*ask).out.endswith(f": 0 drawn, {count} unchanged\n")


def test_a_letter_that_the_font_lacks_is_one_sentence(producer: Run, library: Path, tmp_path: Path) -> None:
    track = library / "tracks" / "lantern-flats.yaml"
    text = track.read_text(encoding="utf-8").replace("name: Lantern Flats", "name: Lantern 漢", 1)
    track.write_text(text, encoding="utf-8", newline="\n")
    ran = producer("captions", EPISODE, "--overlays", "-l", library, "-o", tmp_path / "out")
    assert ran.code == 2
    assert "no '漢'" in ran.err
    assert not list(tmp_path.rglob("*.png"))
