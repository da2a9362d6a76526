"""One corner said to be stiffer, higher or lower than the other: a claim about their split."""

from __future__ import annotations

from producer.language.items import Item, mention_of, number_of
from producer.language.numbers import Number
from producer.language.settling import Draft
from producer.language.terms import Mention, Vocabulary


def difference(
    stretch: list[Item], first: int, second: int, vocabulary: Vocabulary, topic: str, axle: str
) -> Draft | None:
    """What a stretch says of the split between its mentions `first` and `second`: a value, right minus left.

    None where they are not the two corners of one axle or no single amount is said. Without a parameter the topic's
    or else the springs are compared.
    """
    one, other = mention_of(stretch[first]), mention_of(stretch[second])
    parameter = one.parameter or other.parameter or topic
    sides = [_corner(x, one.parts or ((f"l{axle[0]}",) if axle else ())) for x in (one, other)]
    described = [x for x in stretch if x.kind == "move" and isinstance(x.data, tuple) and x.data[1] in {"as", "much"}]
    counted = [x for x in stretch if x.kind == "number" and not number_of(x).foreign]
    if not vocabulary.cornered(parameter):
        parameter = vocabulary.of_role("spring")
    same = sides[0][1:] == sides[1][1:] and sides[0] != sides[1]
    if not (parameter and all(sides) and same and len(described) == 1 and len(counted) == 1):
        return None
    if not _measures(stretch, counted[0], described[0]):
        return None
    sign = described[0].data[0] if isinstance(described[0].data, tuple) else 1
    right = 1 if sides[0].startswith("r") else -1
    address = f"{parameter}.{'front' if sides[0].endswith('f') else 'rear'}_split"
    draft = Draft(one, (address,), stretch, stretch[first].start, stretch[-1].end)
    draft.slots["value"] = [(_signed(number_of(counted[0]), sign * right), counted[0])]
    draft.end = max(stretch[second].end, counted[0].end)
    return draft


def _measures(stretch: list[Item], number: Item, described: Item) -> bool:
    """As in "25 pounds stiffer", "stiffer by 25"; not "at 700 pounds the right front is softer"."""
    at = stretch.index(number)
    beside = stretch[at + 1 : at + 2] == [described]
    return beside or (at > 0 and stretch[at - 1].kind == "by")


def _corner(one: Mention, like: tuple[str, ...]) -> str:
    if len(one.parts) == 1:
        return one.parts[0]
    if one.side and len(like) == 1:
        return one.side[0] + like[0][1]
    return ""


def _signed(number: Number, sign: int) -> Number:
    return Number(number.start, number.end, tuple(sign * x for x in number.readings), unit=number.unit)
