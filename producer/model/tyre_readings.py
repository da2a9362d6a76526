"""What was read off the tyres after a stint, and what it says: `stints` fills it, outputs choose.

Temperatures are outside, middle, inside, `inside` towards the car's centre line; wear is percent used, differences of
wear are points. Texts are whole sentences in British spelling.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from producer.model.guide import Change
from producer.model.words import Corner, Direction


@dataclass(frozen=True, slots=True)
class TyreFinding:
    """What temperatures or wear say. `role` and `way` name what to move where something can be moved.

    `corner` None: about sides or ends of the car. `change` is one click on the garage's grid; None where nothing of
    that role is left to move.
    """

    about: Literal["pressure", "camber", "sides", "ends", "wear"]
    corner: Corner | None
    text: str
    role: str = ""
    way: Direction | None = None
    change: Change | None = None


@dataclass(frozen=True, slots=True)
class Temperatures:
    """One tyre, in `unit`. `spread` is hottest - coolest of the three, `finding` says it in a sentence ("": even)."""

    corner: Corner
    outside: Decimal
    middle: Decimal
    inside: Decimal
    unit: str
    finding: str = ""

    @property
    def mean(self) -> Decimal:
        """The mean of the three."""
        return (self.outside + self.middle + self.inside) / 3

    @property
    def spread(self) -> Decimal:
        """Hottest - coolest."""
        three = (self.outside, self.middle, self.inside)
        return max(three) - min(three)


@dataclass(frozen=True, slots=True)
class Wear:
    """Percent used per corner after `laps` laps.

    `front_to_rear` = mean(LF, RF) - mean(LR, RR), `right_to_left` = mean(RF, RR) - mean(LF, LR), in points, None
    where a corner was not read. `first` gives up first and `lasts` is the lap at which it is all used if it goes on
    as it did (an assumption, said in `text`); None where nothing is used.
    """

    used: Mapping[Corner, Decimal]
    laps: int
    front_to_rear: Decimal | None
    right_to_left: Decimal | None
    first: Corner | None
    lasts: int | None
    text: str = ""


@dataclass(frozen=True, slots=True)
class Tyres:
    """What was read off the tyres after a stint; empty where nothing was noted."""

    temperatures: tuple[Temperatures, ...] = ()
    wear: Wear | None = None
    findings: tuple[TyreFinding, ...] = ()
