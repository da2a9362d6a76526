"""Which way a stretch of a sentence moves its setting."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass, replace
from decimal import Decimal
from itertools import pairwise
from typing import cast

from producer.language.items import Item, number_of
from producer.language.number_words import UNITS
from producer.language.numbers import Number
from producer.language.tokens import listed
from producer.model.grid import Grid

_GO = listed(
    "go goes went going come comes came bring brings brought bringing run it move moved moves take put stepped step "
    "back set that them end side bar spring"
)
# After "softer" and the like these end the thought, so that it describes the setting and no other noun.
_CLOSES = listed(
    "here there still now on by in at for again to this than so and but because too also all overall with as when "
    "from until until i we you than"
)
_SPREADS = listed("open opens opened opening close closes closed closing")
_LIFTS = listed("comes come coming came lifts hikes picks rolls")
_SMALL_WORDS = listed("the a an my your this that just another by about only back all of little bit some half")
# What may be taken out of a setting besides what is counted.
_TAKEN = _SMALL_WORDS | listed("some lot more bunch touch hair tiny of few couple spring rate air pounds")
COUNTS = frozenset({"click", "step"})
_SHADES = _SMALL_WORDS | listed("even much far still slightly touch shade lot way bit quite hair notch too very now")
_BRINGS = listed("bring brings brought bringing")
_WENT = listed("go goes went going come comes came coming move moves moved stepped")
# Said before a movement word these are about the setting, where no other noun is named.
_ABOUT_IT = _GO | listed("i we i'm we're am one two whole page everything all wants likes number figure")


@dataclass(frozen=True, slots=True)
class Move:
    """A movement said: `sign` +1 raise, -1 lower; characters `start` to `end`; weak where something else may win."""

    sign: int
    start: int
    end: int
    word: str
    weak: bool = False


def without_others(row: list[Item], heads: Collection[str]) -> list[Item]:
    """The row with measures of something else ("40 pounds of fuel") made plain words."""
    return [
        Item("word", one.word, None, one.start, one.end)
        if is_figure(one) and _of_something_else(row, at, heads)
        else one
        for at, one in enumerate(row)
    ]


def signed(row: list[Item], grid: Grid | None) -> list[Item]:
    """The row with "-25" of a setting that is never negative made a movement down, as "+25" is one up."""
    if grid is None:
        return row
    if grid.low < 0:  # "-3.5 RF, +3 LF" are figures
        return [replace_sign(one) if one.word == "+" and is_figure(one) and grid.high > 0 else one for one in row]
    return [_lowered(one, grid) if is_figure(one) else one for one in row]


def replace_sign(one: Item) -> Item:
    """The number without its plus."""
    return Item("number", "", replace(number_of(one), more=0), one.start, one.end)


def _lowered(one: Item, grid: Grid) -> Item:
    number = number_of(one)
    amounts = tuple(-reading for reading in number.readings)
    if not (amounts and grid.step and all(0 < x <= 10 * grid.step and x % grid.step == 0 for x in amounts)):
        return one
    return Item("number", one.word, replace(number, readings=amounts, ratios=(), more=-1), one.start, one.end)


def moves(row: list[Item], heads: Collection[str], role: str, bare: bool) -> list[Move]:
    """The movements of a stretch.

    `heads`: the nouns of the setting meant. `role`: its role. `bare`: the stretch names no setting, so a movement
    counts only where its object is a number, a pronoun or one of the heads.
    """
    found: list[Move] = []
    for at, one in enumerate(row):
        sign, weak = _moved(row, at, heads, role, bare)
        if sign:
            found.append(Move(sign, one.start, one.end, one.word, weak))
    strong = [one for one in found if not one.weak]
    return _without_particles(row, strong or found)


def _without_particles(row: list[Item], found: list[Move]) -> list[Move]:
    """As in "soften that right front up a little", where "up" moves nothing."""
    how = {one.start: one.data[1] for one in row if one.kind == "move" and isinstance(one.data, tuple)}
    verbs = [one for one in found if how.get(one.start) == "verb"]
    if not verbs:
        return found
    return [one for one in found if one.sign == verbs[0].sign or how.get(one.start) != "way" or _leads(row, one)]


def _leads(row: list[Item], move: Move) -> bool:
    """Whether a figure follows a "way": "up to 750", "down 25"."""
    at = next(at for at, one in enumerate(row) if one.start == move.start)
    return any(is_figure(one) or one.kind in {"to", "from", "by"} for one in row[at + 1 : at + 2])


def _moved(row: list[Item], at: int, heads: Collection[str], role: str, bare: bool) -> tuple[int, bool]:
    one = row[at]
    if one.kind == "number":
        return _counted(row, at, role)
    if one.kind == "take":
        return _taken(row, at, bare), False
    if one.kind == "put":
        return _put(row, at), False
    if one.kind == "back" and role == "brake.front_bias" and at and _gone(row, at):
        return int(cast("int", one.data)), False
    if one.kind == "shift":
        return _shifted(row, at) if role == "brake.front_bias" else 0, False
    if one.kind != "move":
        return 0, False
    sign, how = cast("tuple[int, str]", one.data)
    fits = {"verb": _verb, "as": _describes, "way": _way, "much": _much}[how]
    said = fits(row, at, heads, bare) or (one.word == "lower" and _describes(row, at, heads, bare))
    return (sign, False) if said else (0, False)


def _counted(row: list[Item], at: int, role: str) -> tuple[int, bool]:
    """Movements without a verb: "two more clicks", "another click", "a click out of the left rear"."""
    number = number_of(row[at])
    if number.foreign:
        return 0, False
    if number.more:
        return number.more, False
    if number.unit and role != "steering.toe_out" and _out_after(row, at + 1):
        return -1, False
    if kind_at(row, at + 1) == "out" and word_at(row, at + 1) == "of":
        return (-1, False) if any(one.kind == "set" for one in row[at + 2 : at + 5]) else (0, False)
    return int(number.again), True


def _gone(row: list[Item], at: int) -> bool:
    """As in "went back", "bring the brake bias back"."""
    brought = not _BRINGS.isdisjoint(one.word for one in row[max(0, at - 5) : at])
    return row[at - 1].word in _WENT or (brought and row[at - 1].kind in {"set", "pronoun"})


def _out_after(row: list[Item], at: int) -> bool:
    """As in "a click out of", "a pound of air out of"."""
    while at < len(row) and row[at].kind in {"word", "set"} and (row[at].word == "of" or row[at].kind == "set"):
        at += 1
    return at < len(row) and row[at].kind == "out" and row[at].word != "off"


def kind_at(row: list[Item], at: int) -> str:
    """The kind of the item at a place, `sep` beyond the ends."""
    return row[at].kind if 0 <= at < len(row) else "sep"


def word_at(row: list[Item], at: int) -> str:
    """The word of the item at a place, "" beyond the ends."""
    return row[at].word if 0 <= at < len(row) else ""


def just_one(one: Item) -> bool:
    """As in "two clicks on the left front and one on the right front": the count alone."""
    return (
        one.kind == "number"
        and one.word == "one"
        and number_of(one).readings == (Decimal(1),)
        and not number_of(one).unit
    )


def is_figure(one: Item) -> bool:
    """A number that could be a figure of a setting."""
    return one.kind == "number" and not number_of(one).foreign


def _of_something_else(row: list[Item], at: int, heads: Collection[str]) -> bool:
    """As in "40 pounds of fuel": measured, but no setting."""
    if not (number_of(row[at]).unit and word_at(row, at + 1) == "of"):
        return False
    said = next((x for x in row[at + 2 :] if x.word not in _SMALL_WORDS), None)
    return said is not None and said.kind not in {"set", "pronoun", "sep"} and said.word not in heads


def _verb(row: list[Item], at: int, heads: Collection[str], bare: bool) -> bool:
    """As in "raise the spring", "raise it", "raised by 25"; not "lowers the lap times"."""
    if row[at].word in _SPREADS and not any(getattr(one.data, "split", False) for one in row):
        return False  # only a split is opened or closed
    for ahead in range(at + 1, min(at + 7, len(row))):
        one = row[ahead]
        if one.kind in {"feel", "phase", "foreign", "sep"}:
            break
        if bare and one.kind == "word" and one.word not in heads and one.word not in _SMALL_WORDS:
            break  # "I lowered my hopes by two clicks"
        if one.kind == "set" or is_figure(one) or one.word in heads:
            return True
        if one.kind == "pronoun" and ahead == at + 1:
            return True
    return (
        not bare and any(one.kind == "set" for one in row[:at]) and kind_at(row, at + 1) in {"sep", "by", "to", "from"}
    )


def _describes(row: list[Item], at: int, heads: Collection[str], bare: bool) -> bool:
    """As in "softer than", "a softer spring", "runs it softer"; not "a softer ride", not "the stiffer one"."""
    after = row[at + 1] if at + 1 < len(row) else None
    if bare and not _of_it(row, at, heads):
        return False  # "the car sat lower", "turn in lower"
    if after is None or after.kind in {"sep", "than", "by", "set", "to", "from", "someone"}:
        return bare is False or kind_at(row, at - 1) != "neg"
    return after.word in heads or after.word in _CLOSES or (is_figure(after) and not bare)


def _of_it(row: list[Item], at: int, heads: Collection[str]) -> bool:
    """Whether what stands before a movement word leaves it to the setting not named: "I run it a bit softer"."""
    before = at - 1
    while before >= 0 and (
        row[before].kind in {"number", "at"} or row[before].word in _SHADES or row[before].word in _WENT
    ):
        before -= 1
    one = row[before] if before >= 0 else None
    acts = {"pronoun", "at", "to", "by", "put", "take", "shift", "move", "set", "than", "from", "past", "would", "neg"}
    return one is None or one.kind in acts or one.word in heads or one.word in _ABOUT_IT


def _way(row: list[Item], at: int, heads: Collection[str], bare: bool) -> bool:
    """As in "up 25", "up to 750", "went up", "bring it down"; not "turn the music down a notch"."""
    after, before = row[at + 1] if at + 1 < len(row) else None, row[at - 1] if at else None
    if (bare and not _of_it(row, at, heads)) or (after is not None and after.word == "at"):
        return False  # "with the bias up at 66" says where it is
    if after is not None and (is_figure(after) or (after.kind in {"to", "from", "by"} and figure_near(row, at + 2))):
        return True
    if before is None:
        return not bare and after is not None and after.kind == "set"
    if is_figure(before) or (before.kind == "set" and not bare):
        return True
    if bare:
        return before.word in {"go", "went", "goes", "going"} and (after is None or after.kind == "sep")
    if before.word in _LIFTS and not any(getattr(one.data, "parameter", "") for one in row):
        return False  # "the left rear comes up off the ground"
    if before.kind == "pronoun" and at > 1:  # "bring it down", not "mix them up"
        return row[at - 2].word in _GO or row[at - 2].kind in {"put", "take", "shift", "move", "sep", "would", "if"}
    return before.word in _GO or before.kind in {"put", "take", "shift", "move", "pronoun"}


def _much(row: list[Item], at: int, heads: Collection[str], bare: bool) -> bool:
    """As in "less nose weight", "more clicks", "25 pounds more"; not "more than anything", not "more patient"."""
    after, before = row[at + 1] if at + 1 < len(row) else None, row[at - 1] if at else None
    if before is not None and is_figure(before) and number_of(before).unit:
        # "25 pounds more on the left", not "25 pounds more load".
        return after is None or after.kind != "word" or after.word in heads or after.word in _CLOSES
    if after is None:
        return False
    if after.kind == "set":
        return bool(getattr(after.data, "parameter", "") or getattr(after.data, "split", False))
    return after.word in heads or (after.word in UNITS and not bare)


def figure_near(row: list[Item], at: int) -> bool:
    """Whether a figure stands at a place or just after it."""
    return any(is_figure(one) for one in row[at : at + 3])


def _taken(row: list[Item], at: int, bare: bool) -> int:
    """As in "take half a percent out", "take out a click": -1; "take it up" is left to its way."""
    for ahead in range(at + 1, min(at + 10, len(row))):
        one = row[ahead]
        if one.kind == "sep":
            return 0
        if one.kind == "out":
            around = [*row[at + 1 : ahead], *(row[ahead + 1 : ahead + 5] if ahead == at + 1 else ())]
            counted = any(is_figure(item) and number_of(item).unit for item in around)
            named = any(item.kind == "set" for item in (*around, *row[ahead + 1 : ahead + 4]))
            if not counted and any(item.kind == "word" and item.word not in _TAKEN for item in row[at + 1 : ahead]):
                return 0  # "that takes some of the roll out of the left rear"
            return -1 if counted or (named and not bare) else 0
    return 0


def _put(row: list[Item], at: int) -> int:
    """As in "put two clicks in": +1; "put a 725 in" and "put it in reverse" are no movement."""
    if at + 1 < len(row) and just_one(row[at + 1]) and kind_at(row, at + 2) == "in":
        return 1  # "took a click out of the left front and put one in the right front"
    for ahead in range(at + 1, min(at + 8, len(row))):
        one, between = row[ahead], row[at + 1 : ahead]
        if one.kind == "sep":
            return 0
        counted = any(is_figure(item) and number_of(item).unit for item in between) and not _a_part(between)
        large = any(is_figure(item) and _large(number_of(item)) for item in between)
        clicks = any(is_figure(item) and number_of(item).unit in COUNTS for item in between)
        if one.kind == "set" and word_at(row, ahead - 1) == "of" and clicks:
            return 1
        if one.kind == "in":
            again = row[ahead - 1].word == "back" or (one.end - one.start > 4)
            return 1 if (counted and not large) or again else 0
    return 0


def _a_part(between: list[Item]) -> bool:
    """As in "put the inch and a quarter bar in": a part of that size, not so much more of it."""
    return any(
        is_figure(one) and number_of(one).unit == "in" and following.kind == "set"
        for one, following in pairwise(between)
    )


def _large(number: Number) -> bool:
    """A spring's own rate said with its unit: "put a 725 pound spring in"."""
    return number.unit in {"lb", "lb/in"} and number.readings[0] >= 150


def _shifted(row: list[Item], at: int) -> int:
    """Brake bias: "move it back" is a smaller front share."""
    for one in row[at + 1 : at + 6]:
        if one.kind == "back":
            return int(cast("int", one.data))
        if one.word in {"rear"} and one.kind == "set":
            return -1
        if one.kind == "sep":
            return 0
    return 0
