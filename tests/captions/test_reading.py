"""A caption file read whole: odd files of the data folder, order in time, and laws for any file."""

from __future__ import annotations

import csv
from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from producer.captions.opening import LARGEST
from producer.captions.payload import clean_lines
from producer.captions.reading import read_captions
from producer.captions.srt import plain_text, to_srt
from producer.captions.vtt import to_vtt
from producer.model.cue import Cue
from producer.model.said import CaptionFile

DATA = Path(__file__).resolve().parent.parent / "data" / "captions"
with (DATA / "index.csv").open(encoding="utf-8", newline="") as index:
    ROWS = list(csv.DictReader(index))
COMPLAINTS = {
    "05_missing_blank_line.srt": [("missing-blank-line", 4), ("missing-blank-line", 7)],
    "07_zero_length.srt": [("cue-lasts-no-time", 6)],
    "11_overlap.srt": [("cues-overlap", 6), ("cues-overlap", 10)],
    "15_unescaped.vtt": [("text-hidden", 4)],
}


def told(read: CaptionFile) -> list[tuple[str, int]]:
    return [(one.code, one.place.line) for one in read.findings]


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["file"])
def test_odd_files(row: dict[str, str]) -> None:
    read = read_captions((DATA / row["file"]).read_bytes(), row["file"])
    assert len(read.cues) == int(row["cues"])
    assert read.cues[0].start_ms == int(row["first_start_ms"])
    assert read.cues[0].raw == row["first_text"].replace("\\n", "\n")
    assert read.end_ms == int(row["last_end_ms"])
    assert told(read) == COMPLAINTS.get(row["file"], [])


def test_no_carriage_return_stays_in_a_text() -> None:
    data = (DATA / "03_crlf.srt").read_bytes()
    assert b"\r\n" in data
    assert "\r" not in "".join(cue.raw for cue in read_captions(data, "x.srt").cues)


def test_rolling_captions_are_said_once() -> None:
    read = read_captions((DATA / "16_rolling_auto.vtt").read_bytes(), "16_rolling_auto.vtt")
    assert [(line.start_ms, line.end_ms, line.text) for line in read.said] == [
        (160, 2000, "okay so the car is tight"),
        (2010, 4300, "in the middle of turn three"),
        (4310, 6200, "drop the track bar"),
    ]
    words = {word.text: word.start_ms for word in read.words}
    assert words["track"] == 4800
    assert sum(1 for _ in read.words) == 16
    assert all(word.timed for word in read.words)


def test_text_that_is_only_a_number_stays() -> None:
    read = read_captions((DATA / "09_number_only_text.srt").read_bytes(), "x.srt")
    assert [cue.lines for cue in read.cues] == [("Left front spring rate:", "350"), ("12",)]


UNREADABLE = [
    (b"", "x.srt", "the file is empty"),
    (b"\n \r\n", "x.srt", "the file is empty"),
    (b"a letter to a friend\n", "x.srt", "no line of times"),
    (b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\xff\xfe", "x.srt", "no line of times"),
    (b"1\n00:00:01,000 --> soon\na\n", "x.srt", "no line of times"),
    (b"1\n00:00:01.000 --> 00:00:02.000\na\n", "x.vtt", "does not begin with WEBVTT"),
    (b"webvtt\n\n00:01.000 --> 00:02.000\na\n", "x.vtt", "does not begin with WEBVTT"),
    (b"WEBVTT\n\n00:01,000 --> 00:02,000\na\n", "x.vtt", "none with legal times"),
    (b"WEBVTT\n", "x.txt", "no line of times"),
    (b" " * (LARGEST + 1), "x.srt", "larger than 16 MiB"),
]


@pytest.mark.parametrize(("data", "file", "message"), UNREADABLE, ids=[row[2] for row in UNREADABLE])
def test_a_file_without_cues_is_one_error(data: bytes, file: str, message: str) -> None:
    read = read_captions(data, file)
    assert read.cues == read.said == ()
    assert [str(one.severity) for one in read.findings] == ["error"]
    assert message in read.findings[0].message


def srt(*times: tuple[int, int]) -> bytes:
    def stamp(ms: int) -> str:
        return f"00:00:{ms // 1000:02d},{ms % 1000:03d}"

    return "\n".join(f"{n}\n{stamp(s)} --> {stamp(e)}\nw{n}\n" for n, (s, e) in enumerate(times, 1)).encode()


ORDER = [
    ("one after the other", [(0, 1000), (1000, 2000), (2500, 3000)], [], ["w1", "w2", "w3"]),
    ("one millisecond too long", [(0, 1001), (1000, 2000)], [("cues-overlap", 6)], ["w1", "w2"]),
    ("inside a long one", [(0, 9000), (1000, 2000), (3000, 4000)], [("cues-overlap", 6), ("cues-overlap", 10)], [
        "w1", "w2", "w3",
    ]),
    ("back in time", [(5000, 6000), (1000, 2000), (7000, 8000)], [("cues-out-of-order", 6)], ["w2", "w1", "w3"]),
    ("two files in one", [(5000, 6000), (1000, 2000), (3000, 4000)], [
        ("cues-out-of-order", 6), ("cues-out-of-order", 10),
    ], ["w2", "w3", "w1"]),
    ("ends before it starts", [(2000, 1000), (3000, 4000)], [("cue-lasts-no-time", 2)], ["w1", "w2"]),
    ("at the same time", [(0, 1000), (0, 1000)], [("cues-overlap", 6)], ["w1", "w2"]),
]  # fmt: skip


@pytest.mark.parametrize(("times", "complaints", "said"), [row[1:] for row in ORDER], ids=[row[0] for row in ORDER])
def test_order(times: list[tuple[int, int]], complaints: list[tuple[str, int]], said: list[str]) -> None:
    read = read_captions(srt(*times), "x.srt")
    assert told(read) == complaints
    assert [line.text for line in read.said] == said


def test_the_other_cue_is_named() -> None:
    read = read_captions(srt((0, 9000), (1000, 2000), (3000, 4000)), "x.srt")
    assert [[place.line for place in one.related] for one in read.findings] == [[2], [2]]


def test_an_empty_cue_is_kept_and_told() -> None:
    read = read_captions(b"1\n00:00:01,000 --> 00:00:02,000\n\n2\n00:00:02,000 --> 00:00:03,000\nb\n", "x.srt")
    assert [cue.text for cue in read.cues] == ["", "b"]
    assert told(read) == [("cue-empty", 2)]


PIECES = [
    "WEBVTT", "\n", "\r\n", "\r", "\n\n", " ", "1", "2", "12", "NOTE", "STYLE", "-->", " --> ", "a b", "<", ">", "&lt;",
    "&", "<c>", "</c>", "<00:00:01.500>", "00:00:01.000", "00:00:02,500", "00:01.000 --> 00:02.000", "{\\an8}", "\0",
    "00:00:01,000 --> 00:00:04,000\n", "00:00:02,000 --> 00:00:01,000\n", "99:59:59.999", "\ufeff", "\u2028", "-", ":",
]  # fmt: skip
FILES = st.one_of(
    st.binary(max_size=200),
    st.lists(st.sampled_from(PIECES), max_size=60).map("".join).map(str.encode),
    st.lists(st.sampled_from(PIECES), max_size=60).map(lambda parts: ("WEBVTT\n\n" + "".join(parts)).encode()),
)


@settings(max_examples=400)
@given(FILES, st.sampled_from(["x.srt", "x.vtt", "x"]))
@example(b"WEBVTT\n\n-->\n", "x.vtt")
def test_no_file_makes_it_fail(data: bytes, file: str) -> None:
    read = read_captions(data, file)
    lines = len(data.decode("utf-8", errors="replace").replace("\r\n", "\n").replace("\r", "\n").split("\n"))
    assert read.cues or [str(one.severity) for one in read.findings] == ["error"]
    assert all(one.place.line <= lines for one in read.findings)
    assert all(1 <= cue.place.line <= lines for cue in read.cues)
    _hold_in_time(read)


def _hold_in_time(read: CaptionFile) -> None:
    """Starts rise, words rise within their line, and every file that goes back in time says so."""
    starts = [cue.start_ms for cue in read.cues]
    assert starts == sorted(starts)
    for line in read.said:
        inside = [word.start_ms for word in line.words]
        assert inside == sorted(inside)
        assert line.start_ms == inside[0] or line.words[0].timed
        assert line.start_ms <= inside[0] <= inside[-1] <= line.end_ms
    written = [cue.start_ms for cue in sorted(read.cues, key=lambda cue: cue.place.line)]
    codes = {one.code for one in read.findings}
    assert (written != sorted(written)) <= ("cues-out-of-order" in codes)
    assert any(cue.end_ms <= cue.start_ms for cue in read.cues) <= ("cue-lasts-no-time" in codes)


LETTERS = st.one_of(st.sampled_from("<>&{}-\\\n\r\t ;:#/abN1\u00a0\u2028"), st.characters(exclude_categories=()))
TEXTS = st.lists(st.text(LETTERS, min_size=1, max_size=30), max_size=6)


def cues_of(texts: list[str]) -> list[Cue]:
    return [Cue(number * 2000 + 7, number * 2000 + 1507, (text,)) for number, text in enumerate(texts)]


@settings(max_examples=300)
@given(TEXTS)
@example(["2", "12\n3", "x"])
@example(["00:00:01,000 --> 00:00:02,000", "WEBVTT", "NOTE x"])
def test_what_is_written_is_read_back(texts: list[str]) -> None:
    cues = [cue for cue in cues_of(texts) if clean_lines(cue.lines)]
    vtt = read_captions(to_vtt(cues).encode(), "x.vtt")
    srt_read = read_captions(to_srt(cues).encode(), "x.srt")
    expected = [(cue.start_ms, cue.end_ms, clean_lines(cue.lines)) for cue in cues]
    assert [(cue.start_ms, cue.end_ms, cue.lines) for cue in vtt.cues] == expected
    plain = [(start, end, clean_lines(plain_text("\n".join(lines)).split("\n"))) for start, end, lines in expected]
    assert [(cue.start_ms, cue.end_ms, cue.lines) for cue in srt_read.cues] == plain
    if cues:
        assert [one.code for one in (*vtt.findings, *srt_read.findings) if one.code != "cue-empty"] == []
