"""Every caption file, chapter list and cue sheet of the demo, as built, read by programs that others wrote.

Referees: webvtt-py 0.6 in strict mode (W3C WebVTT, section 4.1), srt 3.5, FFmpeg by way of PyAV (`av`), pycmx 1.5,
opentimelineio 0.18, a JSON schema of the podcast namespace's "JSON Chapters Format Version 1.2", and the limits of the
BBC Subtitle Guidelines 1.2.5 (from memory: section 3.1 lines of 37 characters; section 4 at most 180 words a minute).
"""

from __future__ import annotations

import csv
import html
import io
import json
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path
from typing import Any

import av
import jsonschema
import opentimelineio as otio
import pycmx
import pytest
import srt
import webvtt

from producer.basics.frame_rate import frame_rate
from producer.captions.profile import reading_profile
from producer.captions.reading import read_captions
from producer.captions.speed import too_fast
from producer.captions.timecode import from_timecode
from producer.jobs.dossier import dossier
from producer.library.load import load
from producer.model.cue import Cue
from producer.model.dossier import Dossier
from producer.outputs import captions, cues, speech
from producer.outputs.captions import shown
from producer.outputs.speech import spoken
from producer.render.kit import Kit
from tests.outside.test_cue_sheets_read_back import SCHEMA

EPISODES = [
    "gannet-bowl-grand-sedan", "lantern-flats-club-coupe", "lantern-flats-grand-sedan", "marrow-creek-club-coupe",
    "marrow-creek-grand-sedan",
]  # fmt: skip
TAKEN = "marrow-creek-grand-sedan"
RATE = frame_rate("30000/1001")
Read = list[tuple[int, int, str]]


@pytest.fixture(scope="module")
def shelf(demo: Path) -> dict[str, Dossier]:
    library, _ = load(demo)
    found = {name: dossier(library.case(one)) for name, one in library.episodes.items()}
    return {name: one for name, one in found.items() if one is not None}


@pytest.fixture(scope="module")
def made(shelf: dict[str, Dossier]) -> Callable[[str], dict[str, str]]:
    kit = Kit()
    known: dict[str, dict[str, str]] = {}

    def files(episode: str) -> dict[str, str]:
        if episode not in known:
            every = (one for module in (captions, cues, speech) for one in module.documents(shelf[episode], kit))
            known[episode] = {one.path: one.data.decode("utf-8") for one in every}
        return known[episode]

    return files


def by_webvtt(text: str) -> Read:
    def ms(stamp: str) -> int:
        hours, minutes, seconds = stamp.split(":")
        return round((int(hours) * 3600 + int(minutes) * 60 + float(seconds)) * 1000)

    read = webvtt.from_string(text, strict=True)
    return [(ms(cue.start), ms(cue.end), html.unescape(cue.raw_text)) for cue in read]


def by_srt(text: str) -> Read:
    tick = timedelta(milliseconds=1)
    return [(cue.start // tick, cue.end // tick, cue.content) for cue in srt.parse(text)]


def by_ffmpeg(text: str, kind: str) -> Read:
    found: Read = []
    with av.open(io.BytesIO(text.encode("utf-8")), format=kind) as container:
        stream = container.streams.subtitles[0]
        for packet in container.demux(stream):
            if packet.size:
                start = int(packet.pts * stream.time_base * 1000)
                words = "".join(event.ass.decode("utf-8").split(",", 8)[8] for event in packet.decode())
                found.append(
                    (start, start + int(packet.duration * stream.time_base * 1000), words.replace("\\N", "\n"))
                )
    return found


def expected(cues_shown: tuple[Cue, ...]) -> Read:
    return [(one.start_ms, one.end_ms, one.text) for one in cues_shown]


@pytest.mark.parametrize("episode", EPISODES)
def test_captions_to_show(shelf: dict[str, Dossier], made: Any, episode: str) -> None:
    files, cue = made(episode), expected(shown(shelf[episode]))
    assert by_webvtt(files["captions.vtt"]) == by_ffmpeg(files["captions.vtt"], "webvtt") == cue
    assert by_srt(files["captions.srt"]) == by_ffmpeg(files["captions.srt"], "srt") == cue


def test_captions_of_what_was_said(shelf: dict[str, Dossier], made: Any) -> None:
    files, cue = made(TAKEN), expected(spoken(shelf[TAKEN]))
    assert len(cue) > 200
    assert by_webvtt(files["speech.vtt"]) == by_ffmpeg(files["speech.vtt"], "webvtt") == cue
    assert by_srt(files["speech.srt"]) == by_ffmpeg(files["speech.srt"], "srt") == cue


@pytest.mark.parametrize("episode", EPISODES)
def test_our_own_reader_has_nothing_to_complain_of(made: Any, episode: str) -> None:
    for name, text in made(episode).items():
        if name.endswith((".srt", ".vtt")):
            assert read_captions(text.encode(), name).findings == (), name


@pytest.mark.parametrize("episode", EPISODES)
def test_chapters_are_the_same_to_every_program(made: Any, episode: str) -> None:
    files = made(episode)
    vtt = by_webvtt(files["chapters.vtt"])
    podcast = json.loads(files["chapters.json"])
    jsonschema.validate(podcast, SCHEMA)
    assert [(round(one["startTime"] * 1000), one["title"]) for one in podcast["chapters"]] == [
        (start, title) for start, _, title in vtt
    ]
    with av.open(io.BytesIO(files["chapters.ffmeta"].encode()), format="ffmetadata") as container:
        found = [(one["start"], one["end"], one["metadata"]["title"]) for one in container.chapters()]
    assert found == vtt


@pytest.mark.parametrize("episode", EPISODES)
def test_cue_sheets_have_the_same_marks(made: Any, episode: str) -> None:
    files = made(episode)
    rows = list(csv.DictReader(io.StringIO(files["cues.csv"], newline="")))
    firsts = [from_timecode(row["timecode_in"], RATE) for row in rows]
    assert firsts == sorted(firsts)
    markers = otio.adapters.read_from_string(files["cues.otio"], "otio_json").tracks.markers
    assert [int(one.marked_range.start_time.value) for one in markers] == firsts
    assert [(one.name, one.metadata["producer"]["kind"]) for one in markers] == [
        (row["name"], row["kind"]) for row in rows
    ]
    (event,) = pycmx.parse_cmx3600(io.StringIO(files["cues.edl"])).events
    notes = [one.text.split(maxsplit=3) for one in event.statements if type(one).__name__ == "StmtRemark"]
    hour = from_timecode("01:00:00;00", RATE)
    assert [from_timecode(code, RATE) - hour for _, code, *_ in notes] == firsts
    colours = {"section": "GREEN", "caption": "CYAN", "pick-up": "RED"}
    assert [colour for _, _, colour, *_ in notes] == [colours[row["kind"]] for row in rows]


def test_the_take_s_slips_reach_every_sheet(made: Any) -> None:
    files = made(TAKEN)
    assert files["cues.csv"].count(",pick-up,") == files["cues.edl"].count(" RED ") == 3
    assert files["cues.otio"].count('"kind": "pick-up"') == 3


@pytest.mark.parametrize("profile", ["web", "broadcast"])
@pytest.mark.parametrize("episode", EPISODES)
def test_reading_speed_of_what_is_shown(shelf: dict[str, Dossier], episode: str, profile: str) -> None:
    """On-screen captions are ours to time: none is faster than can be read."""
    one = shelf[episode]
    limits = one.channel.captions.model_copy(update={"profile": profile})
    cue = shown(_with(one, limits))
    assert [x for x in cue if too_fast(x, reading_profile(limits))] == []
    assert max(len(line) for x in cue for line in x.lines) <= (37 if profile == "broadcast" else 42)
    assert all(len(x.lines) <= 2 for x in cue)


def test_reading_speed_of_what_is_said(shelf: dict[str, Dossier]) -> None:
    """What is said is as fast as the author speaks: at 145 words a minute hardly a caption is too fast."""
    cue = spoken(shelf[TAKEN])
    fast = [one for one in cue if too_fast(one, reading_profile(shelf[TAKEN].channel.captions))]
    assert len(fast) <= 0.05 * len(cue)


def _with(one: Dossier, limits: Any) -> Dossier:
    from dataclasses import replace

    return replace(one, channel=one.channel.model_copy(update={"captions": limits}))
