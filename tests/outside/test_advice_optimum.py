"""The best combination of clicks against a mixed-integer solver.

Outside: HiGHS (Huangfu & Hall 2018, Parallelizing the dual revised simplex method, Mathematical Programming
Computation 10) through `scipy.optimize.milp`. The objective is solved part by part, each part held while the next one
is improved: most complaints answered, fewest settings, least sum of |expected - target|, fewest clicks.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from producer.handling.choosing import MOST, MOST_FOR_ONE, Given, Movement, choose, weighed
from producer.handling.wants import Want, wants
from producer.model.words import FEELS, PHASES, Complaint, HowMuch, Phase

optimize = pytest.importorskip("scipy.optimize")
SETTINGS, LEAST = 9, 1 / 32  # sizes are sixteenths: half of one tells something from nothing
BIG = 1000.0
much: st.SearchStrategy[HowMuch] = st.sampled_from(["little", "plain", "very"])
where = st.sampled_from([*PHASES, None])
complaints = st.lists(st.builds(Complaint, st.sampled_from(FEELS), where, much), min_size=1, max_size=4)
size = st.integers(-24, 24).map(lambda one: one / 16)


@st.composite
def problems(draw: st.DrawFn) -> tuple[list[Movement], tuple[Want, ...], Given]:
    """Settings that move one way or both, some movements of which help what their sizes help; at times one is given."""
    every = wants(draw(complaints), {phase: draw(st.sampled_from([0.25, 1.0])) for phase in PHASES})
    movements = [one for place in range(SETTINGS) for one in _setting(draw, place, every)]
    helpful = [one for one in movements if one.helps]
    fixed = draw(st.lists(st.sampled_from(helpful), max_size=1)) if helpful else []
    return helpful, every, Given(tuple(fixed))


def _setting(draw: st.DrawFn, place: int, every: Sequence[Want]) -> list[Movement]:
    click = (draw(size), draw(size), draw(size))
    told = draw(st.integers(0, (1 << len(every)) - 1))
    found = []
    for clicks in (-2, -1, 1, 2):
        sizes = dict(zip(PHASES, (clicks * one for one in click), strict=True))
        helps = sum(1 << at for at, one in enumerate(every) if told >> at & 1 and gain(one, sizes) > 0)
        found.append(Movement(place, clicks, (sizes["entry"], sizes["middle"], sizes["exit"]), helps))
    return found


def gain(want: Want, sizes: Mapping[Phase, float]) -> float:
    """The mean effect in its phases, + where it helps."""
    return want.way * sum(sizes[one] for one in want.phases) / max(1, len(want.phases))


class Program:
    """The choice as a mixed-integer program: movements, answered complaints, deviations per complaint and phase."""

    def __init__(self, movements: Sequence[Movement], every: Sequence[Want], given: Given) -> None:
        self.movements, self.given = [*given.movements, *movements], given
        self.terms = [(at, phase) for at, one in enumerate(every) for phase in one.phases]
        self.every = every
        self.count = len(self.movements) + len(every) + len(self.terms)
        self.rows: list[tuple[Any, float, float]] = []
        self._few()
        self._answers()
        self._deviations()

    def _row(self, low: float, high: float, **parts: float) -> None:
        row = np.zeros(self.count)
        for name, value in parts.items():
            row[int(name[1:])] += value
        self.rows.append((row, low, high))

    def _few(self) -> None:
        used = {f"x{at}": 1.0 for at in range(len(self.movements))}
        self._row(0, MOST, **used)
        for at in range(len(self.given.movements)):
            self._row(1, 1, **{f"x{at}": 1.0})
        for place in range(SETTINGS):
            self._row(0, 1, **{f"x{at}": 1.0 for at, one in enumerate(self.movements) if one.place == place})
        for bit in range(len(self.every)):
            alone = {f"x{at}": 1.0 for at, one in enumerate(self.movements) if one.helps == 1 << bit}
            self._row(0, MOST_FOR_ONE, **alone)

    def _answers(self) -> None:
        """Answered is what some movement helps and the sum of all helps, in the mean over its phases."""
        for at, want in enumerate(self.every):
            answered = f"y{len(self.movements) + at}"
            helping = {f"x{n}": -1.0 for n, one in enumerate(self.movements) if one.helps >> at & 1}
            self._row(-BIG, 0, **{answered: 1.0, **helping})
            gains = {
                f"x{n}": -gain(want, dict(zip(PHASES, one.sizes, strict=True))) for n, one in enumerate(self.movements)
            }
            self._row(-BIG, BIG - LEAST, **{answered: BIG, **gains})

    def _deviations(self) -> None:
        for n, (at, phase) in enumerate(self.terms):
            want, slack = self.every[at], f"d{len(self.movements) + len(self.every) + n}"
            sizes = {f"x{m}": one.sizes[PHASES.index(phase)] for m, one in enumerate(self.movements)}
            self._row(-BIG, want.targets[phase], **{**sizes, slack: -1.0})
            self._row(want.targets[phase], BIG, **{**sizes, slack: 1.0})

    def solved(self) -> tuple[int, int, float, int]:
        """Answered, settings, deviation and clicks, what is given included."""
        at = len(self.movements)
        answered, used = np.zeros(self.count), np.zeros(self.count)
        deviation, clicks = np.zeros(self.count), np.zeros(self.count)
        answered[at : at + len(self.every)] = -1
        used[:at] = 1
        clicks[:at] = [abs(one.clicks) for one in self.movements]
        deviation[at + len(self.every) :] = [1 / len(self.every[one].phases) for one, _ in self.terms]
        found = [self._best(goal, room) for goal, room in ((answered, 0), (used, 0), (deviation, 1e-6), (clicks, 0))]
        return -round(found[0]), round(found[1]), found[2], round(found[3])

    def _best(self, goal: Any, room: float) -> float:
        rows = np.array([row for row, _, _ in self.rows])
        bounds = optimize.LinearConstraint(rows, [low for _, low, _ in self.rows], [high for _, _, high in self.rows])
        whole = np.array([1] * (self.count - len(self.terms)) + [0] * len(self.terms))
        upper = np.where(whole == 1, 1.0, np.inf)
        limits = optimize.Bounds(0, upper)
        # What is simplified away first can leave HiGHS with rows it cannot judge (status 4): then it solves them whole.
        for first in (True, False):
            options = {"mip_rel_gap": 0, "presolve": first}
            done = optimize.milp(goal, constraints=bounds, integrality=whole, bounds=limits, options=options)
            if done.success:
                break
        assert done.success, done.message
        self.rows.append((goal, -np.inf, float(done.fun) + room + 1e-7))
        return float(done.fun)


@settings(deadline=None, max_examples=80)
@given(problems())
def test_highs_finds_nothing_better(problem: tuple[list[Movement], tuple[Want, ...], Given]) -> None:
    movements, every, fixed = problem
    free = [one for one in movements if one.place not in {x.place for x in fixed.movements}]
    found = choose(movements, every, fixed)
    weight = weighed(found, every, fixed)
    answered, used, deviation, clicks = Program(free, every, fixed).solved()
    given_clicks = sum(abs(one.clicks) for one in fixed.movements)
    meant = sum(bool(one.phases) for one in every)
    assert meant - weight.unanswered == answered
    assert weight.settings + len(fixed.movements) == used
    assert weight.deviation == pytest.approx(deviation, abs=1e-5)
    assert weight.clicks + given_clicks == clicks
