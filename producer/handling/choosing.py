"""The best few movements, found by trying every combination: exact, and quick at this size.

What is best, one after the other: the most complaints answered, the fewest settings, the least sum over all complaints
of |expected - target|, the fewest clicks, the garage's order. One setting that answers all that can be answered
therefore beats any combination, and a second or a third is only taken where it answers a complaint more.

At most three settings in all, and at most two that help the same one complaint and no other.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import inf
from typing import NamedTuple

from producer.handling.wants import NOTHING, Want
from producer.model.words import PHASES

MOST, MOST_FOR_ONE = 3, 2
# Deviations closer than this are the same: what the order of adding up leaves.
_DIGITS, _SAME = 9, 1e-8
Sizes = tuple[float, float, float]  # on entry, in the middle, on exit


class Movement(NamedTuple):
    """One setting moved: `place` its place in the garage, `clicks` signed, `sizes` the effects on entry, in the middle
    and on exit (0.0 where not known), `helps` the complaints that it helps, as bits in their order."""

    place: int
    clicks: int
    sizes: Sizes
    helps: int


@dataclass(frozen=True, slots=True)
class Given:
    """Movements that are made in any case, the author's. `word` are the complaints that one of them helps by the
    author's word, with no size known or none at all: they count as answered as long as nothing pulls against it."""

    movements: tuple[Movement, ...] = ()
    word: int = 0


Combined = tuple[tuple[Movement, ...], int, Sizes]  # movements, what they help, the sum with what is given


class Weighed(NamedTuple):
    """How good a combination is: the smaller the better, part by part."""

    unanswered: int
    settings: int
    deviation: float
    clicks: int
    order: tuple[tuple[int, int], ...]


def choose(movements: Sequence[Movement], wants: Sequence[Want], given: Given) -> tuple[Movement, ...]:
    """What is to be moved besides what is given, in the garage's order; () where nothing answers a complaint more.

    Each movement helps at least one complaint. A setting is moved once, those given included.
    """
    scale = _Scale(wants, given)
    used = {one.place for one in given.movements}
    free = sorted((one for one in movements if one.place not in used), key=lambda one: (one.place, -one.clicks))
    reach = scale.helped(free).bit_count()
    best: tuple[Movement, ...] = ()
    base = scale.total(())
    most = scale.look(base, scale.helps)[0]
    for count in range(1, MOST - len(given.movements) + 1):
        if most >= reach:
            break
        found = _best(_combinations(free, count, most, scale.helps, base), scale, most)
        if found:
            best, most = found, scale.look(scale.total(found), scale.helped(found))[0]
    return best


def answered(movements: Sequence[Movement], wants: Sequence[Want], given: Given) -> int:
    """The complaints that these movements answer together with what is given, as bits in their order."""
    scale = _Scale(wants, given)
    return scale.look(scale.total(movements), scale.helped(movements))[1]


def weighed(movements: Sequence[Movement], wants: Sequence[Want], given: Given) -> Weighed:
    """How good these movements are besides what is given."""
    scale = _Scale(wants, given)
    count, _, deviation = scale.look(scale.total(movements), scale.helped(movements))
    return scale.weighed(movements, count, deviation)


def _best(found: Iterable[Combined], scale: _Scale, least: int) -> tuple[Movement, ...]:
    """The best of those that answer more than `least`; () where there is none."""
    best: tuple[Movement, ...] = ()
    weight: Weighed | None = None
    most, nearest = least + 1, inf
    for movements, helps, total in found:
        count, _, deviation = scale.look(total, helps)
        # Most are out by this alone; those that are as near are weighed to the end.
        if count < most or (count == most and deviation > nearest + _SAME) or not scale.few(movements):
            continue
        this = scale.weighed(movements, count, deviation)
        if weight is None or this < weight:
            best, weight, most, nearest = movements, this, count, deviation
    return best


def _combinations(
    free: Sequence[Movement], count: int, least: int, helps: int, total: Sizes, chosen: tuple[Movement, ...] = ()
) -> Iterator[Combined]:
    """Every combination of so many settings more that can answer more than `least` complaints.

    `free` is in the order of the settings; `chosen`, with all that it `helps` and its `total`, is made already.
    """
    for at, one in enumerate(free):
        if chosen and one.place == chosen[-1].place:
            continue
        sizes, more = one.sizes, helps | one.helps
        sums = total[0] + sizes[0], total[1] + sizes[1], total[2] + sizes[2]
        if count > 1:
            yield from _combinations(free[at + 1 :], count - 1, least, more, sums, (*chosen, one))
        elif more.bit_count() > least:
            yield (*chosen, one), more, sums


class _Scale:
    """Weighs combinations: the complaints and what is given in plain numbers."""

    def __init__(self, wants: Sequence[Want], given: Given) -> None:
        self._given = given
        self.helps = self.helped(())
        # For each complaint: its bit, its sign, and its phases with the target in each.
        self._wants = [
            (1 << bit, one.way, tuple((PHASES.index(phase), one.targets[phase]) for phase in one.phases))
            for bit, one in enumerate(wants)
            if one.phases
        ]

    def helped(self, movements: Sequence[Movement]) -> int:
        """The complaints that what is given and these movements help."""
        found = 0
        for one in (*self._given.movements, *movements):
            found |= one.helps
        return found

    def total(self, movements: Sequence[Movement]) -> Sizes:
        """The sum of what is given and these movements do."""
        entry = middle = leave = 0.0
        for one in (*self._given.movements, *movements):
            entry, middle, leave = entry + one.sizes[0], middle + one.sizes[1], leave + one.sizes[2]
        return entry, middle, leave

    def few(self, movements: tuple[Movement, ...]) -> bool:
        """Whether no more than two settings are for one complaint alone."""
        every = (*self._given.movements, *movements)
        if len(every) <= MOST_FOR_ONE:
            return True
        return every[0].helps.bit_count() != 1 or any(one.helps != every[0].helps for one in every)

    def look(self, total: Sizes, helps: int) -> tuple[int, int, float]:
        """How many complaints are answered, which (as bits), and the sum of the deviations from the targets.

        Answered is what a movement helps and the sum of all helps, in the mean over the complaint's phases.
        """
        count, bits, deviation = 0, 0, 0.0
        for bit, way, phases in self._wants:
            gain = away = 0.0
            for at, target in phases:
                gain += total[at]
                away += abs(total[at] - target)
            deviation += away / len(phases)
            if helps & bit and (gain * way > NOTHING or (self._given.word & bit and gain * way > -NOTHING)):
                count += 1
                bits |= bit
        return count, bits, deviation

    def weighed(self, movements: Sequence[Movement], answered: int, deviation: float) -> Weighed:
        """How good a combination is that answers so many and deviates so much."""
        return Weighed(
            len(self._wants) - answered,
            len(movements),
            round(deviation, _DIGITS),
            sum(abs(one.clicks) for one in movements),
            tuple((one.place, -one.clicks) for one in movements),
        )
