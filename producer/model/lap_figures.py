"""Figures of test laps as they are written wherever they are shown: rounded once, here."""

from __future__ import annotations

from decimal import Decimal

from producer.basics.figures import figure
from producer.model.stints import Pace

_PACE, _FALLOFF = 2, 3  # decimals of seconds
_FINEST = 0.001


def start(pace: Pace) -> str:
    """The fitted time of lap 1 in seconds: `31.28`."""
    return figure(Decimal(repr(pace.lap_one)), _PACE)


def loss(pace: Pace) -> tuple[str, str] | None:
    """What a lap costs in seconds, without a sign, and give or take how much: `0.036`, `0.002`; None where the laps
    do not tell. Whether it is lost or gained is the sign of `pace.falloff`.
    """
    interval = pace.falloff_interval
    if interval is None or interval.holds(0):
        return None
    return beyond_doubt(pace.falloff, max(interval.high - pace.falloff, pace.falloff - interval.low))


def beyond_doubt(value: float, half: float) -> tuple[str, str]:
    """A falloff that is not in doubt, without its sign, and give or take how much, in seconds: `0.036`, `0.002`.

    One decimal more where rounding would make it look like one in doubt: `0.0034`, `0.0031`.
    """
    amount, give = (figure(Decimal(repr(one)), _FALLOFF) for one in (abs(value), max(half, _FINEST)))
    if amount != give or half < _FINEST:
        return amount, give
    return figure(Decimal(repr(abs(value))), _FALLOFF + 1), figure(Decimal(repr(half)), _FALLOFF + 1)
