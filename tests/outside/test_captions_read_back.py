"""Captions as written, read back by programs that others wrote: the same times, the same words.

Referees: webvtt-py 0.6 (strict mode: stamps as in W3C WebVTT, section 4.1), srt 3.5, and FFmpeg's own readers of
both formats by way of PyAV (`av`). WebVTT is escaped as the W3C text says in section 4.2, so its words come back
equal; SubRip can't be escaped (common practice, no source), so they come back as `plain_text` writes them.
"""

from __future__ import annotations

import html
import io
from datetime import timedelta

import av
import pytest
import srt
import webvtt
from hypothesis import given, settings
from hypothesis import strategies as st

from producer.captions.payload import clean_lines
from producer.captions.settling import settle
from producer.captions.srt import plain_text, to_srt
from producer.captions.vtt import chapters_vtt, to_vtt
from producer.model.cue import Chapter, Cue, ReadingProfile

Read = list[tuple[int, int, str]]

PLAIN = [
    "Right front spring\n725\u00a0lb/in, down from 750",
    "Cross weight: 51.5\u00a0%",
    "If it's tight going in, \u22123.5° of camber",
    "Loose off 4",
    "12",
    "3\n12",
]
NASTY = [
    "under < 50 & over > 50",
    "<b>bold</b> <i>and</i>",
    "<c.red>voice</c> <v Jo>hello",
    "<00:00:01.000>timed",
    "{\\an8}top {y:i} {ok}",
    "750 --> 725",
    "00:00:01,000 --> 00:00:02,000",
    "1\n00:00:01,000 --> 00:00:02,000\nx",
    "&lt; &amp; &nbsp; &#65;",
    "WEBVTT",
    "NOTE not a note",
    "STYLE",
    "REGION",
    "C:\\New\\high\\name",
    "one\n\n\ntwo",
    "tab\there \x00\x07control",
    "\u202eright to left\u202c \u200f",
    "\U0001f3c1 flag, half \ud83d pair",
    "- dash\n- dash",
    "x<<y>>",
    "#comment",
]


def cues_of(texts: list[str]) -> list[Cue]:
    return [Cue(number * 2000 + 7, number * 2000 + 1507, (text,)) for number, text in enumerate(texts)]


def expected(cues: list[Cue], write: object = None) -> Read:
    lines = [(cue.start_ms, cue.end_ms, "\n".join(clean_lines(cue.lines))) for cue in cues]
    return [(start, end, plain_text(text) if write is to_srt else text) for start, end, text in lines]


def by_webvtt(text: str) -> Read:
    read = webvtt.from_string(text, strict=True)
    return [(_ms(cue.start), _ms(cue.end), html.unescape(cue.raw_text)) for cue in read]


def _ms(stamp: str) -> int:
    hours, minutes, seconds = stamp.split(":")
    return round((int(hours) * 3600 + int(minutes) * 60 + float(seconds)) * 1000)


def by_srt(text: str) -> Read:
    read = list(srt.parse(text))
    assert [cue.index for cue in read] == list(range(1, len(read) + 1))
    tick = timedelta(milliseconds=1)
    return [(cue.start // tick, cue.end // tick, cue.content) for cue in read]


def by_ffmpeg(text: str, kind: str) -> Read:
    """Start, end and words of each event; FFmpeg hands the words over as ASS, whose escapes are taken off here."""
    read: Read = []
    with av.open(io.BytesIO(text.encode("utf-8")), format=kind) as container:
        stream = container.streams.subtitles[0]
        for packet in container.demux(stream):
            if not packet.size:
                continue
            start = int(packet.pts * stream.time_base * 1000)
            end = start + int(packet.duration * stream.time_base * 1000)
            words = "".join(event.ass.decode("utf-8").split(",", 8)[8] for event in packet.decode())
            read.append((start, end, _from_ass(words, kind)))
    return read


def _from_ass(words: str, kind: str) -> str:
    lines = words.replace("\\N", "\n")
    # The reader of WebVTT marks braces and backslashes as text; that of SubRip passes them through.
    return lines.replace("\\{{}", "{").replace("\\\u2060", "\\") if kind == "webvtt" else lines


@pytest.mark.parametrize("texts", [PLAIN, NASTY, *([text] for text in NASTY)], ids=repr)
def test_webvtt_is_read_back_equal(texts: list[str]) -> None:
    cues = cues_of(texts)
    written = to_vtt(cues)
    assert by_webvtt(written) == expected(cues)
    assert by_ffmpeg(written, "webvtt") == expected(cues)


@pytest.mark.parametrize("texts", [PLAIN, NASTY, *([text] for text in NASTY)], ids=repr)
def test_subrip_is_read_back_equal(texts: list[str]) -> None:
    cues = cues_of(texts)
    written = to_srt(cues)
    assert by_srt(written) == expected(cues, to_srt)
    assert by_ffmpeg(written, "srt") == expected(cues, to_srt)


@pytest.mark.parametrize("text", PLAIN)
def test_plain_words_of_subrip_are_the_authors_own(text: str) -> None:
    assert by_srt(to_srt(cues_of([text])))[0][2] == text


def test_long_times() -> None:
    cues = [Cue(0, 1, ("first",)), Cue(359_999_998, 359_999_999, ("last",))]
    assert by_webvtt(to_vtt(cues)) == by_srt(to_srt(cues)) == expected(cues)
    assert by_ffmpeg(to_vtt(cues), "webvtt") == by_ffmpeg(to_srt(cues), "srt") == expected(cues)


def test_chapters_are_read_back_equal() -> None:
    chapters = [Chapter(0, "Conditions & air"), Chapter(61_000, "Springs <soft>"), Chapter(3_700_000, "1 --> 2")]
    read = [
        (0, 61_000, "Conditions & air"),
        (61_000, 3_700_000, "Springs <soft>"),
        (3_700_000, 3_800_500, "1 --> 2"),
    ]
    written = chapters_vtt(chapters, 3_800_500)
    assert by_webvtt(written) == by_ffmpeg(written, "webvtt") == read


CHARACTERS = st.one_of(st.sampled_from("<>&{}-\\\n\r\t ;:#/abN1\u00a0\u2028"), st.characters(exclude_categories=()))
TEXTS = st.lists(st.text(CHARACTERS, min_size=1, max_size=30), max_size=6)


@settings(max_examples=200)
@given(TEXTS)
def test_any_text_is_read_back(texts: list[str]) -> None:
    cues = [cue for cue in cues_of(texts) if clean_lines(cue.lines)]
    assert by_webvtt(to_vtt(cues)) == expected(cues)
    assert by_srt(to_srt(cues)) == expected(cues, to_srt)
    assert not cues or by_ffmpeg(to_vtt(cues), "webvtt") == expected(cues)
    assert not cues or by_ffmpeg(to_srt(cues), "srt") == expected(cues, to_srt)


@given(st.lists(st.tuples(st.integers(0, 90_000), st.sampled_from(PLAIN)), min_size=1, max_size=12))
def test_settled_cues_are_read_back_in_order_and_apart(wanted: list[tuple[int, str]]) -> None:
    cues = list(settle([Cue(start, 0, (text,)) for start, text in wanted], ReadingProfile()))
    assert by_ffmpeg(to_srt(cues), "srt") == by_ffmpeg(to_vtt(cues), "webvtt") == expected(cues)
