"""What is said to change when the car feels wrong, against the advice that is written."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from producer.model.sheet import Sheet, SheetReason
from producer.model.words import Direction
from producer.take.heard import Heard
from producer.take.judging import UNSURE, plausible
from producer.take.sentences import Sentence

_LONGEST = 30  # words: in a longer sentence (captions without stops) a movement may answer anything
# The condition of an advice is no doubt about it.
_UNSURE = UNSURE - {"if", "would"}


@dataclass(frozen=True, slots=True)
class Misadvised:
    """An advice said otherwise than written: a figure that is none of its `stops`, or the other `direction`."""

    heard: Heard
    setup: str
    address: str
    figure: Decimal | None
    stops: tuple[Decimal, ...]
    direction: Direction | None


def misadvised(heard: Sequence[Heard], sheets: Sequence[Sheet], sentences: Sequence[Sentence]) -> Iterator[Misadvised]:
    """Advice figures that no advice for that setting has, and directions that the advice for that feel has not.

    Where the author wrote no figures for a setting, nothing is said of them; a setup spoken of in doubt may be any.
    """
    for one in heard:
        if not one.advice or one.hedges & _UNSURE:
            continue
        sheet = next((x for x in sheets if x.id == one.setup), sheets[0])
        asked = (sheet,) if one.sure else tuple(sheets)
        first, last = sentences[one.sentence]
        found = _of_figure(one, sheet, asked)
        if found is None and last - first <= _LONGEST:
            found = _of_direction(one, sheet, asked)
        if found is not None:
            yield found


def _of_figure(one: Heard, sheet: Sheet, asked: Sequence[Sheet]) -> Misadvised | None:
    figure = one.figure
    own = stops(sheet, one.claim.parameter)
    if figure is None or not own or not plausible(sheet, one.claim.parameter, figure):
        return None
    address = one.claim.parameter
    allowed = {abs(x) for each in asked for x in (*stops(each, address), *_present(each, address))}
    if allowed & one.figures:
        return None
    return Misadvised(one, sheet.id, one.claim.parameter, figure, own, None)


def _present(sheet: Sheet, address: str) -> tuple[Decimal, ...]:
    value = sheet.value(address)
    return () if value is None else (value,)


def stops(sheet: Sheet, address: str) -> tuple[Decimal, ...]:
    """The figures of all written advice about a setting; those of a split's advice for each of its corners too."""
    found: list[Decimal] = []
    for reason in sheet.reasons:
        for target in reason.targets:
            for advice in reason.advice:
                found += _on(sheet, target, address, advice.to)
    return tuple(dict.fromkeys(found))


def _on(sheet: Sheet, target: str, address: str, to: Sequence[Decimal]) -> Sequence[Decimal]:
    """What the figures of an advice about `target` are for `address`."""
    if target == address:
        return to
    right, left = sheet.garage.splits.get(target, ("", ""))
    if address == right and (other := sheet.values.get(left)) is not None:
        return [other + x for x in to]
    if address == left and (other := sheet.values.get(right)) is not None:
        return [other - x for x in to]
    return ()


def _of_direction(one: Heard, sheet: Sheet, asked: Sequence[Sheet]) -> Misadvised | None:
    """Only where the feel is said with its place, and every advice written for it goes the other way."""
    claim = one.claim
    if claim.if_feels is None or claim.direction is None or not one.named:
        return None
    feel, _, where = claim.if_feels.partition(" ")
    written = {
        way
        for each in asked
        for reason in each.reasons
        if claim.parameter in reason.targets
        for way in _ways(each, reason, claim.parameter, feel, where)
    }
    if not written or claim.direction in written:
        return None
    return Misadvised(one, sheet.id, claim.parameter, None, (), "lower" if claim.direction == "raise" else "raise")


def _ways(sheet: Sheet, reason: SheetReason, address: str, feel: str, where: str) -> Iterator[Direction]:
    value = sheet.value(address)
    for advice in reason.advice:
        if advice.feels.feel == feel and advice.feels.where in (None, where):
            if advice.direction is not None:
                yield advice.direction
            elif advice.to and value is not None and advice.to[0] != value:
                yield "raise" if advice.to[0] > value else "lower"
