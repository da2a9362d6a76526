"""The adjustment guide: for each feel in each part of the corner, the single changes that help.

The author's advice comes first, that for everybody before that for some tyres or a device, then what the rule table
offers by one click: settings with a size before those without, those whose rule speaks of the fewest phases first, then
the larger help, then the garage's order. At most four changes a row, one for each setting; one of them is for
everybody, if any is. The chassis model gives sizes and doubt; it adds no change of its own, but what it is sure makes
the complaint worse is not offered.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from producer.handling.advised import author_changes
from producer.handling.changes import agreement, change
from producer.handling.gearing import reaches_limiter, top_speed
from producer.handling.rules import cure, rule
from producer.model.garage import Setting
from producer.model.guide import Change, Guide, GuideRow
from producer.model.library import Case
from producer.model.opinion import SURE, Opinions
from producer.model.sheet import Sheet
from producer.model.words import FEELS, PHASES, Complaint, Effect, Feel, Phase, turned

MOST = 4


@dataclass(frozen=True, slots=True)
class _Offer:
    """What the rule allows for one setting: one click each way, and of how many phases its row speaks."""

    speaks: int
    changes: tuple[Change, ...]

    def against(self, feel: Feel, phase: Phase) -> Change | None:
        """The click that helps; the row has one sign in a phase, so at most one does."""
        wanted = cure(feel)
        found = next((one for one in self.changes if one.rule[phase] == wanted), None)
        return None if found is None or surely(found, turned(wanted, "lower"), phase) else found


def guide(case: Case, sheet: Sheet, opinions: Opinions | None = None) -> Guide:
    """The guide of one setup: tight then loose, each entry, middle, exit; effects are None where nobody has a size."""
    offers = _offers(case, sheet, opinions)
    rows = (_row(case, sheet, offers, Complaint(feel, phase), opinions) for feel in FEELS for phase in PHASES)
    return Guide(case.episode.episode, sheet.id, tuple(rows))


def surely(change: Change, effect: Effect, phase: Phase) -> bool:
    """Whether the chassis model is sure that the change has that effect in that phase."""
    share = agreement(change, effect, phase)
    return share is not None and share >= SURE


def over_revs(case: Case, sheet: Sheet, one: Change) -> bool:
    """Whether a change is a gear that reaches the limiter at a top speed that was driven; it is never offered."""
    if sheet.garage.settings[one.parameter].role != "gear.final" or one.clicks < 0:
        return False
    return reaches_limiter(sheet.garage, top_speed(case, sheet.id), one.to)


def _row(
    case: Case, sheet: Sheet, offers: tuple[_Offer, ...], complaint: Complaint, opinions: Opinions | None
) -> GuideRow:
    feel, phase = complaint.feel, complaint.where or "middle"
    own = author_changes(case, sheet, complaint, opinions=opinions)
    named = {one.parameter for one in own}
    by_rule = ((offer.speaks, offer.against(feel, phase)) for offer in offers)
    rest = [(speaks, one) for speaks, one in by_rule if one is not None and one.parameter not in named]
    rest.sort(key=lambda found: _rank(found[0], found[1], complaint))
    offered = _cut((*own, *(one for _, one in rest)))
    return GuideRow(feel, phase, tuple(replace(one, agreement=agreement(one, cure(feel), phase)) for one in offered))


def _cut(every: tuple[Change, ...]) -> tuple[Change, ...]:
    """As many as a row holds; the last place goes to one without a condition where the others have one."""
    kept, rest = every[:MOST], every[MOST:]
    if all(one.conditional for one in kept):
        anybody = next((one for one in rest if not one.conditional), None)
        return (*kept[: MOST - 1], anybody) if anybody else kept
    return kept


def _rank(speaks: int, one: Change, complaint: Complaint) -> tuple[bool, int, float]:
    """Smaller comes first; equals stay in the garage's order."""
    size = one.effects[complaint.where] if complaint.where else None
    helps = 0.0 if size is None else size if cure(complaint.feel) == "tighter" else -size
    return size is None, speaks, -helps


def _offers(case: Case, sheet: Sheet, opinions: Opinions | None) -> tuple[_Offer, ...]:
    found = (_offer(case, sheet, one, opinions) for one in sheet.garage.settings.values())
    return tuple(one for one in found if one is not None)


def _offer(case: Case, sheet: Sheet, setting: Setting, opinions: Opinions | None) -> _Offer | None:
    row, value = rule(sheet.garage, case.track, setting.address), sheet.values.get(setting.address)
    if row is None or value is None or not row.speaks_of:
        return None
    stops = (setting.grid.moved(value, clicks) for clicks in (1, -1))
    legal = (one for one in stops if one is not None)
    moved = (change(case, sheet, setting.address, one, "rule", opinions=opinions) for one in legal)
    return _Offer(len(row.speaks_of), tuple(one for one in moved if one and not over_revs(case, sheet, one)))
