"""What the author's prose says a movement does to the car, where it is plainly said of this reason and no other.

The reader of English finds the effects; here those are left out that may be meant otherwise: conditions, tries and
wishes, another setting or setup, the other direction, another time of the run, a price that is paid. Whoever says
nothing raises no alarm.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from producer.checks.said import UNSURE, Said, Spoken, names_another, statements
from producer.language.feels import Effect, effect
from producer.language.items import Item, items, mention_of
from producer.language.reading import reader
from producer.language.stretches import corrected, stretches, topics, with_conditions
from producer.language.tokens import sentences
from producer.model.words import Direction, Phase, direction_of

# Any of these in a sentence: it is not, or not only, about what this movement does.
_DOUBTFUL = frozenset({"condition", "would", "past", "someone", "compared"})
# Said after an effect these only tell its moment.
_MOMENT = frozenset({"when", "once", "whenever", "soon", "moment", "as"})
# Another time of the run, another day, or as far as one can go.
_OTHERWISE = re.compile(
    r"\b(?:late|later|early on|at first|first|end of (?:a|the)|ends?|old|worn|fresh|new|cold|hot|night|qualifying|race|"
    r"traffic|draft|laps?|fuel|until|till|before|after|too|further|farther|beyond|past|limit|any more|any less|enough|"
    r"otherwise|nothing|neither|nor|hardly|barely|else|unless|instead|without it|opposite|other way|reverse|whichever|"
    r"either|used to|last|got|became)\b",
    re.IGNORECASE,
)
# What a setting costs is not what it is for.
_PRICE = re.compile(
    r"\b(?:price|costs?|pays?|paid|trade|downside|expense|sacrifices?|but|though|although|yet|still|even|only|while|"
    r"whereas|give up|gives up|lose|loses|anyway)\b",
    re.IGNORECASE,
)
# "Keeps coming around" does it again; "keeps it from coming around" cures it.
_GOES_ON = re.compile(r"\b(?:keeps?|kept|keeping)\s+\w+(?:ing|in')\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Felt:
    """One effect in prose: `tighter` or `looser`, in these parts of the corner (() where none is said).

    `span` are characters of the text. `sure` where no word of the sentence speaks of a price or of a rest that stays.
    """

    feel: str
    where: tuple[Phase, ...]
    span: tuple[int, int]
    sure: bool


def felt(text: Spoken, names: dict[str, re.Pattern[str]]) -> Iterator[Felt]:
    """The effects that a reason's text, or its advice's, says of its own movement. `names`: those of the setups."""
    reading = reader(text.garage)
    said = statements(text, reading)
    ours = True
    for sentence in sentences(text.literal):
        row = with_conditions(topics(corrected(items(sentence, reading.vocabulary))))
        own = _about(row, text.subject)
        ours = ours if own is None else own
        around = (sentence.start[0], sentence.end[-1])
        if ours and not _otherwise(row, around, text, said, names):
            yield from _effects(row, text, around)


def _about(row: list[Item], subject: Sequence[str]) -> bool | None:
    """Whether a sentence names what the reason is for (True), something else (False), or no setting (None)."""
    parameters = {one.split(".")[0] for one in subject}
    parts = {one.split(".")[1] for one in subject if "." in one}
    named: bool | None = None
    for one in row:
        if one.kind != "set":
            continue
        mention = mention_of(one)
        if mention.addresses:
            own = set(mention.addresses) <= set(subject)
        elif mention.parameter:
            own = mention.parameter in parameters
        elif mention.split:
            own = any(one.endswith(f"{mention.axle}_split") for one in subject)
        elif mention.parts:
            own = set(mention.parts) <= parts
        else:
            continue
        if not own:
            return False
        named = True
    return named


def _otherwise(
    row: list[Item], around: tuple[int, int], text: Spoken, said: list[Said], names: dict[str, re.Pattern[str]]
) -> bool:
    """Whether what a sentence says may be meant of something else than the movement."""
    if any(one.kind in _DOUBTFUL for one in row) or text.text[around[1] :].lstrip()[:1] == "?":
        return True
    if _OTHERWISE.search(text.text, *around) or names_another(text, around, names):
        return True
    ways = _ways(text)
    for one in said:
        claim = one.statement.claim
        if one.statement.sentence == around and (
            one.statement.hedges & UNSURE or (claim.direction and {claim.direction} != ways)
        ):
            return True
    return any(_turned(row, at, ways) for at in range(len(row)))


def _ways(text: Spoken) -> set[Direction]:
    """Which ways the text's movements go; {} where nothing moved."""
    if text.advice is not None:
        if text.advice.direction is not None:
            return {text.advice.direction}
        starts = [text.sheet.value(one) for one in text.subject]
        stops = text.advice.to[:1]
        return {way for one in starts if one is not None for stop in stops if (way := direction_of(stop - one))}
    moved = text.reason.movements if text.reason else ()
    return {one.direction for one in moved if one.direction is not None}


def _turned(row: list[Item], at: int, ways: set[Direction]) -> bool:
    """Whether an item is a movement that the text's own is not; "less push" moves nothing."""
    one = row[at]
    if one.kind != "move" or not isinstance(one.data, tuple) or one.data[1] == "way":
        return False
    if at + 1 < len(row) and row[at + 1].kind == "feel":
        return False
    return ways != {"raise" if one.data[0] > 0 else "lower"}


def _effects(row: list[Item], text: Spoken, around: tuple[int, int]) -> Iterator[Felt]:
    sure = not _PRICE.search(text.text, *around)
    for stretch, _ in stretches(row):
        found = effect(stretch)
        if found is None or any(one.kind == "than" for one in stretch) or _hangs(row, found) or _after(stretch, found):
            continue
        if not _GOES_ON.search(text.text, found.start, found.end):
            yield Felt("tighter" if found.polarity > 0 else "looser", found.where, (found.start, found.end), sure)


def _hangs(row: list[Item], found: Effect) -> bool:
    """Whether an effect hangs on a condition: an "if" anywhere, a "when" before it."""
    return any(one.kind == "if" and (one.start < found.start or one.word not in _MOMENT) for one in row)


def _after(stretch: list[Item], found: Effect) -> bool:
    """Whether a movement down stands before an effect in its stretch, which may or may not turn it round."""
    before = [one for one in stretch if one.end <= found.start]
    return any(_down(one) for one in before[:-1])


def _down(one: Item) -> bool:
    return one.kind == "move" and isinstance(one.data, tuple) and one.data[0] < 0 and one.data[1] != "way"
