"""What part a number plays in its stretch: where a movement starts or ends, how far it goes, or a value."""

from __future__ import annotations

from decimal import Decimal
from typing import cast

from producer.language.items import Item, number_of
from producer.language.movements import COUNTS, figure_near, is_figure, just_one, kind_at, word_at
from producer.language.numbers import Number, settle
from producer.language.tokens import listed
from producer.model.grid import Grid

_VAGUE = listed("about like only just a the around roughly maybe say to so right on me another i'm it at")
_DRIFTS = listed("gets climbs grows creeps builds swells climbed grew crept")
_LIMITS = listed("past below above under over beyond least most near")


def role_of(row: list[Item], at: int, moved: bool, grid: Grid | None, unit: str) -> str:
    """What the number at `at` is: `from`, `to`, `amount`, `value`, or "" where it belongs to nothing here."""
    number = number_of(row[at])
    before = at - 1
    while before >= 0 and row[before].word in _VAGUE and row[before].kind not in {"to", "from", "by", "compared", "at"}:
        before -= 1
    kind = kind_at(row, before)
    if _aside(row, at, before, unit):
        return ""
    if kind == "from":
        return "from"
    if number.unit in COUNTS and unit != "clicks":
        return "amount"
    if number.more or (number.again and number.unit) or (moved and just_one(row[at])):
        return "amount"
    if kind == "to":
        return "to"
    if kind_at(row, at + 1) == "to" and at + 2 < len(row) and is_figure(row[at + 2]):
        counted = kind in {"move", "back"} or _difference(number, grid, unit)
        return "amount" if number.unit and counted else "from"
    if kind == "by" or kind_at(row, at + 1) == "by" or (moved and kind_at(row, at + 1) == "out"):
        return "amount"
    if kind == "at" and not _measured(row, at) and not (moved and _difference(number, grid, unit)):
        return "value"
    return _amount_or_value(row, at, moved, grid, unit)


def _aside(row: list[Item], at: int, before: int, unit: str) -> bool:
    """A limit, a comparison, a denied figure, the size of a change or of a click: no figure of the setting."""
    after = row[at + 1] if at + 1 < len(row) else None
    if after is not None and is_figure(after) and number_of(after).unit in COUNTS and not number_of(row[at]).more:
        return number_of(row[at]).unit not in COUNTS and row[at].end + 2 >= after.start  # "half a percent a click"
    if after is not None and after.word == "too":
        return True
    if kind_at(row, before) == "to" and (
        word_at(row, before - 1) in _DRIFTS or (unit == "psi" and word_at(row, before - 1) in {"rises", "rose"})
    ):
        return True  # "the pressure climbs to 47"
    if word_at(row, before) in _LIMITS or any(one.word in {"change", "difference"} for one in row[at + 1 : at + 4]):
        return True
    kind = kind_at(row, before)
    return kind in {"compared", "than"} or (kind == "neg" and before == at - 1)


def _measured(row: list[Item], at: int) -> bool:
    """As in "is 25 stiffer", "is half a percent more": an amount although "is" stands before it."""
    after = row[at + 1] if at + 1 < len(row) else None
    return after is not None and after.kind == "move" and cast("tuple[int, str]", after.data)[1] != "verb"


def _amount_or_value(row: list[Item], at: int, moved: bool, grid: Grid | None, unit: str) -> str:
    number = number_of(row[at])
    if not moved and kind_at(row, at + 1) == "from" and not figure_near(row, at + 2):
        return ""  # "25 from the left front"
    if not moved:
        counted = number.unit in COUNTS and kind_at(row, at - 1) != "set" and word_at(row, at + 1) != "of"
        return "" if counted else "value"
    if _measured(row, at) or number.unit in COUNTS:
        return "amount"
    if word_at(row, at - 1) == "a" and not number.unit:
        return "value"  # "put a softer spring in, a two fifty"
    if grid is None:
        return "amount" if number.unit else "value"
    value = settle(number.candidates(unit), grid)
    as_value = value is not None and grid.inside(value) and grid.index(value) is not None
    as_amount = any(_multiple(one, grid) for one in number.readings)
    if as_value != as_amount:
        return "value" if as_value else "amount"
    return "amount" if as_amount or number.unit else "value"


def _difference(number: Number, grid: Grid | None, unit: str) -> bool:
    """Said with a unit and too small for a value: "which is a percent and a half"."""
    value = settle(number.candidates(unit), grid) if grid else None
    return bool(grid and number.unit and value is not None and not grid.inside(value) and _multiple(value, grid))


def _multiple(amount: Decimal, grid: Grid) -> bool:
    span = min(grid.high - grid.low, 12 * grid.step) if grid.step else grid.high - grid.low
    return 0 < amount <= span and (grid.step is None or amount % grid.step == 0)
