"""From what a stretch said to claims: which setting a bare corner means, and which reading each number has there."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from decimal import Decimal

from producer.language.feels import Condition, Effect
from producer.language.items import Item, number_of
from producer.language.movements import Move
from producer.language.numbers import Number, settle
from producer.language.terms import Mention, Vocabulary
from producer.language.tokens import listed
from producer.model.claim import Claim
from producer.model.grid import Grid
from producer.model.words import Direction

Spans = dict[str, tuple[int, int]]
# The units that a figure of a parameter may be said with.
_SAID = {
    "lb/in": {"lb", "lb/in"}, "psi": {"lb", "psi"}, "lb": {"lb"}, "%": {"%", "point"}, "in": {"in"},
    "deg": {"deg"}, "clicks": {"click", "step"}, "turns": {"turns"}, "mm": {"mm"}, "kPa": {"kPa"}, "N/mm": {"N/mm"},
}  # fmt: skip
_COUNTS = frozenset({"click", "step"})
_SPRINGY = listed("stiffen stiffens stiffened stiffening soften softens softened softening stiffer softer")


@dataclass(slots=True)
class Draft:
    """What is being gathered for one mention. `target` is None where it is the subject's."""

    target: Mention | None
    addresses: tuple[str, ...]
    row: list[Item]
    start: int
    end: int
    moves: list[Move] = field(default_factory=list)
    slots: dict[str, list[tuple[Number, Item]]] = field(default_factory=dict)
    effect: Effect | None = None
    condition: Condition | None = None
    denied: bool = False
    doubtful: bool = False
    mixed: bool = False
    occasion: bool = False

    def empty(self) -> bool:
        """Whether nothing has been said of it yet."""
        return not (self.moves or self.slots)


def fitting(
    mention: Mention,
    numbers: list[Number],
    row: list[Item],
    vocabulary: Vocabulary,
    subject: tuple[str, ...],
    topic: str,
    axle: str,
) -> tuple[str, ...]:
    """The addresses that a mention means here; () where that stays open."""
    if mention.addresses:
        return mention.addresses
    if mention.split:
        splits = tuple(one for one in subject if one.endswith("_split"))
        if len(splits) == 1 and not (mention.parameter or mention.axle or axle):
            return splits  # "the split is 75", said of the only split that the reason is for
        parameter = mention.parameter or (topic if vocabulary.cornered(topic) else vocabulary.of_role("spring"))
        return vocabulary.resolve(parameter, axle=mention.axle or axle, split=True) if parameter else ()
    if mention.parts:
        own = [one for one in subject if one.rpartition(".")[2] in mention.parts]
        if own and not topic:
            return tuple(own) if len(own) == len(mention.parts) else ()
        parameter = _of_corner(mention, numbers, row, vocabulary, topic)
        return vocabulary.resolve(parameter, mention.parts) if parameter else ()
    if mention.side and mention.parameter and axle:
        return vocabulary.resolve(mention.parameter, axle=axle, side=mention.side)
    if mention.side and topic and not mention.parameter:
        return vocabulary.resolve(topic, axle=axle, side=mention.side)
    if mention.side in {"left", "right"} and axle and not mention.parameter:
        corner = replace(mention, parts=(f"{mention.side[0]}{axle[0]}",), side="")
        parameter = _of_corner(corner, numbers, row, vocabulary, "") if numbers else ""
        return vocabulary.resolve(parameter, corner.parts) if parameter else ()
    return tuple(one for one in subject if one.split(".")[0] == mention.parameter)


def _of_corner(mention: Mention, numbers: list[Number], row: list[Item], vocabulary: Vocabulary, topic: str) -> str:
    """The parameter of a bare corner: the topic, else the one whose range or unit fits, else a spring if softened."""
    part = mention.parts[0]
    placed = vocabulary.cornered(topic) and f"{topic}.{part}" in vocabulary.grids
    if placed and (not numbers or any(_possible(one, topic, part, vocabulary) for one in numbers)):
        return topic
    known = vocabulary.by_part[part]
    springy = any(one.word in _SPRINGY for one in row)
    if springy:
        known = tuple(name for name in known if vocabulary.role(name) not in {"tyre_pressure", "camber"})
    values = [one for one in numbers if one.unit not in _COUNTS and not (one.more or one.again) and not _by(one, row)]
    if any((one.unit and _beside_move(one, row)) or _after_way(one, row) for one in values):
        values = []
    found = {x for one in _moved_by(row) for x in known if _as_amount(one, x, part, vocabulary, told=True)}
    if len(found) == 1:
        return found.pop()
    found = {name for one in values for name in known if _as_value(one, name, part, vocabulary)}
    if not found:
        found = {x for one in numbers for x in known if _as_amount(one, x, part, vocabulary, _after_way(one, row))}
    if len(found) == 1:
        return found.pop()
    spring = vocabulary.of_role("spring")
    springy = springy or any(one.unit == "step" for one in numbers)  # a step is a spring's, a click a shock's
    if not found and spring in known and springy:
        return spring
    return ""


def could_be(numbers: list[Number], name: str, parts: tuple[str, ...], vocabulary: Vocabulary) -> bool:
    """Whether all numbers can be figures or a few steps of a parameter at these corners."""
    placed = bool(name) and all(f"{name}.{part}" in vocabulary.grids for part in parts)
    return placed and all(_possible(one, name, part, vocabulary) for one in numbers for part in parts)


def _beside_move(number: Number, row: list[Item]) -> bool:
    """As in "25 pounds more" or "up 25 pounds"."""
    at = next((at for at, one in enumerate(row) if one.start == number.start), 0)
    return any(one.kind == "move" for one in row[max(0, at - 1) : at + 2])


def _moved_by(row: list[Item]) -> list[Number]:
    """The numbers of a movement that are not where it starts or ends: "come down on the right rear 25 pounds"."""
    taken = any(one.kind == "number" and row[at + 1].kind == "out" for at, one in enumerate(row[:-1]))
    if not taken and not any(one.kind in {"move", "take", "put"} for one in row):
        return []
    said = [
        ("" if at + 1 < len(row) and row[at + 1].kind == "out" else row[at - 1].kind if at else "", one)
        for at, one in enumerate(row)
        if one.kind == "number"
    ]
    return [number_of(one) for before, one in said if before not in {"to", "from", "at"} and not number_of(one).foreign]


def _after_way(number: Number, row: list[Item]) -> bool:
    """As in "went up 25"."""
    at = next((at for at, one in enumerate(row) if one.start == number.start), 0)
    before = row[at - 1] if at else None
    return before is not None and before.kind == "move" and isinstance(before.data, tuple) and before.data[1] == "way"


def _by(number: Number, row: list[Item]) -> bool:
    at = next((at for at, one in enumerate(row) if one.start == number.start), 0)
    return at > 0 and row[at - 1].kind in {"by"}


def _unit_fits(number: Number, name: str, vocabulary: Vocabulary) -> bool:
    if not number.unit or number.unit in _COUNTS:
        return True
    return number.unit in _SAID.get(vocabulary.garage.parameters[name].unit, ())


def _as_value(number: Number, name: str, part: str, vocabulary: Vocabulary) -> bool:
    grid = vocabulary.grids[f"{name}.{part}"]
    if not _unit_fits(number, name, vocabulary):
        return False
    return any(grid.inside(one) and grid.index(one) is not None for one in number.readings)


def _as_amount(number: Number, name: str, part: str, vocabulary: Vocabulary, told: bool) -> bool:
    """A few clicks of that parameter, said with its unit, a sign or (`told`) a movement."""
    grid = vocabulary.grids[f"{name}.{part}"]
    told = told or bool(number.unit) or bool(number.more) or all(one < 0 for one in number.readings)
    if not told or number.unit in _COUNTS or not _unit_fits(number, name, vocabulary) or not grid.step:
        return False
    return any(one % grid.step == 0 and 0 < abs(one) <= 10 * grid.step for one in number.readings)


def _possible(number: Number, name: str, part: str, vocabulary: Vocabulary) -> bool:
    grid = vocabulary.grids[f"{name}.{part}"]
    if not _unit_fits(number, name, vocabulary):
        return False
    if number.unit in _COUNTS or any(grid.inside(one) for one in number.readings):
        return True
    return grid.step is not None and any(0 < abs(one) <= 10 * grid.step for one in number.readings)


def settled(draft: Draft, vocabulary: Vocabulary, text: str) -> Iterator[tuple[Claim, Spans, tuple[int, int] | None]]:
    """The claims of a draft, one for each address; none where something in it stays open."""
    signs = {one.sign for one in draft.moves}
    if draft.doubtful:
        draft.slots.clear()  # "a click or two": how many stays open, which way does not
    if draft.denied or (draft.doubtful and not signs) or draft.mixed or len(signs) > 1 or not draft.addresses:
        return
    for address in draft.addresses:
        found = _claim(draft, address, signs.pop() if len(signs) == 1 else 0, vocabulary, text)
        if found is not None:
            moved = (draft.moves[0].start, draft.moves[0].end) if draft.moves else None
            yield found[0], found[1], moved
            signs = {one.sign for one in draft.moves}


def _claim(draft: Draft, address: str, sign: int, vocabulary: Vocabulary, text: str) -> tuple[Claim, Spans] | None:
    figures = _figures(draft, address, vocabulary)
    if figures is None:
        return None
    values, spans = figures
    way = _direction(sign, values)
    if way is False:
        return None
    direction: Direction | None = None if way == 0 else "raise" if way > 0 else "lower"
    if direction is None:
        amount = values.pop("amount", None)
        if amount is not None and address.endswith("_split") and "value" not in values and "to" not in values:
            values["value"], spans["value"] = amount, spans.pop("amount")  # "the rear springs are split by 75"
    if (direction or "frm" in values) and "value" in values:
        if "to" in values and values["to"] != values["value"]:
            return None
        values["to"], spans["to"] = values.pop("value"), spans.pop("value")
    if "frm" in values and direction is None and "to" not in values:
        values.pop("frm")
    polarity = draft.effect.polarity if draft.effect else 0
    if not values and direction is None and (not polarity or not draft.target or len(draft.target.addresses) != 1):
        return None
    start, end = _extent(draft)
    claim = Claim(
        text[start:end], start, end, address, direction,
        values.get("frm"), values.get("to"), values.get("amount"), values.get("value"),
        "tighter" if polarity > 0 else "looser" if polarity < 0 else None,
        draft.effect.where if draft.effect else (),
        draft.condition.feels if draft.condition else None,
    )  # fmt: skip
    return claim, {name: place for name, place in spans.items() if name in values}


def _extent(draft: Draft) -> tuple[int, int]:
    start, end = draft.start, draft.end
    if draft.effect:
        start, end = min(start, draft.effect.start), max(end, draft.effect.end)
    if draft.condition and draft.condition.feels:
        start, end = min(start, draft.condition.start), max(end, draft.condition.end)
    return start, end


def _direction(sign: int, values: dict[str, Decimal]) -> int | bool:
    """The sign of the movement, 0 for none, False where words and figures disagree."""
    if "frm" in values and "to" in values:
        there = (values["to"] > values["frm"]) - (values["to"] < values["frm"])
        return False if (sign and sign != there) or not there else there
    return sign


def _figures(draft: Draft, address: str, vocabulary: Vocabulary) -> tuple[dict[str, Decimal], Spans] | None:
    """Each slot's figure for one setting and its place; None where a slot has two that differ."""
    grid, unit = vocabulary.grids[address], vocabulary.garage.unit_of(address)
    values: dict[str, Decimal] = {}
    spans: Spans = {}
    for role, said in draft.slots.items():
        name = "frm" if role == "from" else role
        for number, item in said:
            value = _amount(number, grid, unit) if role == "amount" else _value(number, grid, unit)
            # Without a name only a figure that could be the setting's is taken for it.
            if value is None or (role == "value" and draft.target is None and not grid.inside(value)):
                continue
            if name in values and values[name] != value:
                return None
            values[name], spans[name] = value, (item.start, item.end)
    return values, spans


def _value(number: Number, grid: Grid, unit: str) -> Decimal | None:
    if number.unit and number.unit not in _SAID.get(unit, ()):
        return None
    value = settle(number.candidates(unit), grid)
    if value is not None and unit == "lb/in" and value % 1 and grid.inside(value * 100) and not grid.inside(value):
        value *= 100  # "seven and a half" hundred
    # A minus before a figure that cannot be negative is a movement, and nothing said which.
    return None if value is not None and value < 0 <= grid.low else value


def _amount(number: Number, grid: Grid, unit: str) -> Decimal | None:
    if number.unit in _COUNTS:
        count = number.readings[0]
        return count if unit == "clicks" else count * grid.step if grid.step else None
    if number.unit and number.unit not in _SAID.get(unit, ()):
        return None
    span = grid.high - grid.low
    good = [x for x in number.readings if 0 < x <= span and (grid.step is None or x % grid.step == 0)]
    return good[0] if len(good) == 1 else abs(number.readings[0]) if len(number.readings) == 1 else None
