"""The command: text, JSON, exit codes, and that it starts in a blink."""

from __future__ import annotations

import io
import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Run = Callable[..., Any]
DATA = Path(__file__).resolve().parent.parent / "data" / "captions"
KEYS = {
    "cues": {"start_ms", "end_ms", "text", "raw", "line", "words"},
    "said": {"start_ms", "end_ms", "text"},
    "findings": {"code", "severity", "file", "line", "column", "where", "message", "hint"},
}


def test_lines_in_time(producer: Run) -> None:
    ran = producer("cues", DATA / "16_rolling_auto.vtt")
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.splitlines()[0].endswith(
        "16_rolling_auto.vtt: WebVTT, 5 cues, 16 words, 0:06, words have their own times"
    )
    assert ran.out.splitlines()[2:] == [
        "00:00:00.160  okay so the car is tight",
        "00:00:02.010  in the middle of turn three",
        "00:00:04.310  drop the track bar",
    ]


def test_complaints_name_their_lines(producer: Run) -> None:
    ran = producer("cues", DATA / "05_missing_blank_line.srt")
    assert ran.code == 0
    assert "05_missing_blank_line.srt:4:1: warning[missing-blank-line]" in ran.err
    assert "  4 | 2\n    | ^\n" in ran.err
    assert "2 warnings" in ran.err
    assert "SubRip, 3 cues, 14 words, 0:08" in ran.out


def test_json(producer: Run) -> None:
    ran = producer("cues", DATA / "11_overlap.srt", "--json")
    assert (ran.code, ran.err) == (0, "")
    shape = json.loads(ran.out)
    assert (shape["format"], shape["kind"]) == (1, "srt")
    for name, keys in KEYS.items():
        assert shape[name]
        assert all(keys <= set(row) for row in shape[name])
    assert [row["start_ms"] for row in shape["cues"]] == [1000, 2500, 4500]
    assert [row["line"] for row in shape["cues"]] == [2, 6, 10]
    assert shape["cues"][0]["words"][:2] == [
        {"text": "Watch", "start_ms": 1000, "timed": True},
        {"text": "the", "start_ms": 1705, "timed": False},
    ]
    assert [row["code"] for row in shape["findings"]] == ["cues-overlap", "cues-overlap"]


def test_json_of_rolling_captions(producer: Run) -> None:
    shape = json.loads(producer("cues", DATA / "16_rolling_auto.vtt", "--json").out)
    words = [word for cue in shape["cues"] for word in cue["words"]]
    assert len(words) == 16
    assert {"text": "track", "start_ms": 4800, "timed": True} in words
    assert [row["text"] for row in shape["said"]] == [
        "okay so the car is tight",
        "in the middle of turn three",
        "drop the track bar",
    ]


def test_a_file_that_is_no_caption_file(producer: Run, tmp_path: Path) -> None:
    path = tmp_path / "letter.txt"
    path.write_text("Dear Jo,\n", encoding="utf-8")
    ran = producer("cues", path)
    assert (ran.code, ran.out) == (1, "")
    assert "letter.txt:1:1: error[no-cues]" in ran.err
    shape = json.loads(producer("cues", path, "--json").out)
    assert (shape["cues"], shape["said"], len(shape["findings"])) == ([], [], 1)


def test_a_file_that_is_not_there(producer: Run, tmp_path: Path) -> None:
    ran = producer("cues", tmp_path / "take.srt")
    assert (ran.code, ran.out) == (2, "")
    assert "take.srt cannot be read: No such file" in ran.err
    assert producer("cues", tmp_path).code == 2


def test_standard_input(producer: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    given = io.TextIOWrapper(io.BytesIO(b"WEBVTT\n\n00:01.000 --> 00:02.000\nLoose off.\n"), encoding="utf-8")
    monkeypatch.setattr(sys, "stdin", given)
    ran = producer("cues", "-")
    assert (ran.code, ran.err) == (0, "")
    assert ran.out == "standard input: WebVTT, 1 cue, 2 words, 0:02\n\n00:00:01.000  Loose off.\n"


def test_a_file_does_not_steer_the_terminal(producer: Run, tmp_path: Path) -> None:
    path = tmp_path / "x.srt"
    path.write_bytes(b"1\n00:00:01,000 --> soon\x1b[2J\na\n\n2\n00:00:01,000 --> 00:00:02,000\nred \x1b[31m\x9b\n")
    ran = producer("cues", path)
    assert ran.code == 0
    assert "\x1b" not in ran.out + ran.err
    assert "x.srt:2:1: warning[cue-times-unreadable]" in ran.err


def test_it_loads_nothing_heavy() -> None:
    command = [sys.executable, "-X", "importtime", "-m", "producer", "cues", str(DATA / "01_dot_millis.srt")]
    done = subprocess.run(command, capture_output=True, text=True, encoding="utf-8", check=True)
    loaded = {line.rsplit("|", 1)[1].strip().split(".")[0] for line in done.stderr.splitlines() if "|" in line}
    assert {"numpy", "scipy", "jinja2", "typst", "rich", "yaml", "rapidfuzz", "text_to_num"} & loaded == set()
