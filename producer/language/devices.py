"""What a viewer plays with: a wheel, a pad, a keyboard. A wheel that was lost and brake pads are none."""

from __future__ import annotations

from collections.abc import Sequence

from producer.language.tokens import listed
from producer.model.message import Device

_NAMES: dict[str, Device] = {
    "wheel": "wheel", "pad": "pad", "controller": "pad", "gamepad": "pad", "joypad": "pad", "joystick": "pad",
    "keyboard": "keyboard", "keys": "keyboard", "thumbstick": "pad", "thumbsticks": "pad", "sticks": "pad",
    "controler": "pad", "kb": "keyboard",
}  # fmt: skip
_WITH = listed("on with using use used uses run running play playing drive driving got have own via race racing")
_BETWEEN = listed(
    "dollar euro buck pound "
    "a an my the just only old cheap new basic game racing direct drive belt gear driven entry level both g m x n /"
)
_AFTER = listed("user users player players here driver drivers guy racer racers gang kid only dude noob gamer")
_ENDS = listed(", . ! ? ; : ( ) and so but if help any what how plz please lol - / btw")
_NOT_MINE = listed("you your do does did he his her they their for")
_DENIED = listed("not no without isn't don't never")
_OTHER_AFTER = listed("pads bearing nut spin lock width base stand well hop house works gap alignment force feedback")


def device(text: Sequence[str]) -> tuple[Device, int] | None:
    """The sender's device and the place of its word in `text` (mended words); None where none or two are said."""
    found: list[tuple[Device, int]] = []
    for at, word in enumerate(text):
        name = _NAMES.get(word)
        if name is None and word == "game" and text[at + 1 : at + 2] == ["pad"]:
            name = "pad"
        if name is not None and _mine(text, at) and not _another_s(text, at):
            found.append((name, at))
    return found[0] if len({name for name, _ in found}) == 1 else None


def _mine(text: Sequence[str], at: int) -> bool:
    """Whether it is said to be played with, or stands alone as an answer."""
    after = text[at + 1] if at + 1 < len(text) else "."
    if after in _AFTER:
        return True
    if after in _OTHER_AFTER:
        return False
    back = at - 1
    while back >= 0 and at - back < 5 and (text[back] in _BETWEEN or text[back][0].isdigit()):
        back -= 1
    before = text[back] if back >= 0 else "."
    if before in _WITH:
        return text[at] not in {"keys", "sticks"} or before in {"on", "with", "using"}
    if after in {"n", "and", "&"} and text[at + 2 : at + 3] == ["pedals"]:
        return True
    alone = back == at - 1 and before in _ENDS and (after in _ENDS or after[0] in ".!?")
    return alone and not _or_other(text, at)


def _or_other(text: Sequence[str], at: int) -> bool:
    return "or" in text[max(0, at - 1) : at + 2]


def _another_s(text: Sequence[str], at: int) -> bool:
    """As in "do you use a wheel?", "not on a wheel", "is it for a wheel or a pad?"."""
    if _or_other(text, at) or "or" in text[max(0, at - 3) : at + 3]:
        return True
    before = list(text[max(0, at - 8) : at])
    clause = [at for at, word in enumerate(before) if word in {",", ".", "?", "!", ";", "but", "i"}]
    before = before[clause[-1] + 1 :] if clause else before
    return not _NOT_MINE.isdisjoint(before) or not _DENIED.isdisjoint(before)
