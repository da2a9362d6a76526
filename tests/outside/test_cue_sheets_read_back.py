"""Cue sheets read back by programs that others wrote, and timecode against published figures.

Referees: pycmx 1.5 (edit decision lists), opentimelineio 0.18, FFmpeg's reader of its metadata by way of PyAV (`av`),
and a JSON schema of the podcast namespace's "JSON Chapters Format Version 1.2", written by us from its text. Figures of
drop-frame follow from the rule of SMPTE ST 12-1 (from memory) and are the usual worked examples.
"""

from __future__ import annotations

import csv
import io
import json
from fractions import Fraction

import av
import jsonschema
import opentimelineio as otio
import pycmx
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from producer.basics.frame_rate import frame_rate
from producer.captions.chapter_files import chapters_ffmetadata, chapters_podcast
from producer.captions.edl import marks_edl
from producer.captions.marks import frames_of, ordered, plain_ascii
from producer.captions.otio import marks_otio
from producer.captions.payload import clean_line
from producer.captions.sheet_csv import marks_csv, safe_cell
from producer.captions.timecode import frame_at, from_timecode, to_timecode
from producer.model.cue import Chapter, Mark

RATES = ["24000/1001", "24", "25", "30000/1001", "30", "50", "60000/1001", "60"]
LETTERS = st.one_of(st.sampled_from("=;#\\\n\r\"',:*-+@ <>&½\u2212\u00a0"), st.characters(exclude_categories=()))
NAMES = st.text(LETTERS, max_size=30)
MARKS = st.lists(
    st.builds(
        lambda start, lasts, kind, name, note: Mark(start, start + lasts, kind, name, note),
        st.integers(0, 7_200_000),
        st.integers(0, 60_000),
        st.sampled_from(["section", "caption", "pick-up"]),
        NAMES,
        NAMES,
    ),
    max_size=8,
)


@pytest.mark.parametrize(
    ("code", "frame"),
    [
        ("00:00:59;29", 1799),
        ("00:01:00;02", 1800),
        ("00:02:00;02", 3598),
        ("00:09:59;29", 17_981),
        ("00:10:00;00", 17_982),
        ("00:11:00;02", 19_782),
        ("01:00:00;00", 107_892),
        ("23:59:59;29", 2_589_407),
    ],
)
def test_drop_frame_at_30000_1001(code: str, frame: int) -> None:
    rate = frame_rate("30000/1001")
    assert from_timecode(code, rate) == frame
    assert to_timecode(frame, rate) == code


@pytest.mark.parametrize(
    ("code", "frame"),
    [("00:00:59;59", 3599), ("00:01:00;04", 3600), ("00:10:00;00", 35_964), ("01:00:00;00", 215_784)],
)
def test_drop_frame_at_60000_1001(code: str, frame: int) -> None:
    rate = frame_rate("60000/1001")
    assert from_timecode(code, rate) == frame
    assert to_timecode(frame, rate) == code


@pytest.mark.parametrize("minute", [minute for minute in range(1, 60) if minute % 10])
def test_numbers_that_drop_frame_leaves_out(minute: int) -> None:
    for frames in ("00", "01"):
        with pytest.raises(ValueError, match="does not exist"):
            from_timecode(f"00:{minute:02d}:00;{frames}", frame_rate("30000/1001"))


@pytest.mark.parametrize("text", RATES)
@given(st.integers(0, 2_589_407))
def test_timecode_agrees_with_opentimelineio(text: str, frame: int) -> None:
    rate = frame_rate(text)
    theirs = otio.opentime.RationalTime(frame, float(rate.frames))
    if frame < from_timecode("24:00:00;00" if rate.drop else "24:00:00:00", rate):
        assert to_timecode(frame, rate) == theirs.to_timecode(float(rate.frames), rate.drop)


def edl_of(marks: list[Mark], text: str) -> pycmx.EditList:
    return pycmx.parse_cmx3600(
        io.StringIO(marks_edl(marks, frame_rate(text), 600_000, title="Cut", clip="the cut.mp4"))
    )


@pytest.mark.parametrize("text", RATES)
@settings(max_examples=40)
@given(MARKS)
def test_an_edit_decision_list(text: str, marks: list[Mark]) -> None:
    rate = frame_rate(text)
    read = edl_of(marks, text)
    (event,) = read.events
    (edit,) = event.edits
    assert (read.title, event.number, edit.source, edit.clip_name) == ("Cut", 1, "THE_CUT", "the cut.mp4")
    assert edit.channels.video
    lengths = [from_timecode(after, rate) - from_timecode(first, rate) for first, after in (
        (edit.source_in, edit.source_out), (edit.record_in, edit.record_out))]  # fmt: skip
    last = max([frame_at(600_000, rate), *(frames_of(mark, rate)[1] for mark in marks)])
    assert lengths == [last, last]
    notes = [one.text for one in event.statements if type(one).__name__ == "StmtRemark"]
    hour = from_timecode(edit.record_in, rate)
    starts = [from_timecode(note.split()[1], rate) - hour for note in notes]
    assert starts == [frame_at(mark.start_ms, rate) for mark in ordered(marks)]
    names = [note.split(maxsplit=3)[3:] for note in notes]
    for name, mark in zip(names, ordered(marks), strict=True):
        assert not plain_ascii(mark.name) or plain_ascii(mark.name)[:120] in "".join(name)


def test_the_list_says_how_it_counts() -> None:
    for text, drop in (("30000/1001", True), ("25", False)):
        (event,) = edl_of([], text).events
        assert [one.drop for one in event.statements if type(one).__name__ == "StmtFCM"] == [drop]


@pytest.mark.parametrize("text", RATES)
@settings(max_examples=40)
@given(MARKS)
def test_an_opentimelineio_file(text: str, marks: list[Mark]) -> None:
    rate = frame_rate(text)
    written = marks_otio(marks, rate, 600_000, title="Cut", clip="the cut.mp4")
    read = otio.adapters.read_from_string(written, "otio_json")
    (clip,) = read.find_clips()
    assert clip.media_reference.target_url == "the%20cut.mp4"
    length = max([frame_at(600_000, rate), *(frames_of(mark, rate)[1] for mark in marks)])
    assert clip.duration() == otio.opentime.RationalTime(length, float(rate.frames))
    spans = [(int(one.marked_range.start_time.value), int(one.marked_range.end_time_exclusive().value)) for one in
             read.tracks.markers]  # fmt: skip
    expected = ordered(marks)
    assert spans == [frames_of(mark, rate) for mark in expected]
    assert [(one.name, one.comment) for one in read.tracks.markers] == [(one.name, one.note) for one in expected]


CHAPTERS = st.lists(st.tuples(st.integers(1, 600_000), NAMES), min_size=1, max_size=8).map(
    lambda rows: [Chapter(sum(step for step, _ in rows[: number + 1]), name) for number, (_, name) in enumerate(rows)]
)


def titles(chapters: list[Chapter]) -> list[str]:
    return [clean_line(one.title) or f"Chapter {number}" for number, one in enumerate(chapters, 1)]


@given(CHAPTERS)
def test_ffmpeg_reads_its_metadata(chapters: list[Chapter]) -> None:
    end = chapters[-1].start_ms + 1000
    written = chapters_ffmetadata(chapters, end, title="Marrow Creek; night = cool")
    with av.open(io.BytesIO(written.encode()), format="ffmetadata") as file:
        read = file.chapters()
        assert file.metadata["title"] == "Marrow Creek; night = cool"
    assert all(one["time_base"] == Fraction(1, 1000) for one in read)
    starts = [one.start_ms for one in chapters]
    assert [(one["start"], one["end"]) for one in read] == list(zip(starts, [*starts[1:], end], strict=True))
    shown = [f"{title[:-1]}/" if title.endswith("\\") else title for title in titles(chapters)]
    assert [one["metadata"].get("title", "") for one in read] == shown


SCHEMA = {
    "type": "object",
    "required": ["version", "chapters"],
    "additionalProperties": False,
    "properties": {
        "version": {"const": "1.2.0"},
        "title": {"type": "string", "minLength": 1},
        "chapters": {
            "type": "array",
            "items": {
                "type": "object",
                "required": ["startTime"],
                "additionalProperties": False,
                "properties": {
                    "startTime": {"type": "number", "minimum": 0},
                    "endTime": {"type": "number", "exclusiveMinimum": 0},
                    "title": {"type": "string", "minLength": 1},
                },
            },
        },
    },
}


@given(CHAPTERS)
def test_podcast_chapters_keep_their_schema(chapters: list[Chapter]) -> None:
    read = json.loads(chapters_podcast(chapters, chapters[-1].start_ms + 1, title="Cut"))
    jsonschema.validate(read, SCHEMA)
    starts = [one["startTime"] for one in read["chapters"]]
    assert starts == sorted(set(starts))
    assert [round(start * 1000) for start in starts] == [one.start_ms for one in chapters]
    assert [one["title"] for one in read["chapters"]] == titles(chapters)


@given(MARKS)
def test_a_table_is_read_back(marks: list[Mark]) -> None:
    rows = list(csv.DictReader(io.StringIO(marks_csv(marks, frame_rate("25")), newline="")))
    assert [(row["kind"], row["name"], row["note"]) for row in rows] == [
        (one.kind, safe_cell(one.name), safe_cell(one.note)) for one in ordered(marks)
    ]
