"""What a stretch of prose says about a setting."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from producer.model.words import Direction, Phase


@dataclass(frozen=True, slots=True)
class Claim:
    """A setting or split, and at least a number, a movement or an effect; the rest may be empty.

    `start` and `end` (exclusive) are characters of the whole text. Numbers are in the parameter's unit, `amount`
    positive. `value` stands alone (is, at, run); `to` is the end of a movement. `if_feels` is like `tight entry`.
    """

    text: str
    start: int
    end: int
    parameter: str
    direction: Direction | None = None
    frm: Decimal | None = None
    to: Decimal | None = None
    amount: Decimal | None = None
    value: Decimal | None = None
    feel: Literal["tighter", "looser"] | None = None
    where: tuple[Phase, ...] = ()
    if_feels: str | None = None
