"""The adjustment guide: for each feel in each part of the corner, the single changes that help.

The author's advice comes first, then what the rule table offers by one click: settings whose rule speaks of the
fewest phases, then the garage's order. At most four changes a row, one for each setting.
"""

from __future__ import annotations

from dataclasses import dataclass

from producer.handling.advised import author_changes
from producer.handling.changes import change
from producer.handling.gearing import reaches_limiter, top_speed
from producer.handling.rules import cure, rule
from producer.model.garage import Setting
from producer.model.guide import Change, Guide, GuideRow
from producer.model.library import Case
from producer.model.sheet import Sheet
from producer.model.words import FEELS, PHASES, Complaint, Feel, Phase

MOST = 4


@dataclass(frozen=True, slots=True)
class _Offer:
    """What the rule allows for one setting: one click each way, and of how many phases its row speaks."""

    speaks: int
    changes: tuple[Change, ...]

    def against(self, feel: Feel, phase: Phase) -> Change | None:
        """The click that helps; the row has one sign in a phase, so at most one does."""
        return next((one for one in self.changes if one.rule[phase] == cure(feel)), None)


def guide(case: Case, sheet: Sheet) -> Guide:
    """The guide of one setup: tight then loose, each entry, middle, exit; effects without a size (None)."""
    offers = _offers(case, sheet)
    rows = (_row(case, sheet, offers, feel, phase) for feel in FEELS for phase in PHASES)
    return Guide(case.episode.episode, sheet.id, tuple(rows))


def _row(case: Case, sheet: Sheet, offers: tuple[_Offer, ...], feel: Feel, phase: Phase) -> GuideRow:
    own = author_changes(case, sheet, Complaint(feel, phase))
    named = {one.parameter for one in own}
    by_rule = (one.against(feel, phase) for one in offers)
    rest = [one for one in by_rule if one is not None and one.parameter not in named]
    return GuideRow(feel, phase, (*own, *rest)[:MOST])


def _offers(case: Case, sheet: Sheet) -> tuple[_Offer, ...]:
    """In the order in which they are offered (sorting keeps the garage's order among equals)."""
    found = (_offer(case, sheet, one) for one in sheet.garage.settings.values())
    return tuple(sorted((one for one in found if one is not None), key=lambda one: one.speaks))


def _offer(case: Case, sheet: Sheet, setting: Setting) -> _Offer | None:
    row, value = rule(sheet.garage, case.track, setting.address), sheet.values.get(setting.address)
    if row is None or value is None or not row.speaks_of:
        return None
    stops = (setting.grid.moved(value, clicks) for clicks in (1, -1))
    legal = (one for one in stops if one is not None)
    moved = (change(case, sheet, setting.address, one, "rule") for one in legal)
    return _Offer(len(row.speaks_of), tuple(one for one in moved if one and not _over_revs(case, sheet, setting, one)))


def _over_revs(case: Case, sheet: Sheet, setting: Setting, one: Change) -> bool:
    """A gear that reaches the limiter at a top speed that was driven is never offered."""
    if setting.role != "gear.final" or one.clicks < 0:
        return False
    return reaches_limiter(sheet.garage, top_speed(case, sheet.id), one.to)
