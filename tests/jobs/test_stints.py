"""From files of laps on disk to the table and the agreed JSON: the demo, odd files, and what is remembered."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from producer.basics.errors import ProducerError
from producer.jobs.check import check
from producer.jobs.dossier import dossier
from producer.jobs.stints import as_json, as_text, stints
from producer.library.load import load

EPISODE = "marrow-creek-grand-sedan"
WITH_LAPS = ("gannet-bowl-grand-sedan", "lantern-flats-club-coupe", "marrow-creek-club-coupe", EPISODE)


def shape(root: Path, episode: str = EPISODE) -> Any:
    return json.loads(as_json(stints(root, episode)))


def edit(path: Path, old: str, new: str) -> None:
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8", newline="\n")


def test_the_agreed_shape(demo: Path) -> None:
    data = shape(demo)
    assert data["format"] == 1
    first = data["stints"][0]
    assert {
        "setup",
        "laps",
        "used",
        "outliers",
        "pace",
        "falloff_per_lap",
        "falloff_interval",
        "method",
        "wear",
    } <= set(first)
    assert (first["setup"], first["laps"], first["used"]) == ("short", 38, 34)
    assert first["outliers"] == [1, 3, 6, 19]
    assert first["method"] == "Theil-Sen"
    assert first["wear"]["front_to_rear"] == -3
    comparison = data["comparison"]
    assert {"first", "second", "crossover_lap", "interval", "ahead_from_lap", "total_after"} <= set(comparison)
    assert (comparison["first"], comparison["second"]) == ("short", "long")
    assert set(comparison["total_after"]) == {"10", "20", "38"}
    assert comparison["interval"][0] < comparison["crossover_lap"] < comparison["interval"][1]
    assert {"corner", "spread", "finding"} <= set(data["temperatures"][0])
    assert len(data["temperatures"]) == 8


def test_the_demo_says_in_figures_what_its_presenter_says(demo: Path) -> None:
    """In the closings: a little past lap twenty; about lap twenty-five; by lap twenty or so, a tenth at the start."""
    assert 21 <= shape(demo, "gannet-bowl-grand-sedan")["comparison"]["ahead_from_lap"] <= 24
    assert 24 <= shape(demo, "lantern-flats-club-coupe")["comparison"]["ahead_from_lap"] <= 26
    data = shape(demo)
    assert 19 <= data["comparison"]["ahead_from_lap"] <= 22
    short, long = (one["pace"] for one in data["stints"])
    assert 0.05 < long - short < 0.15


@pytest.mark.parametrize("episode", WITH_LAPS)
def test_every_number_of_a_sentence_is_one_of_the_figures(demo: Path, episode: str) -> None:
    comparison = shape(demo, episode)["comparison"]
    for laps, total in comparison["total_after"].items():
        spoken = {"10": "ten laps", "20": "twenty laps", "40": "forty laps"}.get(laps, f"{laps}\u00a0laps")
        (told,) = (one for one in (*comparison["may"], *comparison["may_not"]) if one.startswith(f"Over {spoken} "))
        low, high = comparison["total_interval"][laps]
        assert ("cannot be told apart" in told) == (low <= 0 <= high)
        assert f"{abs(total):.1f}\u00a0s" in told
        assert f"give or take {(high - low) / 2:.1f}" in told
        if "faster" in told or "slower" in told:
            assert ("faster" in told) == (total < 0)
    assert comparison["crossover_lap"] is None or (
        f"from about lap {comparison['crossover_lap']:.0f}." in " ".join(comparison["may"])
    )


@pytest.mark.parametrize("episode", WITH_LAPS)
def test_the_table_fits_a_terminal(demo: Path, episode: str) -> None:
    text = as_text(stints(demo, episode))
    assert max(len(line) for line in text.splitlines()) <= 80
    assert "tyre" not in text
    assert "tires" in text
    assert all(line == line.rstrip() for line in text.splitlines())


@pytest.mark.parametrize(
    ("laps", "shown"),
    [
        (
            "".join(f"{lap},{32 - 0.02 * lap + lap % 3 * 0.02:.3f}\n" for lap in range(1, 41)),
            "\u22120.02",
        ),
        ("".join(f"{lap},{31 + 0.001 * lap + lap % 3 * 0.02:.3f}\n" for lap in range(1, 1001)), "1000/1000"),
        ("1,31.4\n" + "5,31.5\n" * 8, "left out, lap 5 a second time: lap 5, 7 times"),
    ],
)
def test_odd_stints_fit_a_terminal_too(library: Path, laps: str, shown: str) -> None:
    (library / EPISODE / "stints" / "short-1.csv").write_text(laps, encoding="utf-8")
    text = as_text(stints(library, EPISODE))
    assert shown in text
    assert max(len(line) for line in text.splitlines()) <= 80


def test_the_author_s_spelling(library: Path) -> None:
    edit(library / "channel.yaml", "spelling: us", "spelling: uk")
    assert "tyres" in as_text(stints(library, EPISODE))
    found = stints(library, EPISODE)
    assert "tyre" in as_json(found)
    assert "tire " not in as_json(found)


def test_an_episode_without_laps(demo: Path) -> None:
    found = stints(demo, "lantern-flats-grand-sedan")
    assert as_text(found).startswith("no test laps yet")
    assert json.loads(as_json(found)) == {
        "format": 1,
        "episode": "lantern-flats-grand-sedan",
        "stints": [],
        "comparison": None,
        "temperatures": [],
        "comparisons": [],
        "findings": [],
    }


def test_an_episode_that_is_not_there(demo: Path) -> None:
    with pytest.raises(ProducerError, match="there is no episode 'nowhere'"):
        stints(demo, "nowhere")


@pytest.mark.parametrize(
    ("data", "code"),
    [
        (b"lap,time\n1,31,482\n", "lap-columns"),
        (b"nothing here\n", "lap-columns"),
        (b"\xff\xfel\x00a\x00p\x00", "not-utf8"),
        (b"lap,time\n1,31.4\x00\n", "odd-character"),
        (b"", "empty-file"),
        (b"lap,time\n1,31.4\n2,oops\n", "lap-unreadable"),
        (b"lap,time\n1,31.4\n2,31.5\n3,31.6\n4,31.6\n", "too-few-laps"),
    ],
)
def test_an_odd_file_is_told_and_the_rest_still_computed(library: Path, data: bytes, code: str) -> None:
    (library / EPISODE / "stints" / "short-1.csv").write_bytes(data)
    found = stints(library, EPISODE)
    assert code in {one.code for one in found.findings}
    table = as_text(found)
    assert "Long run" in table
    assert shape(library)["stints"][1]["pace"] is not None


def test_a_file_that_is_gone(library: Path) -> None:
    (library / EPISODE / "stints" / "short-1.csv").unlink()
    found = stints(library, EPISODE)
    assert [one.code for one in found.findings] == ["missing-file"]
    assert shape(library)["stints"][0]["refused"] == "the file of laps cannot be read"


def test_the_dossier_carries_the_evidence(demo: Path) -> None:
    library, _ = load(demo)
    whole = dossier(library.case(library.episodes[EPISODE]))
    assert whole is not None
    assert whole.evidence is not None
    assert whole.evidence.comparison is not None
    assert whole.evidence.comparison.ahead_from_lap == shape(demo)["comparison"]["ahead_from_lap"]


def test_findings_about_laps_are_remembered_and_found_again_when_laps_change(library: Path, tmp_path: Path) -> None:
    out, laps = tmp_path / "out", library / EPISODE / "stints" / "short-1.csv"
    edit(laps, "9,31.578", "9,oops")
    first = check(library, (EPISODE,), out).findings
    again = check(library, (EPISODE,), out).findings
    assert first == again
    assert f"{EPISODE}/stints/short-1.csv:10:3" in {str(one.place) for one in again}
    edit(laps, "9,oops", "9,31.578")
    assert "lap-unreadable" not in {one.code for one in check(library, (EPISODE,), out).findings}


def test_a_copy_s_findings_name_the_copy_s_files(library: Path, tmp_path: Path) -> None:
    edit(library / EPISODE / "stints" / "short-1.csv", "9,31.578", "9,oops")
    check(library, out=tmp_path / "out")
    copy = library / "copy"
    (copy / "stints").mkdir(parents=True)
    for path in (library / EPISODE / "stints").glob("*.csv"):
        (copy / "stints" / path.name).write_bytes(path.read_bytes())
    text = (library / EPISODE / "episode.yaml").read_text(encoding="utf-8")
    (copy / "episode.yaml").write_text(text.replace(f"episode: {EPISODE}", "episode: copy"), encoding="utf-8")
    files = {one.place.file for one in check(library, out=tmp_path / "out").findings if one.code == "lap-unreadable"}
    assert files == {f"{EPISODE}/stints/short-1.csv", "copy/stints/short-1.csv"}


def test_a_waiver_holds_for_a_file_of_laps(library: Path) -> None:
    edit(library / EPISODE / "stints" / "short-1.csv", "9,31.578", "9,oops")
    yaml = library / EPISODE / "episode.yaml"
    waiver = "allow: [ { code: lap-unreadable, why: the clock had stopped } ]\n"
    text = yaml.read_text(encoding="utf-8")
    yaml.write_text(text + ("" if "\nallow:" in text else waiver), encoding="utf-8", newline="\n")
    assert "\nallow:" not in text
    assert "lap-unreadable" not in {one.code for one in check(library, (EPISODE,)).findings}


def test_laps_may_be_called_anything(library: Path, tmp_path: Path) -> None:
    """A file that does not end in .csv is read, and a change in it is noticed."""
    old = library / EPISODE / "stints" / "short-1.csv"
    new = old.with_name("short.txt")
    old.rename(new)
    edit(library / EPISODE / "episode.yaml", "stints/short-1.csv", "stints/short.txt")
    assert "lap-unreadable" not in {one.code for one in check(library, (EPISODE,), tmp_path).findings}
    edit(new, "9,31.578", "9,oops")
    assert "lap-unreadable" in {one.code for one in check(library, (EPISODE,), tmp_path).findings}
