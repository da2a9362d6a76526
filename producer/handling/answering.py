"""The chassis model's answers: each move made in every car of the crowd, and how many of them agree."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, fields
from functools import partial

import numpy as np
from numpy.typing import NDArray

from producer.handling.asking import Move, Question
from producer.handling.car import Array, Turn
from producer.handling.chassis import State, speeds, state
from producer.handling.population import Crowd, car, crowd
from producer.model.opinion import Opinion, PhaseOpinion
from producer.model.words import CORNERS, Corner

CARS = 1000
LEAST_LOAD = 200.0  # N on every wheel of a car that anybody would race
_FEWEST = 250  # plausible cars; below that the model has no opinion
_TRIES = 3  # crowds to draw from until there are enough
_SPARE = 1.25  # more cars than are wanted, as some are left out
_AT_ONCE = 12  # moves: what they need stays in the processor's cache
_HANDS = 4  # threads; more would wait for one another
_NOTHING = 1e-9  # of balance: what rounding leaves
_NO_WORK = 0.5  # N
_MUCH = 0.5  # of the most that a tyre gains
_LITTLE = 0.25  # of the most that a tyre is relieved of


@dataclass(frozen=True, slots=True)
class Answer:
    """How many cars were asked, and an opinion for each move in its order; () where too few cars are plausible."""

    cars: int
    opinions: tuple[Opinion, ...]


@dataclass(frozen=True, slots=True)
class _Asked:
    """The plausible cars of a crowd, with the speed they keep and the state they are in before anything is moved."""

    crowd: Crowd
    speed: Array
    before: State


def answer(question: Question) -> Answer:
    """Ask a thousand cars, or as many as are plausible out of a few thousand draws."""
    with np.errstate(all="ignore"):  # what is not finite is left out with the cars it belongs to
        asked = _plausible(question)
    if asked is None:
        return Answer(0, ())
    # The arrays are long enough for other threads to work beside this one.
    with ThreadPoolExecutor(min(_HANDS, os.cpu_count() or 1)) as pool:
        found = tuple(pool.map(partial(_opinions, asked), _batches(question.moves)))
    return Answer(asked.speed.shape[-1], tuple(one for some in found for one in some))


def _batches(moves: Sequence[Move]) -> Iterator[Sequence[Move]]:
    return (moves[start : start + _AT_ONCE] for start in range(0, len(moves), _AT_ONCE))


def _plausible(question: Question) -> _Asked | None:
    cars = round(CARS * _SPARE)
    for attempt in range(1, _TRIES + 1):
        asked, good = _seen(crowd(question, cars * attempt))
        if good.sum() >= CARS or (attempt == _TRIES and good.sum() >= _FEWEST):
            return _kept(asked, np.flatnonzero(good)[:CARS])
    return None


def _seen(some: Crowd) -> tuple[_Asked, NDArray[np.bool_]]:
    """A crowd before anything is moved, and which of its cars are plausible in all three phases."""
    cars = car(some.parts)
    speed = speeds(cars, some.turn)
    before = state(cars, some.turn, speed)
    # No wheel locks or spins: whoever drives lifts before that.
    firm = ((before.loads > LEAST_LOAD) & (before.across > 0)).all(axis=0)
    turning = (before.front_reserve > 0) & (before.rear_reserve > 0) & np.isfinite(before.balance)
    return _Asked(some, speed, before), np.asarray((firm & turning).all(axis=(0, 1)))


def _kept(asked: _Asked, good: NDArray[np.intp]) -> _Asked:
    def some(array: Array) -> Array:
        return array[..., good] if array.shape[-1] > 1 else array

    parts = {name: some(one) for name, one in asked.crowd.parts.items()}
    turn = Turn(*(some(getattr(asked.crowd.turn, one.name)) for one in fields(Turn)))
    before = State(*(some(getattr(asked.before, one.name)) for one in fields(State)))
    return _Asked(Crowd(parts, turn), some(asked.speed), before)


def _opinions(asked: _Asked, moves: Sequence[Move]) -> list[Opinion]:
    """The same cars at the same speeds with the moves made."""
    with np.errstate(all="ignore"):  # which each thread must say for itself
        return list(_each(asked, moves))


def _each(asked: _Asked, moves: Sequence[Move]) -> Iterator[Opinion]:
    parts = dict(asked.crowd.parts)
    for name in sorted({name for move in moves for name in move}):
        change = np.array([move.get(name, 0.0) for move in moves]).reshape(-1, 1, 1)
        parts[name] = asked.crowd.parts[name] + change
    after = state(car(parts), asked.crowd.turn, asked.speed)
    change = after.balance - asked.before.balance
    change = np.where(np.isfinite(change), change, 0.0)
    tighter, looser = (change > _NOTHING).mean(axis=-1), (change < -_NOTHING).mean(axis=-1)
    size = np.median(change, axis=-1) + 0.0  # no minus zero
    harder = np.nan_to_num(after.work - asked.before.work).mean(axis=-1)
    weight = np.broadcast_to(asked.before.loads.mean(axis=-1), harder.shape)
    for move in range(len(moves)):
        phases = (
            PhaseOpinion(
                round(float(tighter[move, phase]), 4),
                round(float(looser[move, phase]), 4),
                float(f"{size[move, phase]:.4g}"),
                _pays(harder[:, move, phase], weight[:, move, phase]),
            )
            for phase in range(3)
        )
        yield Opinion(*phases)


def _pays(harder: Array, weight: Array) -> Corner | None:
    """The tyre that works harder: of those that gain much, the one that carries the most already.

    Weight that moves across one axle comes back across the other: of two tyres that gain alike the loaded one pays.
    None where nothing is moved but taken away: less drive relieves the rear tyres, and what the front ones gain by it
    nobody would call a price.
    """
    most = float(harder.max())
    if most < max(_NO_WORK, -_LITTLE * float(harder.min())):
        return None
    gaining = np.where(harder >= _MUCH * most, weight, -np.inf)
    return CORNERS[int(gaining.argmax())]
