"""How large a change of balance is and how sure the chassis model is of it, in words: the one place for both.

Balance itself is never shown, only changes of it, and those in what half a percent of cross weight does in the same
part of the corner: most viewers have felt that.
"""

from __future__ import annotations

from decimal import ROUND_HALF_EVEN, Decimal

from producer.basics.figures import NO_BREAK, figure
from producer.model.opinion import SURE, UNLIKELY, PhaseOpinion
from producer.model.words import Effect

TIMES = "\u00d7"
SMALLEST = 0.05  # halves of a percent; below it a size is told as `under 0.1`
DEPENDS = "depends on the car"
_MOST = 20  # percent of cross weight beyond which nobody has a feeling for it
_COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_PARTS = (
    (Decimal("0.175"), "a tenth of a percent"),
    (Decimal("0.375"), "a quarter of a percent"),
    (Decimal("0.625"), "half a percent"),
    (Decimal("0.875"), "three quarters of a percent"),
)

_LESS = (
    (0.15, "next to nothing"),
    (0.29, "about a fifth as much"),
    (0.42, "about a third as much"),
    (0.59, "about half as much"),
    (0.8, "about two thirds as much"),
)


def measure(size: float | None, half: float | None) -> float | None:
    """A change of balance in halves of a percent of cross weight, + tighter; None where either is not known.

    `half` is what half a percent does in that part of the corner (`Opinions.half_percent`).
    """
    return size / abs(half) if size is not None and half else None


def times(halves: float) -> str:
    """`1.8×`: so many times what half a percent of cross weight does, whichever way; `under 0.1×`, `16×`."""
    size = abs(halves)
    if size < SMALLEST:
        return f"under{NO_BREAK}0.1{TIMES}"
    return f"{figure(Decimal(str(size)), 1 if size < 9.95 else 0)}{TIMES}"


def as_cross_weight(halves: float) -> str:
    """The same in words: `as much as half a percent of cross weight`, `more than ... of cross weight would do`."""
    if _beyond(halves):
        return f"more than {_MOST}{NO_BREAK}percent of cross weight would do"
    return f"as much as {_percent(Decimal(str(abs(halves))) / 2)} of cross weight"


def in_words(halves: float) -> str:
    """`about as much as half a percent of cross weight`; `hardly enough to feel`."""
    if abs(halves) < SMALLEST:
        return "hardly enough to feel"
    return as_cross_weight(halves) if _beyond(halves) else f"about {as_cross_weight(halves)}"


def how_sure(opinion: PhaseOpinion, effect: Effect) -> str:
    """What the model makes of an effect that somebody else states; it stands after `;` or a colon.

    `the model agrees (99 of 100 cars)`, `the model agrees (all cars)`, `the model: depends on the car (60 of 100)`,
    `the model is against it (97 of 100 cars)`, `the model: nothing happens`.
    """
    share = opinion.agreement(effect)
    if share >= SURE:
        return f"the model agrees ({_cars(share)})"
    if opinion.sure is None:
        return f"the model: {DEPENDS} ({of_hundred(share)})"
    if opinion.sure == "none":
        return "the model: nothing happens"
    return f"the model is against it ({_cars(opinion.agreement(opinion.sure))})"


def agreeing(agreement: float | None) -> str:
    """The same where only the share is known: `the chassis model agrees in nearly all plausible cars`; "" for None."""
    if agreement is None:
        return ""
    if agreement >= SURE:
        return "the chassis model agrees in nearly all plausible cars"
    if agreement <= UNLIKELY:
        return "the chassis model disagrees in nearly all plausible cars"
    return f"by the chassis model it {DEPENDS} ({of_hundred(agreement)} agree)"


def of_hundred(share: float) -> str:
    """`97 of 100`."""
    return f"{hundredths(share)} of 100"


def hundredths(share: float) -> int:
    """A share in hundredths; one that is not whole is never rounded to all or to none."""
    rounded = round(100 * share)
    if 0 < share < 1:
        return min(99, max(1, rounded))
    return rounded


def fold(ratio: float) -> str:
    """How many times as much, in words: `about twice as much`, `about half as much`, `about as much`."""
    if ratio < 0.8:
        return next(words for below, words in _LESS if ratio < below)
    if ratio < 1.25:
        return "about as much"
    halves = round(2 * ratio)
    whole = _COUNTS[halves // 2] if halves // 2 < len(_COUNTS) else str(halves // 2)
    if halves % 2 and ratio < 10:
        return f"about {whole} and a half times as much"
    return "about twice as much" if halves == 4 else f"about {whole} times as much"


def of_cars(share: float) -> str:
    """`97 of 100 plausible cars`, `all plausible cars`."""
    return "all plausible cars" if share == 1 else f"{of_hundred(share)} plausible cars"


def _beyond(halves: float) -> bool:
    return abs(halves) / 2 > _MOST


def _cars(share: float) -> str:
    return "all cars" if share == 1 else f"{of_hundred(share)} cars"


def _percent(percent: Decimal) -> str:
    for below, words in _PARTS:
        if percent < below:
            return words
    halves = int((percent * 2).quantize(Decimal(1), rounding=ROUND_HALF_EVEN))
    whole = _COUNTS[halves // 2] if halves // 2 < len(_COUNTS) else str(halves // 2)
    return f"{whole} and a half percent" if halves % 2 else f"{whole} percent"
