"""Which way a setting is said to have gone, against the way its figures went."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise

from producer.language.tokens import listed
from producer.model.words import Direction, direction_of
from producer.take.heard import Heard
from producer.take.judging import UNSURE, Judge
from producer.take.sentences import Sentence
from producer.take.speech import Speech

_FIRM = UNSURE | {"general", "then"}
# A movement is a fact where it is compared with something, or told by whoever made it.
_COMPARED = listed("default default's garage stock standard baseline")
_ORDERS = listed("take put add drop raise lower go bring move let try give pull bump reduce increase soften stiffen")
_MINE = listed("i we i'm we're i've we've")
_LONGEST = 30  # words of a sentence: in a longer one (captions without stops) a movement may be anybody's
_MOVEMENT = 8  # words from one figure of a movement to the other
_UP = listed("up raise raised raises higher increase increased")
_DOWN = listed("down lower lowered lowers drop drops dropped reduce reduced")


@dataclass(frozen=True, slots=True)
class Turned:
    """A movement said the wrong way: `expected` is right. `start` and `end` are the figures where both are said."""

    heard: Heard
    setup: str
    address: str
    said: Direction
    expected: Direction


@dataclass(frozen=True, slots=True)
class FromWrong:
    """A movement told from a figure that it did not come from."""

    heard: Heard
    setup: str
    address: str
    figure: Decimal
    expected: Decimal


@dataclass(frozen=True, slots=True)
class Crossed:
    """ "Down from 500 to 525", its second figure at word `at`: the words say `said`, the figures `there`."""

    at: int
    said: Direction
    there: Direction
    start: Decimal
    end: Decimal


def turned(heard: Speech, said: Sequence[Heard], judge: Judge, sentences: Sequence[Sentence]) -> Iterator[Turned]:
    """Movements said the wrong way, firmly and of one setting."""
    for one in said:
        way = one.claim.direction
        if way is None or one.advice or one.hedges & _FIRM or not one.sure:
            continue
        if not one.named or _beside_the_point(one, judge):
            continue
        first, last = sentences[one.sentence]
        words = heard.plain[first:last]
        if (
            _ORDERS.intersection(words[:2])
            or last - first > _LONGEST
            or (_COMPARED.isdisjoint(words) and _MINE.isdisjoint(words))
        ):
            continue
        ways = _ways(judge, one, words)
        if ways and way not in ways:
            yield Turned(one, one.setup, one.claim.parameter, way, next(iter(ways)))


def _beside_the_point(one: Heard, judge: Judge) -> bool:
    """Whether a figure is the sheet's and told from nothing: "825, that helps when the sun goes down"."""
    value = judge.sheet(one.setup).value(one.claim.parameter)
    return value is not None and one.claim.frm is None and one.claim.value is not None and abs(value) in one.figures


def _ways(judge: Judge, one: Heard, words: Sequence[str]) -> list[Direction]:
    """The directions from whatever the movement may have started at to the value; () where one of them is none."""
    address = one.claim.parameter
    value = judge.sheet(one.setup).value(address)
    starts = judge.starts(one.setup, address)
    if not {"default", "garage", "stock"}.isdisjoint(words):
        setting = judge.sheet(one.setup).garage.settings.get(address)
        starts = {setting.default} if setting and setting.default is not None else starts
    if value is None:
        return []
    found = [direction_of(value - start) for start in sorted(starts) if start != value]
    return list(dict.fromkeys(x for x in found if x is not None))


def from_wrong(said: Sequence[Heard], judge: Judge) -> Iterator[FromWrong]:
    """Where a movement to the right figure is told from one that it did not come from."""
    for one in said:
        claim = one.claim
        if claim.frm is None or claim.to is None or one.advice or one.hedges & UNSURE or not one.sure:
            continue
        sheet = judge.sheet(one.setup)
        value, starts = sheet.value(claim.parameter), judge.starts(one.setup, claim.parameter)
        # The sign may be left out: "from three and a half of camber".
        if value is None or abs(claim.to) != abs(value) or not starts or abs(claim.frm) in {abs(x) for x in starts}:
            continue
        base = sheet.garage.value_of(claim.parameter, sheet.base)
        yield FromWrong(one, one.setup, claim.parameter, claim.frm, base if base is not None else min(starts))


def crossed(heard: Speech, said: Sequence[tuple[int, tuple[Decimal, ...]]]) -> Iterator[Crossed]:
    """Movements whose words and figures disagree. `said`: (word, readings) of the take's figures."""
    for (first, starts), (second, ends) in pairwise(said):
        between, before = heard.plain[first:second], heard.plain[max(0, first - 4) : first]
        if second - first > _MOVEMENT or "to" not in between or "from" not in before or not (starts and ends):
            continue
        words = {*between, *before}
        ways: list[Direction] = []
        if words & _UP:
            ways.append("raise")
        if words & _DOWN:
            ways.append("lower")
        there = direction_of(ends[0] - starts[0])
        if len(ways) == 1 and there is not None and ways[0] != there:
            yield Crossed(second, ways[0], there, starts[0], ends[0])
