"""The car at rest on scales: four corner loads from the three shares of the garage, and back.

Shares are percent of the whole car: front (LF + RF), left (LF + LR), cross (RF + LR). Any unit of weight, exact.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from producer.model.words import CORNERS, Corner


@dataclass(frozen=True, slots=True)
class Shares:
    """Percent of the whole car on the front axle, on the left side, and on the diagonal RF + LR."""

    front: Fraction
    left: Fraction
    cross: Fraction


def corner_weights(
    total: Decimal | Fraction, front: Decimal | Fraction, left: Decimal | Fraction, cross: Decimal | Fraction
) -> dict[Corner, Fraction]:
    """Loads of LF, RF, LR, RR in the unit of `total`; the shares in percent.

    LF = W (front + left - cross) / 2, RF the rest of the front axle, LR the rest of the left side, RR the rest.
    A corner below zero is a car that cannot stand on four wheels; it is returned as computed.
    """
    whole = Fraction(total)
    in_front, on_left = whole * Fraction(front) / 100, whole * Fraction(left) / 100
    lf = (in_front + on_left - whole * Fraction(cross) / 100) / 2
    return {"lf": lf, "rf": in_front - lf, "lr": on_left - lf, "rr": whole - in_front - on_left + lf}


def shares(weights: Mapping[Corner, Decimal | Fraction]) -> Shares:
    """The three shares of four corner loads. Raises ValueError where a corner is missing or they add up to nothing."""
    if any(corner not in weights for corner in CORNERS) or not sum(weights.values()):
        raise ValueError("the loads of all four corners are wanted, and some weight on them")
    lf, rf, lr, rr = (Fraction(weights[corner]) for corner in CORNERS)
    percent = Fraction(100) / (lf + rf + lr + rr)
    return Shares((lf + rf) * percent, (lf + lr) * percent, (rf + lr) * percent)


def even_cross(front: Decimal | Fraction, left: Decimal | Fraction) -> Fraction:
    """The cross weight (percent) at which both axles carry the same share on the left: no wedge in the car."""
    ahead, inside = Fraction(front) / 100, Fraction(left) / 100
    return 100 * (ahead + inside - 2 * ahead * inside)


def behind_front_axle(wheelbase: Decimal | Fraction, front: Decimal | Fraction) -> Fraction:
    """Distance of the centre of gravity behind the front axle, in the unit of `wheelbase`; `front` in percent."""
    return Fraction(wheelbase) * (1 - Fraction(front) / 100)
