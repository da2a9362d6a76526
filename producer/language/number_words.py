"""The words that numbers are made of: a small table of our own.

text2num reads plain number words well and fast (2 to 3 microseconds a sentence), but it gives back rewritten text
or whole numbers, joins "seven hundred seven fifty" where the trade says two springs, and takes "one" wherever it
stands. A reading here needs the groups that were said ("twelve", "twenty-five") and their places, so the groups come
from this table; text2num stays as the referee in tests.
"""

from __future__ import annotations

from decimal import Decimal

from producer.language.tokens import listed

_UNDER_TWENTY = """zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen
seventeen eighteen nineteen"""
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety"
SMALL: dict[str, int] = {word: value for value, word in enumerate(_UNDER_TWENTY.split())}
TENS: dict[str, int] = {word: value * 10 for value, word in enumerate(_TENS.split(), start=2)}
OH = frozenset({"oh", "o"})
PARTS: dict[str, Decimal] = {
    "half": Decimal("0.5"), "halves": Decimal("0.5"), "quarter": Decimal("0.25"), "quarters": Decimal("0.25"),
    "eighth": Decimal("0.125"), "eighths": Decimal("0.125"), "sixteenth": Decimal("0.0625"),
    "sixteenths": Decimal("0.0625"),
}  # fmt: skip
VULGAR: dict[str, Decimal] = {
    "½": Decimal("0.5"), "¼": Decimal("0.25"), "¾": Decimal("0.75"), "⅛": Decimal("0.125"),
    "⅜": Decimal("0.375"), "⅝": Decimal("0.625"), "⅞": Decimal("0.875"),
}  # fmt: skip
ORDINALS = listed(
    "first second third fourth fifth sixth seventh ninth tenth eleventh twelfth thirteenth fourteenth fifteenth "
    "seventeenth eighteenth nineteenth twentieth thirtieth st nd rd th"
)
# What stands after a number and says what it counts. `click`, `step` and `point` count places of a grid.
UNITS: dict[str, str] = {
    "pound": "lb", "pounds": "lb", "lb": "lb", "lbs": "lb", "lb/in": "lb/in", "lbs/in": "lb/in", "n/mm": "N/mm",
    "psi": "psi", "kpa": "kPa", "percent": "%", "%": "%", "inch": "in", "inches": "in", '"': "in",
    "millimeter": "mm", "millimeters": "mm", "millimetre": "mm", "millimetres": "mm", "mm": "mm", "click": "click",
    "clicks": "click", "step": "step", "steps": "step", "notch": "step", "notches": "step", "point": "point",
    "points": "point", "degree": "deg", "degrees": "deg", "deg": "deg", "°": "deg", "turns": "turns", "turn": "turns",
}  # fmt: skip
MORE: dict[str, int] = {"more": 1, "extra": 1, "additional": 1, "less": -1, "fewer": -1}
# A number beside one of these counts or names something that no garage sets.
FOREIGN_AFTER = listed(
    "lap laps minute minutes second seconds sec hour hours day days week weeks month months year years time times "
    "tenth tenths hundredths thousandths car cars driver drivers people viewers views likes comments subscribers "
    "mph kph rpm revs mile miles foot feet ft yard yards meter meters metre metres gallon gallons gal dollars bucks "
    "euros race races win wins video videos track tracks episode episodes season seasons am pm flat k "
    "set sets setups runs stints tries attempts o'clock lengths place places spots positions pages "
    "hz fps gb of-you pieces parts chunks ways things questions ideas reasons kinds types"
)
FOREIGN_BEFORE = listed(
    "lap laps turn turns episode ep part version v page p position number no season week race car top round "
    "# $ @ chapter heat stage day p5 lane row corner corners minute"
)


def group(text: list[str], at: int) -> tuple[int, int, int] | None:
    """A spoken group below 100 at `at`: (value, digits said, next place): `fifty one` -> (51, 2, at + 2)."""
    if at >= len(text):
        return None
    word = text[at]
    tens = TENS.get(word)
    if tens is not None:
        unit = SMALL.get(text[at + 1], 0) if at + 1 < len(text) else 0
        return (tens + unit, 2, at + 2) if 0 < unit < 10 else (tens, 2, at + 1)
    value = SMALL.get(word)
    if value is not None:
        return value, 1 if value < 10 else 2, at + 1
    if word in OH and at + 1 < len(text) and 0 < SMALL.get(text[at + 1], 0) < 10:
        return SMALL[text[at + 1]], 2, at + 2
    return None
