"""The command: table, JSON, exit codes, and that it starts in a blink."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

Run = Callable[..., Any]
EPISODE = "marrow-creek-grand-sedan"


def test_the_table(producer: Run, demo: Path) -> None:
    ran = producer("stints", EPISODE, "-l", demo)
    assert (ran.code, ran.err) == (0, "")
    assert "Long run against Short run: Long run is ahead from lap 20" in ran.out
    assert "The right rear tire gives up first" in ran.out


def test_json_alone_stands_on_standard_output(producer: Run, library: Path) -> None:
    path = library / EPISODE / "stints" / "short-1.csv"
    path.write_text("lap,time\n1,oops\n2,31.4\n", encoding="utf-8")
    ran = producer("stints", EPISODE, "--json", "-l", library)
    assert json.loads(ran.out)["stints"][0]["pace"] is None
    assert f"{EPISODE}/stints/short-1.csv:2:3: warning[lap-unreadable]" in ran.err
    assert "  2 | 1,oops" in ran.err
    assert ran.code == 0


def test_a_file_without_laps_fails(producer: Run, library: Path) -> None:
    (library / EPISODE / "stints" / "short-1.csv").write_text("a,b\n", encoding="utf-8")
    ran = producer("stints", EPISODE, "-l", library)
    assert ran.code == 1
    assert "error[lap-columns]" in ran.err


def test_no_laps_yet(producer: Run, demo: Path) -> None:
    ran = producer("stints", "lantern-flats-grand-sedan", "-l", demo)
    assert (ran.code, ran.err) == (0, "")
    assert ran.out.startswith("no test laps yet")


def test_an_episode_that_cannot_be_read(producer: Run, library: Path) -> None:
    (library / EPISODE / "episode.yaml").write_text("format: 1\nepisode: x\n", encoding="utf-8")
    ran = producer("stints", EPISODE, "-l", library)
    assert ran.code == 1
    assert "missing-key" in ran.err


def test_one_that_is_not_there(producer: Run, demo: Path) -> None:
    ran = producer("stints", "marrow-creek", "-l", demo)
    assert ran.code == 2
    assert "did you mean" in ran.err


def test_it_loads_nothing_heavy(demo: Path) -> None:
    command = [sys.executable, "-X", "importtime", "-m", "producer", "stints", EPISODE, "-l", str(demo)]
    done = subprocess.run(command, capture_output=True, text=True, encoding="utf-8", check=True)
    loaded = {line.rsplit("|", 1)[1].strip().split(".")[0] for line in done.stderr.splitlines() if "|" in line}
    assert {"numpy", "scipy", "jinja2", "typst", "rich"} & loaded == set()
