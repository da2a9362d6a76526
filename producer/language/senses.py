"""Words that mean one thing or another by the words around them."""

from __future__ import annotations

from producer.language.number_words import SMALL, TENS
from producer.language.tokens import listed

# "Bump the right front" is a movement, "bump on the right front" a setting.
DOUBTFUL = frozenset({"bump", "bumps"})
_BETTER = listed("better nicer easier freer sooner quicker more sharper crisper harder")
# "So tight" is a degree, "so I took" a joint.
_DEGREED = listed("tight loose free snappy pushy much bad badly hard nervous twitchy edgy stable damn freaking far")
_TURNING = listed(
    "turn turns turned turning rotate rotates rotated rotating cut cuts cutting point points pointing rolls "
    "steer steers"
)
_SLIDES = listed(
    "slide slides sliding slid kick kicks kicking kicked swing swings swinging hang hangs hanging drift drifts "
    "drifting wash washes washing slip slips slipping skate skates skating hop hops hopping dance dances "
    "dancing wander wanders"
)
_PARTS = listed("spring springs bar weight split gear pressure pressures shock shocks percentage bias")
_REARS = listed("rear back tail butt")
_NOSES = listed("nose front")
_TURNED = listed("this it the on off up down your my around left right over into one two three four 1 2 3 4 a that")
_GEARS = listed("top first second third fourth fifth sixth high low next my your riding landing")


def driven(text: list[str], at: int, size: int, kind: str, data: object) -> tuple[str, object]:
    """Words that are an effect by what stands before them: "the rear slides", "turns a lot better", "want to turn"."""
    word = text[at]
    if size > 1 or kind not in {"word", "sep", "move", "out"}:
        return kind, data
    before = text[max(0, at - 5) : at]
    if word == "so":
        return ("word", None) if text[at + 1 : at + 2] and text[at + 1] in _DEGREED else (kind, data)
    if word in _BETTER and not _TURNING.isdisjoint(before):
        return "feel", (-1, "change")
    if word in _SLIDES:
        for back in range(at - 1, max(-1, at - 6), -1):
            if (
                text[back] in _REARS | _NOSES
                and text[back - 1] not in {"left", "right"}
                and text[back + 1] not in _PARTS
            ):
                return "feel", (-1 if text[back] in _REARS else 1, "state")
    if word == "turn" and text[at - 1 : at] in (["to"], ["ever"], ["even"], ["would"], ["'ll"], ["can"], ["it"]):
        wanted = not {"want", "wants", "wanting", "never", "won't", "refuse", "refuses", "able", "hard", "'ll", "lets",
                      "let", "makes", "make", "gets", "get", "helps"}.isdisjoint(before)  # fmt: skip
        if wanted and text[at + 1 : at + 2] and text[at + 1] not in _TURNED:
            return "feel", (-1, "change")
    return kind, data


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
    if word == "cross":
        return after in {"the", "over", "your", "my"}
    return False


def _ratio_like(word: str) -> bool:
    """Whether a word can be part of a gear: "3.80", "390", "ninety", "eleven"; "one" and "2" name turns."""
    return word in TENS or word == "hundred" or SMALL.get(word, 0) > 9 or (word[0].isdigit() and len(word) > 2)
