"""The author's advice for some complaints that goes nowhere from the present values, each with why."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from producer.handling.advised import Walk, fits, settled, stop_for, walks
from producer.handling.authored import Asked
from producer.handling.changes import movement, way_of
from producer.handling.saying import feel
from producer.handling.wants import Want
from producer.handling.wording import the
from producer.model.episode import Advice
from producer.model.library import Case
from producer.model.sheet import Sheet
from producer.model.words import Effect, Phase


def left_out(case: Case, sheet: Sheet, wants: Sequence[Want], known: Collection[str], asked: Asked) -> Iterator[str]:
    """A sentence for each setting that an advice would move and cannot; `known` are those of which all is said."""
    for want in wants:
        for reason in sheet.reasons:
            for advice in reason.advice:
                if fits(advice, want.complaint, asked.tyres, asked.device):
                    for walk in walks(sheet, reason, advice):
                        trouble = "" if walk.moves in known else _trouble(case, sheet, walk, advice, want)
                        if trouble:
                            yield f"of your advice for {feel(want.complaint)} this is left out: {trouble}"


def _trouble(case: Case, sheet: Sheet, walk: Walk, advice: Advice, want: Want) -> str:
    """Why the setting cannot go there, "" where it can."""
    name, present = the(sheet.garage, walk.moves), walk.present
    if present is None or walk.start is None:
        return f"{name} has no value in this setup"
    grid, shown = sheet.setting(walk.moves).grid, sheet.setting(walk.moves).shown
    if grid.index(present) is None:
        return f"{name} stands between two clicks at {shown(present)}"
    stop = stop_for(walk, advice.direction, want.complaint.how_much)
    if stop is None:
        return f"{name} has no click left" if not walk.figures else f"{name} is past {_figures(sheet, walk)} already"
    if stop == present:
        return f"{name} is at {shown(stop)} already"
    if not grid.inside(stop):
        return f"{shown(stop)} is past the limit of {name}"
    if grid.index(stop) is None:
        return f"{shown(stop)} is no click of {name}"
    way = way_of(present, stop)
    does = movement(sheet.garage, case.track, walk.moves, way, walk.split) if way else {}
    trouble = _does_nothing(does, advice, want) or ("makes it worse by rule" if want.fed_by(does) else "")
    return f"going from {shown(present)} to {shown(stop)}, {name} {trouble}" if trouble else ""


def _does_nothing(does: Mapping[Phase, Effect | None], advice: Advice, want: Want) -> str:
    where = advice.feels.where or want.complaint.where
    return "does nothing there by the garage's handling block" if settled(does, where) else ""


def _figures(sheet: Sheet, walk: Walk) -> str:
    return sheet.garage.shown(walk.target, walk.figures[0])
