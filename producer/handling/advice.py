"""Advice that is computed: what to change on a setup for what its car does wrong.

Every combination of whole clicks is weighed (see `choosing`). First as many complaints as can be are answered, then as
few settings as can be are moved: one setting that answers all of them beats any combination. The author's advice comes
first, as written, and alone where it is enough. The rule table picks what may be moved, the chassis model gives the
sizes; neither may be against it. What a change does in other parts of the corner is shown, not fought.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from producer.handling.authored import Asked, Authored, Option, authored
from producer.handling.candidates import Candidate, chosen_from, expected_of, ruled
from producer.handling.changes import agreement
from producer.handling.choosing import answered, choose
from producer.handling.left_out import left_out
from producer.handling.partly import partly
from producer.handling.saying import feel, moved
from producer.handling.unanswered import reasons, unanswered
from producer.handling.wants import Want, wants
from producer.model.advice import Plan, Step, Unanswered
from producer.model.guide import Change
from producer.model.library import Case
from producer.model.opinion import Opinions
from producer.model.sheet import Sheet
from producer.model.words import Complaint


def advise(
    case: Case,
    sheet: Sheet,
    complaints: Iterable[Complaint],
    opinions: Opinions | None = None,
    *,
    tyres: str | None = None,
    device: str | None = None,
) -> Plan:
    """What to change for these complaints, at most three settings.

    Without opinions no change has a size, and only the author's advice is left. A complaint said twice counts once, as
    strong as it was said. `tyres` (`new`, `worn`) and `device` leave out advice written for others.
    """
    weighed = wants(complaints, opinions.half_percent if opinions else {})
    asked = Asked(tyres, device)
    own = authored(case, sheet, weighed, opinions, asked)
    every = tuple(ruled(case, sheet, weighed, opinions))
    chosen = _chosen(every, weighed, own)
    done = answered([one.movement for one in chosen], weighed, own.given)
    steps = _steps(own.followed, chosen, weighed, done)
    open_ = tuple(_open(case, sheet, at, weighed, every, own) for at in range(len(weighed)) if not done >> at & 1)
    plan = Plan(
        complaints=tuple(one.complaint for one in weighed),
        steps=steps,
        expected=expected_of([one.change for one in steps]),
        unanswered=open_,
        half_percent=opinions.half_percent if opinions else {},
        cars=opinions.cars if opinions else None,
    )
    left = left_out(case, sheet, weighed, own.known, asked)
    notes = (*_without_cars(plan), *own.notes, *left, *reasons(plan), *_after(plan, own, weighed), *_later(own, sheet))
    return replace(plan, notes=tuple(dict.fromkeys(notes)))


def _without_cars(plan: Plan) -> Iterator[str]:
    if plan.cars == 0:
        yield "too few plausible cars have such a setup at this track, so the chassis model gives no sizes"


def _after(plan: Plan, own: Authored, weighed: Sequence[Want]) -> Iterator[str]:
    """What is to be known of the steps that are made."""
    yield from _silent(own, weighed)
    yield from partly(plan.steps, weighed, plan.expected, plan.half_percent)


def _chosen(every: Sequence[Candidate], weighed: Sequence[Want], own: Authored) -> tuple[Candidate, ...]:
    """What is moved besides the author's, what answers the first complaint first."""
    lawful = {one.movement: one for one in every if one.lawful}
    chosen = choose(list(lawful), weighed, own.given)
    return tuple(sorted((lawful[one] for one in chosen), key=lambda one: _first(one.helps)))


def _first(helps: int) -> int:
    """The place of the first complaint among some."""
    return (helps & -helps).bit_length()


def _steps(
    followed: Sequence[Option], chosen: Sequence[Candidate], weighed: Sequence[Want], done: int
) -> tuple[Step, ...]:
    """The author's in his order, then what else is moved."""
    made = [(one.change, one.helps) for one in followed] + [(one.change, one.helps) for one in chosen]
    return tuple(_step(change, chosen_from(weighed, helps & done), weighed) for change, helps in made)


def _step(change: Change, answers: Sequence[Want], weighed: Sequence[Want]) -> Step:
    """The change with how sure the model is of it: the least share of cars over what it is offered for."""
    shares = [
        agreement(change, want.cure, phase)
        for want in answers or weighed
        for phase in want.spoken(change.rule) or want.phases
    ]
    known = [one for one in shares if one is not None]
    return Step(replace(change, agreement=min(known) if known else None), tuple(one.complaint for one in answers))


def _open(
    case: Case, sheet: Sheet, at: int, weighed: Sequence[Want], every: Sequence[Candidate], own: Authored
) -> Unanswered:
    if any(one.told >> at & 1 for one in own.followed):
        return Unanswered(weighed[at].complaint, "doubted")
    return unanswered(case, sheet, at, weighed, every)


def _silent(own: Authored, weighed: Sequence[Want]) -> Iterator[str]:
    """Where the author's word stands alone: the model knows the setting and sees nothing happen."""
    for one in own.followed:
        for want in chosen_from(weighed, one.told):
            if all(one.change.effects.get(phase) == 0 for phase in want.phases):
                yield f"your advice for {feel(want.complaint)} stands; the chassis model sees no effect of it there"


def _later(own: Authored, sheet: Sheet) -> Iterator[str]:
    for one in own.later:
        yield f"if that is not enough, the next to try, as you advise: {moved(sheet, one.change)}"
