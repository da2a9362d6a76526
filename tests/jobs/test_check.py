"""A check tells whoever waits how far it is."""

from __future__ import annotations

from pathlib import Path

from producer.jobs.check import check
from producer.jobs.mend import mend

EPISODES = ("gannet-bowl-grand-sedan", "marrow-creek-grand-sedan")


def told(verb: str) -> list[tuple[str, int, int]]:
    return [(f"{verb} {name}", number, 2) for number, name in enumerate(EPISODES, 1)]


def test_each_episode_is_named_before_its_turn(demo: Path, tmp_path: Path) -> None:
    steps: list[tuple[str, int, int]] = []
    check(demo, EPISODES, tmp_path, lambda *one: steps.append(one))
    assert steps == told("working out") + told("checking")


def test_mending_tells_too(demo: Path, tmp_path: Path) -> None:
    steps: list[tuple[str, int, int]] = []
    mend(demo, EPISODES, tmp_path, lambda *one: steps.append(one), dry_run=True)
    assert steps == told("working out") + told("checking")
