"""Wear of one tyre with two setups, as far as readings in whole percents can tell."""

from __future__ import annotations

from fractions import Fraction

from producer.model.stints import Evidence, Stint
from producer.model.words import Corner
from producer.stints.conditions import of
from producer.stints.wording import rounded

_READING = Fraction(1, 2)  # percent: a reading is rounded to the nearest whole one


def wears_more(found: Evidence, first: str, second: str, corner: Corner) -> str | None:
    """`0.31 % a lap more (1.08 instead of 0.77)` where the tyre wears faster with the second setup beyond doubt.

    None where it does not, where a reading is missing, or where no two stints were driven alike.
    """
    pairs = [
        (one, other)
        for one in found.of(first)
        for other in found.of(second)
        if _used(one, corner) is not None and _used(other, corner) is not None and of(one).like(of(other))
    ]
    if not pairs:
        return None
    before, doubt_before = _rate([one for one, _ in pairs], corner)
    after, doubt_after = _rate([other for _, other in pairs], corner)
    if after - before <= doubt_before + doubt_after:
        return None
    more, now, then = (rounded(float(one), 2) for one in (after - before, after, before))
    return f"{more} % a lap more ({now} instead of {then})"


def _used(stint: Stint, corner: Corner) -> Fraction | None:
    worn = stint.tyres.wear
    if worn is None or worn.laps == 0 or corner not in worn.used:
        return None
    return Fraction(worn.used[corner])


def _rate(stints: list[Stint], corner: Corner) -> tuple[Fraction, Fraction]:
    """Percent a lap over all these stints, and how far it may be off."""
    once = {one.index: one for one in stints}.values()
    laps = sum(one.last for one in once)
    used = sum((_used(one, corner) or Fraction(0) for one in once), Fraction(0))
    return used / laps, _READING * len(once) / laps
