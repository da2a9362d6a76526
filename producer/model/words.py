"""The fixed words of the trade: corners of the car, parts of a corner, feels."""

from __future__ import annotations

from decimal import Decimal
from typing import Literal, NamedTuple

Corner = Literal["lf", "rf", "lr", "rr"]
End = Literal["left", "right"]
Phase = Literal["entry", "middle", "exit"]
Feel = Literal["tight", "loose"]
Effect = Literal["tighter", "looser", "none"]
Direction = Literal["raise", "lower"]
HowMuch = Literal["little", "plain", "very"]

CORNERS: tuple[Corner, ...] = ("lf", "rf", "lr", "rr")
ENDS: tuple[End, ...] = ("left", "right")
PHASES: tuple[Phase, ...] = ("entry", "middle", "exit")
FEELS: tuple[Feel, ...] = ("tight", "loose")
CORNER_NAMES: dict[str, str] = {
    "lf": "left front", "rf": "right front", "lr": "left rear", "rr": "right rear",
    "left": "left end", "right": "right end",
}  # fmt: skip
SPLITS: dict[str, tuple[Corner, Corner]] = {"front_split": ("rf", "lf"), "rear_split": ("rr", "lr")}
_MUCH: dict[str, HowMuch] = {"a little": "little", "little": "little", "slightly": "little", "very": "very"}


class Complaint(NamedTuple):
    """What a car does wrong: `tight entry`, `very loose exit`; `where` None where nobody said."""

    feel: Feel
    where: Phase | None
    how_much: HowMuch = "plain"

    def __str__(self) -> str:
        much = {"little": "a little ", "plain": "", "very": "very "}[self.how_much]
        return f"{much}{self.feel}{' ' + self.where if self.where else ''}"


def complaint(text: str) -> Complaint:
    """Read `[a little|very] tight|loose [entry|middle|exit]`. Raises ValueError with a sentence for the author."""
    words = " ".join(text.lower().split())
    much: HowMuch = "plain"
    for written, meant in _MUCH.items():
        if words.startswith(written + " "):
            words, much = words[len(written) + 1 :], meant
            break
    parts = words.split(" ")
    feel = next((one for one in FEELS if one == parts[0]), None)
    where = next((one for one in PHASES if len(parts) == 2 and one == parts[1]), None)
    if feel is None or len(parts) > 2 or (len(parts) == 2 and where is None):
        raise ValueError(f"'{text[:40]}' is not a feel like 'loose entry' or 'very tight exit'")
    return Complaint(feel, where, much)


def sign(number: Decimal) -> int:
    """-1, 0 or 1."""
    return (number > 0) - (number < 0)


def direction_of(difference: Decimal) -> Direction | None:
    """`raise` for a larger number in the garage, `lower` for a smaller one, None for no movement."""
    return "raise" if difference > 0 else "lower" if difference < 0 else None


def turned(effect: Effect, direction: Direction) -> Effect:
    """The effect of the opposite movement where `direction` is `lower`; `none` stays."""
    if direction == "raise" or effect == "none":
        return effect
    return "looser" if effect == "tighter" else "tighter"
