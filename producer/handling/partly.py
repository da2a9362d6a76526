"""Where a complaint about no part of the corner in particular is helped, and where not.

`tight` counts as answered once what is changed helps over its parts of the corner taken together. A change that works
on entry alone is then no cure for a car that is tight all the way round: that is said.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Literal

from producer.handling.measure import SMALLEST
from producer.handling.saying import feel, listed
from producer.handling.wants import NOTHING, Want
from producer.handling.wording import PLACES
from producer.model.advice import Step
from producer.model.words import Phase

_Outcome = Literal["helps", "nothing", "worse", "unknown"]
_WORDS: Mapping[_Outcome, str] = {
    "helps": "helps",
    "nothing": "does nothing to speak of",
    "worse": "makes it worse",
    "unknown": "has no size and no rule",
}


def partly(
    steps: Sequence[Step],
    weighed: Sequence[Want],
    expected: Mapping[Phase, float | None],
    half_percent: Mapping[Phase, float],
) -> Iterator[str]:
    """A sentence for each answered complaint that names no part of the corner and is not helped in all of its parts.

    `expected` is the sum of the sizes (+ tighter); where nobody gives one, the rules say whether it helps.
    """
    for want in weighed:
        meant = [one for one in steps if want.complaint in one.answers]
        if want.complaint.where is not None or not meant:
            continue
        parts = {phase: _outcome(want, phase, meant, expected.get(phase), half_percent) for phase in want.phases}
        if set(parts.values()) != {"helps"}:
            yield f"{feel(want.complaint)}: {_sentence(parts)}"


def _outcome(
    want: Want, phase: Phase, meant: Sequence[Step], size: float | None, half_percent: Mapping[Phase, float]
) -> _Outcome:
    if size is None:
        rules = {one.change.rule.get(phase) for one in meant}
        return "helps" if want.cure in rules else "unknown"
    least = max(NOTHING, SMALLEST * abs(half_percent.get(phase, 0.0)))
    if abs(size) < least:
        return "nothing"
    return "helps" if size * want.way > 0 else "worse"


def _sentence(parts: Mapping[Phase, _Outcome]) -> str:
    """`what is changed helps on entry, but does nothing to speak of in the middle and on exit`."""
    found = [(words, [PLACES[one] for one in parts if parts[one] == outcome]) for outcome, words in _WORDS.items()]
    said = [f"{words} {listed(places)}" for words, places in found if places]
    return f"what is changed {', but '.join(said)}"
