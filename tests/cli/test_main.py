"""Exit codes, help, and one clear message for each kind of trouble."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Run = Callable[..., Any]
EPISODE = "marrow-creek-grand-sedan/episode.yaml"


def change(library: Path, file: str, old: str, new: str) -> None:
    path = library / file
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8", newline="\n")


def test_the_demo_is_clean_and_says_little(producer: Run, demo: Path) -> None:
    ran = producer("check", "--strict", "-l", demo)
    assert (ran.code, ran.err) == (0, "")
    assert "error" not in ran.out
    assert "warning" not in ran.out


def test_an_error_is_told_with_its_line_and_fails(producer: Run, library: Path) -> None:
    change(library, EPISODE, "front_weight: 50.5", "front_weight: 50.3")
    ran = producer("check", "-l", library)
    assert ran.code == 1
    row = next(i for i, line in enumerate(ran.out.splitlines()) if "error[off-step]" in line)
    lines = ran.out.splitlines()
    assert lines[row].startswith(f"{EPISODE}:")
    marked = next(line for line in lines[row:] if "^" in line)
    source = lines[lines.index(marked) - 1]
    assert source[marked.index("^") : marked.rindex("^") + 1] == "50.3"


def test_json_has_the_agreed_shape(producer: Run, library: Path) -> None:
    change(library, EPISODE, "front_weight: 50.5", "front_weight: 50.3")
    ran = producer("check", "--json", "-l", library)
    data = json.loads(ran.out)
    assert ran.code == 1
    assert data["format"] == 1
    assert set(data["counts"]) == {"error", "warning", "note"}
    assert data["counts"]["error"] == sum(one["severity"] == "error" for one in data["findings"])
    wanted = {"code", "severity", "file", "line", "column", "where", "message", "hint"}
    assert all(wanted <= set(one) for one in data["findings"])
    assert any(one["code"] == "off-step" and one["where"].endswith("front_weight") for one in data["findings"])


def test_findings_of_other_episodes_stay_out_of_the_way(producer: Run, library: Path) -> None:
    change(library, EPISODE, "front_weight: 50.5", "front_weight: 50.3")
    assert producer("check", "gannet-bowl-grand-sedan", "-l", library).code == 0
    assert producer("check", "marrow-creek-grand-sedan", "-l", library).code == 1


@pytest.mark.parametrize("name", ["../marrow-creek-grand-sedan", "nowhere", "marrow-creek-grand-sedam", "/etc", ""])
def test_an_episode_that_is_not_there_is_one_sentence(producer: Run, demo: Path, tmp_path: Path, name: str) -> None:
    for command in ("check", "build", "card"):
        where = () if command == "check" else ("-o", tmp_path)
        ran = producer(command, name, "-l", demo, *where)
        assert ran.code == 2
        assert ran.err.startswith("producer: there is no episode")
        assert ran.err.count("\n") == 1


def test_no_library_is_one_sentence(producer: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    ran = producer("check")
    assert ran.code == 2
    assert "no library here" in ran.err
    assert producer("check", "-l", tmp_path / "missing").code == 2


def test_bad_usage_is_code_2(producer: Run) -> None:
    assert producer("chekc").code == 2
    assert producer("check", "--format", "xml").code == 2
    assert producer("card").code == 2


def test_a_bug_of_ours_is_code_3(producer: Run, demo: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def broken(*_: object) -> None:
        raise ZeroDivisionError("planted")

    monkeypatch.setattr("producer.jobs.check.check", broken)
    ran = producer("check", "-l", demo)
    assert ran.code == 3
    assert "Traceback" in ran.err
    assert "bug of ours" in ran.err


def test_an_interruption_is_code_130(producer: Run, demo: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("producer.jobs.check.check", interrupted)
    ran = producer("check", "-l", demo)
    assert ran.code == 130
    assert "Traceback" not in ran.err


def test_help_lists_the_commands_in_the_order_of_the_work(producer: Run) -> None:
    ran = producer("--help")
    assert ran.code == 0
    places = [
        ran.out.index(word) for word in ("Make an episode", "check", "build", "Answer viewers", "Keep the library")
    ]
    assert places == sorted(places)
    assert max(map(len, ran.out.splitlines())) <= 80
    assert "..." not in ran.out.split("Options:")[1]


def test_the_module_is_the_same_program() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "producer", "--help"], capture_output=True, text=True, encoding="utf-8", check=True
    )
    assert "Make an episode" in done.stdout


@pytest.mark.parametrize("code", ["off-step", "not-yaml", "number-differs", "effect-against-rule"])
def test_a_code_is_explained(producer: Run, code: str) -> None:
    ran = producer("check", "--explain", code)
    assert ran.code == 0
    assert "Found" in ran.out


def test_an_unknown_code_names_the_nearest(producer: Run) -> None:
    ran = producer("check", "--explain", "of-step")
    assert ran.code == 2
    assert "off-step" in ran.err


def test_a_new_library_is_valid_and_never_overwrites(producer: Run, tmp_path: Path) -> None:
    place = tmp_path / "mine"
    assert producer("new", "library", place).code == 0
    assert producer("check", "--strict", "-l", place).code == 0
    again = producer("new", "library", place)
    assert again.code == 2
    assert "not empty" in again.err


def test_the_demo_can_be_copied(producer: Run, tmp_path: Path, demo: Path) -> None:
    place = tmp_path / "demo"
    assert producer("new", "library", place, "--demo").code == 0
    assert (place / EPISODE).read_bytes() == (demo / EPISODE).read_bytes()
    assert (place / ".gitignore").read_text(encoding="utf-8").count("requests/") == 1


def test_alone_it_shows_its_help(producer: Run) -> None:
    for arguments in ((), ("new",)):
        ran = producer(*arguments)
        assert (ran.code, ran.err) == (0, "")
        assert ran.out == producer(*arguments, "--help").out


def test_the_version_is_told(producer: Run) -> None:
    ran = producer("--version")
    assert (ran.code, ran.out) == (0, "producer 0.1.0\n")


@pytest.mark.parametrize(
    ("command", "usage"),
    [("check", "[EPISODE...]"), ("card", "EPISODE"), ("reply", "[REQUEST]"), ("new library", "PATH")],
)
def test_help_uses_no_words_of_a_programming_language(producer: Run, command: str, usage: str) -> None:
    ran = producer(*command.split(), "--help")
    assert ran.code == 0
    assert ran.out.splitlines()[0] == f"Usage: producer {command} [OPTIONS] {usage}"
    assert not any(word in ran.out for word in ("<", "{", "[required]", "list["))
    assert max(map(len, ran.out.splitlines())) <= 80


def test_a_new_library_says_what_to_do_next(producer: Run, tmp_path: Path) -> None:
    out = producer("new", "library", tmp_path / "my lib").out
    assert f'cd "{tmp_path / "my lib"}"' in out
    assert "producer check" in out.splitlines()[-2]
    assert "producer build" in out.splitlines()[-1]


def test_the_example_message_of_a_new_library_is_answered(producer: Run) -> None:
    producer("new", "library", "mine")
    ran = producer("reply", "req-001", "-l", "mine")
    assert ran.code == 0
    assert "loose on entry" in ran.out


def test_the_guide_says_what_its_columns_are(producer: Run, demo: Path) -> None:
    for episode in ("marrow-creek-grand-sedan", "lantern-flats-club-coupe"):
        rows = producer("guide", episode, "-l", demo).out.splitlines()
        assert rows[-4].startswith("left: clicks")
        assert rows[-2].startswith("the chassis model's second opinion - size: how much it helps")
        assert max(map(len, rows)) <= 80


@pytest.mark.parametrize("encoding", ["cp1252", "ascii", "cp437"])
def test_a_console_of_another_code_page_does_not_stop_it(demo: Path, tmp_path: Path, encoding: str) -> None:
    """A Windows console's code page has no U+2212, and Python would refuse to print it."""
    environment = {**os.environ, "PYTHONIOENCODING": encoding, "PYTHONUTF8": "0"}
    place = ["-l", str(demo), "-o", str(tmp_path)]
    command = [sys.executable, "-m", "producer", "notes", "marrow-creek-grand-sedan", *place]
    done = subprocess.run(command, capture_output=True, env=environment, check=False)
    assert (done.returncode, done.stderr) == (0, b"")
    assert "\u2212" in done.stdout.decode("utf-8")
