"""Chapters for FFmpeg and for podcast players."""

from __future__ import annotations

import json

import pytest

from producer.captions.chapter_files import chapters_ffmetadata, chapters_podcast
from producer.captions.payload import CaptionError
from producer.model.cue import Chapter

CHAPTERS = [Chapter(0, "Conditions; night = cool #1"), Chapter(61_500, "Springs")]


def test_ffmetadata() -> None:
    assert chapters_ffmetadata(CHAPTERS, 90_000, title="Marrow\nCreek") == (
        ";FFMETADATA1\n"
        "title=Marrow Creek\n"
        "\n[CHAPTER]\nTIMEBASE=1/1000\nSTART=0\nEND=61500\ntitle=Conditions\\; night \\= cool \\#1\n"
        "\n[CHAPTER]\nTIMEBASE=1/1000\nSTART=61500\nEND=90000\ntitle=Springs\n"
    )


def test_podcast_chapters() -> None:
    assert json.loads(chapters_podcast(CHAPTERS, 90_000, title="Marrow Creek")) == {
        "version": "1.2.0",
        "title": "Marrow Creek",
        "chapters": [
            {"startTime": 0, "title": "Conditions; night = cool #1", "endTime": 61.5},
            {"startTime": 61.5, "title": "Springs", "endTime": 90},
        ],
    }


def test_a_backslash_at_the_end_would_join_lines() -> None:
    written = chapters_ffmetadata([Chapter(0, "a\\b\\")], 9)
    assert written.endswith("title=a\\\\b/\n")


def test_nothing_to_write() -> None:
    assert chapters_ffmetadata([], 0) == ";FFMETADATA1\n"
    assert json.loads(chapters_podcast([], 0)) == {"version": "1.2.0", "chapters": []}


@pytest.mark.parametrize("end_ms", [0, 61_500])
def test_chapters_that_cannot_be_written(end_ms: int) -> None:
    for write in (chapters_ffmetadata, chapters_podcast):
        with pytest.raises(CaptionError):
            write(CHAPTERS, end_ms)
