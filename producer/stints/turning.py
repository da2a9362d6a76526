"""Whether falloff turns at some lap ("the tyres go at lap 23"), told only where the laps support it.

A line that bends once is tried at every lap with five kept laps on either side. The best bend of many looks good by
chance; Davies' bound says how good chance could make it. Source: Davies, Hypothesis testing when a nuisance parameter
is present only under the alternative, Biometrika 74 (1987) (from memory; simulated stints in the tests bear it out).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import exp, pi, sqrt
from statistics import NormalDist

from producer.stints.lines import Fit, least_squares
from producer.stints.student import quantile

FEWEST = 15  # laps kept
SIDE = 5  # of them on either side
CHANCE = 0.01
_TAKEN = 3  # figures fitted: of so many laps they take about as much correlation away
LEAST = 0.01  # seconds a lap by which it must turn (assumption: less is nothing anybody drives to)


@dataclass(frozen=True, slots=True)
class Turn:
    """A bend at `lap` between `low` and `high`: falloff `before` and `after` it, seconds a lap."""

    lap: int
    low: int
    high: int
    before: float
    after: float
    chance: float


@dataclass(frozen=True, slots=True)
class _Bend:
    """One try: by how much the slope grows at `lap`, in t and seconds a lap, and the sum of squares that remains."""

    lap: int
    score: float
    growth: float
    sse: float
    lever: float  # how far the growth moves the first slope: before = slope - growth x lever


def turn(x: Sequence[float], y: Sequence[float]) -> Turn | None:
    """The lap from which falloff is worse; None where a straight line says as much. `x` are whole laps, ascending."""
    if len(x) < FEWEST:
        return None
    fit = least_squares(x, y)
    bends = _bends(x, y, fit)
    if not bends:
        return None
    best = max(bends, key=lambda one: one.score)
    # Laps that follow one another up and down tell less than as many that do not.
    worth = _worth(x, y, best)
    chance = _chance(best.score * worth, [one.score * worth for one in bends])
    if chance >= CHANCE or best.growth < LEAST:
        return None
    before = fit.slope - best.growth * best.lever
    freedom = len(x) - 3
    limit = best.sse * (1 + (quantile(freedom) / worth) ** 2 / freedom)
    near = [one.lap for one in bends if one.sse <= limit]
    return Turn(best.lap, min(near), max(near), before, before + best.growth, chance)


def _bends(x: Sequence[float], y: Sequence[float], fit: Fit) -> list[_Bend]:
    """Every bend that can be tried; sums over the laps after a bend are carried along from the last lap back."""
    rest = [other - fit.at(one) for one, other in zip(x, y, strict=True)]
    found: list[_Bend] = []
    # Of the laps after the bend: how many, sums of x, x squared, what remains, and x times what remains.
    count, sx, sxx, sr, sxr = 0, 0.0, 0.0, 0.0, 0.0
    for index in range(len(x) - 1, SIDE - 1, -1):
        at, over = x[index] - fit.mean_x, rest[index]
        if count >= SIDE and x[index] != x[index - 1]:
            bend = _bend(fit, at, (count, sx, sxx, sr, sxr), int(x[index]))
            if bend is not None:
                found.append(bend)
        count, sx, sxx, sr, sxr = count + 1, sx + at, sxx + at * at, sr + over, sxr + at * over
    return found[::-1]


def _bend(fit: Fit, knot: float, sums: tuple[int, float, float, float, float], lap: int) -> _Bend | None:
    """The bend's own regressor is max(0, x - knot), made independent of level and slope."""
    count, sx, sxx, sr, sxr = sums
    total = sx - count * knot
    with_x = sxx - knot * sx
    squares = sxx - 2 * knot * sx + count * knot * knot
    own = squares - total * total / fit.count - with_x * with_x / fit.sxx
    if own <= 1e-9 * squares:
        return None
    along = sxr - knot * sr
    sse = max(0.0, fit.sse - along * along / own)
    growth = along / own
    freedom = fit.count - 3
    deviation = sqrt(max(sse, 1e-18) / freedom)
    return _Bend(lap, _normal(growth * sqrt(own) / deviation, freedom), growth, sse, with_x / fit.sxx)


def _worth(x: Sequence[float], y: Sequence[float], best: _Bend) -> float:
    """By how much a t shrinks because each lap takes after the one before it: sqrt((1 - r) / (1 + r)), at most 1.

    r is the correlation of what remains about the bent line from lap to lap, with what the fit took of it put back, and
    never below 0 (the usual correction for a series; from memory, simulated stints in the tests bear it out).
    """
    straight = [other - best.growth * max(0.0, one - best.lap) for one, other in zip(x, y, strict=True)]
    fit = least_squares(x, straight)
    rest = [other - fit.at(one) for one, other in zip(x, straight, strict=True)]
    squares = sum(one * one for one in rest)
    r = sum(one * other for one, other in pairwise(rest)) / squares + _TAKEN / len(x) if squares > 0 else 0.0
    return sqrt((1 - r) / (1 + r)) if r > 0 else 1.0


def _normal(t: float, freedom: int) -> float:
    """A t as the standard normal figure that is as unlikely (Abramowitz & Stegun 26.7.8, from memory)."""
    return t * (1 - 1 / (4 * freedom)) / sqrt(1 + t * t / (2 * freedom))


def _chance(best: float, scores: Sequence[float]) -> float:
    """At most this often would chance alone give a score as high somewhere, going up and down as these do."""
    travel = sum(abs(other - one) for one, other in pairwise(scores))
    return NormalDist().cdf(-best) + travel * exp(-best * best / 2) / sqrt(8 * pi)
