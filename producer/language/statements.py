"""What each sentence states about settings, with the place of every figure and how firmly it is said.

A sentence is cut into stretches at commas, "and", "which" and the like. A stretch that names one setting gives its
numbers and movements to it; one that names several is cut into pairs in the order of the first pair; one that names
none goes on with the setting before it, or belongs to the `subject` (what a reason is for).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import pairwise

from producer.language.comparing import difference
from producer.language.feels import Condition, Effect, complaint, effect, question
from producer.language.going_on import fill, go_on
from producer.language.hedging import hedges
from producer.language.items import Item, items, mention_of, number_of
from producer.language.movements import just_one
from producer.language.settling import Draft, could_be, fitting, settled
from producer.language.so_far import SoFar, later_topic, names_other, note_topic, targets_of, with_figure_before
from producer.language.stretches import corrected, stretches, topics, with_conditions
from producer.language.terms import Vocabulary
from producer.language.tokens import Words, listed, sentences
from producer.language.unread import unread
from producer.model.claim import Claim
from producer.model.grid import Grid

# "Softer than the default at the left front" compares with no other setting.
_USUAL = listed("default defaults garage usual normal stock baseline before standard")
# Of such items a part is made that has no verb of its own.
_SAME_VERB = frozenset({"number", "set", "word", "by"})
# What stands after these was so before, or would be.
_REASONS = listed("because since unless or though although where while")


@dataclass(frozen=True, slots=True)
class Statement:
    """One claim and where its parts stand.

    `spans`: characters (start, end) of the figures by field (`value`, `to`, `frm`, `amount`), `moved` those of the
    movement. `hedges` say why it may not be meant as a fact about the setup (`producer.language.hedging`). `named` is
    False where the words name no setting and it is the subject's. `sentence`: the characters of its sentence. `whole`
    is False where the sentence says more of the car than was understood, so that an effect or a condition may be
    missing; the figures are as sure as ever.
    """

    claim: Claim
    spans: Mapping[str, tuple[int, int]]
    moved: tuple[int, int] | None
    hedges: frozenset[str]
    named: bool
    sentence: tuple[int, int]
    whole: bool = True


def statements(text: str, vocabulary: Vocabulary, subject: tuple[str, ...] = ()) -> list[Statement]:
    """Every statement of a text in order. `subject`: the addresses that a reason is for."""
    found: list[Statement] = []
    asked: Condition | None = None
    for sentence in sentences(text):
        if not (vocabulary.signals if subject else vocabulary.anchors).isdisjoint(sentence.text):
            found += _sentence(sentence, vocabulary, subject, text, asked)
            asked = None
        else:
            # "Tight off? RR spring +25." asks and then says what to do.
            asks = text[sentence.end[-1] : sentence.end[-1] + 1] == "?" and len(sentence) < 10
            asked = question(items(sentence, vocabulary)) if asks else None
    return found


def _sentence(
    sentence: Words, vocabulary: Vocabulary, subject: tuple[str, ...], text: str, asked: Condition | None
) -> list[Statement]:
    row = corrected(items(sentence, vocabulary))
    state = SoFar(vocabulary, subject, pending=asked)
    row = topics(row)
    state.others = names_other(row, state)
    state.later = later_topic(row, vocabulary)
    said = with_conditions(row)
    for stretch, joint in stretches(said):
        _read(stretch, joint, state, _rest(said, stretch))
    found: list[Statement] = []
    around = (sentence.start[0], sentence.end[-1])
    for draft in state.drafts:
        why = hedges(said, draft, text)
        for claim, spans, moved in settled(draft, vocabulary, text):
            named = draft.target is not None
            found.append(Statement(claim, spans, moved, why, named, around))
    missing = unread(said, [one.claim for one in found]) if found else ()
    return [replace(one, whole=not lacks) if lacks else one for one, lacks in zip(found, missing, strict=True)]


def _rest(row: list[Item], stretch: list[Item]) -> list[Item]:
    return [one for one in row if one.start >= stretch[-1].end]


def _read(stretch: list[Item], joint: str, state: SoFar, rest: list[Item]) -> None:
    if stretch[0].kind == "condition":
        _condition(stretch[0], state, rest)
        return
    note_topic(stretch, state)
    count = len(state.drafts)
    stretch = with_figure_before(stretch, state)
    if not stretch:
        return
    if joint != "so" and not (state.because and joint == ","):
        state.cured = None
    targets = targets_of(stretch, state)
    if not targets:
        go_on(stretch, joint, state)
    elif not _compared(stretch, targets, state):
        for part, target in _pairs(stretch, targets, state):
            _draft(part, target, state)
    _attach_effect(stretch, joint, state, count, bool(targets))


def _condition(item: Item, state: SoFar, rest: list[Item]) -> None:
    condition = item.data
    if not isinstance(condition, Condition):
        return
    acts = any(one.kind in {"set", "move", "take", "put", "shift", "to"} or one.word in {"use", "run"} for one in rest)
    if acts or not state.drafts:
        state.pending = condition
    elif state.drafts[-1].condition is None:
        state.drafts[-1].condition = condition


def _pairs(stretch: list[Item], targets: list[int], state: SoFar) -> list[tuple[list[Item], int]]:
    """The stretch cut so that each part has one target (its place in the part is given)."""
    if len(targets) == 1:
        return [(stretch, targets[0])]
    first = next((at for at, one in enumerate(stretch) if one.kind == "number"), targets[0])
    if state.number_first is None:
        state.number_first = first < targets[0]
    if state.number_first:
        last = next((at for at in range(targets[-1] + 1, len(stretch)) if stretch[at].kind == "number"), len(stretch))
        begun = any(stretch[at].kind == "number" for at in range(targets[-2] + 1, targets[-1]))
        # "... eight on the right front, five and five on the rears": what follows the last pair begins another.
        cuts = [0, *(at + 1 for at in targets[:-1]), last if begun else len(stretch)]
    else:
        cuts = [0, *(_start_of(stretch, at, before) for before, at in pairwise(targets))]
        cuts.append(len(stretch))
    return [
        (stretch[begin:end], next(at for at in targets if begin <= at < end) - begin) for begin, end in pairwise(cuts)
    ]


def _start_of(stretch: list[Item], target: int, before: int) -> int:
    """Where the part of a target starts: at the verb that belongs to it, if one stands after the last number."""
    numbered = [at for at in range(before + 1, target) if stretch[at].kind == "number"]
    begin = numbered[-1] + 1 if numbered else before + 1
    verbs = [at for at in range(begin, target) if stretch[at].kind in {"move", "take", "put", "shift"}]
    return verbs[0] if verbs else target


def _compared(stretch: list[Item], targets: list[int], state: SoFar) -> bool:
    """Read "the right front is 25 pounds stiffer than the left": True where the stretch compares two settings."""
    than = next((at for at, one in enumerate(stretch) if one.kind == "than"), None)
    if than is None or not targets or targets[-1] < than:
        return False
    between = stretch[than + 1 : next(at for at in targets if at > than)]
    if any(one.word in _USUAL for one in between):
        return False
    if len(targets) > 1 and targets[0] < than:
        draft = difference(stretch, targets[0], targets[-1], state.vocabulary, state.topic, state.axle)
        if draft is not None:
            state.drafts.append(draft)
    return True


def _draft(part: list[Item], target: int, state: SoFar) -> None:
    mention = mention_of(part[target])
    numbers = [number_of(one) for one in part if one.kind == "number" and not number_of(one).foreign]
    if mention.parameter and not mention.addresses and state.corner and not mention.split:
        addresses = state.vocabulary.resolve(mention.parameter, state.corner)
    else:
        addresses = fitting(mention, numbers, part, state.vocabulary, state.subject, state.topic, state.axle)
    if mention.parts and not mention.parameter:
        if addresses:
            state.implied = addresses[0].split(".")[0]
        elif numbers and not state.topic:
            # "both fronts +1 psi, RR -1", "a click on the left front and two on the right front compression"
            fits = (x for x in (state.implied, state.later) if could_be(numbers, x, mention.parts, state.vocabulary))
            addresses = state.vocabulary.resolve(next(fits, ""), mention.parts)
    if any(one.word == "between" for one in part[:target]):
        addresses = _between(addresses, state.vocabulary)
    begin = min((one.start for one in part if one.kind in {"number", "move", "take", "put", "set"}), default=0)
    ends = [one.end for one in part if one.kind in {"number", "set", "move", "out", "in"}]
    draft = Draft(mention, addresses, part, begin, max(ends))
    if _goes_along(draft, part, state):
        draft.moves += state.drafts[-1].moves
    fill(draft, part, state, bare=False)
    draft.condition = state.pending
    _same_way(draft, state)
    state.drafts.append(draft)
    if state.effect is not None:
        draft.effect, state.effect = state.effect[0], None
    elif state.cured is not None and (draft.moves or "to" in draft.slots):
        draft.effect, state.cured = state.cured, None


def _goes_along(draft: Draft, part: list[Item], state: SoFar) -> bool:
    """As in "I dropped the left rear by 25 and the right rear by 50": so much, and no verb of its own."""
    before = state.drafts[-1] if state.drafts else None
    if (
        before is None
        or "amount" not in before.slots
        or any(one.kind not in _SAME_VERB and one.word not in {"on", "in", "at"} for one in part)
    ):
        return False
    grid = state.vocabulary.grids.get(draft.addresses[0]) if draft.addresses else None
    return any(
        one.kind == "number"
        and (number_of(one).unit in {"click", "step"} or just_one(one) or _only_amount(part, at, grid))
        for at, one in enumerate(part)
    )


def _only_amount(part: list[Item], at: int, grid: Grid | None) -> bool:
    """Whether the number at `at` can be no figure of the setting, only a change of it: "by 25", "a half inch"."""
    if at and part[at - 1].kind == "by":
        return True
    readings = number_of(part[at]).readings
    return (
        grid is not None
        and not number_of(part[at]).foreign
        and all(not grid.inside(one) and 0 < one <= grid.high - grid.low for one in readings)
    )


def _same_way(draft: Draft, state: SoFar) -> None:
    """As in "raise the left front to 8 and the right front to 9": the verb holds for both."""
    before = state.drafts[-1] if state.drafts else None
    if before is None or draft.moves or set(draft.slots) != {"to"} or "to" not in before.slots:
        return
    if [one.split(".")[0] for one in draft.addresses] == [one.split(".")[0] for one in before.addresses]:
        draft.moves += before.moves


def _between(addresses: tuple[str, ...], vocabulary: Vocabulary) -> tuple[str, ...]:
    """As in "75 pounds between the rear springs": their split; the addresses as they are where they are no pair."""
    if len(addresses) != 2:
        return addresses
    garage = vocabulary.garage
    return tuple(split for split, corners in garage.splits.items() if set(corners) == set(addresses))


def _attach_complaint(stretch: list[Item], joint: str, state: SoFar, named: bool) -> None:
    """ "It was loose off, so I ...", "... because it was loose off": the setting has cured it."""
    cured = complaint(stretch) if not named else None
    if cured is None or any(one.kind == "someone" for one in stretch):
        return
    if joint == "because" and state.drafts and state.drafts[-1].moves and state.drafts[-1].effect is None:
        state.drafts[-1].effect = cured
    elif not state.drafts:
        state.cured, state.because = cured, joint in {"because", "since"}


def _attach_effect(stretch: list[Item], joint: str, state: SoFar, count: int, named: bool) -> None:
    found = effect(stretch)
    if found is None and state.drafts and joint not in _REASONS:
        found = effect(stretch, after=True)
    if found is None:
        _attach_complaint(stretch, joint, state, named)
        return
    if any(one.kind == "someone" and one.end <= found.start for one in stretch):
        return
    if len(state.drafts) > count or (state.drafts and not named):
        draft = state.drafts[-1]
    else:
        if not named:
            state.effect = (found, len(state.drafts))
        return
    if draft.effect is None:
        draft.effect = found
    elif draft.effect.polarity != found.polarity:
        draft.mixed = True
    else:
        draft.effect = _both(draft.effect, found)


def _both(one: Effect, other: Effect) -> Effect:
    where = (*one.where, *(phase for phase in other.where if phase not in one.where))
    return Effect(one.polarity, where, one.start, other.end)
