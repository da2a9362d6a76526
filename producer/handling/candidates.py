"""The movements that advice is chosen from: whole clicks inside the limits, with what they help and what they feed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from producer.handling.changes import change
from producer.handling.choosing import Movement
from producer.handling.guide import over_revs
from producer.handling.rules import rule
from producer.handling.wants import Want, feeding
from producer.model.guide import Change
from producer.model.library import Case
from producer.model.opinion import Opinions
from producer.model.sheet import Sheet
from producer.model.words import PHASES, Direction, Phase

_WAYS: tuple[tuple[int, Direction], ...] = ((1, "raise"), (-1, "lower"))


@dataclass(frozen=True, slots=True)
class Candidate:
    """A change by rule with the complaints that it helps and those that it feeds, as bits in their order."""

    place: int
    change: Change
    helps: int
    feeds: int

    @property
    def lawful(self) -> bool:
        """Whether it may be advised."""
        return bool(self.helps) and not self.feeds

    @property
    def movement(self) -> Movement:
        """In plain numbers, to be chosen from."""
        return Movement(self.place, self.change.clicks, sizes_of(self.change), self.helps)


def ruled(case: Case, sheet: Sheet, wants: Sequence[Want], opinions: Opinions | None) -> Iterator[Candidate]:
    """Every movement inside the limits for which, of some complaint, a rule speaks, in the garage's order.

    What may be advised of these helps a complaint and feeds none; to help, the model has to give a size with the rule's
    sign, and the clicks are two at most, three where a complaint said with `very` is helped. No gear is among them that
    reaches the limiter at a top speed that was driven.
    """
    for place, (address, setting) in enumerate(sheet.garage.settings.items()):
        row, value = rule(sheet.garage, case.track, address), sheet.values.get(address)
        if row is None or value is None:
            continue
        for way, direction in _WAYS:
            meant = [one for one in wants if one.spoken(row.effects(direction))]
            for count in range(1, max((one.clicks for one in meant), default=0) + 1):
                to = setting.grid.moved(value, way * count)
                found = change(case, sheet, address, to, "rule", opinions=opinions) if to is not None else None
                if found is not None and not over_revs(case, sheet, found):
                    yield _candidate(place, found, wants)


def sizes_of(one: Change) -> tuple[float, float, float]:
    """The effects in the order of the corner, 0.0 where nobody gives a size."""
    entry, middle, leave = (one.effects.get(phase) or 0.0 for phase in PHASES)
    return entry, middle, leave


def bits(chosen: Sequence[Want], wants: Sequence[Want]) -> int:
    """Some of the complaints as bits in their order."""
    return sum(1 << at for at, one in enumerate(wants) if one in chosen)


def chosen_from(wants: Sequence[Want], some: int) -> tuple[Want, ...]:
    """The complaints that are meant by bits."""
    return tuple(one for at, one in enumerate(wants) if some >> at & 1)


def expected_of(changes: Sequence[Change]) -> Mapping[Phase, float | None]:
    """The sum of the effects per phase, None where none of them has a size."""
    return {phase: _sum([one.effects.get(phase) for one in changes]) for phase in PHASES}


def _sum(sizes: Sequence[float | None]) -> float | None:
    known = [one for one in sizes if one is not None]
    # Adding up leaves a rest that is no figure of anybody's.
    return round(sum(known), 9) if known else None


def _candidate(place: int, found: Change, wants: Sequence[Want]) -> Candidate:
    helped = [one for one in wants if one.helped_by(found)]
    if abs(found.clicks) > max((one.clicks for one in helped), default=0):
        helped = []
    return Candidate(place, found, bits(helped, wants), bits(feeding(found, wants), wants))
