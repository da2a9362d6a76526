"""Whole files or nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from producer.basics.errors import ProducerError
from producer.jobs.deliver import deliver, take_away
from producer.render.document import Document


def test_documents_land_where_they_say(tmp_path: Path) -> None:
    written = deliver([Document("a.txt", b"one"), Document("deep/b.txt", b"two")], tmp_path / "out")
    assert written == (tmp_path / "out" / "a.txt", tmp_path / "out" / "deep" / "b.txt")
    assert [path.read_bytes() for path in written] == [b"one", b"two"]


def test_nothing_temporary_is_left(tmp_path: Path) -> None:
    deliver([Document("a.txt", b"one")], tmp_path)
    deliver([Document("a.txt", b"two")], tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == ["a.txt"]


def test_a_failure_halfway_leaves_the_files_of_last_time(tmp_path: Path) -> None:
    deliver([Document("a.txt", b"old")], tmp_path)

    def documents() -> object:
        yield Document("a.txt", b"new")
        raise RuntimeError("the second one cannot be made")

    with pytest.raises(RuntimeError):
        deliver(documents(), tmp_path)
    assert (tmp_path / "a.txt").read_bytes() == b"old"
    assert len(list(tmp_path.iterdir())) == 1


@pytest.mark.parametrize("path", ["../a", "a/../../b", "/a", "c:/a", "a\\b", "", "a//b"])
def test_a_document_never_leaves_its_folder(tmp_path: Path, path: str) -> None:
    with pytest.raises(ValueError, match="stays inside"):
        deliver([Document(path, b"")], tmp_path / "out")


def test_a_disk_that_refuses_is_one_sentence(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    with pytest.raises(ProducerError, match="cannot write"):
        deliver([Document("a.txt", b"")], tmp_path / "file")


def test_what_is_no_longer_made_is_taken_away(tmp_path: Path) -> None:
    deliver([Document("a.txt", b""), Document("b.txt", b"")], tmp_path)
    take_away(["a.txt", "never-there.txt"], tmp_path)
    assert [path.name for path in tmp_path.iterdir()] == ["b.txt"]
