"""What raising one setting does in one setup at its track, by each of the three voices, and what banking has to do
with it.

The author is heard where he states an effect of moving it (turned to raising), the rule by its row, the chassis model
by one click up. Where the setting stands at its upper limit, a click down is turned round. A split is raised by its
right corner; lowering the left one is told beside it. To tell what banking does, the same click is asked of the same
cars on corners of the same radius without any.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal

from producer.handling.advised import walks
from producer.handling.asking import Asked, Question
from producer.handling.rules import rule
from producer.handling.rules_table import Row
from producer.model.episode import Advice
from producer.model.garage import Setting
from producer.model.library import Case
from producer.model.opinion import Opinion, Opinions
from producer.model.sheet import Movement, Sheet, SheetReason
from producer.model.words import PHASES, Effect, Phase, turned


@dataclass(frozen=True, slots=True)
class Said:
    """A movement that the author explains: `raising` is his effect turned to raising, for the phases that he names;
    `others` the settings that moved with it."""

    movement: Movement
    raising: Mapping[Phase, Effect]
    others: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Told:
    """One of the author's advices as a movement: the address it names, from there over these figures."""

    advice: Advice
    moves: str
    start: Decimal | None
    stops: tuple[Decimal, ...]


@dataclass(frozen=True, slots=True)
class Click:
    """One click of the setting that moves: `opinion` is turned to raising where only a click down is left."""

    moves: str
    start: Decimal
    to: Decimal
    opinion: Opinion | None


@dataclass(frozen=True, slots=True)
class Explanation:
    """What is known of raising one setting or split in one setup.

    `setting` is the one that moves (a split's right corner); `value` None where the setup has none; `click` None where
    it cannot move by a click; `left` lowers a split's left corner instead. `half_percent` as in `Opinions`, for the
    model's sizes; `flat` the opinion without banking, None where it was not asked. `cars` is 0 where too few cars are
    plausible, and where the model was not `asked` at all.
    """

    address: str
    setting: Setting
    value: Decimal | None
    said: tuple[Said, ...]
    advice: tuple[Told, ...]
    row: Row | None
    click: Click | None
    left: Click | None
    cars: int
    half_percent: Mapping[Phase, float]
    flat: Opinion | None
    asked: bool = True

    @property
    def opinion(self) -> Opinion | None:
        """What the model thinks of raising it by a click."""
        return self.click.opinion if self.click else None

    @property
    def stated(self) -> Mapping[Phase, Effect]:
        """What the author says of raising it, where it moved alone; the first word of each phase."""
        alone = [one.raising for one in reversed(self.said) if not one.others]
        return {phase: effect for raising in alone for phase, effect in raising.items()}

    def rule(self, phase: Phase) -> Effect | None:
        """What the rule says of raising it."""
        return self.row.effect(phase) if self.row else None


def explain(
    case: Case, sheet: Sheet, address: str, opinions: Opinions | None = None, flat: Opinion | None = None
) -> Explanation:
    """Put together what the voices say. KeyError for an address that the garage lacks."""
    corners = sheet.garage.splits.get(address)
    known = opinions or Opinions(0)
    return Explanation(
        address=address,
        setting=sheet.setting(corners[0] if corners else address),
        value=sheet.value(address),
        said=tuple(_said(sheet, address)),
        advice=tuple(_advice(sheet, address)),
        row=rule(sheet.garage, case.track, address),
        click=_click(sheet, corners[0] if corners else address, 1, known),
        left=_click(sheet, corners[1], -1, known) if corners else None,
        cars=known.cars,
        half_percent=known.half_percent,
        flat=flat,
        asked=opinions is not None,
    )


def without_banking(asked: Asked, sheet: Sheet, address: str) -> Question | None:
    """The same click asked on corners of the same radius without banking.

    None where the model was not asked of it, or where nobody knows the banking that the corners have.
    """
    moves = dict(zip(asked.clicks, asked.question.moves[1:], strict=False))
    move = next((moves[one] for one in _asked_for(sheet, address) if one in moves), None)
    bends = asked.question.bends
    if move is None or any(low != high for low, high in (one.banking for one in bends)):
        return None
    flat = tuple(replace(one, banking=(0.0, 0.0)) for one in bends)
    return replace(asked.question, bends=flat, moves=(move,))


def flat_opinion(asked: Asked, sheet: Sheet, address: str, answers: tuple[Opinion, ...]) -> Opinion | None:
    """The answer to `without_banking`, turned to raising; None where too few cars were plausible."""
    if not answers:
        return None
    up, _ = _asked_for(sheet, address)
    return answers[0] if up in asked.clicks else answers[0].turned()


def _asked_for(sheet: Sheet, address: str) -> tuple[tuple[str, int], tuple[str, int]]:
    moves = sheet.garage.splits.get(address, (address,))[0]
    return (moves, 1), (moves, -1)


def _click(sheet: Sheet, moves: str, clicks: int, opinions: Opinions) -> Click | None:
    """One click that way; where none is left, what going back from here would undo."""
    start, grid = sheet.values.get(moves), sheet.setting(moves).grid
    if start is None:
        return None
    to = grid.moved(start, clicks)
    if to is not None:
        return Click(moves, start, to, opinions.click(moves, clicks))
    back, opinion = grid.moved(start, -clicks), opinions.click(moves, -clicks)
    return None if back is None else Click(moves, back, start, opinion.turned() if opinion else None)


def _said(sheet: Sheet, address: str) -> Iterator[Said]:
    for reason in sheet.reasons:
        movement = reason.movement(address)
        stated = reason.effect.stated()
        if movement is None or movement.direction is None or not stated:
            continue
        raising = {one: turned(stated[one], movement.direction) for one in PHASES if one in stated}
        yield Said(movement, raising, _together(reason, address))


def _together(reason: SheetReason, address: str) -> tuple[str, ...]:
    return tuple(one.address for one in reason.movements if one.address != address and one.direction is not None)


def _advice(sheet: Sheet, address: str) -> Iterator[Told]:
    for reason in sheet.reasons:
        for advice in reason.advice:
            for walk in walks(sheet, reason, advice):
                if walk.target == address:
                    yield Told(advice, walk.moves, walk.present, walk.stops)
