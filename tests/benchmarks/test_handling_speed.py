"""How fast the chassis model, the guide and advice are: `pytest -m benchmark -s`; figures printed, none asserted."""

from __future__ import annotations

from pathlib import Path

import pytest

from producer.handling.advice import advise
from producer.handling.choosing import Given, Movement, choose
from producer.handling.guide import guide
from producer.handling.wants import wants
from producer.jobs.opinions import SecondOpinion
from producer.library.load import load
from producer.model.library import Case
from producer.model.words import PHASES, complaint
from tests.benchmarks.test_speed import EPISODE, timed

pytestmark = pytest.mark.benchmark
FEELS = ("very tight entry", "very loose middle", "very tight exit")


@pytest.fixture
def case(demo: Path) -> Case:
    library, _ = load(demo)
    return library.case(library.episodes[EPISODE])


def test_guide(case: Case) -> None:
    SecondOpinion().of(case)  # what is imported and drawn only once
    timed(f"opinions of {len(case.sheets)} setups, a thousand cars each", lambda: SecondOpinion().of(case), 3)
    second = SecondOpinion().of(case)
    first = case.sheets[0]
    timed(f"guide of a setup of {len(first.values)} settings", lambda: guide(case, first, second[first.id]), 5)


@pytest.mark.parametrize("feels", [("loose exit",), ("tight entry", "loose exit"), FEELS])
def test_advice(case: Case, feels: tuple[str, ...]) -> None:
    first = case.sheets[0]
    second = SecondOpinion().of(case)[first.id]
    asked = [complaint(one) for one in feels]
    timed(f"advice for {', '.join(feels)}", lambda: advise(case, first, asked, second), 5)


@pytest.mark.parametrize("alike", [False, True])
def test_the_worst_choice(alike: bool) -> None:
    """Thirty settings of three clicks: ten that help each of three feels alone, or all that help two and unsay one."""
    asked = wants([complaint(one) for one in FEELS], dict.fromkeys(PHASES, 1.0))
    movements = [_movement(place, clicks, alike) for place in range(30) for clicks in (1, 2, 3)]
    timed(f"thirty settings, three feels, {'against each other' if alike else 'a setting each'}",
          lambda: choose(movements, asked, Given()), 3)  # fmt: skip


def _movement(place: int, clicks: int, alike: bool) -> Movement:
    at, much = place % 3, clicks * (0.3 + place / 50)
    way = (-1, 1, -1)
    if not alike:
        entry, middle, leave = (much * way[one] * (one == at) for one in range(3))
        return Movement(place, clicks, (entry, middle, leave), 1 << at)
    entry, middle, leave = (much * way[one] * (1 if one != at else -3) for one in range(3))
    return Movement(place, clicks, (entry, middle, leave), 0b111 ^ (1 << at))
