"""The best few movements, found by trying every combination: exact, and quick at this size.

What is best, one after the other: the most complaints answered, the fewest settings, the least sum over all complaints
of |expected - target|, the fewest clicks, the garage's order. One setting that answers all that can be answered
therefore beats any combination, and a second or a third is only taken where it answers a complaint more.

At most three settings in all, and at most two that help the same one complaint and no other.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from producer.handling.wants import NOTHING, Want
from producer.model.words import PHASES

MOST, MOST_FOR_ONE = 3, 2
# Deviations closer than this are the same: what the order of adding up leaves.
_DIGITS = 9


class Movement(NamedTuple):
    """One setting moved: `place` its place in the garage, `clicks` signed, `sizes` the effects on entry, in the middle
    and on exit (0.0 where not known), `helps` the complaints that it helps, as bits in their order."""

    place: int
    clicks: int
    sizes: tuple[float, float, float]
    helps: int


@dataclass(frozen=True, slots=True)
class Given:
    """Movements that are made in any case, the author's. `word` are the complaints that one of them helps by the
    author's word, with no size known or none at all: they count as answered as long as nothing pulls against it."""

    movements: tuple[Movement, ...] = ()
    word: int = 0


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
    reach = scale.helps
    for one in free:
        reach |= one.helps
    best: tuple[Movement, ...] = ()
    answered = scale.answered((), scale.helps).bit_count()
    for count in range(1, MOST - len(given.movements) + 1):
        if answered >= reach.bit_count():
            break
        found = _best(_combinations(free, count, scale, answered), scale, answered)
        if found:
            best = found
            answered = scale.answered(best, scale.helped(best)).bit_count()
    return best


def answered(movements: Sequence[Movement], wants: Sequence[Want], given: Given) -> int:
    """The complaints that these movements answer together with what is given, as bits in their order."""
    scale = _Scale(wants, given)
    return scale.answered(movements, scale.helped(movements))


def weighed(movements: Sequence[Movement], wants: Sequence[Want], given: Given) -> Weighed:
    """How good these movements are besides what is given."""
    scale = _Scale(wants, given)
    found = scale.answered(movements, scale.helped(movements))
    return scale.weighed(movements, found.bit_count())


def _best(combinations: Iterator[tuple[tuple[Movement, ...], int]], scale: _Scale, least: int) -> tuple[Movement, ...]:
    """The best of those that answer more than `least`; () where there is none."""
    best: tuple[Movement, ...] = ()
    weight: Weighed | None = None
    most = least + 1
    for movements, helps in combinations:
        count = scale.answered(movements, helps).bit_count()
        if count < most:
            continue
        found = scale.weighed(movements, count)
        if weight is None or found < weight:
            best, weight, most = movements, found, count
    return best


def _combinations(
    free: Sequence[Movement], count: int, scale: _Scale, least: int
) -> Iterator[tuple[tuple[Movement, ...], int]]:
    """Every combination of so many settings that can answer more than `least` complaints, with what it helps."""
    given = scale.helps
    for at, one in enumerate(free):
        first = given | one.helps
        if count == 1:
            if first.bit_count() > least:
                yield (one,), first
            continue
        for next_at in range(at + 1, len(free)):
            two = free[next_at]
            if two.place == one.place:
                continue
            second = first | two.helps
            if count == 2:
                if second.bit_count() > least and scale.few((one, two)):
                    yield (one, two), second
                continue
            for three in free[next_at + 1 :]:
                third = second | three.helps
                if third.bit_count() > least and three.place != two.place and scale.few((one, two, three)):
                    yield (one, two, three), third


class _Scale:
    """Weighs combinations: the complaints and what is given in plain numbers."""

    def __init__(self, wants: Sequence[Want], given: Given) -> None:
        self._base = tuple(sum(one.sizes[at] for one in given.movements) for at in range(len(PHASES)))
        self._given = given
        self.helps = self.helped(given.movements)
        # For each complaint: its sign, and its phases with the target in each.
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

    def few(self, movements: tuple[Movement, ...]) -> bool:
        """Whether no more than two settings are for one complaint alone."""
        every = (*self._given.movements, *movements)
        if len(every) <= MOST_FOR_ONE:
            return True
        return every[0].helps.bit_count() != 1 or any(one.helps != every[0].helps for one in every)

    def answered(self, movements: Sequence[Movement], helps: int) -> int:
        """Of the complaints that are helped by one of the movements, those that the sum of all helps."""
        total = self._total(movements)
        found = 0
        for bit, way, phases in self._wants:
            if helps & bit:
                gain = way * sum(total[at] for at, _ in phases) / len(phases)
                if gain > NOTHING or (self._given.word & bit and gain > -NOTHING):
                    found |= bit
        return found

    def weighed(self, movements: Sequence[Movement], answered: int) -> Weighed:
        """How good a combination is that answers so many."""
        total = self._total(movements)
        deviation = sum(
            sum(abs(total[at] - target) for at, target in phases) / len(phases) for _, _, phases in self._wants
        )
        return Weighed(
            len(self._wants) - answered,
            len(movements),
            round(deviation, _DIGITS),
            sum(abs(one.clicks) for one in movements),
            tuple((one.place, -one.clicks) for one in movements),
        )

    def _total(self, movements: Sequence[Movement]) -> tuple[float, float, float]:
        entry, middle, leave = self._base
        for one in movements:
            sizes = one.sizes
            entry, middle, leave = entry + sizes[0], middle + sizes[1], leave + sizes[2]
        return entry, middle, leave
