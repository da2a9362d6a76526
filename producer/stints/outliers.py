"""Laps that stand out: by the modified z-score, and by Grubbs' test.

Sources: Iglewicz & Hoaglin, How to Detect and Handle Outliers (1993), threshold 3.5; NIST/SEMATECH e-Handbook of
Statistical Methods, 1.3.5.17 (both from memory; its example is a test).
"""

from __future__ import annotations

from collections.abc import Sequence
from math import fsum, inf, sqrt
from statistics import median

from producer.stints.student import quantile

FAR = 3.5
FLOOR = 0.01  # seconds: laps timed to a hundredth cannot stand nearer to each other than that means anything
_NORMAL = 0.6745  # the median of |Z| of a normal distribution


def modified_z(values: Sequence[float], floor: float = FLOOR) -> list[float]:
    """0.6745 (value - median) / MAD of each value, the scale MAD / 0.6745 being at least `floor`."""
    middle = median(values)
    scale = max(median(abs(one - middle) for one in values) / _NORMAL, floor)
    return [(one - middle) / scale if scale else (inf if one != middle else 0.0) for one in values]


def far(values: Sequence[float], floor: float = FLOOR) -> list[bool]:
    """Which values stand out: a modified z-score of more than 3.5 either way."""
    return [abs(one) > FAR for one in modified_z(values, floor)]


def floor_for(decimals: int) -> float:
    """The least scale of times written with so many decimals: half a step of the clock, at least 0.01 s.

    Laps timed to a tenth fall on few values; most of them on one does not make the next one an outlier.
    """
    return max(FLOOR, 10.0**-decimals / 2)


def grubbs(values: Sequence[float], chance: float = 0.05) -> tuple[float, float]:
    """The largest |value - mean| in standard deviations, and what it may be before it stands out, one side at `chance`.

    (0, infinity) below three values, or where all are the same: nothing can stand out.
    """
    count = len(values)
    if count < 3:
        return 0.0, inf
    mean = fsum(values) / count
    deviation = sqrt(fsum((one - mean) ** 2 for one in values) / (count - 1))
    if deviation == 0:
        return 0.0, inf
    t = quantile(count - 2, 1 - 2 * chance / count)
    limit = (count - 1) / sqrt(count) * sqrt(t * t / (count - 2 + t * t))
    return max(abs(one - mean) for one in values) / deviation, limit
