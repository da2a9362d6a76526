"""Two figures that the captions ran together: "five four on the right rear" is the left's five and the right's four.

`producer.take.apart` tells where words cannot belong to one figure. Where they can, the sheet says it: what stands
before and after a cut is exactly what two settings have that are told one after the other.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal

from producer.language.numbers import STARTS, numbers
from producer.take.speech import Speech

_LONGEST = 8  # words of two figures

_ONE = frozenset({Decimal(1)})

# Words where the second figure begins and ends, all that the first may mean, and all that the second may.
Cut = tuple[int, int, frozenset[Decimal], frozenset[Decimal]]


def cuts(heard: Speech, at: int) -> Iterator[Cut]:
    """The ways to cut the figure at word `at` in two, without signs."""
    last = at + 1
    while last < min(len(heard), at + _LONGEST) and _goes_on(heard.plain[last]):
        last += 1
    for cut in range(at + 1, last):
        if heard.plain[cut] != "and":
            before, after = (_whole(heard.plain[one:end]) for one, end in ((at, cut), (cut, last)))
            if before and after:
                yield cut, last, before, after


def _goes_on(word: str) -> bool:
    return word in STARTS or word == "and" or word[:1].isdigit()


def _whole(words: Sequence[str]) -> frozenset[Decimal]:
    """What words mean that are one figure; nothing where they are several or none."""
    if words == ("one",):
        return _ONE
    text = " ".join(words)
    found = numbers(text)
    if len(found) != 1 or text[found[0].start : found[0].end] != text:
        return frozenset()
    return frozenset(abs(x) for x in found[0].readings + found[0].ratios)
