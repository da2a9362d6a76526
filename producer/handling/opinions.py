"""The model's opinions of one setup, put together from a question and its answers."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from producer.handling.asking import Asked
from producer.model.opinion import Opinion, Opinions


def opinions(asked: Asked, cars: int, answers: Sequence[Opinion]) -> Opinions:
    """What each answer stands for; nothing where too few cars were plausible to answer.

    Going back to where a reason started was asked, so that the setup is the same for all: it is turned here.
    """
    if not answers:
        return Opinions(cars)
    half, *rest = answers
    clicks, reasons = len(asked.clicks), len(asked.reasons)
    counted: dict[str, dict[int, Opinion]] = {}
    for (address, count), one in zip(asked.clicks, rest[:clicks], strict=True):
        counted.setdefault(address, {})[count] = one
    explained = zip(asked.reasons, rest[clicks : clicks + reasons], strict=True)
    others: Mapping[str, Opinion] = dict(zip(asked.others, rest[clicks + reasons :], strict=True))
    return Opinions(cars, counted, {place: one.turned() for place, one in explained}, others, half.sizes())
