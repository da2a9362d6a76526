"""Engine speed against road speed."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from producer.basics.units import Quantity


@dataclass(frozen=True, slots=True)
class GearStep:
    """One choice of the final drive and the engine speed it gives (rpm, whole)."""

    final_drive: Decimal
    rpm: int


@dataclass(frozen=True, slots=True)
class Gearing:
    """Engine speeds of one setup, in rpm.

    `per_ten` is rpm per 10 mph (units us) or per 10 km/h (metric), `per_unit` says which. With a top speed from a
    stint: `rpm` there, `margin` to the limiter (negative: past it; None without a known limiter), and what one step
    down and one step up of the final drive would give.
    """

    address: str
    final_drive: Decimal
    per_ten: int
    per_unit: str
    top_speed: Quantity | None = None
    rpm: int | None = None
    limit: int | None = None
    margin: int | None = None
    lower: GearStep | None = None
    higher: GearStep | None = None

    @property
    def speed(self) -> Quantity | None:
        """The top speed in the channel's unit: as written where it is in it, else converted and whole."""
        top = self.top_speed
        if top is None or top.unit == self.per_unit:
            return top
        return Quantity(top.into(self.per_unit).quantize(Decimal(1)), self.per_unit)
