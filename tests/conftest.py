"""What every test may rely on: the demo library, a copy of it to change, the program run in place."""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest
from hypothesis import settings

ROOT = Path(__file__).resolve().parent.parent

settings.register_profile("steady", deadline=None, print_blob=True)
settings.load_profile("steady")


class Ran(NamedTuple):
    """Exit code and what was printed."""

    code: int
    out: str
    err: str


@pytest.fixture(scope="session")
def demo() -> Path:
    """The demo library, to read only."""
    return ROOT / "episodes"


@pytest.fixture
def library(tmp_path: Path, demo: Path) -> Path:
    """A copy of the demo library to change."""
    copy = tmp_path / "library"
    shutil.copytree(demo, copy)
    return copy


@pytest.fixture
def producer(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Callable[..., Ran]:
    """Run the program in this process, from an empty folder: `producer("check", "-l", path)`."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("NO_COLOR", "1")
    monkeypatch.setenv("COLUMNS", "80")

    def run(*arguments: object) -> Ran:
        from producer.cli.main import run as start

        code = start([str(one) for one in arguments])
        captured = capsys.readouterr()
        return Ran(code, captured.out, captured.err)

    return run


@pytest.fixture(scope="session")
def chromium() -> str:
    """The browser's path. Without one browser tests are skipped, except where CI promises one."""
    for name in ("chromium", "chromium-browser", "google-chrome"):
        found = shutil.which(name)
        if found:
            return found
    if os.environ.get("CI"):
        pytest.fail("CI installs Chromium; it is not on the PATH")
    pytest.skip("no Chromium on this machine")
