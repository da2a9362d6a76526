"""A command starts in a blink: what each one must not load."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

HEAVY = {"numpy", "scipy", "typst", "rich", "jinja2", "markdown_it", "pydantic", "yaml", "ruamel", "text_to_num"}


def loaded(*arguments: str) -> set[str]:
    """The top-level modules that a run of the program imports."""
    command = [sys.executable, "-X", "importtime", "-m", "producer", *arguments]
    done = subprocess.run(command, capture_output=True, text=True, encoding="utf-8", check=False)
    names = (line.rsplit("|", 1)[1].strip() for line in done.stderr.splitlines() if line.startswith("import time:"))
    return {name.split(".")[0] for name in names}


def test_help_loads_nothing_heavy() -> None:
    assert loaded("--help") & HEAVY == set()


def test_help_of_a_command_loads_nothing_heavy() -> None:
    assert loaded("check", "--help") & (HEAVY - {"pydantic"}) == set()


def test_the_request_log_loads_no_templates_and_no_numerics(demo: Path) -> None:
    assert loaded("requests", "-l", str(demo)) & (HEAVY - {"pydantic", "yaml", "text_to_num"}) == set()


@pytest.mark.parametrize("command", [("check",), ("check", "--json")])
def test_a_check_loads_no_pictures_and_no_numerics(command: tuple[str, ...], demo: Path, tmp_path: Path) -> None:
    once = (*command, "-l", str(demo), "-o", str(tmp_path))
    assert loaded(*once) & {"typst", "rich", "markdown_it"} == set()
    # What the chassis model said the first time is remembered.
    assert loaded(*once) & {"numpy", "scipy", "typst", "rich", "markdown_it"} == set()
