"""What one stint's laps say, in sentences: what may be claimed, and what not."""

from __future__ import annotations

from producer.basics.figures import with_unit
from producer.model.lap_figures import loss, start
from producer.model.stints import Interval, Pace, Stint
from producer.stints.pace import ENOUGH
from producer.stints.wording import count, laps, seconds, sentence, the, thousandths

_NOTHING = 0.0005  # seconds a lap


def may_claim(stint: Stint) -> tuple[str, ...]:
    """Pace, falloff, what the fuel hides, where the tyres go, scatter; nothing from fewer than ten laps."""
    pace = stint.pace
    if pace is None or len(stint.kept) < ENOUGH:
        return ()
    name = the(stint.setup_name)
    told = [f"{sentence(name)} starts at {with_unit(start(pace), 's')} and {_falls(pace)}."]
    if pace.fuel is not None and pace.fuel.gain > 0:
        told.append(
            f"The lighter car hides {thousandths(pace.fuel.gain)} a lap: the tyres alone lose "
            f"{thousandths(pace.fuel.falloff)} a lap ({pace.fuel.basis})."
        )
    if pace.breakpoint is not None:
        told.append(pace.breakpoint.text)
    if pace.consistency is not None:
        told.append(f"Laps scatter by {seconds(pace.consistency)} around that.")
    return tuple(told)


def may_not_claim(stint: Stint) -> tuple[str, ...]:
    """What the stint does not carry."""
    name = the(stint.setup_name)
    if stint.pace is None:
        return (f"{sentence(name)}: {stint.refusal}.",)
    found = []
    kept = len(stint.kept)
    if kept < ENOUGH:
        counts = "counts" if kept == 1 else "count"
        found.append(f"{sentence(name)} has {count(kept, 'lap')} that {counts}; a claim needs {ENOUGH}.")
    elif not _sure(stint.pace.falloff_interval) and not _keeps(stint.pace.falloff_interval):
        found.append(f"Whether {name} falls off at all: the laps do not tell.")
    if stint.pace.at[0].beyond:
        first = min(one.number for one in stint.laps if one.seconds is not None)
        found.append(f"Pace on lap 1 of {name} is a guess: the laps begin at {first}.")
    if stint.pace.doubtful:
        found.append(f"{sentence(laps(stint.pace.doubtful))} of {name} stands out a little, and was kept.")
    return tuple(found)


def _falls(pace: Pace) -> str:
    told = loss(pace)
    if _keeps(pace.falloff_interval):
        return "keeps that pace"
    if told is None:
        return "does not fall off that these laps could tell"
    way = "loses" if pace.falloff > 0 else "gains"
    return f"{way} {with_unit(told[0], 's')} a lap, give or take {told[1]}"


def _keeps(interval: Interval | None) -> bool:
    """Whether falloff, one way or the other, would not show in thousandths."""
    return interval is not None and max(abs(interval.low), abs(interval.high)) < _NOTHING


def _sure(interval: Interval | None) -> bool:
    return interval is not None and not interval.holds(0)
