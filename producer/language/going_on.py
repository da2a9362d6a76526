"""A stretch given to the setting it goes on with: its movements and figures, another order, another setup's value."""

from __future__ import annotations

from producer.language.figure_roles import role_of
from producer.language.items import Item, number_of
from producer.language.movements import Move, moves, signed, without_others
from producer.language.settling import Draft
from producer.language.so_far import SoFar
from producer.language.tokens import listed

_ADDING = frozenset({"and", ",", "but", "then", ";"})
# What another value of a setting may be for.
_OTHERS = listed("run one runs setup race qualifying other second")
# What may stand before the figures of a stretch that goes on with the setting before it.
_GOES_ON = frozenset({"from", "to", "move", "number", "by", "at", "put", "take", "shift"})


def fill(draft: Draft, part: list[Item], state: SoFar, bare: bool) -> None:
    """Give the draft the movements and numbers of a stretch."""
    vocabulary = state.vocabulary
    address = draft.addresses[0] if draft.addresses else ""
    parameter = address.split(".")[0]
    heads = vocabulary.heads.get(parameter, frozenset())
    differs = address.endswith("_split")  # "+25" of a split is a movement, although it may be negative
    part = signed(without_others(part, heads), None if differs else vocabulary.grids.get(address))
    said = moves(part, heads, vocabulary.role(parameter) if parameter else "", bare)
    draft.moves += [one for one in said if not _denied(part, one)]
    draft.denied = draft.denied or any(_denied(part, one) for one in said)
    grid = vocabulary.grids.get(address)
    unit = vocabulary.garage.unit_of(address) if address else ""
    for at, one in enumerate(part):
        if one.kind != "number" or number_of(one).foreign:
            continue
        number = number_of(one)
        if bare and not number.unit and not (draft.target and at and part[at - 1].kind in {"from", "to", "by"}):
            continue
        role = role_of(part, at, bool(draft.moves) or "from" in draft.slots, grid, unit)
        if role:
            draft.slots.setdefault(role, []).append((number, one))


def _denied(part: list[Item], move: Move) -> bool:
    """As in "did not raise", "without the extra half percent"."""
    before = [one for one in part if one.end <= move.start]
    return any(one.kind == "neg" for one in before[-3:])


def go_on(stretch: list[Item], joint: str, state: SoFar) -> None:
    """A stretch without a setting: more about the one before it, or about the subject."""
    last = state.drafts[-1] if state.drafts else None
    first = next((one for one in stretch if one.kind not in {"word", "pronoun", "would"}), None)
    leads = first is not None and (first.kind in _GOES_ON) and not (first.kind == "number" and number_of(first).foreign)
    if last is not None and state.pending is not None and last.condition is not state.pending and leads:
        _again(last, stretch, state)
        return
    commanded = len(stretch) > 1 and stretch[0].kind in {"move", "take", "put"} and stretch[1].kind == "pronoun"
    if commanded and last is not None and last.target is not None and "value" in last.slots and not last.moves:
        _again(last, stretch, state)  # "the bias is 62; raise it to 63 if it is loose on entry"
        return
    if last is not None and last.target is not None and joint == "so" and _reached(stretch, last):
        return
    if last is not None and joint in _ADDING and _elsewhere(last, stretch, state):
        return
    if last is not None and last.target is not None:
        several = joint == "and" and len(last.addresses) > 1 and "value" in last.slots
        if (joint == "or" or several) and first is not None and first.kind == "number":
            last.doubtful = True  # "the rears are 225 and 300": which is which stays open
        elif leads and (last.empty() or _figures(stretch)) and sum(x.kind == "word" for x in stretch) <= 6:
            end = last.end
            fill(last, stretch, state, bare=not last.empty())
            ends = [one.end for one in stretch if one.kind in {"number", "move"}]
            last.end = max([end, *ends])
            last.condition = last.condition or state.pending
        return
    if state.subject and not state.others:
        if last is not None and first is not None and first.kind in {"by", "from"} and not last.slots:
            fill(last, stretch, state, bare=True)
        else:
            _of_subject(stretch, state)


def _again(last: Draft, stretch: list[Item], state: SoFar) -> None:
    """A second condition about the setting before it: "... and if it is loose off, raise it"."""
    begin = next(one.start for one in stretch if one.kind in _GOES_ON)
    ends = [one.end for one in stretch if one.kind in {"number", "move", "pronoun"}]
    draft = Draft(last.target, last.addresses, stretch, begin, max([begin + 1, *ends]))
    fill(draft, stretch, state, bare=True)
    draft.condition = state.pending
    used = [one for one in stretch if one.kind == "number" and not number_of(one).foreign]
    if draft.empty() and len(used) == 1:
        draft.slots["value"] = [(number_of(used[0]), used[0])]  # "if it is loose off, use the 3.80"
    if not draft.empty():
        state.drafts.append(draft)


def _elsewhere(last: Draft, stretch: list[Item], state: SoFar) -> bool:
    """As in "... 4.00 on the short run and 3.90 on the long one": the same setting for another setup."""
    if last.target is None or set(last.slots) != {"value"} or len(last.addresses) != 1 or last.moves:
        return False
    counted = [one for one in stretch if one.kind == "number"]
    words = [one.word for one in stretch if one.kind != "number"]
    if len(counted) != 1 or number_of(counted[0]).foreign or len(words) > 6 or _OTHERS.isdisjoint(words):
        return False
    if any(one.kind in {"set", "move", "take", "put"} for one in stretch) or {"on", "for", "in"}.isdisjoint(words):
        return False
    grid = state.vocabulary.grids[last.addresses[0]]
    if not any(grid.inside(one) and grid.index(one) is not None for one in number_of(counted[0]).candidates(":1")):
        return False
    draft = Draft(last.target, last.addresses, stretch, counted[0].start, stretch[-1].end, occasion=True)
    draft.slots["value"] = [(number_of(counted[0]), counted[0])]
    state.drafts.append(draft)
    return True


def _reached(stretch: list[Item], last: Draft) -> bool:
    """As in "move it forward a percent, so sixty three": the figure alone is where the movement ends."""
    counted = [one for one in stretch if one.kind == "number" and not number_of(one).foreign]
    others = [one for one in stretch if one.kind != "number" and one.word not in {"that", "it", "'s", "now", "say"}]
    if len(counted) != 1 or others or not last.moves or {"to", "value"} & set(last.slots) or number_of(counted[0]).more:
        return False
    last.slots["to"] = [(number_of(counted[0]), counted[0])]
    last.end = max(last.end, counted[0].end)
    return True


def _figures(stretch: list[Item]) -> bool:
    """Whether a stretch has a figure that needs no name: after from, to or by, or with its unit."""
    for at, one in enumerate(stretch):
        if one.kind == "number" and not number_of(one).foreign:
            before = stretch[at - 1].kind if at else ""
            if number_of(one).unit or before in {"from", "to", "by"}:
                return True
    return False


def _of_subject(stretch: list[Item], state: SoFar) -> None:
    begin = min((one.start for one in stretch if one.kind in {"number", "move", "take", "put", "shift"}), default=0)
    ends = [one.end for one in stretch if one.kind in {"number", "move", "out", "in", "back"}]
    if not ends:
        return
    draft = Draft(None, state.subject, stretch, begin, max(ends))
    fill(draft, stretch, state, bare=True)
    if len(state.subject) > 1:
        draft.slots.clear()
    draft.condition = state.pending
    if not draft.empty():
        state.drafts.append(draft)
