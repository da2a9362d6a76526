"""The command: what it tells of the demo's take, its JSON, what a build makes of it."""

from __future__ import annotations

import csv
import io
import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Run = Callable[..., Any]
EPISODE = "marrow-creek-grand-sedan"
SHOCKS = {(f"{name}.{corner}", "short") for name in ("compression", "rebound") for corner in ("lf", "rf", "lr", "rr")}


def test_the_demo_s_two_slips_and_the_page_left_out_and_nothing_else(producer: Run, demo: Path) -> None:
    ran = producer("take", EPISODE, "--json", "-l", demo)
    assert (ran.code, ran.err) == (0, "")
    found = json.loads(ran.out)["findings"]
    slips = [(one["parameter"], one["setup"], one["said"], one["expected"]) for one in found if one["at"] is not None]
    assert slips == [("front_weight", "short", 50, 50.5), ("final_drive", "long", 3.85, 4)]
    rest = [one for one in found if one["at"] is None]
    assert {(one["parameter"], one["setup"]) for one in rest if one["about"] == "parameter"} == SHOCKS
    assert [one["expected"] for one in rest if one["about"] == "section"] == ["Short run: shocks"]
    assert len(found) == 2 + 8 + 1


def test_the_shape(producer: Run, demo: Path) -> None:
    shape = json.loads(producer("take", EPISODE, "--json", "-l", demo).out)
    assert shape["format"] == 1
    assert shape["words"]["script"] > shape["words"]["matched"] > 2000
    assert shape["words"]["take"] > 2000
    sections = {one["section"]: (one["title"], one["start"], one["end"]) for one in shape["sections"]}
    assert sections["short.shocks"] == ("Short run: shocks", None, None)
    assert sections["opening"][1] == 3.48
    times = [one for one in sections.values() if one[1] is not None]
    assert all(start < end for _, start, end in times)
    for one in shape["findings"]:
        assert one["code"] in {"said-differs", "not-said"}
        assert set(one) >= {"code", "about", "at", "said", "expected", "parameter", "setup"}


def test_the_list_for_the_terminal(producer: Run, demo: Path) -> None:
    ran = producer("take", EPISODE, "-l", demo)
    lines = ran.out.splitlines()
    assert lines[0].startswith(f"{EPISODE}/take.srt: the take as recorded, 20:21, ")
    assert "   5:06  Front weight (Short run): said 50, the sheet has 50.5\u00a0%" in lines
    assert '         say "Front weight, 50.5 percent."' in lines
    assert "  Short run: shocks: left out" in lines
    assert max(map(len, lines)) <= 80


def test_a_waiver_hides_what_the_author_lives_with(producer: Run, library: Path) -> None:
    own = library / EPISODE / "episode.yaml"
    text = own.read_text(encoding="utf-8")
    allow = "allow:\n  - { code: not-said, for: shocks, why: they are shown }\n"
    own.write_text(f"{text}\n{allow}", encoding="utf-8")
    found = json.loads(producer("take", EPISODE, "--json", "-l", library).out)["findings"]
    assert [one["about"] for one in found] == ["parameter", "parameter", "section"]
    assert producer("check", EPISODE, "-l", library).code == 0


def test_no_take_yet(producer: Run, demo: Path) -> None:
    ran = producer("take", "gannet-bowl-grand-sedan", "-l", demo)
    assert ran.code == 2
    assert "save them as gannet-bowl-grand-sedan/take.srt" in ran.err


def test_captions_of_another_episode(producer: Run, library: Path) -> None:
    (library / EPISODE / "take.srt").rename(library / "gannet-bowl-grand-sedan" / "take.srt")
    ran = producer("take", "gannet-bowl-grand-sedan", "-l", library)
    assert ran.code == 1
    assert "these captions are not of 'gannet-bowl-grand-sedan'" in ran.out


@pytest.mark.parametrize("text", ["", "no captions at all", "WEBVTT\n\n"])
def test_captions_without_a_word(producer: Run, library: Path, text: str) -> None:
    (library / EPISODE / "take.srt").write_text(text, encoding="utf-8")
    ran = producer("take", EPISODE, "-l", library)
    assert ran.code == 2


def test_an_episode_that_is_not_there(producer: Run, demo: Path) -> None:
    ran = producer("take", "marrow-creek", "-l", demo)
    assert ran.code == 2
    assert "did you mean" in ran.err


def test_a_build_uses_the_times_of_the_take(producer: Run, library: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    assert producer("build", EPISODE, "-l", library, "-o", out).code == 0
    made = out / EPISODE
    assert "times those of the take as recorded" in (made / "notes.md").read_text(encoding="utf-8")
    chapters = (made / "chapters.vtt").read_text(encoding="utf-8")
    assert "00:14:44.000 --> 00:15:33.000\nLong run: wheels" in chapters
    assert "shocks" not in (made / "notes.txt").read_text(encoding="utf-8").split("Short run:")[0].replace(
        "Long run: shocks", ""
    )
    captions = (made / "captions.srt").read_text(encoding="utf-8")
    # On the screen the sheet's figure, when the wrong one is said.
    assert "00:05:05,351 --> 00:05:12,351\nFront weight 50.5 %" in captions.replace("\u00a0", " ")
    # What is still to be read keeps the script, whole.
    assert "## 6. Short run: shocks" in (made / "script.md").read_text(encoding="utf-8")


SHOCKS_SAID = """1
00:00:01,000 --> 00:00:04,000
Short run, the shocks page.

2
00:00:05,000 --> 00:00:12,000
Compression: left front 4, right front 4, left rear 5 and right rear 4.

3
00:00:13,000 --> 00:00:19,000
Rebound: left front 7, right front 5, left rear 4 and right rear 5.
"""


def test_the_cue_sheets_mark_what_to_record_again(producer: Run, demo: Path, tmp_path: Path) -> None:
    assert producer("captions", EPISODE, "-l", demo, "-o", tmp_path / "out").code == 0
    made = tmp_path / "out" / EPISODE
    rows = list(csv.DictReader(io.StringIO((made / "cues.csv").read_text(encoding="utf-8"), newline="")))
    again = [(row["start"], row["name"].replace("\u00a0", " ")) for row in rows if row["kind"] == "pick-up"]
    assert again == [
        ("00:05:06.196", "Record again: Front weight (Short run): said 50, the sheet has 50.5 %"),
        ("00:12:46.319", "Record: Short run: shocks"),
        ("00:18:19.446", "Record again: Final drive (Long run): said 3.85, the sheet has 4.00:1"),
    ]
    assert (made / "cues.edl").read_text(encoding="utf-8").count(" RED ") == 3
    markers = json.loads((made / "cues.otio").read_text(encoding="utf-8"))["tracks"]["markers"]
    red = [one for one in markers if one["color"] == "RED"]
    assert [one["metadata"]["producer"]["kind"] for one in red] == ["pick-up"] * 3


def test_pick_ups_from_their_files_to_the_cue_sheet(producer: Run, library: Path, tmp_path: Path) -> None:
    """The list gets shorter with every file, and the sheet says what to put in."""
    folder, out = library / EPISODE, tmp_path / "out"
    front = "1\n00:00:02,000 --> 00:00:05,000\nShort run, front weight, fifty and a half percent.\n"
    (folder / "take-2.srt").write_text(front, encoding="utf-8")
    once = producer("take", EPISODE, "-l", library).out
    assert "Front weight (Short run): said 50, the sheet has 50.5\u00a0%\n         put in take-2.srt from 0:02" in once
    assert "Short run: shocks: left out" in once
    (folder / "take-3.srt").write_text(SHOCKS_SAID, encoding="utf-8")
    gear = front.replace("Short run, front weight, fifty and a half percent", "Long run, final drive, four to one")
    (folder / "take-4.srt").write_text(gear, encoding="utf-8")
    shape = json.loads(producer("take", EPISODE, "--json", "-l", library).out)
    assert shape["findings"] == []
    assert {one["file"] for one in shape["mended"]} == {f"{EPISODE}/take-{number}.srt" for number in (2, 3, 4)}
    assert [one["parameter"] for one in shape["mended"] if one["at"] is not None] == ["front_weight", "final_drive"]
    whole = producer("take", EPISODE, "-l", library).out
    assert "Nothing to record again" in whole
    assert max(map(len, whole.splitlines())) <= 80
    producer("captions", EPISODE, "-l", library, "-o", out)
    sheet = (out / EPISODE / "cues.edl").read_text(encoding="utf-8")
    assert [line.split("RED")[1].split(" - ")[0].strip() for line in sheet.splitlines() if " RED " in line] == [
        "Put in take-2.srt from 0:02", "Put in take-3.srt from 0:06", "Put in take-4.srt from 0:02"
    ]  # fmt: skip


def test_a_pick_up_that_is_wrong_again_stands_after_the_take(producer: Run, library: Path) -> None:
    text = "1\n00:00:02,000 --> 00:00:05,000\nLong run, final drive, from four fifteen down to three seventy.\n"
    (library / EPISODE / "take-2.srt").write_text(text, encoding="utf-8")
    lines = producer("take", EPISODE, "-l", library).out.splitlines()
    starts = [line for line in lines if "Final drive" in line and "said" in line]
    assert [line.split()[0] for line in starts] == ["18:19", "0:04"]
    assert starts[1].endswith("in take-2.srt")


def test_a_cut_takes_over(producer: Run, library: Path, tmp_path: Path) -> None:
    folder = library / EPISODE
    later = (folder / "take.srt").read_text(encoding="utf-8")
    (folder / "cut.srt").write_text(later, encoding="utf-8")
    assert json.loads(producer("take", EPISODE, "--json", "-l", library).out)["of"] == "cut"
    producer("notes", EPISODE, "-l", library, "-o", tmp_path / "out")
    assert "times those of the cut" in (tmp_path / "out" / EPISODE / "notes.md").read_text(encoding="utf-8")


def test_a_changed_take_builds_again(producer: Run, library: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    producer("build", EPISODE, "-l", library, "-o", out)
    take = library / EPISODE / "take.srt"
    take.write_text(take.read_text(encoding="utf-8").replace("Evening, all.", "Evening."), encoding="utf-8")
    assert "1 episode built" in producer("build", EPISODE, "-l", library, "-o", out).out


def test_a_build_says_whose_times_it_has(producer: Run, library: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    assert "\n    times of the take as recorded" in producer("build", EPISODE, "-l", library, "-o", out).out
    assert (
        producer("captions", EPISODE, "-l", library, "-o", out).out.splitlines()[-1] == "times of the take as recorded"
    )
    other = library / "gannet-bowl-grand-sedan" / "take.srt"
    other.write_bytes((library / EPISODE / "take.srt").read_bytes())
    told = producer("build", other.parent.name, "-l", library, "-o", out).out
    assert "\n    times estimated: take.srt is of something else" in told
    assert not (out / other.parent.name / "speech.srt").exists()
    notes = (out / other.parent.name / "notes.md").read_text(encoding="utf-8")
    assert "times estimated from the script" in notes
    (library / EPISODE / "take.srt").rename(library / EPISODE / "cut.srt")
    assert "\n    times of the cut" in producer("build", EPISODE, "-l", library, "-o", out).out


def test_spoken_captions_come_and_go_with_the_take(producer: Run, library: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    producer("build", EPISODE, "-l", library, "-o", out)
    assert (out / EPISODE / "speech.srt").is_file()
    (library / EPISODE / "take.srt").unlink()
    producer("build", EPISODE, "-l", library, "-o", out)
    assert not (out / EPISODE / "speech.srt").exists()


@pytest.mark.parametrize(("length", "there"), [("", False), ("20:25", True), ("19:00", False)])
def test_the_last_chapter_lasts_to_the_end_of_the_video(
    producer: Run, library: Path, tmp_path: Path, length: str, there: bool
) -> None:
    """A closing of a few seconds is a chapter where the video goes on after the last word."""
    folder = library / EPISODE
    cut = (folder / "take.srt").read_text(encoding="utf-8").split("\n\n")
    closing = next(at for at, cue in enumerate(cut) if "00:19:38" in cue)
    (folder / "cut.srt").write_text("\n\n".join(cut[: closing + 1]) + "\n", encoding="utf-8")
    if length:
        own = folder / "episode.yaml"
        text = own.read_text(encoding="utf-8")
        own.write_text(f'{text}\nvideo: {{ url: "https://example.org/v", length: "{length}" }}\n', encoding="utf-8")
    notes = producer("notes", EPISODE, "-l", library, "-o", tmp_path / "out").out
    assert ("19:38 Closing" in notes) == there, notes


@pytest.mark.parametrize("name", ["take.SRT", "night.txt"])
def test_a_take_called_otherwise_that_changes_builds_again(
    producer: Run, library: Path, tmp_path: Path, name: str
) -> None:
    folder, out = library / EPISODE, tmp_path / "out"
    (folder / "take.srt").rename(folder / name)
    if name == "night.txt":
        own = folder / "episode.yaml"
        text = own.read_text(encoding="utf-8")
        own.write_text(f"{text}\ntakes: [{{ file: night.txt, of: raw }}]\n", encoding="utf-8")
    assert "times of the take" in producer("build", EPISODE, "-l", library, "-o", out).out
    take = folder / name
    take.write_text(take.read_text(encoding="utf-8").replace("Evening, all.", "Evening."), encoding="utf-8")
    assert "1 episode built" in producer("build", EPISODE, "-l", library, "-o", out).out


def test_it_loads_nothing_it_does_not_need(demo: Path) -> None:
    command = [
        sys.executable,
        "-X",
        "importtime",
        "-m",
        "producer",
        "outline",
        "gannet-bowl-grand-sedan",
        "-l",
        str(demo),
    ]
    done = subprocess.run(command, capture_output=True, text=True, encoding="utf-8", check=False)
    assert "rapidfuzz" not in done.stderr


@pytest.mark.parametrize("data", [b"", b"\x00\xff junk", b"WEBVTT\n\n"])
def test_a_file_without_a_word_is_told(producer: Run, library: Path, tmp_path: Path, data: bytes) -> None:
    path = library / EPISODE / "take.srt"
    path.write_bytes(data)
    ran = producer("take", EPISODE, "-l", library)
    assert ran.code == 2
    assert f"{EPISODE}/take.srt holds no words that can be read: 'producer cues {path}' says why" in ran.err
    made = producer("captions", EPISODE, "-l", library, "-o", tmp_path / "out")
    assert (made.code, made.out.splitlines()[-1]) == (0, "times estimated: no words in take.srt")
