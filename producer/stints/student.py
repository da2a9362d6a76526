"""Student's t: what an interval of 95 % needs, exact for whole degrees of freedom.

Source: Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 26.7.3 and 26.7.4 (from memory; tests hold it
against SciPy and against printed tables).
"""

from __future__ import annotations

from functools import lru_cache
from math import atan2, cos, pi, sin, sqrt, tan

LEVEL = 0.95
_SMALL = 1e-18


def within(t: float, freedom: int) -> float:
    """The probability that |T| <= t (t >= 0) for `freedom` >= 1 degrees of freedom."""
    return _within_angle(atan2(t, sqrt(freedom)), freedom)


def two_sided(t: float, freedom: int) -> float:
    """The probability of a |T| at least as large as |t|."""
    return max(0.0, 1 - within(abs(t), freedom))


@lru_cache(maxsize=256)
def quantile(freedom: int, level: float = LEVEL) -> float:
    """The t that |T| does not pass with probability `level` (0 < level < 1)."""
    low, high = 0.0, pi / 2
    for _ in range(80):
        middle = (low + high) / 2
        if _within_angle(middle, freedom) < level:
            low = middle
        else:
            high = middle
    return tan((low + high) / 2) * sqrt(freedom)


def _within_angle(angle: float, freedom: int) -> float:
    """As `within`, by the angle whose tangent is t / sqrt(freedom): a finite sum of powers of its cosine."""
    sine, cosine = sin(angle), cos(angle)
    if freedom % 2:
        total = angle
        if freedom > 1:
            total += sine * _series(cosine, cosine, 2, freedom - 2)
        return total * 2 / pi
    return sine * _series(1.0, cosine, 1, freedom - 2)


def _series(first: float, cosine: float, top: int, last: int) -> float:
    """`first` (1 + top/(top+1) cos^2 (1 + (top+2)/(top+3) cos^2 (1 + ...))) up to the power `last` of the cosine."""
    total, term, square = first, first, cosine * cosine
    while top < last + (top % 2):
        term *= square * top / (top + 1)
        if term < _SMALL:
            break
        total += term
        top += 2
    return total
