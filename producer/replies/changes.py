"""Which changes a reply offers for the feels of a message: what is advised first, then what else there is to try.

Of that the author's words come first, then the rule table's single clicks.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import zip_longest
from typing import NamedTuple

from producer.handling.advice import advise
from producer.handling.advised import author_changes
from producer.handling.candidates import ruled
from producer.handling.rules import cure, feeds_by, rule
from producer.handling.wants import Want, feeding, wants
from producer.handling.wording import the
from producer.model.advice import Plan
from producer.model.garage import Garage
from producer.model.guide import Change, Guide
from producer.model.library import Case
from producer.model.opinion import Opinions
from producer.model.request import Request
from producer.model.sheet import Sheet
from producer.model.track import Track
from producer.model.words import PHASES, Complaint, Direction, Effect, Phase

MOST = 3


@dataclass(frozen=True, slots=True)
class Offered:
    """What is offered for one feel. `trouble` says why nothing is: `against` where all that helps feeds another of
    the feels, `later` where others come first, `nothing` where nothing is left inside the limits; "" otherwise."""

    complaint: Complaint
    changes: tuple[Change, ...]
    trouble: str = ""


def offered(
    case: Case,
    sheet: Sheet,
    guide: Guide,
    request: Request,
    opinions: Opinions | None = None,
    named: Collection[str] = (),
) -> tuple[Offered, ...]:
    """At most three changes in all, taken in turn from what helps each feel; each setting once.

    Of what helps, the settings that the message asks about itself (`named`) come first, one or two clicks of them
    where nothing else is advised of them.

    A change that feeds another of the feels, by rule or because the chassis model is sure of it, is left out. Where
    that leaves nothing at all, the first feel is answered by itself.
    """
    feels = tuple(dict.fromkeys(request.feels))
    plan = advise(case, sheet, feels, opinions, tyres=request.tyres, device=request.device)
    every = {one: _helping(_Asked(case, sheet, guide, request, opinions, named), one, plan) for one in feels}
    every = {one: tuple(sorted(found, key=lambda x: x.parameter not in named)) for one, found in every.items()}
    weighed = wants(feels, {})
    fine = {one: tuple(x for x in every[one] if not _feeds_another(x, one, weighed)) for one in feels}
    if feels and not any(fine.values()):
        fine[feels[0]] = every[feels[0]]
    taken = _in_turn(fine)
    return tuple(Offered(one, tuple(taken[one]), _trouble(one, every, fine, taken)) for one in feels)


def matters(case: Case, sheet: Sheet, request: Request) -> bool:
    """Whether new or worn tyres make a difference to the author's advice for these feels."""
    advised = (one for feel in request.feels for one in author_changes(case, sheet, feel, device=request.device))
    return any(one.tyres for one in advised)


def directions(garage: Garage, track: Track | None, request: Request, most: int = 2) -> tuple[str, ...]:
    """What the rules say for the feels where there is no setup to take figures from: `raise the right front spring`.

    From each feel in turn, settings whose rule speaks of the fewest phases first, then the garage's order. A feel
    without a phase has none.
    """
    helping = [_ruled(garage, track, feel, request.feels) for feel in request.feels]
    in_turn = (one for row in zip_longest(*helping) for one in row if one is not None)
    return tuple(dict.fromkeys(in_turn))[:most]


class _Asked(NamedTuple):
    """A message and the setup that answers it."""

    case: Case
    sheet: Sheet
    guide: Guide
    request: Request
    opinions: Opinions | None
    named: Collection[str]


def _helping(asked: _Asked, feel: Complaint, plan: Plan) -> tuple[Change, ...]:
    """What is advised for this feel, then the author's other words, then what the guide offers; a setting once."""
    request = asked.request
    advised = (one.change for one in plan.steps if feel in one.answers)
    own = author_changes(
        asked.case, asked.sheet, feel, tyres=request.tyres, device=request.device, opinions=asked.opinions
    )
    phases = (feel.where,) if feel.where else PHASES
    rows = [row for row in asked.guide.rows if row.feels == feel.feel and row.where in phases]
    single = (one for row in rows for one in row.changes if one.voice == "rule")
    found: dict[str, Change] = {}
    for one in (*advised, *own, *_of_named(asked, feel), *single):
        found.setdefault(one.parameter, one)
    if feel.where is None:  # whatever helps in most parts of the corner, as nobody said in which
        return tuple(sorted(found.values(), key=lambda one: -_helped(one, feel)))
    return tuple(found.values())


def _of_named(asked: _Asked, feel: Complaint) -> Iterator[Change]:
    """The settings asked about, by rule and with the chassis model's word for it: a click, two where it is `very`."""
    if not asked.named:
        return
    weighed = wants([feel], asked.opinions.half_percent if asked.opinions else {})
    wanted = 2 if feel.how_much == "very" else 1
    found: dict[str, Change] = {}
    for one in ruled(asked.case, asked.sheet, weighed, asked.opinions):
        if one.change.parameter in asked.named and one.lawful and abs(one.change.clicks) <= wanted:
            found[one.change.parameter] = one.change
    yield from found.values()


def _fit(change: Change, request: Request) -> int:
    """0 for advice written for just these tyres or this device, 1 for any, 2 for what the viewer did not say."""
    written = ((change.tyres, request.tyres), (change.device, request.device))
    if any(one is not None and said is None for one, said in written):
        return 2
    return 0 if any(one is not None and one == said for one, said in written) else 1


def _helped(change: Change, feel: Complaint) -> int:
    return sum(change.rule[phase] == cure(feel.feel) for phase in PHASES)


def _feeds_another(change: Change, own: Complaint, every: Iterable[Want]) -> bool:
    return bool(feeding(change, (one for one in every if one.complaint != own)))


def _in_turn(fine: dict[Complaint, tuple[Change, ...]]) -> dict[Complaint, list[Change]]:
    """One for each feel as long as there is room, then the author's in turn, then the rule table's."""
    taken: dict[Complaint, list[Change]] = {one: [] for one in fine}
    own = {feel: tuple(one for one in changes if one.voice == "author") for feel, changes in fine.items()}
    for pool in (fine, *[own] * MOST, *[fine] * MOST):
        for feel, changes in pool.items():
            used = [one.parameter for found in taken.values() for one in found]
            free = next((one for one in changes if one.parameter not in used), None)
            if free is not None and len(used) < MOST:
                taken[feel].append(free)
    return taken


def _trouble(
    feel: Complaint,
    every: dict[Complaint, tuple[Change, ...]],
    fine: dict[Complaint, tuple[Change, ...]],
    taken: dict[Complaint, list[Change]],
) -> str:
    chosen = {(one.parameter, one.to) for changes in taken.values() for one in changes}
    if taken[feel] or any((one.parameter, one.to) in chosen for one in fine[feel]):
        return ""
    if fine[feel]:
        return "later"
    return "against" if every[feel] else "nothing"


def _ruled(garage: Garage, track: Track | None, feel: Complaint, feels: Sequence[Complaint]) -> list[str]:
    if feel.where is None:
        return []
    found: list[tuple[int, str]] = []
    for address in garage.settings:
        row = rule(garage, track, address)
        way = _way(row.effect(feel.where), feel) if row else None
        if row is None or way is None or _worsens(row.effects(way), feel, feels):
            continue
        found.append((len(row.speaks_of), f"{way} {the(garage, address)}"))
    return [text for _, text in sorted(found, key=lambda one: one[0])]


def _way(raising: Effect | None, feel: Complaint) -> Direction | None:
    if raising not in ("tighter", "looser"):
        return None
    return "raise" if raising == cure(feel.feel) else "lower"


def _worsens(effects: dict[Phase, Effect | None], own: Complaint, feels: Sequence[Complaint]) -> bool:
    return any(feeds_by(effects, other) for other in feels if other != own)
