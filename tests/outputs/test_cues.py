"""Cue sheets: golden files, what each mark says, and times that no format refuses."""

from __future__ import annotations

import csv
import io
import json
import os
from dataclasses import replace
from pathlib import Path
from typing import Any, Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.basics.frame_rate import frame_rate
from producer.model.dossier import Dossier
from producer.outputs.captions import documents as caption_documents
from producer.outputs.captions import shown
from producer.outputs.cues import documents, marks
from producer.render.kit import Kit
from tests.outputs.dossiers import with_values

GOLDEN = Path(__file__).parent / "golden"
NAMES = ["cues.csv", "cues.otio", "cues.edl", "chapters.ffmeta", "chapters.json"]


def files(dossier: Dossier, kit: Kit) -> dict[str, str]:
    return {one.path: one.data.decode("utf-8") for one in documents(dossier, kit)}


def rows(dossier: Dossier, kit: Kit) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(files(dossier, kit)["cues.csv"], newline="")))


def at_rate(dossier: Dossier, rate: str | None) -> Dossier:
    given = None if rate is None else frame_rate(rate)
    return replace(dossier, channel=dossier.channel.model_copy(update={"frame_rate": given}))


def timed(dossier: Dossier, source: Literal["estimate", "raw", "cut"]) -> Dossier:
    return replace(dossier, timeline=replace(dossier.timeline, source=source))


def test_the_five_files(dossier: Dossier, kit: Kit) -> None:
    assert list(files(dossier, kit)) == NAMES


@pytest.mark.parametrize("name", NAMES)
def test_files_are_as_they_were_agreed(dossier: Dossier, kit: Kit, name: str) -> None:
    """`UPDATE_GOLDEN=1` writes them anew; read the difference before it is committed."""
    made = files(at_rate(dossier, "30000/1001"), kit)[name].encode()
    path = GOLDEN / name
    if os.environ.get("UPDATE_GOLDEN"):
        path.write_bytes(made)
    # A checkout may have turned the line ends of the golden file.
    assert made.replace(b"\r\n", b"\n") == path.read_bytes().replace(b"\r\n", b"\n")


def test_line_ends_are_those_of_each_format(dossier: Dossier, kit: Kit) -> None:
    made = files(dossier, kit)
    assert made["cues.csv"].count("\r\n") == made["cues.csv"].count("\n")
    assert not any("\r" in made[name] for name in NAMES[1:])


def test_every_section_and_every_caption_is_a_mark(dossier: Dossier, kit: Kit) -> None:
    table = rows(dossier, kit)
    sections = [row for row in table if row["kind"] == "section"]
    assert [row["name"] for row in sections] == [one.title for one in dossier.narration.sections]
    assert [row["end"] for row in sections[:-1]] == [row["start"] for row in sections[1:]]
    captions = [row["name"] for row in table if row["kind"] == "caption"]
    assert captions == [" / ".join(one.lines) for one in shown(dossier)]
    assert "tires page" in sections[2]["note"]


def test_a_changed_figure_changes_the_sheets(dossier: Dossier, kit: Kit) -> None:
    other = files(with_values(dossier, "short", {"spring.rf": "675"}), kit)
    for name in ("cues.csv", "cues.otio"):
        assert "RF spring 675\u00a0lb/in" in other[name]
        assert "700" not in other[name]
    assert "RF spring 675 lb/in" in other["cues.edl"]


@pytest.mark.parametrize(
    ("source", "told"),
    [("estimate", "Times are estimated from the script."), ("raw", "Times are those of the take as recorded.")],
)
def test_the_first_mark_says_where_times_come_from(
    dossier: Dossier, kit: Kit, source: Literal["estimate", "raw"], told: str
) -> None:
    known = timed(at_rate(dossier, "25"), source)
    assert marks(known)[0].note.startswith(told)
    for name in ("cues.csv", "cues.otio", "cues.edl"):
        assert files(known, kit)[name].count(told) == 1


def test_times_of_the_cut_need_no_word(dossier: Dossier) -> None:
    assert marks(timed(at_rate(dossier, "25"), "cut"))[0].note == ""


def test_without_a_rate_thirty_frames_are_counted_and_the_sheet_says_so(dossier: Dossier, kit: Kit) -> None:
    unknown = at_rate(dossier, None)
    assert "Timecode counts 30 frames a second" in rows(unknown, kit)[0]["note"]
    assert "FCM: NON-DROP FRAME" in files(unknown, kit)["cues.edl"]
    assert rows(unknown, kit)[2]["timecode_in"] == rows(at_rate(dossier, "30"), kit)[2]["timecode_in"]
    assert "Timecode counts" not in files(at_rate(dossier, "30"), kit)["cues.edl"]


@pytest.mark.parametrize(
    ("rate", "code"), [("30000/1001", "00:01:23;29"), ("25", "00:01:24:00"), ("60000/1001", "00:01:23;58")]
)
def test_timecode_is_counted_at_the_channel_s_rate(dossier: Dossier, kit: Kit, rate: str, code: str) -> None:
    found = rows(at_rate(dossier, rate), kit)
    assert code in {row["timecode_in"] for row in found}


def test_chapters_are_those_of_every_other_file(dossier: Dossier, kit: Kit) -> None:
    made = files(dossier, kit)
    titles = [one["title"] for one in json.loads(made["chapters.json"])["chapters"]]
    vtt = next(one.data.decode() for one in caption_documents(dossier, kit) if one.path == "chapters.vtt")
    assert titles == [block.splitlines()[1] for block in vtt.split("\n\n")[2:]]
    assert made["chapters.ffmeta"].count("[CHAPTER]") == len(titles)


@given(st.data())
def test_no_times_are_refused(dossier: Dossier, kit: Kit, data: Any) -> None:
    """Whatever a take's times are: sections at one moment, past the end, none at all."""
    total = data.draw(st.integers(0, 200_000))
    starts = data.draw(st.lists(st.integers(0, 250_000), min_size=7, max_size=7).map(sorted))
    odd = replace(dossier, timeline=replace(dossier.timeline, section_starts=tuple(starts), total_ms=total))
    made = {**files(odd, kit), **{one.path: one.data.decode() for one in caption_documents(odd, kit)}}
    chapters = json.loads(made["chapters.json"])["chapters"]
    times = [one["startTime"] for one in chapters]
    assert times == sorted(set(times))
    assert all(one["startTime"] < one["endTime"] <= total / 1000 for one in chapters)


def test_names_that_other_programs_would_run_or_break_at(dossier: Dossier, kit: Kit) -> None:
    sections = dossier.narration.sections
    odd = replace(sections[0], title="=1+1; #one\nTWO <b>", shots=("@SUM(A1)",))
    told = replace(dossier, narration=replace(dossier.narration, sections=(odd, *sections[1:])))
    made = files(told, kit)
    assert rows(told, kit)[0]["name"] == "'=1+1; #one TWO <b>"
    assert "title=\\=1+1\\; \\#one TWO b" in made["chapters.ffmeta"]
    assert all(line.startswith(("TITLE", "FCM", "001", "* ")) for line in made["cues.edl"].splitlines())
