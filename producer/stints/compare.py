"""Two setups held against each other: equal pace, total time, falloff."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import ceil, floor

from producer.model.stints import Comparison, SetupLine, Stint, Total
from producer.stints.crossing import Crossing, ahead_from, ahead_up_to, crossing
from producer.stints.differences import Difference, difference, slope, total
from producer.stints.lines import FEWEST, Fit, least_squares, theil_sen
from producer.stints.pace import axes, band
from producer.stints.telling import tell

METHOD = "Fieller"
TOTALS = (10, 20, 40)
_GUESSED = 2  # times the laps driven: past that not even a guess is made


@dataclass(frozen=True, slots=True)
class Side:
    """One setup's stints as one line."""

    setup: SetupLine
    fit: Fit
    stints: tuple[Stint, ...]


def side(setup: str, name: str, stints: Sequence[Stint]) -> Side | None:
    """All laps kept of a setup's stints on one line; None below three laps."""
    kept = [lap for one in stints for lap in one.kept]
    if len(kept) < FEWEST or len({one.number for one in kept}) < 2:
        return None
    x, y = axes(kept)
    fit = least_squares(x, y)
    last = max(one.last for one in stints)
    points = sorted(
        (lap.number, float(lap.seconds), lap.kept) for one in stints for lap in one.laps if lap.seconds is not None
    )
    line = SetupLine(
        setup,
        name,
        fit.line(),
        theil_sen(x, y),
        len(kept),
        last,
        tuple(one.index for one in stints),
        band(fit, last),
        tuple(points),
    )
    return Side(line, fit, tuple(stints))


def compare(first: Side, second: Side, why_not: tuple[str, ...] = (), notes: tuple[str, ...] = ()) -> Comparison:
    """The second setup against the first; `why_not` says what was different in how they were driven."""
    laps = min(first.setup.last, second.setup.last)
    falloff = difference(slope(first.fit), slope(second.fit))
    met = crossing(first.fit, second.fit)
    within = met if met is not None and met.interval is not None and 1 <= met.lap <= laps else None
    bare = Comparison(
        first.setup.setup,
        second.setup.setup,
        first.setup.name,
        second.setup.name,
        laps,
        not why_not,
        why_not,
        falloff.value,
        falloff.interval(),
        within.lap if within else None,
        within.interval if within else None,
        METHOD,
        _ahead(first.fit, second.fit, within, laps),
        totals(first.fit, second.fit, laps),
        "",
        "",
        "",
        "",
        notes=notes,
        crossover_beyond=met.lap if met and met.interval and laps < met.lap <= _GUESSED * laps else None,
        ahead_beyond=_ahead_beyond(first.fit, second.fit, met, laps),
    )
    passed = _first_ahead(bare, first.fit, second.fit)
    whole = replace(
        bare,
        ahead_interval=_level_between(bare) if (bare.ahead_from_lap or 1) > 1 else None,
        first_ahead_from=passed,
        first_ahead_interval=_level_between(bare) if passed is not None else None,
    )
    counts = (first.setup.laps, second.setup.laps, len(first.stints), len(second.stints))
    return tell(whole, *counts, tuple(_bends(first, second)))


def _bends(*sides: Side) -> Iterator[tuple[str, int]]:
    """The first turn of each setup, where its laps support one."""
    for one in sides:
        turns = [stint.pace.breakpoint for stint in one.stints if stint.pace and stint.pace.breakpoint]
        if turns:
            yield one.setup.name, turns[0].lap


def totals(first: Fit, second: Fit, laps: int) -> tuple[Total, ...]:
    """Second - first after 10, 20, 40 laps as far as both were driven, and after all that both were."""
    shown = sorted({*(one for one in TOTALS if one <= laps), laps})
    return tuple(Total(one, apart.value, apart.interval()) for one in shown for apart in [_total(first, second, one)])


def _total(first: Fit, second: Fit, laps: int) -> Difference:
    return difference(total(first, laps), total(second, laps))


def _ahead(first: Fit, second: Fit, within: Crossing | None, laps: int) -> int | None:
    """Told where equal pace has its interval, or where the total at the end is beyond doubt."""
    ahead = ahead_up_to(first, second, laps)
    if ahead is None or within is not None:
        return ahead
    return ahead if _total(first, second, laps).interval().high < 0 else None


def _first_ahead(found: Comparison, first: Fit, second: Fit) -> int | None:
    """The lap from which the first is ahead, where the second leads before it and is behind beyond doubt at the end."""
    end = found.totals[-1]
    lap = ahead_up_to(second, first, found.laps) if end.sure and end.seconds > 0 else None
    return lap if lap is not None and lap > 1 else None


def _level_between(found: Comparison) -> tuple[int, int] | None:
    """Totals are level where the lines meet in the middle of the laps run."""
    if found.interval is None:
        return None
    low, high = (2 * one - 1 for one in found.interval)
    return max(1, floor(low + 1e-9) + 1), max(1, ceil(high - 1e-9))


def _ahead_beyond(first: Fit, second: Fit, met: Crossing | None, laps: int) -> int | None:
    """Where being ahead would come past the laps driven, if both went on as they did; not from a far-off crossing."""
    near = met is not None and met.interval is not None and met.lap <= _GUESSED * laps
    ahead = ahead_from(first, second) if near else None
    return ahead if ahead is not None and ahead > laps else None
