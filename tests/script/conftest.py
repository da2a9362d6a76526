"""A small garage and an episode whose setups a test writes, told by the engine."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from decimal import Decimal
from typing import TypeVar

import pytest

from producer.library.records import build
from producer.model.channel import Channel
from producer.model.dossier import ConditionLine, Dossier
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.gearing import Gearing
from producer.model.guide import Guide
from producer.model.library import Case, Library
from producer.model.record import Record
from producer.model.script import Narration, Passage, Section
from producer.model.stints import Evidence
from producer.model.track import Track
from producer.script.narration import narrate
from producer.script.pace import timeline

GARAGE = """
format: 1
garage: test-car
name: Test Car
simulation: { version: "1.0" }
pages: [scales, under_floor, shocks, drive]
parameters:
  cross_weight: { page: scales, name: Cross weight, role: weight.cross, unit: "%", min: 46, max: 56, step: 0.5 }
  front_weight: { page: scales, name: Front weight, role: weight.front, unit: "%", min: 46, max: 56, step: 0.5 }
  camber:
    page: scales
    name: camber
    unit: deg
    corners: { lf: { min: -2, max: 6, step: 0.25 }, rf: { min: -6, max: 2, step: 0.25 } }
  spring:
    page: under_floor
    name: spring
    say: [springs, coil]
    role: spring
    unit: lb/in
    corners:
      lf: { min: 300, max: 1300, step: 25, default: 700 }
      rf: { min: 300, max: 1300, step: 25, default: 750 }
      lr: { min: 100, max: 500, step: 25, default: 225 }
      rr: { min: 100, max: 500, step: 25, default: 275 }
  track_bar:
    page: under_floor
    name: Track bar
    role: track_bar
    unit: in
    ends: { left: { min: 6, max: 13, step: 0.25 }, right: { min: 6, max: 13, step: 0.25 } }
  bump:
    page: shocks
    name: compression
    unit: clicks
    corners: { lf: { min: 1, max: 9, step: 1 }, rf: { min: 1, max: 9, step: 1 } }
  rebound:
    page: shocks
    name: rebound
    unit: clicks
    corners: { lf: { min: 1, max: 9, step: 1 }, rf: { min: 1, max: 9, step: 1 } }
  final_drive: { page: drive, name: Final drive, role: gear.final, unit: ":1", choices: [3.70, 3.90, 4.11] }
options:
  tyre_use: { name: Tyre use, choices: [gentle, hard], for: [me, field] }
  speed: { name: Speed, choices: [single, double] }
"""
VALUES = """
      cross_weight: 52
      front_weight: 50.5
      camber: { lf: 4, rf: -3.5 }
      spring: { lf: 725, rf: 700, lr: 225, rr: 300 }
      track_bar: { left: 9.5, right: 10 }
      bump: { lf: 4, rf: 5 }
      rebound: { lf: 6, rf: 7 }
      final_drive: 3.90
"""
CHANNEL = """
format: 1
channel: test
name: Test Notebook
presenter: Jo
voice: { words_per_minute: 150, greeting: "Hello again.", sign_off: "Keep it off the wall." }
"""
TRACK = (
    "format: 1\ntrack: oval\nname: Test Oval\nlength: 1 mi\ncorners: [{ turns: [1, 2], radius: 500 ft, banking: 8 }]\n"
)
HEAD = "format: 1\nepisode: test\ntitle: A test\ntrack: oval\ngarage: test-car\n"
R = TypeVar("R", bound=Record)


def read(kind: type[R], text: str) -> R:
    record, _, findings = build(kind, f"{kind.__name__.lower()}.yaml", text)
    assert record is not None, findings
    return record


def indented(text: str, by: int) -> str:
    return "".join(f"{' ' * by}{line}\n" for line in text.strip("\n").splitlines())


@dataclass
class Told:
    """A narration and short ways to ask it."""

    case: Case
    channel: Channel
    narration: Narration
    conditions: tuple[ConditionLine, ...] = ()
    gearing: dict[str, Gearing] | None = None

    def section(self, name: str) -> Section:
        return next(one for one in self.narration.sections if one.id == name)

    def texts(self, section: str, kind: str = "") -> list[str]:
        return [one.text for one in self.section(section).passages if kind in ("", one.kind)]

    def passages(self) -> list[Passage]:
        return [passage for section in self.narration.sections for passage in section.passages]

    @property
    def whole(self) -> str:
        return "\n".join(one.text for one in self.passages())

    def dossier(self) -> Dossier:
        garage, track = self.case.garage, self.case.track
        assert garage is not None
        assert track is not None
        return Dossier(
            self.channel, track, garage, self.case.episode, self.case.sheets, {}, self.gearing or {}, self.conditions,
            (), {}, self.narration, timeline(self.narration, self.channel),
        )  # fmt: skip


@pytest.fixture
def tell() -> Callable[..., Told]:
    """Tell an episode: `reasons` of its first setup, `more` setups and keys after it, all as YAML without indent."""

    def make(
        reasons: str = "",
        *,
        more: str = "",
        top: str = "",
        values: str = VALUES,
        first: str = "name: Short run\npurpose: short run",
        channel: str = CHANNEL,
        garage: str = GARAGE,
        conditions: tuple[ConditionLine, ...] = (),
        guides: dict[str, Guide] | None = None,
        gearing: dict[str, Gearing] | None = None,
        handles: tuple[str, ...] = (),
        evidence: Evidence | None = None,
    ) -> Told:
        setup = f"  - setup: short\n{indented(first, 4)}    values:{values}"
        told_why = f"    reasons:\n{indented(reasons, 6)}" if reasons else ""
        episode = read(Episode, f"{HEAD}{top}\nsetups:\n{setup}{told_why}{indented(more, 2)}")
        car, track, owner = read(Garage, garage), read(Track, TRACK), read(Channel, channel)
        case = Library(owner, {"test-car": car}, {"oval": track}, {"test": episode}, {}, {}).case(episode)
        narration = narrate(
            owner, track, car, episode, case.sheets, guides or {}, gearing or {}, conditions, handles, evidence
        )
        return Told(case, owner, narration, conditions, gearing)

    return make


@pytest.fixture
def gears() -> Callable[..., Gearing]:
    """Gearing of the test car, as the engine would hand it on."""

    def make(**more: object) -> Gearing:
        return Gearing("final_drive", Decimal("3.90"), 520, "mph", **more)  # type: ignore[arg-type]  # fields by name

    return make
