"""Which of the author's advice is followed for some complaints, and what is left out and why.

It comes first, as written: of each complaint the first that helps it, what fits it best first (`author_changes`). One
that is enough for all of the complaints stands alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from producer.handling.advised import author_changes
from producer.handling.candidates import bits, sizes_of
from producer.handling.choosing import MOST, Given, Movement, answered
from producer.handling.guide import over_revs
from producer.handling.saying import feel, moved
from producer.handling.wants import Want, feeding
from producer.model.guide import Change
from producer.model.library import Case
from producer.model.opinion import Opinions
from producer.model.sheet import Sheet


@dataclass(frozen=True, slots=True)
class Asked:
    """Who asks: tyres (`new`, `worn`) and device where they are known."""

    tyres: str | None = None
    device: str | None = None


@dataclass(frozen=True, slots=True)
class Option:
    """An advice of the author's as a change that may be made; `told` are the complaints it is written for, `helps`
    those and whatever else it helps, `word` those that it helps by the author's word alone, as bits in their order."""

    change: Change
    movement: Movement
    told: int
    word: int

    @property
    def helps(self) -> int:
        """All that it is meant for and all that it helps."""
        return self.movement.helps


@dataclass(frozen=True, slots=True)
class Authored:
    """What the author advises: `followed` in order, `later` what else may be tried, `notes` on what is left out;
    `known` all the settings that one of these is about."""

    followed: tuple[Option, ...]
    later: tuple[Option, ...]
    notes: tuple[str, ...]
    known: frozenset[str]

    @property
    def given(self) -> Given:
        """What is followed, in plain numbers."""
        return _given(self.followed)


def authored(
    case: Case,
    sheet: Sheet,
    wants: Sequence[Want],
    opinions: Opinions | None,
    asked: Asked,
) -> Authored:
    """The author's advice for these complaints, from the present values.

    Left out with a note: what feeds a complaint by rule or because the model is sure of it, what reaches the limiter,
    and what the garage says does nothing there.
    """
    options: dict[tuple[str, object], Option] = {}
    notes = _Notes()
    for want in wants:
        own = author_changes(case, sheet, want.complaint, tyres=asked.tyres, device=asked.device, opinions=opinions)
        for one in own:
            trouble = _trouble(case, sheet, one, want, wants)
            if trouble:
                notes.add(want, trouble, moved(sheet, one))
                continue
            held = options.get((one.parameter, one.to))
            options[one.parameter, one.to] = _option(sheet, one, want, wants, held)
            notes.known.add(one.parameter)
    followed = _followed(list(options.values()), wants)
    return Authored(
        followed, _later(list(options.values()), followed, wants), notes.sentences(), frozenset(notes.known)
    )


class _Notes:
    """What is left out, gathered by complaint and reason; `known` are the settings that advice is about."""

    def __init__(self) -> None:
        self.known: set[str] = set()
        self._found: dict[str, list[str]] = {}

    def add(self, want: Want, trouble: str, what: str) -> None:
        self._found.setdefault(f"of your advice for {feel(want.complaint)} this {trouble}", []).append(what)

    def sentences(self) -> tuple[str, ...]:
        return tuple(f"{why}: {'; '.join(what)}" for why, what in self._found.items())


def _later(options: Sequence[Option], followed: Sequence[Option], wants: Sequence[Want]) -> tuple[Option, ...]:
    """The next advice for each complaint, of a setting that does not move yet."""
    moving = {one.change.parameter for one in followed}
    rest = [one for one in options if one.change.parameter not in moving]
    found: list[Option] = []
    for at in range(len(wants)):
        first = next((one for one in rest if one.told >> at & 1), None)
        if first is not None and first not in found:
            found.append(first)
    return tuple(found)


def _followed(options: Sequence[Option], wants: Sequence[Want]) -> tuple[Option, ...]:
    everything = bits(wants, wants)
    for one in options:
        if _answered((one,), wants) == everything:
            return (one,)
    chosen: tuple[Option, ...] = ()
    for at in range(len(wants)):
        if len(chosen) < MOST and not _answered(chosen, wants) >> at & 1:
            chosen = (*chosen, *_next(options, chosen, wants, at))
    return chosen


def _next(options: Sequence[Option], chosen: tuple[Option, ...], wants: Sequence[Want], at: int) -> Iterator[Option]:
    """The first advice for a complaint that answers it beside what is chosen already, else the first of all."""
    taken = {one.change.parameter for one in chosen}
    free = [one for one in options if one.told >> at & 1 and one.change.parameter not in taken]
    yield from [one for one in free if _answered((*chosen, one), wants) >> at & 1][:1] or free[:1]


def _answered(options: Sequence[Option], wants: Sequence[Want]) -> int:
    return answered((), wants, _given(options))


def _given(options: Sequence[Option]) -> Given:
    word = 0
    for one in options:
        word |= one.word
    return Given(tuple(one.movement for one in options), word)


def _option(sheet: Sheet, one: Change, want: Want, wants: Sequence[Want], held: Option | None) -> Option:
    own = bits([want], wants)
    told = own | (held.told if held else 0)
    helped = told | bits([other for other in wants if other.helped_by(one)], wants)
    # Where nobody gives a size, or the model sees nothing happen, the author's word is all there is.
    word = own if not any(one.effects.get(phase) for phase in want.phases) else 0
    place = list(sheet.garage.settings).index(one.parameter)
    movement = Movement(place, one.clicks, sizes_of(one), helped)
    return Option(one, movement, told, word | (held.word if held else 0))


def _trouble(case: Case, sheet: Sheet, one: Change, want: Want, wants: Sequence[Want]) -> str:
    """Why an advice is left out, "" where it is not."""
    if want.phases and all(one.rule.get(phase) == "none" for phase in want.phases):
        return "does nothing there by the garage's handling block"
    fed = feeding(one, wants)
    if fed:
        says = "by the tuning rules" if fed[0].fed_by(one.rule) else "in nearly all plausible cars"
        return f"would make {feel(fed[0].complaint)} worse, {says}"
    if over_revs(case, sheet, one):
        return "reaches the rev limiter at the top speed that was driven"
    return ""
