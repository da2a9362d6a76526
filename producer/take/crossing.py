"""The second way of lining up: the longest common row of words, without what stands in it by chance.

Indel operations over the whole take lose their way where a section is said twice or left out, so they only check the
votes. A word counts as matched where enough of the words around it match too.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate

from rapidfuzz.distance import LCSseq

_AROUND = 6  # words on each side
_DENSE = 0.4  # of them that must match as well


@dataclass(frozen=True, slots=True)
class Matched:
    """`take_of[i]`: the take's token that token `i` of the script was matched with, -1 where none was."""

    take_of: tuple[int, ...]
    count: int


def matched(script: Sequence[str], take: Sequence[str]) -> Matched:
    """The words of the script that the take has in the same order, chance meetings left out."""
    take_of = [-1] * len(script)
    if script and take:
        for one in LCSseq.opcodes(script, take):
            if one.tag == "equal":
                for step in range(one.src_end - one.src_start):
                    take_of[one.src_start + step] = one.dest_start + step
    dense = _dense([at >= 0 for at in take_of])
    by_take = [False] * len(take)
    for at in take_of:
        if at >= 0:
            by_take[at] = True
    close = _dense(by_take)
    kept = [at if at >= 0 and dense[index] and close[at] else -1 for index, at in enumerate(take_of)]
    return Matched(tuple(kept), sum(at >= 0 for at in kept))


def _dense(hits: Sequence[bool]) -> list[bool]:
    sums = list(accumulate(hits, initial=0))
    found = []
    for at in range(len(hits)):
        first, last = max(0, at - _AROUND), min(len(hits), at + _AROUND + 1)
        found.append(sums[last] - sums[first] > _DENSE * (last - first))
    return found


def start_of(found: Matched, first: int, last: int) -> int | None:
    """Where the script's tokens `first` to `last` (exclusive) begin in the take, None where too little matches."""
    window = range(first, min(last, first + _AROUND * 3))
    hits = [at for at in window if found.take_of[at] >= 0]
    if len(hits) * 2 < len(window):
        return None
    return max(0, found.take_of[hits[0]] - (hits[0] - first))
