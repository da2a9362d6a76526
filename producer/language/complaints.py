"""What is wrong with a viewer's car: tight or loose, where, how much, on which tyres, with which pedal.

What is fine, cured or denied is no complaint; neither is what a change would do.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import cast

from producer.language.complaint_words import STOPS, sign
from producer.language.message_row import Piece
from producer.language.tokens import listed
from producer.model.message import Felt, Pedal, Tyres
from producer.model.words import HowMuch, Phase

# A bare "in" or "off" after a complaint is the part of the corner, unless one of these follows.
_OBJECTS = listed(
    "the my a an this that traffic there it me all your any some case general here lap laps practice qualifying "
    "races "
    "race sim game cars pit order line fact track dirty clean draft turn turns both these those"
)
_RACING = listed("race races finish wide win won lead line photo pack")
_RACES = listed("race races racing finish battle pack field fight finishes")
_BOTH = frozenset({"and", "or", "/", "&", "n", "plus"})
# What may stand between a denial and what is denied.
_LOOK_BACK = 5
_MUCH: tuple[tuple[str, HowMuch], ...] = (("little", "little"), ("very", "very"))


@dataclass(slots=True)
class _Feel:
    """A complaint being gathered; `sign` 0 is something that is fine and only takes its part of the corner."""

    sign: int
    at: int
    start: int
    end: int
    phases: list[tuple[int, str]] = field(default_factory=list)
    pedals: list[tuple[int, Pedal | None, str]] = field(default_factory=list)


def complaints(pieces: list[Piece], thankful: bool) -> list[Felt]:
    """The complaints of a message in order. `thankful`: the message thanks, so what was wrong has been cured."""
    said = _placed(pieces, _said(pieces))
    found: list[Felt] = []
    for one in said:
        if not one.sign or _unmeant(pieces, one.at, thankful):
            continue
        for phase in _phases(pieces, one):
            felt = _felt(pieces, one, phase)
            if (felt.feel, felt.where) not in {(x.feel, x.where) for x in found}:
                found.append(felt)
    return _without_echoes(found)


def _without_echoes(found: list[Felt]) -> list[Felt]:
    """Without a second word for the same thing that says no place ("loose off, just so loose")."""
    placed = {one.feel for one in found if one.where}
    echoes = {one.feel: one.how_much for one in found if not one.where and one.how_much != "plain"}
    return [
        replace(one, how_much=echoes.get(one.feel, "plain")) if one.where and one.how_much == "plain" else one
        for one in found
        if one.where or one.feel not in placed
    ]


def _felt(pieces: list[Piece], one: _Feel, phase: str | None) -> Felt:
    pedal = next((pedal for _, pedal, where in one.pedals if where == phase and pedal), None)
    places = [at for at, _ in one.phases] + [at for at, *_ in one.pedals]
    ends, starts = [pieces[at].end for at in places], [pieces[at].start for at in places]
    return Felt(
        "tight" if one.sign > 0 else "loose", cast("Phase | None", phase), _how_much(pieces, one),
        _tyres(pieces, one.at), pedal, min([one.start, *starts]), max([one.end, *ends]),
    )  # fmt: skip


def _said(pieces: list[Piece]) -> list[_Feel]:
    """Every word for a complaint, and every "fine", in order."""
    found: list[_Feel] = []
    subject, since = "", 0
    for at, one in enumerate(pieces):
        if one.kind in {"rear", "front"}:
            subject, since = one.kind, at
        elif one.word in STOPS or (one.kind == "pronoun" and at - since > 1) or at - since > 9:
            subject = ""
        polarity, phase = sign(pieces, at, subject)
        if polarity is None:
            continue
        feel = _Feel(polarity, at, pieces[since].start if subject else one.start, one.end)
        if phase:
            feel.phases.append((at, phase))
        found.append(feel)
    return found


def _unmeant(pieces: list[Piece], at: int, thankful: bool) -> bool:
    """Whether a complaint is denied, cured, past, or what a change would bring."""
    if pieces[at].kind in {"turn", "lacks", "wish"}:
        return thankful and _before(pieces, at, "past")
    if _of_the_race(pieces, at):
        return True
    if _cured(pieces, at) or _denied(pieces, at) or _another_s(pieces, at):
        return True
    if _before(pieces, at, "past") and (thankful or _used_to(pieces, at)):
        return True
    wondered = any(one.word in {"why", "reason"} for one in pieces[max(0, at - 9) : at])
    return (not wondered and _before(pieces, at, "would", 4)) or _would_make(pieces, at)


def _of_the_race(pieces: list[Piece], at: int) -> bool:
    """As in "3 wide with 2 to go, so tight, best race of the year": tight, but no car."""
    if _RACING.isdisjoint(one.word for one in pieces) or any(one.kind in {"phase", "pedal", "tyres"} for one in pieces):
        return False
    if any(one.word in _RACES for one in pieces[max(0, at - 5) : at]):
        return True  # "that finish was so tight"
    before = next((one for one in reversed(pieces[:at]) if one.kind not in {"very", "little", "word"}), None)
    if at + 1 < len(pieces) and _phase(pieces, at + 1) is not None:
        return False  # "tight in and loose out, we race on Friday"
    return pieces[at].kind == "feel" and (before is None or before.kind == "sep")


def _another_s(pieces: list[Piece], at: int) -> bool:
    """As in "he got loose and took out half the field"."""
    for one in reversed(pieces[max(0, at - 4) : at]):
        if one.kind in {"pronoun", "rear", "front"} or one.word in STOPS:
            return one.word in {"he", "they"}
        if one.word in {"he", "they", "guy", "leader", "someone", "somebody", "dude"}:
            return True
    return False


def _would_make(pieces: list[Piece], at: int) -> bool:
    """As in "does more wedge make it tight?", "without making it loose", "what makes a car loose?"."""
    asked = [one.word for one in pieces[max(0, at - 6) : at]]
    if pieces[at].word in {"tighter", "looser"} and not {"does", "do", "will", "would"}.isdisjoint(asked):
        return True  # "does it get tighter as the tyres wear?"
    makes = next((back for back in range(at - 1, max(-1, at - 5), -1) if pieces[back].kind == "makes"), None)
    if makes is None:
        near = range(max(0, at - 4), at)
        # "I can't touch the throttle without it going sideways" complains.
        return any(
            pieces[back].word == "without" and not any(one.kind == "neg" for one in pieces[max(0, back - 6) : back])
            for back in near
        )
    before = [one.word for one in pieces[max(0, makes - 9) : makes]]
    if "without" in before[-2:] or "a" in [one.word for one in pieces[makes:at]]:
        return True
    return "why" not in before and not {"does", "do", "would", "will", "can", "could", "did"}.isdisjoint(before)


def _used_to(pieces: list[Piece], at: int) -> bool:
    before = pieces[max(0, at - _LOOK_BACK) : at]
    better = any(one.kind == "fine" for one in pieces[at + 1 : at + 12])
    past = [one for one in before if one.kind == "past"]
    later = [one.word for one in pieces[at + 1 :]]
    if past and "now" in later and any(one.kind == "feel" for one in pieces[at + 1 + later.index("now") :]):
        return True  # "I was tight, and now I'm loose"
    return any(one.word == "to" for one in past) or (bool(past) and better)


def _before(pieces: list[Piece], at: int, kind: str, reach: int = _LOOK_BACK) -> bool:
    for back in range(at - 1, max(-1, at - 1 - reach), -1):
        if pieces[back].kind == kind:
            return True
        if pieces[back].kind == "feel" or pieces[back].word in STOPS:
            return False
    return False


def _denied(pieces: list[Piece], at: int) -> bool:
    """As in "not loose", "no push"; not "can't stop it pushing", not "it isn't loose, it's tight"."""
    for back in range(at - 1, max(-1, at - 1 - _LOOK_BACK), -1):
        one = pieces[back]
        if one.kind == "neg":
            return one.word not in {"hard", "trouble", "struggles", "struggling", "fighting"}
        if one.kind in {"sep", "pronoun", "feel", "wish", "slip", "rear", "front", "phase", "pedal"} and (
            one.word not in {"and", "or", "/"}
        ):
            return False
    return False


def _cured(pieces: list[Piece], at: int) -> bool:
    """As in "fixed my push", "the push is gone"; not "didn't fix my push"."""
    for back in range(at - 1, max(-1, at - 1 - _LOOK_BACK), -1):
        one = pieces[back]
        if one.kind == "cure":
            behind = pieces[max(0, back - 3) : back]
            return not any(x.kind == "neg" or x.word in {"nothing", "hasn't", "what"} for x in behind)
        if one.kind in {"feel", "sep"}:
            break
    for one in pieces[at + 1 : at + 7]:
        if one.kind == "feel" or one.word in STOPS:
            return False
        if one.kind == "cure" or one.word in {"anymore", "cured", "history"}:
            return one.kind == "cure"
    return False


def _placed(pieces: list[Piece], said: list[_Feel]) -> list[_Feel]:
    """Give every part of the corner and every pedal to the complaint that it belongs to."""
    for at, one in enumerate(pieces):
        phase = _phase(pieces, at)
        if phase is None or not said:
            continue
        feel = _owner(pieces, said, at)
        if one.kind == "pedal":
            pedal, where = cast("tuple[Pedal | None, str]", one.data)
            feel.pedals.append((at, pedal, where))
        else:
            feel.phases.append((at, phase))
    return said


def _phase(pieces: list[Piece], at: int) -> str | None:
    one = pieces[at]
    if one.kind == "phase":
        return str(one.data)
    if one.kind == "pedal":
        return cast("tuple[str, str]", one.data)[1]
    if one.word in {"in", "off", "out"} and one.kind == "word" and at:
        before, after = pieces[at - 1], pieces[at + 1] if at + 1 < len(pieces) else None
        joined = before.word in {"and", "or", "/"} and at > 1 and pieces[at - 2].word in {"in", "off", "out"}
        if not (before.kind in {"feel", "lacks", "fine", "after", "little", "very"} or joined):
            return None
        if before.kind in {"little", "very"} and (at < 2 or pieces[at - 2].kind != "feel"):
            return None
        if after is None or (after.word not in _OBJECTS and after.kind not in {"phase", "rear", "front"}):
            return "entry" if one.word == "in" else "exit"
    return None


def _owner(pieces: list[Piece], said: list[_Feel], at: int) -> _Feel:
    """The complaint before a part of the corner or the one after it, whichever shares its clause."""
    before = next((one for one in reversed(said) if one.at <= at), None)
    after = next((one for one in said if one.at > at), None)
    if before is None or after is None:
        return before or after or said[0]
    since, until = _joints(pieces, before.at, at), _joints(pieces, at, after.at)
    if since == until:
        taken = bool(before.phases) and min(place for place, _ in before.phases) < before.at
        return after if taken or (since and _stop(pieces, before.at, at)) else before
    return before if since < until else after


def _joints(pieces: list[Piece], first: int, last: int) -> int:
    """How firmly two places are parted: a stop counts more than a comma or "and"."""
    between = pieces[first + 1 : last]
    return sum(3 if one.word in STOPS else 1 for one in between if one.kind == "sep" or one.word in STOPS)


def _stop(pieces: list[Piece], first: int, last: int) -> bool:
    return any(one.word in STOPS for one in pieces[first + 1 : last])


def _phases(pieces: list[Piece], one: _Feel) -> Iterator[str | None]:
    """The parts of the corner of a complaint: words before pedals; both of "in and off"."""
    if not one.phases:
        yield one.pedals[0][2] if one.pedals else None
        return
    after = [(at, phase) for at, phase in one.phases if at >= one.at]
    chosen = after or one.phases[-1:]
    yield chosen[0][1]
    for (last, _), (at, phase) in pairwise(chosen):
        if phase != chosen[0][1] and at - last <= 3 and any(x.word in _BOTH for x in pieces[last + 1 : at]):
            yield phase


def _how_much(pieces: list[Piece], one: _Feel) -> HowMuch:
    """What stands closest before the complaint, else after it up to the next one."""
    for back in range(one.at - 1, max(-1, one.at - 6), -1):
        piece = pieces[back]
        for kind, much in _MUCH:
            if piece.kind == kind:
                return much
        if piece.kind in {"feel", "sep", "fine", "tyres", "neg"} or piece.kind == "phase":
            break
    begin = max([one.at, *(at for at, _ in one.phases), *(at for at, *_ in one.pedals)])
    for place in (one.at, begin):
        for at in range(place + 1, min(len(pieces), place + 5)):
            piece = pieces[at]
            if piece.kind in {"feel", "sep"}:
                break
            if piece.kind == "after":
                return "very"
            if piece.kind in {"little", "very"} and not _opens(pieces, at):
                return "little" if piece.kind == "little" else "very"
    return "plain"


def _opens(pieces: list[Piece], at: int) -> bool:
    """Whether a degree belongs to what follows: "loose off, a bit tight in"."""
    return any(one.kind in {"feel", "fine", "slip"} for one in pieces[at + 1 : at + 3]) or pieces[at].word in {
        "so", "really", "way", "real", "too",
    }  # fmt: skip


def _tyres(pieces: list[Piece], at: int) -> Tyres | None:
    """The tyres said nearest to a complaint."""
    said = [(abs(place - at), place, one) for place, one in enumerate(pieces) if one.kind == "tyres"]
    return cast("Tyres", min(said)[2].data) if said else None
