"""Which sections stand in the script's order: the longest rising chain of their places."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence


def rising(places: Sequence[int | None]) -> frozenset[int]:
    """The indexes of a longest run of places that rise; sections without a place are in none.

    Of several as long the one is taken whose places come first.
    """
    tails: list[int] = []
    owners: list[int] = []
    before: dict[int, int | None] = {}
    for index, place in enumerate(places):
        if place is None:
            continue
        at = bisect_left(tails, place)
        before[index] = owners[at - 1] if at else None
        tails[at : at + 1] = [place]
        owners[at : at + 1] = [index]
    found: set[int] = set()
    step: int | None = owners[-1] if owners else None
    while step is not None:
        found.add(step)
        step = before[step]
    return frozenset(found)
