"""The author's "if it feels ..." advice as it is spoken, with the figures to try."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from producer.model.episode import Advice
from producer.model.guide import Guide
from producer.model.script import Passage
from producer.model.sheet import Sheet, SheetReason
from producer.script.flatten import flat
from producer.script.speaker import Speaker, listed


def advice_passages(speaker: Speaker, sheet: Sheet, reason: SheetReason, guide: Guide | None) -> Iterator[Passage]:
    """One passage for each advice that says or moves something."""
    for advice in reason.advice:
        told = _told(speaker, sheet, reason, advice, guide)
        if told:
            kind = "advice-if" if told.lower().startswith("if ") else "advice"
            text = speaker.say(kind, feel=speaker.feel(advice.feels), when=speaker.when(advice), say=told)
            yield Passage("advice", text)


def _told(speaker: Speaker, sheet: Sheet, reason: SheetReason, advice: Advice, guide: Guide | None) -> str:
    words = flat(advice.say)
    target = next(iter(_targets(sheet, reason)), "")
    if not target:
        return words
    stops = _stops(sheet, target, advice, guide)
    if not words:
        return _bare(speaker, sheet, target, advice, stops)
    return " ".join(part for part in (words, _figures(speaker, sheet, target, advice, stops)) if part)


def _targets(sheet: Sheet, reason: SheetReason) -> tuple[str, ...]:
    """What the advice is about: the settings its reason names, or its splits where it names nothing else."""
    return tuple(one for one in reason.targets if one in sheet.garage.settings) or reason.targets


def _mover(sheet: Sheet, target: str, advice: Advice) -> str:
    """The setting that moves: for a split the corner the advice names, else the right one."""
    corners = sheet.garage.splits.get(target)
    if corners is None:
        return target
    return next((one for one in corners if one.rpartition(".")[2] == advice.corner), corners[0])


def _stops(sheet: Sheet, target: str, advice: Advice, guide: Guide | None) -> tuple[Decimal, ...]:
    """The figures of the setting that moves: as written, else the one click that the guide shows for it."""
    mover = _mover(sheet, target, advice)
    if advice.to:
        moved = (_on_corner(sheet, target, mover, one) for one in advice.to)
        return tuple(one for one in moved if one is not None)
    for row in guide.rows if guide else ():
        if row.feels == advice.feels.feel and advice.feels.where in (None, row.where):
            for change in row.changes:
                if change.parameter == mover and change.voice == "author":
                    return (change.to,)
    return ()


def _on_corner(sheet: Sheet, target: str, mover: str, to: Decimal) -> Decimal | None:
    """The corner's own figure for a figure of the split; a setting's figure as it is."""
    corners = sheet.garage.splits.get(target)
    if corners is None:
        return to
    right, left = (sheet.values.get(one) for one in corners)
    if mover == corners[0]:
        return None if left is None else left + to
    return None if right is None else right - to


def _figures(speaker: Speaker, sheet: Sheet, target: str, advice: Advice, stops: tuple[Decimal, ...]) -> str:
    """`That is 800, then 825.`; for a split the figure of the corner that moves; "" without figures."""
    if not stops:
        return ""
    garage = sheet.garage
    mover = _mover(sheet, target, advice)
    first, rest = _said(sheet, mover, stops)
    then = "-then" if rest else ""
    if mover == target:
        return speaker.say(f"to{then}", first=first, rest=rest)
    return speaker.say(f"corner-to{then}", first=first, rest=rest, part=speaker.part(garage.settings[mover]))


def _bare(speaker: Speaker, sheet: Sheet, target: str, advice: Advice, stops: tuple[Decimal, ...]) -> str:
    """What to do where the author gave figures or a direction and no words."""
    mover = _mover(sheet, target, advice)
    if stops:
        first, rest = _said(sheet, mover, stops)
        name = speaker.name(sheet.garage, mover)
        return speaker.say("do-then" if rest else "do", name=name, first=first, rest=rest)
    if advice.direction is None:
        return ""
    return speaker.say("do-up" if advice.direction == "raise" else "do-down", name=speaker.name(sheet.garage, target))


def _said(sheet: Sheet, mover: str, stops: tuple[Decimal, ...]) -> tuple[str, str]:
    figures = [sheet.garage.figure(mover, one) for one in stops]
    return figures[0], listed(figures[1:])
