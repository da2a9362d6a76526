"""Why a complaint stays unanswered: the hurdle that nothing got over, and which complaints pull against each other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from producer.handling.candidates import Candidate
from producer.handling.rules import rule
from producer.handling.saying import feel, listed
from producer.handling.wants import Want
from producer.model.advice import Plan, Unanswered
from producer.model.library import Case
from producer.model.sheet import Sheet
from producer.model.words import Complaint

_SAYS = {
    "silent": "no rule speaks of it",
    "limits": "nothing that helps has a click left inside the limits",
    "unsized": "nobody knows how much the settings do that the rules name; the guide lists them",
    "doubted": "what should help does not in the chassis model's middle car",
    "room": "nothing more fits beside the rest; drive that first, then ask again",
}

_UNASKED = "without sizes a rule alone is not enough; the guide lists what the rules name"


def unanswered(case: Case, sheet: Sheet, at: int, wants: Sequence[Want], ruled: Sequence[Candidate]) -> Unanswered:
    """Why the complaint at that place got nothing, from every movement inside the limits that a rule speaks for."""
    want = wants[at]
    opposite = _opposite(want, wants)
    if not want.phases:
        return Unanswered(want.complaint, "against", opposite)
    spoken = [one for one in ruled if want.spoken(one.change.rule)]
    if not spoken:
        return Unanswered(want.complaint, "limits" if _rules_speak(case, sheet, want) else "silent")
    sized = [one for one in spoken if _sized(one, want)]
    if not sized:
        return Unanswered(want.complaint, "unsized")
    helping = [one for one in sized if one.helps >> at & 1]
    if not helping:
        return Unanswered(want.complaint, "doubted")
    if any(not one.feeds for one in helping):
        return Unanswered(want.complaint, "room")
    fed = _bits(helping)
    return Unanswered(want.complaint, "against", tuple(wants[bit].complaint for bit in fed))


def reasons(plan: Plan) -> Iterator[str]:
    """One sentence for each complaint that is open, and only one for two that pull against each other."""
    pairs: set[frozenset[object]] = set()
    for one in plan.unanswered:
        if one.why != "against":
            says = _UNASKED if one.why == "unsized" and plan.cars == 0 else _SAYS[one.why]
            yield f"{feel(one.complaint)}: {says}"
            continue
        pair = frozenset((one.complaint, *one.against))
        if pair not in pairs:
            pairs.add(pair)
            others = listed([feel(other) for other in one.against])
            yield f"{feel(one.complaint)} and {others} pull against each other: what helps the one feeds the other"


def _opposite(want: Want, wants: Sequence[Want]) -> tuple[Complaint, ...]:
    return tuple(one.complaint for one in wants if one.cure != want.cure)


def _bits(helping: Sequence[Candidate]) -> list[int]:
    """The complaints that most of them feed, each of them feeding at least one of these."""
    left, found = [one.feeds for one in helping], []
    while left:
        counts = {bit: sum(one >> bit & 1 for one in left) for bit in range(max(left).bit_length())}
        most = max(counts, key=lambda bit: counts[bit])
        found.append(most)
        left = [one for one in left if not one >> most & 1]
    return sorted(found)


def _sized(one: Candidate, want: Want) -> bool:
    sizes = [one.change.effects.get(phase) for phase in want.spoken(one.change.rule)]
    return all(size is not None for size in sizes)


def _rules_speak(case: Case, sheet: Sheet, want: Want) -> bool:
    rows = (rule(sheet.garage, case.track, address) for address in sheet.values)
    return any(row and (want.spoken(row.effects("raise")) or want.spoken(row.effects("lower"))) for row in rows)
