"""One page of the garage told aloud: the values, why they are what they are, what to do when the car feels wrong."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from decimal import Decimal

from producer.model.episode import Reason
from producer.model.guide import Guide
from producer.model.script import Passage
from producer.model.sheet import Sheet, SheetReason
from producer.script.advising import advice_passages
from producer.script.blocks import Block
from producer.script.flatten import paragraphs
from producer.script.speaker import Speaker, listed, setup_name

# A lead names so many settings one by one; more are named by their parameters.
_NAMED = 3


@dataclass(slots=True)
class Teller:
    """Tells blocks of settings. Remembers which reasons were told, so that none is told twice in an episode."""

    speaker: Speaker
    sheets: tuple[Sheet, ...] = ()
    told: list[Reason] = field(default_factory=list)

    def whole(self, sheet: Sheet, block: Block, guide: Guide | None) -> Iterator[Passage]:
        """Every value of the block, then its reasons and advice."""
        for group in block.groups:
            yield self._values(sheet, group)
            yield from self._unreasoned_split(sheet, group, block)
        for reason in block.reasons:
            yield from self._reason(sheet, reason, self._lead(sheet, reason, block, None), guide)

    def changes(self, sheet: Sheet, first: Sheet, block: Block, guide: Guide | None) -> Iterator[Passage]:
        """The block's values as they differ from the first setup: from, to, and why."""
        alone = self._one_by_one(sheet, block)
        if not alone:
            for group in block.groups:
                yield self._moves(sheet, first, group)
        for address in block.addresses if alone else ():
            yield self._move(sheet, first, address)
            for reason in block.reasons:
                if _only(sheet, reason, block) == address:
                    yield from self._reason(sheet, reason, (), guide)
        for reason in block.reasons:
            if not alone or not _only(sheet, reason, block):
                yield from self._reason(sheet, reason, self._lead(sheet, reason, block, first), guide)

    def _one_by_one(self, sheet: Sheet, block: Block) -> bool:
        """Whether each setting has a reason of its own (or there is one setting): then each is told with it."""
        if len(block.addresses) == 1:
            return True
        own = {_only(sheet, one, block) for one in block.reasons}
        whole = any(len(set(one.covers) & set(block.addresses)) == len(block.addresses) > 2 for one in block.reasons)
        return set(block.addresses) <= own and not whole

    def _values(self, sheet: Sheet, group: Sequence[str]) -> Passage:
        garage, say = sheet.garage, self.speaker.say
        setting = garage.settings[group[0]]
        if len(group) == 1:
            name = self.speaker.name(garage, group[0])
            figure = self.speaker.value(garage, group[0], sheet.values[group[0]])
            return Passage("value", say("value", name=name, figure=figure), tuple(group))
        items = [f"{self.speaker.part(garage.settings[one])} {sheet.figure(one)}" for one in group]
        return Passage("value", self._group("group", setting.address, sheet, items), tuple(group))

    def _group(self, kind: str, address: str, sheet: Sheet, items: Sequence[str]) -> str:
        setting = sheet.garage.settings[address]
        name = self.speaker.group_name(setting)
        unit = self.speaker.unit(setting.unit)
        if not unit:
            return self.speaker.say(f"{kind}-bare", name=name, list=listed(items))
        return self.speaker.say(kind, name=name, unit=unit, list=listed(items))

    def _unreasoned_split(self, sheet: Sheet, group: Sequence[str], block: Block) -> Iterator[Passage]:
        """The rear spring split is always said: the trade thinks in it. With a reason it is said there."""
        garage = sheet.garage
        setting = garage.settings[group[0]]
        split = f"{setting.parameter_id}.rear_split"
        reasoned = any(split in one.targets for one in block.reasons)
        both = set(garage.splits.get(split, ("",))) <= set(group)
        if setting.parameter.role == "spring" and both and not reasoned:
            yield self._split(sheet, split, alone=True)

    def _split(self, sheet: Sheet, split: str, *, alone: bool) -> Passage:
        name = self.speaker.split_name(sheet.garage, split, alone=alone)
        value = sheet.value(split)
        figure = self.speaker.value(sheet.garage, split, value if value is not None else Decimal(0))
        return Passage("value", self.speaker.say("split", name=name, figure=figure), (split,))

    def _moves(self, sheet: Sheet, first: Sheet, group: Sequence[str]) -> Passage:
        if len(group) == 1:
            return self._move(sheet, first, group[0])
        garage = sheet.garage
        items = []
        for one in group:
            part, start = self.speaker.part(garage.settings[one]), first.values.get(one)
            end = sheet.figure(one)
            items.append(
                f"{part} {end}" if start is None
                else self.speaker.say("part-move", part=part, start=garage.figure(one, start), end=end)
            )  # fmt: skip
        return Passage("value", self._group("group-moves", group[0], sheet, items), tuple(group))

    def _move(self, sheet: Sheet, first: Sheet, address: str) -> Passage:
        garage = sheet.garage
        name, end = self.speaker.name(garage, address), sheet.values[address]
        figure, start = self.speaker.value(garage, address, end), first.values.get(address)
        if start is None:
            return Passage("value", self.speaker.say("value", name=name, figure=figure), (address,))
        kind = _way(start, end)
        return Passage(
            "value", self.speaker.say(kind, name=name, start=garage.figure(address, start), end=figure), (address,)
        )

    def _lead(self, sheet: Sheet, reason: SheetReason, block: Block, first: Sheet | None) -> tuple[Passage, ...]:
        """What says which settings a reason is about; () where it is about everything just said."""
        splits = [one for one in reason.targets if one in sheet.garage.splits and sheet.value(one) is not None]
        settings = [
            one for one in block.addresses
            if one in reason.covers and (not splits or one in reason.targets)
        ]  # fmt: skip
        found: list[Passage] = []
        if settings and set(settings) != set(block.addresses):
            found.append(self._named(sheet, settings, block))
        alone = len(block.groups) == 1
        found += [self._split_told(sheet, first, one, alone=alone) for one in splits]
        return tuple(found)

    def _named(self, sheet: Sheet, settings: Sequence[str], block: Block) -> Passage:
        """Some settings of a block once more: with their figures while they are few; the unit was said before."""
        garage, say = sheet.garage, self.speaker.say
        several = len(block.groups) > 1
        if len(settings) > _NAMED:
            names = dict.fromkeys(self.speaker.group_name(garage.settings[one]) for one in settings)
            kind = "lead-all" if len(names) > 1 else "lead-named"
            return Passage("reason", say(kind, parts=listed(list(names))))
        parts = [self.speaker.name(garage, x) if several else self.speaker.part(garage.settings[x]) for x in settings]
        figures = list(dict.fromkeys(sheet.figure(one) for one in settings))
        if len(settings) > len(figures) == 1:
            both = "both" if len(settings) == 2 else "all"
            text = say("lead-same", parts=listed(parts), both=both, figures=figures[0])
        else:
            figures = [sheet.figure(one) for one in settings]
            text = say("lead" if len(settings) == 1 else "lead-many", parts=listed(parts), figures=listed(figures))
        return Passage("value", text, tuple(settings))

    def _split_told(self, sheet: Sheet, first: Sheet | None, split: str, *, alone: bool) -> Passage:
        garage, start, end = sheet.garage, first.value(split) if first else None, sheet.value(split)
        if start is None or end is None or start == end:
            return self._split(sheet, split, alone=alone)
        text = self.speaker.say(
            "split-move",
            name=self.speaker.split_name(garage, split, alone=alone),
            start=garage.figure(split, start),
            end=self.speaker.value(garage, split, end),
        )
        return Passage("value", text, (split,))

    def _reason(
        self, sheet: Sheet, reason: SheetReason, lead: tuple[Passage, ...], guide: Guide | None
    ) -> Iterator[Passage]:
        if any(reason.reason is one for one in self.told):
            yield from self._as_told(reason, lead)
            return
        self.told.append(reason.reason)
        words = list(self._because(reason))
        advice = list(advice_passages(self.speaker, sheet, reason, guide))
        splits = [one for one in lead if set(one.settings) & set(sheet.garage.splits)]
        yield from lead if words or advice else splits
        yield from words
        yield from advice

    def _as_told(self, reason: SheetReason, lead: tuple[Passage, ...]) -> Iterator[Passage]:
        """Points back to the setup in which an inherited reason was told; the first setup is not pointed at."""
        origin = next((one for one in self.sheets[1:] if one.id == reason.setup), None)
        if reason.inherited and origin is not None:
            yield from lead
            yield Passage("reason", self.speaker.say("as-in", name=setup_name(origin)))

    def _because(self, reason: SheetReason) -> Iterator[Passage]:
        for paragraph in paragraphs(reason.because):
            yield Passage("reason", paragraph)
        stated = reason.effect.stated()
        effects = self.speaker.effects({phase: str(effect) for phase, effect in stated.items()})
        if not reason.because.strip() and effects:
            yield Passage("reason", self.speaker.say("effect", effects=effects))


def _only(sheet: Sheet, reason: SheetReason, block: Block) -> str:
    """The one setting of the block that a reason is about, "" for several or a split."""
    if any(one in sheet.garage.splits for one in reason.targets):
        return ""
    mine = [one for one in block.addresses if one in reason.covers]
    return mine[0] if len(mine) == 1 else ""


def _way(start: Decimal, end: Decimal) -> str:
    """Up and down are said of figures above zero only: `down` from -3 to -4 is heard both ways."""
    if min(start, end) < 0 or start == end:
        return "move"
    return "move-up" if end > start else "move-down"
