"""What the car or one end of it does, put together from classes of words: who, and does what.

Common practice, no source.

"The rear slides" is loose, "the nose slides" tight; "keeps the back end underneath you" is tighter, "keeps the nose
down" looser; "helps the front bite" and "it will not turn" are read the same way, whatever verb of its class stands
there.
"""

from __future__ import annotations

from producer.language.tokens import listed

# (number of words, (polarity, kind)) as in `effect_words`.
Doing = tuple[int, tuple[int, str]]

_IRREGULAR = {
    "slide": "slid", "hang": "hung", "swing": "swung", "stick": "stuck", "bite": "bit", "dig": "dug", "cut": "cut",
    "keep": "kept", "hold": "held", "put": "put", "get": "got", "let": "let", "make": "made", "break": "broke",
    "set": "set", "sit": "sat", "tie": "tied", "steer": "steered", "wander": "wandered", "run": "ran",
}  # fmt: skip
_VOWELS = frozenset("aeiou")


def inflected(bases: str) -> frozenset[str]:
    """Every form of the verbs of a text: "slip" gives slip, slips, slipping, slipped."""
    return frozenset(form for base in bases.split() for form in _forms(base))


def _forms(base: str) -> tuple[str, ...]:
    third = base + ("es" if base[-2:] in {"sh", "ch", "ss"} or base[-1] in "xo" else "s")
    stem = base
    if base[-1] == "e" and base[-2:] != "ee":
        stem = base[:-1]
    elif len(base) < 6 and base[-1] not in _VOWELS | set("wxy") and base[-2] in _VOWELS and base[-3] not in _VOWELS:
        stem = base + base[-1]
    ing = "tying" if base == "tie" else f"{stem}ing"
    return base, third, ing, _IRREGULAR.get(base, f"{stem}ed")


_REARS: tuple[tuple[str, ...], ...] = tuple(
    tuple(one.split())
    for one in (
        "rear of the car", "back of the car", "rear of it", "back of it", "back half",
        "rear end", "back end", "tail end", "rear tires", "rear tyres", "rear",
        "back", "tail", "butt", "rears",
    )
)  # fmt: skip
_NOSES: tuple[tuple[str, ...], ...] = tuple(
    tuple(one.split())
    for one in ("front of the car", "front of it", "front end", "front tires", "front tyres", "nose", "front", "fronts")
)
_ENDS = tuple((one, "rear") for one in _REARS) + tuple((one, "front") for one in _NOSES)
_FIRST = frozenset(one[0] for one, _ in _ENDS)
_DETERMINERS = listed("the my your its that this our their a whole")
_CAR = listed("it car she her thing everything")
_CARS = listed("it she car thing nose")
_PARTS = listed(
    "spring springs bar weight split gear pressure pressures shock shocks percentage bias rebound compression "
    "camber toe stretch straight of to in row page pages sway brake"
)
_SLIDES = inflected("slide kick hang swing drift wash slip skate hop dance wander float skip chatter jump walk shuffle")
# Tight where they go up the track or straight on.
_GOES = inflected("drive run go climb push slide drift wash skate walk float head sail shove") | listed("went driven")
_OUTSIDE = tuple(
    tuple(one.split()) for one in (
        "up the track", "up the hill", "up the banking", "up the racetrack", "up to the wall", "up into the wall",
        "to the wall", "out to the wall", "toward the wall", "towards the wall", "up the bank", "up a lane",
        "straight on", "straight ahead",
    )
)  # fmt: skip
_PASSES = inflected("pass beat chase")
# Loose, whichever end is said to do it.
_DARTS = inflected("dart wag snap step wiggle twitch")
_STICKS = inflected("stick bite grip dig settle behave hook hold")
_STAYS = inflected("stay sit remain")
_KEEPS = inflected("keep hold")
_CALMS = inflected("plant settle calm pin tame steady stabilize stabilise secure glue tie quiet")
_PINS = inflected("plant pin glue stick tie")
_HELPS = inflected("help get let make allow")
_TURNS = listed("turn rotate cut point pivot arc steer bend")
# Only these words can start what is read here.
TRIGGERS = frozenset().union(
    _KEEPS, _CALMS, _PINS, _HELPS, _STAYS, _GOES, _STICKS, _PASSES, _DARTS, _SLIDES, {"turn", "light"}
)  # fmt: skip
_PLACES = listed(
    "under underneath planted down behind stuck put straight stable settled hooked calm glued still pinned tied "
    "in-line secure steady quiet tucked"
)
_LONG_PLACES = tuple(
    tuple(one.split()) for one in (
        "in line", "on the ground", "in check", "in place", "with me", "with you", "in the track", "in the ground",
        "where it should be", "where it belongs", "from getting light",
    )
)  # fmt: skip
_ADVERBS = listed("right nice nicely more better all really just a lot much so kind of where good well very nice and")
_REFUSING = listed(
    "not never won't doesn't don't didn't wouldn't can't couldn't cannot isn't refuse refuses refused hardly barely"
)
_WANTING = listed(
    "want wants wanting wanted never refuse refuses refused able hard 'll lets let makes make gets get helps help "
    "seems seem used willing ready reluctant slow"
)
_TURNED = listed("this it the on off up down your my around left right over into one two three four 1 2 3 4 a that out")
_BEFORE_TURN = listed("gonna to ever even would 'll can will it car she just really actually still also nose")
# Before "grip", "bite" and "hold" these make nouns of them.
_NOUNED = listed("a the little more less some of for no any good much side front rear extra that better enough")
_BREAKS = frozenset(",;:()")


def doing(text: list[str], at: int) -> Doing | None:
    """What starts at the word `at`, as a feel of the lexicon; None where nothing of the kind does."""
    word = text[at]
    if word in _KEEPS or word in _CALMS or word in _PINS:
        found = (_kept(text, at) if word in _KEEPS else None) or _calmed(text, at)
        if found is not None:
            return found
    if word in _HELPS:
        return _helped(text, at)
    if word in _STAYS and text[at + 1 : at + 2] and text[at + 1] in _PLACES:
        return 2, (-1 if end_before(text, at) == "front" else 1, "change")
    if word == "turn":
        return (1, (-1, "change")) if _turns(text, at) else None
    return _slipping(text, at)


def _slipping(text: list[str], at: int) -> Doing | None:
    """As in "the nose washes", "drives up the track", "the back passes me", "the rear sticks"."""
    word = text[at]
    if word in _GOES and _up_the_track(text, at + 1):
        return 1, (1, "state")
    if word == "light":
        end = end_before(text, at)
        return (1, (-1 if end == "rear" else 1, "state")) if end else None
    pushed = _end_at(text, at + 1)[0] if word in _SLIDES else ""
    if pushed:
        return 1, (1 if pushed == "front" else -1, "state")  # "sliding the rear tires"
    sticks = word in _STICKS and not (at and text[at - 1] in _NOUNED)
    passes = word in _PASSES and text[at + 1 : at + 2] in (["me"], ["you"], ["the"])
    if not (sticks or passes or word in _DARTS or word in _SLIDES):
        return None
    end = end_before(text, at)
    if not end or (passes and end == "front"):
        return None
    if sticks:
        return 1, (1 if end == "rear" else -1, "change")
    return 1, (1 if word in _SLIDES and end == "front" else -1, "state")


def _end_at(text: list[str], at: int) -> tuple[str, int]:
    """The end of the car named from the word `at`, past its article: ("rear", next place), or ("", at)."""
    begin = at
    while begin < len(text) and text[begin] in _DETERMINERS and begin - at < 2:
        begin += 1
    if begin >= len(text) or text[begin] not in _FIRST:
        return "", at
    for form, end in _ENDS:
        after = begin + len(form)
        if tuple(text[begin:after]) == form and (text[after : after + 1] or [""])[0] not in _PARTS:
            return end, after
    return "", at


def end_before(text: list[str], at: int) -> str:
    """The end of the car that a verb at `at` is said of."""
    for back in range(at - 1, max(-1, at - 8), -1):
        word = text[back]
        if word in _BREAKS or word in {"it", "which", "he"}:
            return ""
        if word not in _FIRST and word not in {"end", "tires", "tyres"}:
            continue
        before = text[back - 1] if back else ""
        if word in {"back", "front"} and before not in _DETERMINERS and back:
            continue
        if before in {"left", "right"}:
            return ""
        end, after = _end_at(text, back)
        if end and after <= at:
            return end
    return ""


def _kept(text: list[str], at: int) -> Doing | None:
    """As in "keeps the rear underneath you", "keeps it planted"; "keeps the rear from ..." is a remedy."""
    end, after = _end_at(text, at + 1)
    if not end:
        look = at + 1
        while look < len(text) and text[look] in _DETERMINERS:
            look += 1
        if text[look : look + 1] and text[look] in _CAR:
            end, after = "car", look + 1
    place = _place(text, after) if end else 0
    return (place - at, (-1 if end == "front" else 1, "change")) if place else None


def _place(text: list[str], at: int) -> int:
    """The word after a place where an end of the car should be, 0 where none stands at `at`."""
    while at < len(text) and text[at] in _ADVERBS:
        at += 1
    for one in _LONG_PLACES:
        if tuple(text[at : at + len(one)]) == one:
            return at + len(one)
    return at + 1 if at < len(text) and text[at] in _PLACES else 0


def _calmed(text: list[str], at: int) -> Doing | None:
    """As in "settles the back end down", "pins the nose"."""
    begin = at + 2 if text[at + 1 : at + 2] in (["down"], ["up"]) else at + 1
    end, after = _end_at(text, begin) if text[at] in _CALMS or text[at] in _PINS else ("", begin)
    if not end or (end == "front" and text[at] not in _PINS) or (begin == after - 1 and text[begin] == "back"):
        return None
    if text[after : after + 1] in (["down"], ["up"], ["in"]):
        after += 1
    return after - at, (1 if end == "rear" else -1, "change")


def _helped(text: list[str], at: int) -> Doing | None:
    """As in "helps the nose bite", "lets it rotate", "gets the back end to stick"."""
    end, after = _end_at(text, at + 1)
    if not end:
        look = at + 1
        while look < len(text) and text[look] in _DETERMINERS:
            look += 1
        if not (text[look : look + 1] and text[look] in _CAR):
            return None
        end, after = "car", look + 1
    if text[after : after + 1] == ["to"]:
        after += 1
    verb = text[after] if after < len(text) else ""
    following = text[after + 1] if after + 1 < len(text) else ""
    if verb in _TURNS and not (verb == "turn" and (following in _TURNED or following == "in")) and end != "rear":
        return after + 1 - at, (-1, "change")
    if verb in _STICKS and end != "car":
        return after + 1 - at, (1 if end == "rear" else -1, "change")
    return None


def _up_the_track(text: list[str], at: int) -> bool:
    """As in "drive right up the track"."""
    while at < len(text) and text[at] in {"right", "all", "way", "straight", "on", "just", "out", "the", "me"}:
        if text[at : at + 2] in (["straight", "on"], ["straight", "ahead"]):
            break
        at += 1
    return any(tuple(text[at : at + len(one)]) == one for one in _OUTSIDE)


def _turns(text: list[str], at: int) -> bool:
    """Whether "turn" is what the car does or won't do: "it doesn't want to turn", "the car will not turn"."""
    before = text[at - 1] if at else ""
    after = text[at + 1 : at + 4]
    off_the_corner = after[:3] in (["off", "the", "corner"], ["off", "the", "turn"]) or after[:2] == ["off", "of"]
    if after and after[0] in _TURNED and not off_the_corner:
        return False
    near = text[max(0, at - 5) : at]
    if at + 1 == len(text) and _REFUSING.isdisjoint(near):
        return False
    if before == "to" and at > 1 and text[at - 2] in {"want", "wanted"} and {"you", "i", "we"} & set(near[:-2]):
        return False  # "if you want it to turn"
    if before == "to" and at > 1 and text[at - 2] in {"it", "car", "her"} and {"want", "wanted"} & set(near):
        return False
    if before in _REFUSING:
        return not {"i", "you", "we", "he", "they"} & set(text[max(0, at - 3) : at])
    return before in _BEFORE_TURN and not (_WANTING | _REFUSING).isdisjoint(near)
