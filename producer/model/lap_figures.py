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
    give = max(interval.high - pace.falloff, pace.falloff - interval.low, _FINEST)
    return figure(Decimal(repr(abs(pace.falloff))), _FALLOFF), figure(Decimal(repr(give)), _FALLOFF)
