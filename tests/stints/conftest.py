"""Stints of which the truth is known, and episodes that hold them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from random import Random
from typing import TypeVar

import pytest

from producer.basics.located import Places
from producer.library.records import build
from producer.model.channel import Channel
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.library import Case, Library
from producer.model.record import Record

EPISODE = """
format: 1
episode: oval
title: A test
track: oval
garage: test-car
conditions: { tyre_use: hard }
setups:
  - { setup: short, name: Short run, purpose: short run, values: { pressure: { rf: 43 }, camber: { lf: 3, rf: -3 } } }
  - { setup: long, name: Long run, purpose: long run, based_on: short, changes: { pressure: { rf: 42 } } }
"""
GARAGE = """
format: 1
garage: test-car
name: Test Car
pages: [tyres]
parameters:
  pressure:
    page: tyres
    name: pressure
    role: tyre_pressure
    unit: psi
    corners: { lf: { min: 15, max: 40, step: 0.5, default: 24 }, rf: { min: 25, max: 43, step: 0.5, default: 40 } }
  camber:
    page: tyres
    name: camber
    role: camber
    unit: deg
    corners: { lf: { min: -2, max: 6, step: 0.25, default: 3 }, rf: { min: -6, max: 2, step: 0.25, default: -3 } }
options:
  tyre_use: { name: Tyre use, choices: [gentle, usual, hard], for: [me, field] }
car: { mass: 1500 kg }
"""
CHANNEL = "format: 1\nchannel: test\nname: Test\npresenter: Jo\nunits: us\ncaution: Numbers for a simulation.\n"
R = TypeVar("R", bound=Record)


@dataclass(frozen=True)
class Made:
    """Seeded stints."""

    def times(
        self,
        seed: int,
        laps: int,
        start: float,
        falloff: float,
        noise: float = 0.05,
        *,
        spoilt: Iterable[int] = (),
        bend: tuple[int, float] | None = None,
    ) -> list[float]:
        """Seconds of laps 1 to `laps`; `start` is lap 1's true time, `spoilt` laps cost a second more.

        `bend`: from that lap on falloff is so much more.
        """
        dice, lost = Random(seed), set(spoilt)
        return [
            start
            + falloff * (lap - 1)
            + (bend[1] * max(0, lap - bend[0]) if bend else 0.0)
            + dice.gauss(0, noise)
            + (1.0 if lap in lost else 0.0)
            for lap in range(1, laps + 1)
        ]

    def csv(self, seconds: Iterable[float]) -> str:
        """A file of laps, to the thousandth."""
        return "lap,time\n" + "".join(f"{lap},{one:.3f}\n" for lap, one in enumerate(seconds, 1))


def _record(kind: type[R], file: str, text: str) -> tuple[R, Places]:
    record, places, findings = build(kind, file, text)
    assert record is not None, findings
    return record, places


@pytest.fixture(scope="session")
def made() -> Made:
    """Makes stints."""
    return Made()


@pytest.fixture
def case_of() -> Callable[..., Case]:
    """`case_of(stints yaml, {file: laps})`: an episode with those stints.

    `setups` are further ones, behind the two or, with `first`, before them.
    """

    def make(
        stints: str,
        files: Mapping[str, str],
        *,
        setups: str = "",
        first: bool = False,
        units: str = "us",
    ) -> Case:
        before, head, own = EPISODE.partition("setups:\n")
        told = f"{before}{head}{setups}{own}" if first else f"{EPISODE}{setups}"
        episode, places = _record(Episode, "oval/episode.yaml", f"{told}stints:\n{stints}")
        car, _ = _record(Garage, "garages/test-car.yaml", GARAGE)
        channel, _ = _record(Channel, "channel.yaml", CHANNEL.replace("units: us", f"units: {units}"))
        held = {f"oval/{name}": Places(f"oval/{name}", text) for name, text in files.items()}
        library = Library(channel, {"test-car": car}, {}, {"oval": episode}, {}, {"oval/episode.yaml": places, **held})
        return library.case(episode)

    return make


@pytest.fixture
def two(case_of: Callable[..., Case], made: Made) -> Callable[..., Case]:
    """`two(short seconds, long seconds)`: an episode with one stint of each setup."""

    def make(short: Iterable[float], long: Iterable[float], more: str = "") -> Case:
        stints = f"  - {{ setup: short, file: a.csv{more} }}\n  - {{ setup: long, file: b.csv }}\n"
        return case_of(stints, {"a.csv": made.csv(short), "b.csv": made.csv(long)})

    return make


@pytest.fixture(scope="session")
def demo_stints(demo: Path) -> dict[str, str]:
    """The text of every file of laps of the demo."""
    return {
        path.relative_to(demo).as_posix(): path.read_text(encoding="utf-8")
        for path in sorted(demo.glob("*/stints/*.csv"))
    }
