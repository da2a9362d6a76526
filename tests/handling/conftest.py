"""A garage, tracks and episodes as the author writes them, built from visible text."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

import pytest

from producer.library.records import build
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.library import Case, Library
from producer.model.record import Record
from producer.model.track import Track

GARAGE = (Path(__file__).parent / "garage.yaml").read_text(encoding="utf-8")
EPISODE = """
format: 1
episode: short-oval
title: A test
track: oval
garage: test-car
setups:
  - setup: short
    name: Short run
    values:
      front_weight: 50.5
      left_weight: 54
      cross_weight: 52
      spring: { lf: 725, rf: 700, lr: 225, rr: 300 }
      pressure: { lf: 24, rf: 43, lr: 25, rr: 41 }
      compression: { lf: 5, rf: 5, lr: 4, rr: 4 }
      track_bar: { left: 9.5, right: 9.5 }
      brake_bias: 62
      tape: 40
      final_drive: 3.90
"""
R = TypeVar("R", bound=Record)


def read(kind: type[R], text: str) -> R:
    record, _, findings = build(kind, f"{kind.__name__.lower()}.yaml", text)
    assert record is not None, findings
    return record


def track_of(*banking: float) -> Track:
    corners = "".join(f"\n  - {{ turns: [{n}], radius: 500 ft, banking: {b} }}" for n, b in enumerate(banking, 1))
    return read(Track, f"format: 1\ntrack: oval\nname: Oval\nlength: 1 mi\ncorners: {corners or '[]'}\n")


@pytest.fixture
def garage_with() -> Callable[[str], Garage]:
    """The test garage with more YAML at its end (`handling: ...`)."""
    return lambda more="": read(Garage, GARAGE + more)


@pytest.fixture
def banked() -> Callable[..., Track]:
    """A track whose corners have these bankings."""
    return track_of


@pytest.fixture
def case_of() -> Callable[..., Case]:
    """An episode from reasons (and more) of its one setup, on a track of these bankings; `edit` changes its values."""

    def make(
        more: str = "",
        *,
        banking: tuple[float, ...] = (10, 15),
        garage: str = "",
        edit: tuple[str, str] = ("", ""),
    ) -> Case:
        assert edit[0] in EPISODE
        record = read(Episode, EPISODE.replace(*edit) + more)
        car, track = read(Garage, GARAGE + garage), track_of(*banking)
        return Library(None, {"test-car": car}, {"oval": track}, {record.episode: record}, {}, {}).case(record)

    return make
