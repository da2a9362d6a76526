"""What the chassis model is asked about a setup: a question in plain numbers, the same for the same figures.

A question can be digested, kept with its answer, and put without loading anything heavy.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from producer.handling.advised import walks
from producer.handling.ranges import Bend, Range, bends, car_ranges
from producer.handling.slots import Slot, figures, slots
from producer.model.library import Case
from producer.model.resolve import defaults
from producer.model.sheet import Sheet, SheetReason

# Parts of the car -> how much more of each, in the model's units.
Move = Mapping[str, float]
MOST_CLICKS = 3
HALF_PERCENT: Move = {"cross": 0.005}


@dataclass(frozen=True, slots=True)
class Question:
    """One setup as the model sees it: what its car can be, where it drives, what is stated, and what is to be moved."""

    car: Mapping[str, Range]
    bends: tuple[Bend, ...]
    stated: Mapping[str, float]
    moves: tuple[Move, ...]


@dataclass(frozen=True, slots=True)
class Asked:
    """A question and what its moves stand for, in the same order. The first is half a percent of cross weight, the
    measure of all sizes; then clicks of a setting, a reason by its place in the sheet, another setup by its id."""

    question: Question
    clicks: tuple[tuple[str, int], ...]
    reasons: tuple[int, ...]
    others: tuple[str, ...]


def ask(case: Case, sheet: Sheet) -> Asked:
    """Everything that is shown or checked of this setup: the clicks each way, the author's stops, the movement behind
    each reason of its own, and going to each of the other setups."""
    known = slots(sheet.garage)
    base = figures(known, sheet.values)
    clicks = dict(_clicks(known, sheet, base))
    reasons = dict(_reasons(case, known, sheet, base))
    others = {one.id: _to(known, base, one.values) for one in case.sheets if one.id != sheet.id}
    others = {setup: move for setup, move in others.items() if move}
    moves = (HALF_PERCENT, *clicks.values(), *reasons.values(), *others.values())
    question = Question(car_ranges(sheet.garage), bends(case.track), base, moves)
    return Asked(question, tuple(clicks), tuple(reasons), tuple(others))


def _clicks(known: Mapping[str, Slot], sheet: Sheet, base: Move) -> Iterator[tuple[tuple[str, int], Move]]:
    stops = _stops(sheet)
    for address in known:
        value, grid = sheet.values.get(address), sheet.garage.settings[address].grid
        if value is None:
            continue
        counts = {*range(-MOST_CLICKS, MOST_CLICKS + 1), *(grid.clicks(value, to) for to in stops.get(address, ()))}
        for count in sorted(one for one in counts if one):
            to = grid.moved(value, count)
            move = _to(known, base, {address: to}) if to is not None else {}
            if move:
                yield (address, count), move


def _stops(sheet: Sheet) -> dict[str, list[Decimal]]:
    """Where the author's advice leads, by the setting that moves."""
    found: dict[str, list[Decimal]] = {}
    for reason in sheet.reasons:
        for advice in reason.advice:
            for walk in walks(sheet, reason, advice):
                found.setdefault(walk.moves, []).extend(walk.stops)
    return found


def _reasons(case: Case, known: Mapping[str, Slot], sheet: Sheet, base: Move) -> Iterator[tuple[int, Move]]:
    """From this setup back to where each reason's movement started; none where the model misses a part of it."""
    for place, reason in enumerate(sheet.reasons):
        back = dict(_starts(case, sheet, reason)) if not reason.inherited else {}
        moved = {address: value for address, value in back.items() if value != sheet.values.get(address)}
        move = _to(known, base, moved)
        if move and all(address in known for address in moved):
            yield place, move


def _starts(case: Case, sheet: Sheet, reason: SheetReason) -> Iterator[tuple[str, Decimal]]:
    """The settings that a reason moved, each with the figure it came from.

    A split that is compared with a figure moved by its right corner, else each of its corners moved.
    """
    for moved in reason.movements:
        corners = sheet.garage.splits.get(moved.address)
        if corners is None:
            yield moved.address, moved.start
        elif moved.against != "number":
            before = _compared(case, sheet, moved.against)
            yield from ((one, before[one]) for one in corners if one in before)
        elif corners[1] in sheet.values:
            yield corners[0], sheet.values[corners[1]] + moved.start


def _compared(case: Case, sheet: Sheet, against: str) -> Mapping[str, Decimal]:
    """The values a movement is compared with: another setup's, or the garage's defaults."""
    other = case.sheet(against)
    return other.values if other is not None else defaults(sheet.garage)


def _to(known: Mapping[str, Slot], base: Move, values: Mapping[str, Decimal]) -> dict[str, float]:
    """How the parts of the car change with these values of settings; {} where nothing changes that the model reads."""
    after = figures(known, values)
    return {name: value - base[name] for name, value in after.items() if name in base and value != base[name]}
