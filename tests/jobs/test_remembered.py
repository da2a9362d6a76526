"""What a check remembers is what it would find again; the file holds nobody's handle; damage only costs time."""

from __future__ import annotations

from pathlib import Path

import pytest

from producer.jobs.check import check
from producer.library.load import load

EPISODE = "marrow-creek-grand-sedan"


def spoil(library: Path) -> None:
    """A figure in the prose that differs from the sheet: found by a costly check."""
    path = library / EPISODE / "episode.yaml"
    text = path.read_text(encoding="utf-8")
    assert "a coil of {{ spring.rf }} is" in text
    path.write_text(
        text.replace("a coil of {{ spring.rf }} is", "a coil of 850 lb/in is"), encoding="utf-8", newline="\n"
    )


def test_a_second_check_says_the_same(library: Path, tmp_path: Path) -> None:
    spoil(library)
    without = check(library).findings
    first = check(library, out=tmp_path / "out").findings
    again = check(library, out=tmp_path / "out").findings
    assert "number-differs" in {one.code for one in without}
    assert first == again == without


def test_what_is_mended_is_not_remembered(library: Path, tmp_path: Path) -> None:
    before = check(library, out=tmp_path / "out").findings
    spoil(library)
    spoilt = check(library, out=tmp_path / "out").findings
    assert {one.code for one in spoilt} - {one.code for one in before} == {"number-differs"}


def test_a_check_of_one_episode_keeps_what_is_known_of_the_others(library: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    check(library, out=out)
    kept = (out / ".cache" / "checked.json").read_bytes()
    check(library, (EPISODE,), out)
    assert (out / ".cache" / "checked.json").read_bytes() == kept


def test_no_handle_is_kept(demo: Path, tmp_path: Path) -> None:
    check(demo, out=tmp_path)
    kept = (tmp_path / ".cache" / "checked.json").read_text(encoding="utf-8")
    requests = load(demo)[0].requests.values()
    assert any(one.credit for one in requests)
    assert not [one.from_ for one in requests if one.from_ in kept or one.from_.lstrip("@") in kept]


@pytest.mark.parametrize("data", [b"", b"[]", b"{", b'{"a": 1}', b"\xff"])
def test_a_damaged_file_only_costs_time(demo: Path, tmp_path: Path, data: bytes) -> None:
    (tmp_path / ".cache").mkdir()
    (tmp_path / ".cache" / "checked.json").write_bytes(data)
    assert check(demo, out=tmp_path).findings == check(demo).findings


@pytest.mark.parametrize(
    ("part", "other"),
    [('"message": "', '"massage": "'), ('"line": ', '"line": "x", "lane": '), ('"summary": {', '"summary": 3, "x": {')],
)
def test_one_damaged_entry_only_costs_time(library: Path, tmp_path: Path, part: str, other: str) -> None:
    spoil(library)
    found = check(library, out=tmp_path / "out").findings
    path = tmp_path / "out" / ".cache" / "checked.json"
    whole = path.read_text(encoding="utf-8")
    assert part in whole
    path.write_text(whole.replace(part, other, 1), encoding="utf-8")
    assert check(library, out=tmp_path / "out").findings == found
    assert path.read_text(encoding="utf-8") == whole


def test_a_disk_that_refuses_only_costs_time(demo: Path, tmp_path: Path) -> None:
    (tmp_path / "out").write_bytes(b"a file where the folder should be")
    assert check(demo, out=tmp_path / "out").findings == check(demo).findings


@pytest.mark.parametrize("name", ["gannet-bowl-grand-sedan", EPISODE])
def test_a_copy_is_known_and_still_told_apart(library: Path, tmp_path: Path, name: str) -> None:
    spoil(library)
    check(library, out=tmp_path / "out")
    text = (library / name / "episode.yaml").read_text(encoding="utf-8")
    (library / "copy").mkdir()
    copied = text.replace(f"episode: {name}", "episode: copy")
    (library / "copy" / "episode.yaml").write_text(copied, encoding="utf-8", newline="\n")
    for path in (library / name / "stints").glob("*.csv"):
        (library / "copy" / "stints").mkdir(exist_ok=True)
        (library / "copy" / "stints" / path.name).write_bytes(path.read_bytes())
    assert check(library, out=tmp_path / "out").findings == check(library).findings
