"""What the chassis model says of a change in the guide: whether it agrees, how much it does, which tyre pays."""

from __future__ import annotations

from producer.handling.measure import SMALLEST, how_sure, in_words, measure
from producer.handling.rules import cure
from producer.model.guide import Change, GuideRow
from producer.model.opinion import Opinions, PhaseOpinion
from producer.model.words import CORNER_NAMES


def agrees(row: GuideRow, change: Change) -> str:
    """`the model agrees (99 of 100 cars)`, beside whoever says so; "" without an opinion, or where none counts."""
    opinion = _opinion(row, change)
    return how_sure(opinion, cure(row.feels)) if opinion else ""


def how_much(row: GuideRow, change: Change, opinions: Opinions | None) -> str:
    """`by the model about as much as one percent of cross weight; the right rear tyre pays`.

    "" where the model is not sure that the change helps, or has nothing to measure with.
    """
    opinion = _opinion(row, change)
    halves = measure(opinion.size, opinions.half_percent.get(row.where)) if opinion and opinions else None
    if opinion is None or halves is None or opinion.sure != cure(row.feels):
        return ""
    felt = abs(halves) >= SMALLEST
    pays = f"; the {CORNER_NAMES[opinion.pays]} tyre pays" if opinion.pays and felt else ""
    return f"by the model {in_words(halves)}{pays}"


def _opinion(row: GuideRow, change: Change) -> PhaseOpinion | None:
    """None as well where the garage settles that nothing happens: the model's opinion does not count there."""
    if change.opinion is None or change.rule.get(row.where) == "none":
        return None
    return change.opinion.at(row.where)
