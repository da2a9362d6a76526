"""Where files go, and what a shell makes of an episode's name."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from producer.cli import options

Run = Callable[..., Any]


@pytest.mark.parametrize(
    ("inside", "expected"), [(".", "build"), ("first-episode", "../build"), ("first-episode/stints", "../../build")]
)
def test_files_are_made_in_the_library_one_stands_in(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, inside: str, expected: str
) -> None:
    place = tmp_path / "mine" / inside
    place.mkdir(parents=True)
    monkeypatch.chdir(place)
    assert options.out(None, tmp_path / "mine") == Path(expected)
    assert options.out(Path("there"), tmp_path / "mine") == Path("there")


def test_files_of_a_library_elsewhere_are_made_here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert options.out(None, tmp_path / "episodes") == Path("build")
    assert options.out(None, Path("episodes")) == Path("build")


@pytest.mark.parametrize("form", ["{}", "{}/", "{}//", "./{}", "./{}/", ".\\{}\\", "{}\\", "{}/episode.yaml"])
def test_an_episode_may_be_named_as_the_shell_completes_it(producer: Run, demo: Path, form: str) -> None:
    name = form.format("marrow-creek-grand-sedan")
    for arguments in (("check", name), ("outline", name)):
        assert producer(*arguments, "-l", demo).code == 0


@pytest.mark.parametrize("form", ["../{}", "x/{}", "/{}", "{}/other.yaml", ".{}"])
def test_any_other_path_is_no_episode(producer: Run, demo: Path, form: str) -> None:
    ran = producer("check", form.format("marrow-creek-grand-sedan"), "-l", demo)
    assert ran.code == 2
    assert "there is no episode" in ran.err


def test_a_build_from_a_sub_folder_leaves_nothing_there(
    producer: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    assert producer("new", "library", "mi ne").code == 0
    inside = tmp_path / "mi ne" / "first-episode"
    monkeypatch.chdir(inside)
    ran = producer("card", "first-episode", "--setup", "short")
    assert ran.code == 0
    assert (tmp_path / "mi ne" / "build" / "first-episode" / "card-short.png").is_file()
    assert [one.name for one in inside.iterdir()] == ["episode.yaml"]
    assert all((inside / row).is_file() for row in ran.out.splitlines())


def test_a_folder_that_is_gone_is_one_sentence(producer: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    def gone() -> Path:
        raise FileNotFoundError(2, "No such file or directory")

    monkeypatch.setattr(Path, "cwd", gone)
    ran = producer("check")
    assert ran.code == 2
    assert ran.err.startswith("producer: the folder you are in cannot be read")
