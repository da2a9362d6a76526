"""How fast, how much memory: run by hand with `pytest -m benchmark -s`; figures are printed, none is asserted."""

from __future__ import annotations

import subprocess
import sys
import tracemalloc
from collections.abc import Callable
from pathlib import Path
from time import perf_counter

import pytest

pytestmark = pytest.mark.benchmark
EPISODE = "gannet-bowl-grand-sedan"


def timed(what: str, work: Callable[[], object], times: int = 3) -> None:
    best = min(_once(work) for _ in range(times))
    print(f"\n{what}: {best:.3f} s (best of {times})")


def _once(work: Callable[[], object]) -> float:
    start = perf_counter()
    work()
    return perf_counter() - start


def program(*arguments: str) -> Callable[[], object]:
    return lambda: subprocess.run([sys.executable, "-m", "producer", *arguments], capture_output=True, check=True)


def copies(root: Path, count: int) -> None:
    """Make copies of one demo episode under other ids; their own stints come along."""
    text = (root / EPISODE / "episode.yaml").read_text(encoding="utf-8")
    for number in range(count):
        folder = root / f"copy-{number:04}"
        folder.mkdir()
        changed = text.replace(f"episode: {EPISODE}", f"episode: copy-{number:04}", 1)
        (folder / "episode.yaml").write_text(changed, encoding="utf-8", newline="\n")


def test_start(demo: Path) -> None:
    timed("--help", program("--help"), 5)
    timed("check of the demo", program("check", "-l", str(demo)), 5)


def test_a_thousand_episodes(library: Path, tmp_path: Path) -> None:
    from producer.jobs.check import check
    from producer.library.load import load

    copies(library, 1000)
    timed("1,000 episodes read", lambda: load(library), 1)
    timed("1,000 episodes checked for the first time", lambda: check(library, out=tmp_path / "out"), 1)
    timed("1,000 episodes checked again", lambda: check(library, out=tmp_path / "out"), 1)


def test_build(demo: Path, tmp_path: Path) -> None:
    from producer.jobs.build import build

    timed("the demo built anew", lambda: build(demo, tmp_path, anew=True), 1)
    timed("the demo built, nothing changed", lambda: build(demo, tmp_path), 3)


def test_memory(library: Path) -> None:
    from producer.jobs.check import check

    copies(library, 200)
    tracemalloc.start()
    check(library)
    print(f"\n200 episodes checked: at most {tracemalloc.get_traced_memory()[1] / 1e6:.0f} MB")
    tracemalloc.stop()
