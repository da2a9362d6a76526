"""Words that mean one thing or another by the words around them."""

from __future__ import annotations

from producer.language.behaviour import TRIGGERS, doing, end_before
from producer.language.effect_words import FEEL
from producer.language.number_words import SMALL, TENS, UNITS
from producer.language.tokens import listed

# "Bump the right front" is a movement, "bump on the right front" a setting.
DOUBTFUL = frozenset({"bump", "bumps"})
_BETTER = listed("better nicer easier freer sooner quicker more sharper crisper harder")
# "So tight" is a degree, "so I took" a joint.
_DEGREED = listed("tight loose free snappy pushy much bad badly hard nervous twitchy edgy stable damn freaking far")
_DEGREES = _DEGREED | {
    phrase for phrase, data in FEEL.items() if " " not in phrase and str(data).find("change") < 0 and phrase[-1] != "s"
}
_TURNING = listed(
    "turn turns turned turning rotate rotates rotated rotating cut cuts cutting point points pointing rolls "
    "steer steers"
)
_WELL = listed("great good well nice awesome perfect perfectly beautifully nicely fine")
_TIGHTENING = listed("tighten tightens tightened tightening loosen loosens loosened loosening")
_OF_A_CAR = listed(
    "car cars thing entry middle center centre exit corner whole race balance handling apex turn way mid right left "
    "chassis"
)
_ENDS_OF_IT = listed("rear back tail nose front end")
_HELPS = listed("help helps helped lose loses losing lost")
_SOME = listed("the that with my a your bit little some of most lot all any its this")
_COMPLAINTS = listed("tight loose push understeer oversteer looseness tightness snap wiggle twitch")
# Tight or loose, and no car; and what people are, too.
_OTHER_NOUNS = listed(
    "radius line lines race races racing field pack bunch group fit budget clamp screw bolt lug schedule edit battle "
    "finish bend quarters squeeze crew ship lid lips ends change"
)
_MOODS = listed("nervous calm edgy steady stable free jumpy")
_COMES = listed("come comes coming came")
_KEEPING = listed("keep keeps kept keeping")
# Kinds that give way to what the car does.
_PLAIN_KINDS = frozenset({"word", "cure", "move", "put", "take", "out", "feel", "correct", "neg"})
_GEARS = listed("top first second third fourth fifth sixth high low next my your riding landing")


def driven(text: list[str], at: int, size: int, kind: str, data: object) -> tuple[int, str, object]:
    """What words mean by those around them, as (number of words, kind, data): "so tight", "turns a lot better"."""
    word = text[at]
    if word in TRIGGERS and kind in _PLAIN_KINDS:
        found = doing(text, at)
        if found is not None and found[0] >= size:
            return found[0], "feel", found[1]
    if kind == "feel":
        return (size, "word", None) if _of_no_car(text, at, size) else (size, kind, data)
    if word in _HELPS and _of_a_complaint(text, at + 1):
        return 1, "cure", None
    if kind == "cure" and size == 1 and _persists(text, at):
        return 1, "word", None
    if size > 1 or kind not in {"word", "sep", "move", "out"}:
        return size, kind, data
    if word == "so":
        degree = text[at + 1 : at + 2] and text[at + 1] in _DEGREES
        return (1, "word", None) if degree else (size, kind, data)
    if word in _WELL and _turned_well(text[max(0, at - 2) : at]):
        return 1, "feel", (-1, "change")
    if word in _BETTER and not _TURNING.isdisjoint(text[max(0, at - 5) : at]):
        return 1, "feel", (-1, "change")
    return size, kind, data


def _of_no_car(text: list[str], at: int, size: int) -> bool:
    """As in "a tighter radius", "tighten up this intro", "I was so nervous"; or "the nose comes around"."""
    if text[at] in _TIGHTENING and _of_another_thing(text, at + size):
        return True
    before = text[at - 1] if at else ""
    if text[at] in {"spin", "spins"} and (before[-1:].isdigit() or before in SMALL):
        return True  # "race 2: P5, 1 spin"
    if text[at] in _COMES and end_before(text, at) == "front":
        return True
    after = text[at + size] if at + size < len(text) else ""
    if after in _OTHER_NOUNS or (after == "the" and not _OTHER_NOUNS.isdisjoint(text[at + size + 1 : at + size + 2])):
        return True
    return text[at] in _MOODS and not {"i", "we"}.isdisjoint(text[max(0, at - 6) : at])


def _of_another_thing(text: list[str], at: int) -> bool:
    """As in "tighten up this intro"."""
    while at < len(text) and text[at] in {"up", "down"}:
        at += 1
    if at + 1 >= len(text) or text[at] not in {"this", "that", "my", "your", "the", "these"}:
        return False
    return text[at + 1] not in _OF_A_CAR and text[at + 1] not in _ENDS_OF_IT


def _of_a_complaint(text: list[str], at: int) -> bool:
    """As in "helps the push", "helps tight middle"."""
    while at < len(text) and text[at] in _SOME:
        at += 1
    return at < len(text) and text[at] in _COMPLAINTS and text[at + 1 : at + 2] != ["it"]


def _turned_well(before: list[str]) -> bool:
    """As in "turns great", "rotates really well"; "turn as well" is said of less."""
    verbs = {"turns", "rotates", "turn", "rotate"}
    return before[-1:] != ["as"] and not verbs.isdisjoint(before)


def _persists(text: list[str], at: int) -> bool:
    """As in "it just kept coming around", "keeps pushing": no remedy, it goes on."""
    if text[at] not in _KEEPING:
        return False
    after = text[at + 1 : at + 3]
    if after and after[0] in {"on", "wanting", "trying", "just"}:
        return True
    return bool(after) and after[0].endswith("ing") and len(after[0]) > 4


def other_sense(text: list[str], at: int, length: int) -> bool:
    """Whether a garage's word means something else here: "bump it up", "the rear end steps out", "third gear"."""
    word = text[at + length - 1]
    before = text[at - 1] if at else ""
    after = text[at + length] if at + length < len(text) else ""
    if length == 1 and word in DOUBTFUL:
        return after in {"the", "it", "that", "this", "up", "down", "my", "both", "your"} or not (
            at == 0 or before in {"of", "front", "rear", "lf", "rf", "lr", "rr", ",", "more", "less"}
        )
    if text[at : at + length] == ["rear", "end"]:
        near = [*text[max(0, at - 3) : at], *text[at + length : at + length + 4]]
        return not any(map(_ratio_like, near))
    if word in {"gear", "gears"}:
        return before in _GEARS
    if word == "tape":
        return after == "of" or before in {"red", "duct", "video"}
    if word == "cross":
        measured = before in UNITS or before[-1:].isdigit() or before in {"half", "more", "less", "of"}
        return after in {"the", "over", "your", "my"} and not measured
    return False


def _ratio_like(word: str) -> bool:
    """Whether a word can be part of a gear: "3.80", "390", "ninety", "eleven"; "one" and "2" name turns."""
    return word in TENS or word == "hundred" or SMALL.get(word, 0) > 9 or (word[0].isdigit() and len(word) > 2)
