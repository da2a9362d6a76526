"""An explanation as data for other programs, the program's own sentences in the channel's spelling."""

from __future__ import annotations

from typing import Any

from producer.basics.spelling import spell
from producer.handling.explained import banking, parting
from producer.handling.explaining import Click, Explanation, Said, Told
from producer.handling.measure import measure
from producer.model.opinion import Opinion
from producer.model.sheet import Sheet
from producer.model.track import Track
from producer.model.words import PHASES


def explanation_json(
    told: Explanation, track: Track | None, episode: str, sheet: Sheet, spelling: str
) -> dict[str, Any]:
    """The three voices apart. Effects and sizes are those of raising, + tighter; null where a voice has no opinion.

    `times` is a size in what half a percent of cross weight does, `flat` the same click without banking.
    """
    garage = sheet.garage
    return {
        "format": 1,
        "episode": episode,
        "setup": sheet.id,
        "parameter": told.address,
        "name": spell(garage.name_of(told.address), spelling),
        "value": None if told.value is None else float(told.value),
        "unit": garage.unit_of(told.address),
        "click": _click(told.click),
        "author": {"effects": [_said(one) for one in told.said], "advice": [_advice(one) for one in told.advice]},
        "rule": _rule(told, spelling),
        "model": _model(told, told.opinion),
        "left": {**_moved(told.left), "model": _model(told, told.left.opinion)} if told.left else None,
        "flat": _model(told, told.flat, measured=False),
        "differences": [spell(one, spelling) for one in parting(told)],
        "banking": [spell(one, spelling) for one in banking(track, told)],
    }


def _click(click: Click | None) -> dict[str, Any] | None:
    return _moved(click) if click else None


def _moved(click: Click) -> dict[str, Any]:
    return {"parameter": click.moves, "from": float(click.start), "to": float(click.to)}


def _said(said: Said) -> dict[str, Any]:
    movement = said.movement
    return {
        "from": float(movement.start),
        "to": float(movement.end),
        "raising": {phase: said.raising.get(phase) for phase in PHASES},
        "with": list(said.others),
    }


def _advice(one: Told) -> dict[str, Any]:
    return {
        "feels": str(one.advice.feels),
        "parameter": one.moves,
        "to": [float(stop) for stop in one.stops],
        "tyres": one.advice.tyres,
        "device": one.advice.device,
        "say": one.advice.say.strip(),
    }


def _rule(told: Explanation, spelling: str) -> dict[str, Any] | None:
    if told.row is None:
        return None
    effects: dict[str, Any] = {phase: told.rule(phase) for phase in PHASES}
    also, source = (spell(one, spelling) for one in (told.row.what_else("raise"), told.row.source))
    return {**effects, "also": also, "source": source, "own": told.row.own}


def _model(told: Explanation, opinion: Opinion | None, *, measured: bool = True) -> dict[str, Any] | None:
    if opinion is None:
        return None
    found: dict[str, Any] = {"cars": told.cars} if measured else {}
    for phase in PHASES:
        one = opinion.at(phase)
        times = measure(one.size, told.half_percent.get(phase)) if measured else None
        size = {"times": None if times is None else round(times, 3)} if measured else {}
        found[phase] = {"tighter": one.tighter, "looser": one.looser, "size": one.size, **size, "pays": one.pays}
    return found
