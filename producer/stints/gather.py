"""All that the test laps of an episode say, from the author's files to records."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache

from producer.basics.figures import figure, with_unit
from producer.basics.finding import Finding
from producer.basics.units import Quantity
from producer.model.episode import StintEntry
from producer.model.library import Case, laps_file
from producer.model.stints import Comparison, Evidence, Lap, Stint
from producer.stints.compare import Side, compare, side
from producer.stints.conditions import Driven, apart, as_driven, most_common, of
from producer.stints.meant import purpose_of
from producer.stints.pace import Car, paced
from producer.stints.reading import read_laps
from producer.stints.stint_words import may_claim, may_not_claim
from producer.stints.tyres import tyres
from producer.stints.wording import count, seconds, sentence, the

NO_FILE = "the file of laps cannot be read"
# Several checks and the dossier ask for the same stints one after another; the answer depends on nothing else.
_reading = lru_cache(maxsize=64)(read_laps)
_pacing = lru_cache(maxsize=64)(paced)


def evidence(case: Case) -> Evidence | None:
    """What the stints of an episode say; None for an episode without any.

    Never raises for what the author wrote: a stint whose laps cannot be read is there without a pace.
    """
    stints = stints_of(case)
    if not stints:
        return None
    usual = as_driven(case.episode, None, case.garage)
    sides, ways = _sides(case, stints, most_common([one for one in stints if one.pace], usual))
    comparisons = tuple(_compared(case, first, second, ways) for first, second in _pairs(case, sides))
    return Evidence(case.episode.episode, stints, tuple(one.setup for one in sides), comparisons)


def stints_of(case: Case) -> tuple[Stint, ...]:
    """Every stint by itself, in the author's order."""
    entries = case.episode.stints
    numbers = [1 + sum(one.setup == entry.setup for one in entries[:index]) for index, entry in enumerate(entries)]
    return tuple(_stint(case, entry, index, numbers[index]) for index, entry in enumerate(entries))


def _pairs(case: Case, sides: Sequence[Side]) -> Iterator[tuple[Side, Side]]:
    """The first setup with each other one; then what is for the short run with what is for the long run."""
    yield from ((sides[0], other) for other in sides[1:])
    purpose = {one.setup: purpose_of(one) for one in case.episode.setups}
    for index, first in enumerate(sides[1:], 1):
        for second in sides[index + 1 :]:
            if {purpose[first.setup.setup], purpose[second.setup.setup]} == {"short run", "long run"}:
                yield first, second


def reading_findings(case: Case) -> Iterator[Finding]:
    """Everything odd in the files of laps, each file once."""
    seen: set[str] = set()
    for index, entry in enumerate(case.episode.stints):
        file = laps_file(case.episode, entry)
        if file not in seen:
            seen.add(file)
            yield from _read(case, entry, index)[1]


def _read(case: Case, entry: StintEntry, index: int) -> tuple[tuple[Lap, ...], tuple[Finding, ...]]:
    file = laps_file(case.episode, entry)
    held = case.library.files.get(file)
    where = case.episode.where("stints", index, "file")
    return _reading(held.text, file, where, _fuel_unit(case, entry)) if held is not None else ((), ())


def _stint(case: Case, entry: StintEntry, index: int, number: int) -> Stint:
    laps, _ = _read(case, entry, index)
    unit, mass = _fuel_unit(case, entry), case.garage.car.mass if case.garage else None
    found = _pacing(laps, Car(unit, mass, entry.lap_of_fuel))
    driven = max((one.number for one in laps if one.seconds is not None), default=0)
    setup = case.episode.setup(entry.setup)
    metric = case.channel is not None and case.channel.units == "metric"
    stint = Stint(
        entry.setup,
        setup.name if setup else entry.setup,
        index,
        number,
        entry.file,
        found.laps,
        entry.driving,
        as_driven(case.episode, entry, case.garage),
        unit,
        found.pace,
        found.refusal if laps else NO_FILE,
        tyres(entry, driven, "°C" if metric else "°F"),
        fuel=entry.fuel,
    )
    return replace(stint, may=may_claim(stint), may_not=may_not_claim(stint))


def _fuel_unit(case: Case, entry: StintEntry) -> str:
    if entry.fuel is not None and entry.fuel.unit:
        return entry.fuel.unit
    return "L" if case.channel is not None and case.channel.units == "metric" else "gal"


def _sides(case: Case, stints: Sequence[Stint], common: Driven | None) -> tuple[tuple[Side, ...], dict[str, Driven]]:
    """A line for each setup in the episode's order, from the stints driven like most; of how each was driven."""
    sides: list[Side] = []
    ways: dict[str, Driven] = {}
    for setup in case.episode.setups:
        own = [one for one in stints if one.setup == setup.setup and one.pace is not None]
        alike = [one for one in own if common is not None and common.like(of(one))]
        # A setup that was only driven otherwise has its line all the same; its comparison says that it is none.
        used = alike or own[:1]
        found = side(setup.setup, setup.name, used) if used else None
        if found is not None:
            sides.append(found)
            ways[setup.setup] = common if alike and common is not None else of(used[0])
    return tuple(sides), ways


def _compared(case: Case, first: Side, second: Side, ways: dict[str, Driven]) -> Comparison:
    why_not = apart(ways[first.setup.setup], ways[second.setup.setup], case.garage)
    return compare(first, second, why_not, tuple(_notes(first, second)))


def _notes(first: Side, second: Side) -> Iterator[str]:
    """What else to know: another load of fuel, and how far two stints of one setup are apart."""
    one, other = first.stints[0].fuel, second.stints[0].fuel
    if one is not None and other is not None and one != other:
        name, start = the(second.setup.name), the(first.setup.name)
        yield f"{sentence(name)} began with {_amount(other)} of fuel, {start} with {_amount(one)}."
    for each in (first, second):
        levels = [stint.pace.line.at(each.fit.mean_x) for stint in each.stints if stint.pace is not None]
        if len(levels) > 1:
            width, lap = seconds(max(levels) - min(levels)), f"{each.fit.mean_x:.0f}"
            yield f"The {count(len(levels), 'stint')} of {the(each.setup.name)} are {width} a lap apart at lap {lap}."


def _amount(quantity: Quantity) -> str:
    return with_unit(figure(quantity.value), quantity.unit)
