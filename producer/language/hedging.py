"""How firmly a statement is meant: what makes it a condition, a wish, a try, or a saying about settings at large."""

from __future__ import annotations

import re
from collections.abc import Iterator

from producer.language.items import Item, number_of
from producer.language.settling import Draft
from producer.language.tokens import listed

_NEW_CLAUSE = re.compile(r"[,;]\s+(?:and|but|so)\s+(?:the|an?|my|i|we|this|that)\b", re.IGNORECASE)
_HEDGES = frozenset({"would", "past", "someone", "neg"})
_WORTH = listed("worth equals equal equivalent")
# Other occasions than the one the setup is for.
_OCCASION = re.compile(
    r"\b(?:at night|in the race|in practice|qualifying|green track|"
    r"(?:my|our|the) last (?:visit|time|year|week|season))\b",
    re.IGNORECASE,
)
_VAGUE = listed("around about roughly somewhere nearly almost")
# "Much stiffer and the tire complains": what would follow, said without a verb or as an order.
_SLIGHTLY = listed("a an the much any even little bit touch lot far and")
_AND_THEN = re.compile(r"\s+and\s+(?:the|it|you|i|we|my|your|that|this)\b", re.IGNORECASE)
_BEFORE = listed("but yet only just simply even")


def hedges(said: list[Item], draft: Draft, text: str) -> frozenset[str]:
    """Why a statement may not be a fact about the setup.

    `if`, `would`, `past`, `neg`, `than`, `someone`, `question`, `occasion` (said of another day), `vague` (about so
    much), `worth` (how much another thing is worth), `then` ("a step more and it pushes"; in an advice that is the
    advice) and `general`: a movement told as a rule ("raising it tightens the car"), which says nothing of this one.
    """
    found = {one.kind for one in said if one.kind in _HEDGES and _holds_for(one, draft, text)}
    found.update(_conditional(said, draft))
    found.update(one.kind for one in draft.row if one.kind in {"than", "someone"})
    found.update(_around(said, draft, text))
    if any(one.word in _WORTH for one in draft.row):
        found.add("worth")
    if draft.occasion:
        found.add("occasion")
    if draft.moves and _general(draft):
        found.add("general")
    return frozenset(found)


def _conditional(said: list[Item], draft: Draft) -> Iterator[str]:
    loose = next((one.start for one in said if one.kind == "if"), None)
    if (loose is not None and loose < draft.end) or draft.condition is not None:
        yield "if"
    elif any(one.kind == "if" for one in draft.row):
        yield "if"  # "take wedge out if you race alone"


def _around(said: list[Item], draft: Draft, text: str) -> Iterator[str]:
    if text[said[-1].end :].lstrip()[:1] == "?":
        yield "question"
    if _OCCASION.search(text, said[0].start, said[-1].end):
        yield "occasion"
    vague = [draft.row[at].word for at in range(len(draft.row) - 1) if draft.row[at + 1].kind == "number"]
    if not _VAGUE.isdisjoint(vague):
        yield "vague"
    if _AND_THEN.match(text, draft.row[-1].end) and _without_verb(said, draft, text):
        yield "then"


def _without_verb(said: list[Item], draft: Draft, text: str) -> bool:
    """Whether the stretch begins a sentence, or stands after a stop, and nobody does anything in it."""
    first = draft.row[0]
    before = text[said[0].start : first.start].rstrip()
    if (before and before[-1] not in ",;:") or not draft.moves or _with_another(draft.row):
        return False
    verb = next((at for at, one in enumerate(draft.row) if one.start == draft.moves[0].start), 0)
    return all(
        (one.kind == "number" and not number_of(one).foreign) or one.word in _SLIGHTLY for one in draft.row[:verb]
    )


def _with_another(row: list[Item]) -> bool:
    """As in "a step more than the default and the car waits", which is how it is; "lower than 51" is a limit."""
    after = next((row[at + 1] for at in range(len(row) - 1) if row[at].kind == "than"), None)
    return after is not None and after.kind != "number"


def _holds_for(one: Item, draft: Draft, text: str) -> bool:
    """Whether a hedge that was said reaches this statement."""
    if one.end > draft.end or _of_feel(one, draft):
        return False
    # "There is not much in it, and the cross is at 52": the new clause is no longer denied.
    return not (one.kind == "neg" and _NEW_CLAUSE.search(text, one.end, max(one.end, draft.row[0].end)))


def _of_feel(one: Item, draft: Draft) -> bool:
    """A negation that belongs to the effect ("it won't step out") says nothing against the movement."""
    return one.kind == "neg" and draft.effect is not None and one.start >= draft.effect.start - 12


def _general(draft: Draft) -> bool:
    """As in "raising it calms the nose", "less wedge would free the middle", "the more spring you need"."""
    row, first = draft.row, draft.moves[0]
    at = next((at for at, one in enumerate(row) if one.start == first.start), 0)
    if first.word.endswith("ing"):
        return all(one.word in _BEFORE for one in row[:at])
    data = row[at].data
    how = data[1] if isinstance(data, tuple) and row[at].kind == "move" else ""
    if how not in {"as", "much"}:
        return False
    if any(one.kind == "would" for one in row[at + 1 :]):
        return True
    before, after = (row[x].word if 0 <= x < len(row) else "" for x in (at - 1, at + 1))
    return before == "the" and (how == "much" or after == "the")
