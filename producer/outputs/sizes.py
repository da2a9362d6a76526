"""How large a change of balance is, in what a viewer knows: what half a percent of cross weight does."""

from __future__ import annotations

from decimal import ROUND_HALF_EVEN, Decimal

from producer.basics.figures import NO_BREAK, figure
from producer.script.speaker import counted

TIMES = "\u00d7"
SMALLEST = 0.05  # halves of a percent; below it a size is told as `under 0.1`
_MOST = 20  # percent of cross weight beyond which nobody has a feeling for it
_PARTS = (
    (Decimal("0.175"), "a tenth of a percent"),
    (Decimal("0.375"), "a quarter of a percent"),
    (Decimal("0.625"), "half a percent"),
    (Decimal("0.875"), "three quarters of a percent"),
)


def times(halves: float) -> str:
    """`1.8×`: so many times what half a percent of cross weight does, whichever way; `under 0.1×`, `16×`."""
    size = abs(halves)
    if size < SMALLEST:
        return f"under{NO_BREAK}0.1{TIMES}"
    return f"{figure(Decimal(str(size)), 1 if size < 9.95 else 0)}{TIMES}"


def as_cross_weight(halves: float) -> str:
    """The same in words: `half a percent of cross weight`, `one and a half percent of cross weight`."""
    percent = Decimal(str(abs(halves))) / 2
    return f"{_percent(percent)} of cross weight"


def _percent(percent: Decimal) -> str:
    for below, words in _PARTS:
        if percent < below:
            return words
    if percent > _MOST:
        return f"more than {_MOST}{NO_BREAK}percent"
    halves = int((percent * 2).quantize(Decimal(1), rounding=ROUND_HALF_EVEN))
    whole = counted(halves // 2)
    return f"{whole} and a half percent" if halves % 2 else f"{whole} percent"
