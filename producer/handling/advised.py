"""The author's advice as movements of settings: which setting moves, from where, over which stops.

What an advice is about:
- a reason for one setting moves that setting; for a parameter, a page or a list, each setting that it names, from its
  own present value (a figure in `to` is meant for each of them);
- a reason for a split moves `corner`, else the split's right corner; where a reason names settings as well as splits,
  its advice is about the settings;
- with `direction` and no `to` it is one click that way; with neither it only says something and moves nothing.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal

from producer.handling.changes import change, mover_raises, way_of
from producer.handling.rules import cure, feeds
from producer.model.episode import Advice
from producer.model.guide import Change
from producer.model.library import Case
from producer.model.opinion import Opinions
from producer.model.sheet import Sheet, SheetReason
from producer.model.words import PHASES, Complaint, Direction, Effect, HowMuch, Phase, turned

_Rank = tuple[int, int, bool, int]
# Whose advice is followed first: that for just so strong a complaint, then the more careful one.
_NEAREST: dict[HowMuch, tuple[HowMuch, ...]] = {
    "little": ("little", "plain", "very"),
    "plain": ("plain", "little", "very"),
    "very": ("very", "plain", "little"),
}


@dataclass(frozen=True, slots=True)
class Walk:
    """One setting's way along an advice.

    `target` is what the reason names: the setting itself, or a split; `moves` the setting that moves; `start` the
    present figure of the target and `figures` its stops as written; `present` and `stops` the same of the setting that
    moves. With `direction` alone the stop is one click away, and there is none where no click is left. `start` and
    `present` are None where the setup lacks a value.
    """

    target: str
    moves: str
    start: Decimal | None
    figures: tuple[Decimal, ...]
    present: Decimal | None
    stops: tuple[Decimal, ...]

    @property
    def split(self) -> str:
        """The split that is meant to move, "" for a setting by itself."""
        return "" if self.target == self.moves else self.target


def written_advice(case: Case) -> Iterator[tuple[Sheet, SheetReason, Advice]]:
    """Every advice once, in the setup that wrote it."""
    for sheet in case.sheets:
        for reason in sheet.reasons:
            if not reason.inherited:
                for advice in reason.advice:
                    yield sheet, reason, advice


def advised_targets(sheet: Sheet, reason: SheetReason) -> tuple[str, ...]:
    """What a reason's advice is about: its settings, or its splits where it names nothing else."""
    settings = tuple(one for one in reason.targets if one in sheet.garage.settings)
    return settings or reason.targets


def walks(sheet: Sheet, reason: SheetReason, advice: Advice) -> tuple[Walk, ...]:
    """How each setting that the advice is about would move; () where it moves nothing.

    Nothing is left out for being off the grid, past a limit or the wrong way: the checks say so.
    """
    if not advice.to and advice.direction is None:
        return ()
    found = (_walk(sheet, target, advice) for target in advised_targets(sheet, reason))
    return tuple(one for one in found if one is not None)


def author_changes(
    case: Case,
    sheet: Sheet,
    complaint: Complaint,
    *,
    tyres: str | None = None,
    device: str | None = None,
    opinions: Opinions | None = None,
) -> tuple[Change, ...]:
    """What the author advises for a complaint in this setup, inherited advice included: one change a setting.

    A little and plain complaints take the first stop, very the last. What fits best comes first (see `_rank`), of the
    advice for one setting and among the settings; where the complaint names no part of the corner, then what by rule
    helps in most of them. Equals stay in the author's order: the setup's own reasons, then the inherited ones.

    What is written for other tyres or another device than those named is left out. Left out too: what goes nowhere
    from the present value, against its own direction, off the grid, past a limit, by rule makes this complaint worse,
    or by the garage's own word does nothing there.
    """
    best: dict[str, tuple[_Rank, Change]] = {}
    for reason in sheet.reasons:
        for advice in reason.advice:
            if not fits(advice, complaint, tyres, device):
                continue
            rank = _rank(advice, complaint, tyres, device)
            for one in _changes(case, sheet, reason, advice, complaint, opinions):
                if one.parameter not in best or rank < best[one.parameter][0]:
                    best[one.parameter] = (rank, one)
    ordered = sorted(best.values(), key=lambda found: (found[0], -_parts_helped(found[1], complaint)))
    return tuple(one for _, one in ordered)


def _changes(
    case: Case, sheet: Sheet, reason: SheetReason, advice: Advice, complaint: Complaint, opinions: Opinions | None
) -> Iterator[Change]:
    for walk in walks(sheet, reason, advice):
        stop = stop_for(walk, advice.direction, complaint.how_much)
        if stop is None:
            continue
        found = change(case, sheet, walk.moves, stop, "author", split=walk.split, advice=advice, opinions=opinions)
        if found is None or feeds(found, complaint):
            continue
        if not settled(found.rule, advice.feels.where or complaint.where):
            yield found


def settled(effects: Mapping[Phase, Effect | None], where: Phase | None) -> bool:
    """Whether the garage says of a movement that it does nothing there: in that phase, without one in all three."""
    return all(effects.get(phase) == "none" for phase in ((where,) if where else PHASES))


def stop_for(walk: Walk, direction: Direction | None, how_much: HowMuch) -> Decimal | None:
    """The stop that is meant for so strong a complaint; None where there is none, or it is against the direction."""
    if not walk.stops or walk.start is None:
        return None
    way = way_of(walk.start, walk.figures[0]) if walk.figures else direction
    if direction is not None and way != direction:
        return None
    return walk.stops[-1 if how_much == "very" else 0]


def _walk(sheet: Sheet, target: str, advice: Advice) -> Walk | None:
    moves = _mover(sheet, target, advice)
    if moves is None:
        return None
    start, present = sheet.value(target), sheet.values.get(moves)
    if advice.to:
        return Walk(target, moves, start, advice.to, present, _stops(sheet, target, moves, advice.to))
    up = advice.direction == "raise"
    if target != moves and not mover_raises(sheet.garage, target, moves):
        up = not up
    stop = None if present is None else sheet.garage.settings[moves].grid.moved(present, 1 if up else -1)
    return Walk(target, moves, start, (), present, () if stop is None else (stop,))


def _mover(sheet: Sheet, target: str, advice: Advice) -> str | None:
    """The setting that moves; None where `corner` is no corner of the split."""
    if target not in sheet.garage.splits:
        return target if target in sheet.garage.settings else None
    corners = sheet.garage.splits[target]
    if advice.corner is None:
        return corners[0]
    return next((one for one in corners if one.endswith(f".{advice.corner}")), None)


def _stops(sheet: Sheet, target: str, moves: str, figures: tuple[Decimal, ...]) -> tuple[Decimal, ...]:
    """The stops of the setting that moves; () where a split's other corner has no value."""
    if target == moves:
        return figures
    right, left = (sheet.values.get(one) for one in sheet.garage.splits[target])
    if mover_raises(sheet.garage, target, moves):
        return () if left is None else tuple(left + one for one in figures)
    return () if right is None else tuple(right - one for one in figures)


def fits(advice: Advice, complaint: Complaint, tyres: str | None = None, device: str | None = None) -> bool:
    """Whether an advice is meant for this feel, in this part of the corner, on these tyres, with this device."""
    if advice.feels.feel != complaint.feel:
        return False
    if advice.feels.where is not None and complaint.where is not None and advice.feels.where != complaint.where:
        return False
    return not (_clash(advice.tyres, tyres) or _clash(advice.device, device))


def _parts_helped(change: Change, complaint: Complaint) -> int:
    """In how many parts of the corner by rule, none where it makes one worse; 0 for a complaint about one part."""
    effects, helps = tuple(change.rule.values()), cure(complaint.feel)
    return effects.count(helps) if complaint.where is None and turned(helps, "lower") not in effects else 0


def _clash(written: str | None, named: str | None) -> bool:
    return written is not None and named is not None and written != named


def _rank(advice: Advice, complaint: Complaint, tyres: str | None, device: str | None) -> _Rank:
    """Smaller fits better: tyres and device, then how much, then the same part of the corner, then few conditions.

    Written for just these tyres or this device comes before for any, for what nobody has said last.
    """
    named = ((advice.tyres, tyres), (advice.device, device))
    unsaid = any(one is not None and said is None for one, said in named)
    just = any(one is not None and one == said for one, said in named)
    return (
        2 if unsaid else 0 if just else 1,
        _NEAREST[complaint.how_much].index(advice.feels.how_much),
        advice.feels.where != complaint.where,
        (advice.tyres is not None) + (advice.device is not None),
    )
