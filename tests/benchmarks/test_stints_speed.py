"""How fast test laps are read and told: run by hand with `pytest -m benchmark -s`; none of the figures is asserted."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from pathlib import Path
from random import Random
from time import perf_counter

import pytest

from producer.stints.pace import Car, paced
from producer.stints.reading import read_laps

pytestmark = pytest.mark.benchmark


def timed(what: str, work: Callable[[], object], times: int = 5) -> None:
    best = min(_once(work) for _ in range(times))
    print(f"\n{what}: {best * 1000:.1f} ms (best of {times})")


def _once(work: Callable[[], object]) -> float:
    start = perf_counter()
    work()
    return perf_counter() - start


@pytest.mark.parametrize("laps", [40, 200, 1000])
def test_one_stint(laps: int) -> None:
    dice = Random(1)
    text = "".join(
        f"{lap},{31 + lap * 0.01 + dice.gauss(0, 0.05):.3f},{18 - lap / 100}\n" for lap in range(1, laps + 1)
    )
    timed(f"{laps} laps read", lambda: read_laps(text, "a.csv"))
    seen = read_laps(text, "a.csv")[0]
    timed(f"{laps} laps fitted", lambda: paced(seen, Car()))


def test_the_evidence_of_the_demo(demo: Path) -> None:
    from producer.jobs.evidence import evidence_of
    from producer.library.load import load

    library, _ = load(demo)
    for name, episode in library.episodes.items():
        timed(f"evidence of {name}", partial(evidence_of, library.case(episode)))
