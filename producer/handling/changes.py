"""One setting moved by whole clicks, with everything there is to say about it."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from producer.handling.rules import rule
from producer.handling.wording import the
from producer.model.episode import Advice
from producer.model.garage import Garage
from producer.model.guide import Change, Voice
from producer.model.library import Case
from producer.model.opinion import Opinion, Opinions
from producer.model.sheet import Sheet
from producer.model.track import Track
from producer.model.words import PHASES, Direction, Effect, Phase, direction_of


def change(
    case: Case,
    sheet: Sheet,
    address: str,
    to: Decimal,
    voice: Voice,
    *,
    split: str = "",
    advice: Advice | None = None,
    opinions: Opinions | None = None,
) -> Change | None:
    """The setting `address` moved from its present value to `to`.

    None where that goes nowhere, or starts or ends off the grid, or ends past a limit. `split` names the split that
    is meant to move; `advice` gives the author's words and conditions; `opinions` the sizes.
    """
    start, setting = sheet.values.get(address), sheet.garage.settings.get(address)
    if start is None or setting is None:
        return None
    clicks, index = setting.grid.clicks(start, to), setting.grid.index(to)
    if not clicks or index is None or setting.grid.at(index) is None:
        return None
    way: Direction = "raise" if clicks > 0 else "lower"
    row = rule(sheet.garage, case.track, address)
    does = movement(sheet.garage, case.track, address, way, split)
    opinion = opinions.click(address, clicks) if opinions else None
    return Change(
        parameter=address,
        start=start,
        to=to,
        clicks=clicks,
        unit=setting.unit,
        voice=voice,
        headroom=setting.grid.headroom(to, clicks),
        also="; ".join(text for text in (_split(sheet, split, address, to), row.what_else(way) if row else "") if text),
        say=advice.say.strip() if advice else "",
        effects=_sizes(does, opinion),
        rule=does,
        tyres=advice.tyres if advice else None,
        device=advice.device if advice else None,
        opinion=opinion,
    )


def movement(
    garage: Garage, track: Track | None, address: str, way: Direction, split: str = ""
) -> Mapping[Phase, Effect | None]:
    """What moving a setting does by rule, phase by phase.

    Where the setting's own row is silent, that of the split which is meant to move by it speaks.
    """
    row, of_split = rule(garage, track, address), rule(garage, track, split) if split else None
    own = row.effects(way) if row else dict.fromkeys(PHASES)
    if of_split is None:
        return own
    wider = of_split.effects(way if mover_raises(garage, split, address) else _other(way))
    return {phase: own[phase] or wider[phase] for phase in PHASES}


def agreement(change: Change, effect: Effect, phase: Phase | None) -> float | None:
    """Share of the cars in which the change has that effect in that phase.

    None without an opinion, without a phase, and where the garage settles that nothing happens there.
    """
    if change.opinion is None or phase is None or change.rule.get(phase) == "none":
        return None
    return change.opinion.at(phase).agreement(effect)


def _sizes(does: Mapping[Phase, Effect | None], opinion: Opinion | None) -> dict[Phase, float | None]:
    """The model's sizes; nothing at all where the garage's own word is that nothing happens."""
    sizes: dict[Phase, float | None] = {}
    for phase in PHASES:
        sizes[phase] = 0.0 if does.get(phase) == "none" else opinion.at(phase).size if opinion else None
    return sizes


def mover_raises(garage: Garage, split: str, address: str) -> bool:
    """Whether raising this corner raises the split: the right one does, the left one lowers it."""
    return garage.splits[split][0] == address


def split_after(sheet: Sheet, split: str, address: str, to: Decimal) -> Decimal | None:
    """What a split becomes once one of its corners is at `to`; None where the other corner has no value."""
    return sheet.garage.value_of(split, {**sheet.values, address: to})


def way_of(start: Decimal, to: Decimal) -> Direction | None:
    """`raise` to the larger number, None for no movement."""
    return direction_of(to - start)


def _other(way: Direction) -> Direction:
    return "lower" if way == "raise" else "raise"


def _split(sheet: Sheet, split: str, address: str, to: Decimal) -> str:
    after = split_after(sheet, split, address, to) if split else None
    if after is None:
        return ""
    return f"{the(sheet.garage, split)} becomes {sheet.garage.shown(split, after)}"
