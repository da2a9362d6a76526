"""A folder into a library: what cannot be built is left out and said, the rest is read."""

from __future__ import annotations

import os
import shutil
from pathlib import Path
from typing import Any

import pytest

from producer.basics.errors import ProducerError
from producer.library.load import find_library, load

BASE = Path(__file__).parent.parent / "checks" / "base"
NAME = "marrow-creek-grand-sedan"


@pytest.fixture
def root(tmp_path: Path) -> Path:
    shutil.copytree(BASE, tmp_path / "library")
    return tmp_path / "library"


def said(root: Path) -> list[tuple[str, str]]:
    return [(one.code, str(one.place)) for one in load(root)[1]]


def write(root: Path, file: str, text: str) -> None:
    path = root / file
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8", newline="")


def test_a_whole_library() -> None:
    library, found = load(BASE)
    assert found == []
    assert library.channel is not None
    assert library.channel.name == "Second Groove Notebook"
    assert (list(library.garages), list(library.tracks)) == (["grand-sedan"], ["marrow-creek"])
    assert list(library.requests) == ["req-014", "req-015", "req-016"]
    assert list(library.episodes) == [NAME]
    assert library.has_requests
    assert library.broken == ()
    assert set(library.files) == {
        "channel.yaml", "garages/grand-sedan.yaml", "tracks/marrow-creek.yaml", "requests/2026-11.yaml",
        f"{NAME}/episode.yaml", f"{NAME}/stints/short-1.csv",
    }  # fmt: skip
    assert library.files[f"{NAME}/stints/short-1.csv"].line(1).startswith("lap,time")


def test_the_demo_is_read(demo: Path) -> None:
    library, found = load(demo)
    assert found == []
    assert len(library.episodes) >= 3


def test_nothing_of_the_author_is_touched(root: Path) -> None:
    before = {path: path.read_bytes() for path in root.rglob("*") if path.is_file()}
    load(root)
    assert {path: path.read_bytes() for path in root.rglob("*") if path.is_file()} == before


def test_line_ends_and_a_mark_change_nothing_but_the_bytes(root: Path) -> None:
    plain, _ = load(root)
    for path in root.rglob("*.yaml"):
        path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes().replace(b"\n", b"\r\n"))
    library, found = load(root)
    assert found == []
    assert library.episodes == plain.episodes
    assert library.garages == plain.garages
    before, after = plain.episodes[NAME], library.episodes[NAME]
    assert before.setups[0].place("values", "tape") == after.setups[0].place("values", "tape")
    assert before.setups[0].reasons[0].inside(("because",), 2, 6) == after.setups[0].reasons[0].inside(
        ("because",), 2, 6
    )


def test_a_broken_episode_leaves_the_others(root: Path) -> None:
    shutil.copytree(root / NAME, root / "another")
    write(root, "another/episode.yaml", "format: 1\nepisode: [\n")
    library, found = load(root)
    assert list(library.episodes) == [NAME]
    assert library.broken == ("another",)
    assert [one.code for one in found] == ["not-yaml"]


@pytest.mark.parametrize(
    ("file", "text", "code"),
    [
        ("channel.yaml", "", "empty-file"),
        ("channel.yaml", "a: *b\n", "yaml-feature"),
        ("garages/grand-sedan.yaml", "[" * 10_000, "too-deep"),
        ("tracks/marrow-creek.yaml", "- a\n", "wrong-kind"),
        ("requests/2026-11.yaml", "a: b: c\n", "not-yaml"),
        (f"{NAME}/episode.yaml", "\t", "not-yaml"),
    ],
)
def test_one_broken_file_is_left_out(root: Path, file: str, text: str, code: str) -> None:
    write(root, file, text)
    library, found = load(root)
    assert [(one.code, one.place.file) for one in found] == [(code, file)]
    assert len([one for one in library.files if one.endswith(".yaml")]) == 5
    for episode in library.episodes.values():
        library.case(episode)


def test_no_channel(root: Path) -> None:
    (root / "channel.yaml").unlink()
    assert said(root) == [("missing-file", "channel.yaml:1:1")]


def test_no_requests_folder_is_a_public_copy(root: Path) -> None:
    shutil.rmtree(root / "requests")
    library, found = load(root)
    assert found == []
    assert not library.has_requests


@pytest.mark.parametrize(
    ("make", "speaks"),
    [
        ("empty/.keep", False),
        ("notes/ideas.md", False),
        ("templates/reply.md.j2", False),
        (".git/HEAD", False),
        ("lost/stints/short-1.csv", True),
        ("lost/take.srt", True),
        ("lost/episode.yml", True),
        ("lost/published/1.yaml", True),
    ],
)
def test_a_folder_without_an_episode(root: Path, make: str, speaks: bool) -> None:
    write(root, make, "x\n")
    assert said(root) == ([("missing-file", "lost/episode.yaml:1:1")] if speaks else [])


def test_an_id_is_the_name_of_its_file(root: Path) -> None:
    (root / "tracks" / "marrow-creek.yaml").rename(root / "tracks" / "creek.yaml")
    (root / NAME).rename(root / "creek")
    library, found = load(root)
    assert [(one.code, one.place.file, one.place.line) for one in found] == [
        ("id-differs", "tracks/creek.yaml", 3),
        ("id-differs", "creek/episode.yaml", 3),
    ]
    assert list(library.tracks) == ["marrow-creek"]
    assert list(library.episodes) == [NAME]


def test_two_of_one_id_name_each_other(root: Path) -> None:
    shutil.copytree(root / NAME, root / "another")
    _, found = load(root)
    assert [(one.code, one.place.file) for one in found] == [
        ("id-differs", "another/episode.yaml"),
        ("duplicate-id", f"{NAME}/episode.yaml"),
    ]
    assert [str(one) for one in found[1].related] == ["another/episode.yaml:3:10"]


def test_a_circle_of_setups_has_no_sheets(root: Path) -> None:
    path = root / NAME / "episode.yaml"
    text = path.read_text(encoding="utf-8").replace("    purpose: short run\n", "    based_on: long\n", 1)
    write(root, f"{NAME}/episode.yaml", text)
    library, found = load(root)
    assert found == []
    assert library.case(library.episodes[NAME]).sheets == ()


def test_where_a_library_is(root: Path, tmp_path: Path) -> None:
    assert find_library(root, tmp_path) == root
    assert find_library(None, root / NAME / "stints") == root
    (tmp_path / "episodes").mkdir()
    with pytest.raises(ProducerError, match="producer new library"):
        find_library(None, tmp_path)
    shutil.copy(root / "channel.yaml", tmp_path / "episodes")
    assert find_library(None, tmp_path) == tmp_path / "episodes"
    with pytest.raises(ProducerError, match="not a folder"):
        find_library(root / "channel.yaml", tmp_path)


def test_no_folder_is_the_environments_trouble(tmp_path: Path) -> None:
    with pytest.raises(ProducerError, match="no library"):
        load(tmp_path / "nowhere")


def test_a_folder_in_a_files_place(root: Path) -> None:
    (root / "channel.yaml").unlink()
    (root / "channel.yaml").mkdir()
    (root / "tracks" / "pond.yaml").mkdir()
    assert ("missing-file", "channel.yaml:1:1") in said(root)


@pytest.mark.parametrize("name", ["episode.yml", "Episode.yml", "episode.yaml.txt", "EPISODE.TXT"])
def test_an_episode_under_nearly_its_name_is_told(root: Path, name: str) -> None:
    (root / "two").mkdir()
    (root / "two" / name).write_text("format: 1\n", encoding="utf-8")
    _, findings = load(root)
    assert [(one.code, one.place.file) for one in findings] == [("missing-file", "two/episode.yaml")]
    assert findings[0].hint == f"the file is called '{name}': rename it to episode.yaml"


@pytest.mark.parametrize("name", ["notes.txt", "episodes.md", "card.yaml"])
def test_a_folder_of_something_else_is_left_alone(root: Path, name: str) -> None:
    (root / "two").mkdir()
    (root / "two" / name).write_text("x", encoding="utf-8")
    assert load(root)[1] == []


@pytest.mark.parametrize("folder", ["garages", "tracks", "requests"])
def test_a_file_saved_as_text_is_told(root: Path, folder: str) -> None:
    (root / folder).mkdir(exist_ok=True)
    (root / folder / "new.yaml.txt").write_text("x", encoding="utf-8")
    (root / folder / "readme.txt").write_text("x", encoding="utf-8")
    _, findings = load(root)
    assert [(one.place.file, one.hint) for one in findings] == [(f"{folder}/new.yaml.txt", "rename it to new.yaml")]


def test_a_copied_episode_is_told_what_to_write(root: Path) -> None:
    shutil.copytree(root / NAME, root / "the-next-one")
    _, findings = load(root)
    assert [(one.code, one.place.file) for one in findings] == [("duplicate-id", "the-next-one/episode.yaml")]
    assert findings[0].hint == "write 'episode: the-next-one' here, like the name of its folder"


@pytest.mark.parametrize(
    ("file", "data", "code"),
    [
        ("stints/there.csv", b"lap,time\n1,31.482\n", None),
        ("stints/there.csv", b"", "empty-file"),
        ("stints/gone.csv", None, "missing-file"),
        ("stints", None, "missing-file"),
    ],
)
def test_test_laps_are_there(root: Path, file: str, data: bytes | None, code: str | None) -> None:
    path = root / NAME / "episode.yaml"
    text = path.read_text(encoding="utf-8")
    assert "stints/short-1.csv" in text
    path.write_text(text.replace("stints/short-1.csv", file), encoding="utf-8")
    (root / NAME / "stints").mkdir(exist_ok=True)
    if data is not None:
        (root / NAME / file).write_bytes(data)
    _, findings = load(root)
    assert [one.code for one in findings] == ([code] if code else [])
    assert all(one.place.line > 1 for one in findings)


def test_a_folder_that_is_no_library_is_one_sentence(root: Path, tmp_path: Path) -> None:
    with pytest.raises(ProducerError, match=r"not a library.*did you mean"):
        find_library(root / NAME, tmp_path)
    other = tmp_path / "other"
    other.mkdir()
    with pytest.raises(ProducerError, match=r"is not a library: there is no channel\.yaml in it$"):
        find_library(other, tmp_path)
    (root / "channel.yaml").unlink()
    assert find_library(root, tmp_path) == root


@pytest.mark.parametrize("closed", [NAME, "garages", "requests", "."])
def test_a_folder_that_may_not_be_read_is_one_sentence(
    root: Path, monkeypatch: pytest.MonkeyPatch, closed: str
) -> None:
    """As the system does it for a folder without rights: neither its names nor what is in it can be had."""
    folder = root / closed
    listed, looked = os.listdir, os.stat

    def refuse(path: object) -> None:
        if isinstance(path, (str, Path)) and Path(path) == folder:
            raise PermissionError(13, "Permission denied", str(path))

    def listdir(path: Any = ".") -> list[str]:
        refuse(path)
        return listed(path)

    def stat(path: Any, **options: Any) -> os.stat_result:
        refuse(Path(path).parent if isinstance(path, (str, Path)) else path)
        return looked(path, **options)

    monkeypatch.setattr(os, "listdir", listdir)
    monkeypatch.setattr(os, "stat", stat)
    with pytest.raises(ProducerError, match="cannot be read: Permission denied"):
        load(find_library(root, root))
