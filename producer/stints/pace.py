"""Pace and falloff of one stint: which laps count, the lines through them, what else they show."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from producer.basics.figures import decimals_of
from producer.basics.units import Quantity
from producer.model.stints import Breakpoint, Lap, Pace, PaceAt
from producer.stints.fuel import fuel_falloff
from producer.stints.lines import FEWEST, Fit, least_squares, theil_sen
from producer.stints.outliers import FLOOR, far, floor_for, grubbs
from producer.stints.turning import Turn, turn
from producer.stints.wording import count, thousandths

SHOWN = (1, 10, 20, 40)  # laps whose pace is told
ENOUGH = 10  # laps kept, for a claim
FAR_OFF = "far from the others"


@dataclass(frozen=True, slots=True)
class Car:
    """What fuel needs to know: the unit of the laps' fuel, the car's mass, the author's seconds for a lap of fuel."""

    fuel_unit: str = ""
    mass: Quantity | None = None
    lap_of_fuel: Decimal | None = None


@dataclass(frozen=True, slots=True)
class Paced:
    """The laps with those left out that stand far off; the pace, or why there is none."""

    laps: tuple[Lap, ...]
    pace: Pace | None
    refusal: str


def paced(laps: Sequence[Lap], car: Car) -> Paced:
    """The pace of a stint's laps.

    Laps that a note leaves out stay out; of the others those are left out whose distance from the robust line has a
    modified z-score above 3.5. Fewer than three laps, or all with one number, are refused.
    """
    marked = _without_far(laps)
    kept = [one for one in marked if one.kept]
    if len(kept) < FEWEST:
        return Paced(marked, None, f"{_counting(len(kept))}; a line needs {count(FEWEST, 'lap')}")
    x, y = axes(kept)
    fit, robust = least_squares(x, y), theil_sen(x, y)
    pace = Pace(
        fit.line(),
        robust,
        _shown(fit, marked),
        _breakpoint(x, y),
        fuel_falloff(kept, car.fuel_unit, robust, fit.mean_y, car.mass, car.lap_of_fuel),
        _doubtful(kept, fit),
    )
    return Paced(marked, pace, "")


def axes(laps: Sequence[Lap]) -> tuple[list[float], list[float]]:
    """Lap numbers and seconds of laps that have a time, by lap."""
    points = sorted((float(one.number), float(one.seconds)) for one in laps if one.seconds is not None)
    return [lap for lap, _ in points], [time for _, time in points]


def band(fit: Fit, laps: int) -> tuple[PaceAt, ...]:
    """The line at laps 1 to `laps`, both included."""
    return tuple(PaceAt(lap, fit.at(lap), fit.interval(lap)) for lap in range(1, laps + 1))


def _without_far(laps: Sequence[Lap]) -> tuple[Lap, ...]:
    kept = [one for one in laps if one.kept]
    if len({one.number for one in kept}) < FEWEST:
        return tuple(laps)
    robust = theil_sen(*axes(kept))
    rest = [float(one.seconds or 0) - robust.at(one.number) for one in kept]
    floor = floor_for(max(decimals_of(one.seconds or Decimal(0)) for one in kept))
    off = {one.line for one, is_far in zip(kept, far(rest, floor), strict=True) if is_far}
    return tuple(replace(one, left_out=FAR_OFF) if one.kept and one.line in off else one for one in laps)


def _shown(fit: Fit, laps: Sequence[Lap]) -> tuple[PaceAt, ...]:
    """Pace within the laps driven; lap 1 always, since sums begin there."""
    driven = [one.number for one in laps if one.seconds is not None]
    first, last = min(driven), max(driven)
    return tuple(
        PaceAt(lap, fit.at(lap), fit.interval(lap), not first <= lap <= last)
        for lap in SHOWN
        if lap == 1 or lap <= last
    )


def _breakpoint(x: Sequence[float], y: Sequence[float]) -> Breakpoint | None:
    found = turn(x, y)
    if found is None:
        return None
    text = f"From about lap {found.lap} {_turned(found)} (it turns somewhere from lap {found.low} to {found.high})."
    return Breakpoint(found.lap, (found.low, found.high), found.before, found.after, found.chance, text)


def _turned(found: Turn) -> str:
    """What happens at a turn for the worse, also where laps got quicker before it, or still do."""
    before, after = (thousandths(abs(one)) for one in (found.before, found.after))
    if found.before > 0:
        return f"the laps get slower more quickly: {after} a lap instead of {before}"
    if found.after > 0:
        return f"the laps get slower: {after} a lap, where they got quicker by {before}"
    return f"the laps get quicker less quickly: {after} a lap instead of {before}"


def _doubtful(kept: Sequence[Lap], fit: Fit) -> tuple[int, ...]:
    """The lap that stands out by Grubbs' test and was kept all the same; of a few laps about a line one always does."""
    if len(kept) < ENOUGH:
        return ()
    rest = [float(one.seconds or 0) - fit.at(one.number) for one in kept]
    largest, limit = grubbs(rest)
    if largest <= limit or max(abs(one) for one in rest) <= FLOOR:
        return ()
    return (max(zip(rest, kept, strict=True), key=lambda pair: abs(pair[0]))[1].number,)


def _counting(number: int) -> str:
    return "no lap counts" if not number else f"{count(number, 'lap')} count{'s' if number == 1 else ''}"
