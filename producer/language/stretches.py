"""A sentence's items made ready: slips taken back, topics told from settings, conditions found, cut at the joints."""

from __future__ import annotations

from dataclasses import replace

from producer.language.feels import conditions
from producer.language.items import Item, mention_of
from producer.language.terms import Mention

_BEGINS = frozenset({"get", "be", "go", "start", "come"})
_DOES = frozenset({"does", "did", "do", "will", "would"})
_AUXILIARIES = frozenset({"doesn't", "won't", "don't", "didn't", "can't", "wouldn't", "never"})


def corrected(row: list[Item]) -> list[Item]:
    """Without what was taken back: "four hundred, sorry, four fifty" keeps the last number only."""
    for at, one in enumerate(row):
        if one.kind != "correct" and not _taken_back(row, at):
            continue
        before = next((x for x in range(at - 1, max(-1, at - 5), -1) if row[x].kind == "number"), None)
        after = next((x for x in range(at + 1, min(len(row), at + 6)) if row[x].kind == "number"), None)
        if before is not None and after is not None:
            return corrected(row[:before] + row[after:])
    return row


def _taken_back(row: list[Item], at: int) -> bool:
    """As in "sixty one no sixty two"."""
    return row[at].word == "no" and 0 < at < len(row) - 1 and row[at - 1].kind == row[at + 1].kind == "number"


def topics(row: list[Item]) -> list[Item]:
    """As in "Springs up front ..." before "on the left" is the topic of what follows, not both springs."""
    sides = [at for at, one in enumerate(row) if one.kind == "set" and side_only(mention_of(one))]
    corners = [at for at, one in enumerate(row) if one.kind == "set" and _corner_only(mention_of(one))]
    row = _splits_of(row)
    splits = [at for at, one in enumerate(row) if one.kind == "set" and _split_only(mention_of(one))]
    if not sides and not corners and not splits:
        return _flank_topics(row)
    found = list(row)
    for at, one in enumerate(row):
        if one.kind == "set":
            mention = mention_of(one)
            later = [
                x
                for x in corners
                if x > at and f"{mention.parameter}.{mention_of(row[x]).parts[0]}" in mention.addresses
            ]
            if not any(x > at for x in (*sides, *splits)) and not later:
                continue
            named = (
                mention.parameter
                and (mention.axle or mention.parts)
                and not mention.split
                and len(mention.addresses) == 2
            )
            if named or (not mention.parameter and len(mention.parts) == 2):
                found[at] = Item("set", one.word, _bare(mention), one.start, one.end)
    return found


def _flank_topics(row: list[Item]) -> list[Item]:
    """As in "left side pressures are 24 in the front and 25 in the rear": the axle said later is one of its corners."""
    flank = next((x for x in row if x.kind == "set" and _flank(mention_of(x))), None)
    if flank is None:
        return row
    later = [x for x in row if x.kind == "set" and x.start > flank.start and axle_only(mention_of(x))]
    if not later:
        return row
    named = mention_of(flank)
    return [_corner_of(named, x) if x in later else x for x in row if x is not flank]


def _flank(one: Mention) -> bool:
    return bool(one.parameter and one.side in {"left", "right"} and len(one.addresses) == 2)


def axle_only(one: Mention) -> bool:
    """Whether a mention says no more than "in the front"."""
    return bool(one.axle) and not (one.parameter or one.parts or one.side or one.split)


def _corner_of(named: Mention, item: Item) -> Item:
    one = mention_of(item)
    part = named.side[0] + one.axle[0]
    corner = replace(one, parameter=named.parameter, parts=(part,), addresses=(f"{named.parameter}.{part}",))
    return Item("set", item.word, corner, item.start, item.end)


def _corner_only(one: Mention) -> bool:
    return len(one.parts) == 1 and not (one.parameter or one.split)


def _splits_of(row: list[Item]) -> list[Item]:
    """As in "take split out of the rear springs", "split to the rear springs": one mention, the split of them."""
    for at, one in enumerate(row):
        if one.kind != "set" or not _split_only(mention_of(one)) or mention_of(one).axle:
            continue
        after = next((x for x in range(at + 1, min(at + 5, len(row))) if row[x].kind in {"set", "number"}), None)
        if after is None or row[after].kind == "number" or not mention_of(row[after]).parameter:
            continue
        named = mention_of(row[after])
        if named.axle and not named.split and not named.side:
            whole = replace(mention_of(one), parameter=named.parameter, axle=named.axle)
            row = [*row[:at], Item("set", one.word, whole, one.start, one.end), *row[at + 1 : after], *row[after + 1 :]]
            return row
    return row


def _split_only(one: Mention) -> bool:
    return one.split and not one.parameter


def _bare(one: Mention) -> Mention:
    axle = one.axle or ("front" if one.parts[0].endswith("f") else "rear")
    return Mention(one.start, one.end, one.parameter, (), (), axle)


def side_only(one: Mention) -> bool:
    """Whether a mention says no more than "on the left"."""
    return bool(one.side) and not (one.parameter or one.parts or one.axle or one.split)


def with_conditions(row: list[Item]) -> list[Item]:
    """Each condition as one item."""
    found: list[Item] = []
    at = 0
    for one in conditions(row):
        found += row[at : one.first]
        found.append(Item("condition", "", one, one.start, one.end))
        at = one.last
    return found + row[at:]


def _same_remedy(run: list[Item], row: list[Item], at: int) -> bool:
    """As in "keeps it from darting in and getting loose", where the remedy is against both."""
    after = row[at + 1] if at + 1 < len(row) else None
    if run and run[-1].word in {"nice", "good"}:
        return True  # "nice and calm"
    cured = any(one.kind == "cure" or one.word == "without" for one in run[-7:])
    denied = _denies(run) and not any(one.kind == "feel" for one in run[-6:])
    said = after is not None and (after.word not in {"tight", "loose", "free"} or after.end - after.start > 6)
    if denied and after is not None and after.kind == "feel" and said:
        return True  # "it doesn't dive in there and snap around"
    begun = row[at + 2] if at + 2 < len(row) and after is not None and after.word in _BEGINS else None
    if denied and begun is not None and begun.kind == "feel":
        return True  # "it won't roll over and get loose"
    if after is None or not cured:
        return False
    bare = after.kind == "feel" and isinstance(after.data, tuple) and after.data[1] == "state"
    return bare or (after.word.endswith("ing") and after.kind in {"word", "feel"})


def _denies(run: list[Item]) -> bool:
    """As in "it won't", "the rear does not"."""
    return any(
        one.word in _AUXILIARIES
        or one.word == "longer"
        or (one.word == "not" and run[at - 1 : at] and run[at - 1].word in _DOES)
        for at, one in enumerate(run)
        if at >= len(run) - 6
    )


def stretches(row: list[Item]) -> list[tuple[list[Item], str]]:
    """The row cut at its joints, with the word of the joint before each."""
    found: list[tuple[list[Item], str]] = []
    run: list[Item] = []
    joint = ""
    for at, one in enumerate(row):
        if one.word in {"and", "or"} and _same_remedy(run, row, at):
            run.append(Item("word", one.word, None, one.start, one.end))
        elif one.kind in {"sep", "condition"}:
            if run:
                found.append((run, joint))
            run, joint = [], one.word
            if one.kind == "condition":
                found.append(([one], joint))
        else:
            run.append(one)
    return [*found, (run, joint)] if run else found
