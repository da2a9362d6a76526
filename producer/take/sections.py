"""The script's sections in the take: where each begins and ends, what was left out, said twice, or moved."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from producer.model.script import Narration
from producer.model.take import Aside, HeardSection, PlacedBy
from producer.take.chain import rising
from producer.take.crossing import Matched, matched, start_of
from producer.take.likeness import ScriptTokens, Tokens
from producer.take.placing import Named
from producer.take.speech import Speech
from producer.take.voting import Place, index, places

_SURE = 0.6  # alike enough to be placed by words alone
_SAME_PLACE = 12  # tokens: two sections cannot begin so close
_AGREE = 2  # words by which the two ways of lining up may differ
_ASIDE_WORDS = 20


@dataclass(frozen=True, slots=True)
class Placed:
    """A section begins at word `at` of the take."""

    at: int
    by: PlacedBy
    confidence: float
    earlier: tuple[int, ...] = ()
    otherwise: int | None = None


@dataclass(frozen=True, slots=True)
class Lined:
    """Script and take lined up: a place for each section, and which words were found in both."""

    placed: tuple[Placed | None, ...]
    matched: Matched
    script: ScriptTokens
    take: Tokens


def line_up(script: ScriptTokens, take: Tokens, named: Sequence[Named | None], shares: Sequence[float | None]) -> Lined:
    """Place every section, by words where they are read, else by what names them.

    `shares`: of each section that has settings how many of them the take says at all, None for the others.
    """
    known = index(take.text)
    edges = (*script.starts, len(script.tokens))
    voted = [places(script.tokens.text[a:b], known) for a, b in pairwise(edges)]
    chosen = _without_clashes(voted, [one is not None and one == 0.0 for one in shares])
    both = matched(script.tokens.text, take.text)
    placed = [
        _placed(chosen[at], voted[at], named[at], both, (edges[at], edges[at + 1]), take) for at in range(len(voted))
    ]
    return Lined(tuple(placed), both, script, take)


def _without_clashes(voted: Sequence[Sequence[Place]], unsaid: Sequence[bool]) -> list[Place | None]:
    """One place a section, the likest first: where two sections claim the same words the other was not said."""
    found: list[Place | None] = [None] * len(voted)
    order = sorted((at for at, some in enumerate(voted) if some), key=lambda at: -max(x.score for x in voted[at]))
    for at in order:
        taken = [one.at for one in found if one is not None]
        free = [one for one in voted[at] if all(abs(one.at - other) > _SAME_PLACE for other in taken)]
        # Hardly alike, and none of its settings is heard: the words of another page.
        if free and not (unsaid[at] and free[-1].score < _SURE):
            found[at] = free[-1]
    return found


def _placed(
    chosen: Place | None,
    voted: Sequence[Place],
    named: Named | None,
    both: Matched,
    tokens: tuple[int, int],
    take: Tokens,
) -> Placed | None:
    if chosen is not None and (chosen.score >= _SURE or named is None):
        earlier = tuple(take.word[one.at] for one in voted if one.at < chosen.at)
        at = take.word[min(chosen.at, len(take) - 1)]
        other = start_of(both, *tokens)
        apart = other is not None and not earlier and abs(other - chosen.at) > _AGREE
        return Placed(at, "words", chosen.score, earlier, take.word[other] if apart and other is not None else None)
    if named is not None:
        return Placed(named.at, "names", named.share, named.earlier)
    return None


def heard_sections(narration: Narration, lined: Lined, speech: Speech) -> tuple[HeardSection, ...]:
    """The sections in the script's order with their times; one lasts until the next one in the take begins."""
    starts = [one.at if one is not None else None for one in lined.placed]
    chain = rising(starts)
    edges = sorted({x for one in lined.placed if one is not None for x in (one.at, *one.earlier)})
    found: list[HeardSection] = []
    for number, (section, one) in enumerate(zip(narration.sections, lined.placed, strict=True)):
        if one is None:
            found.append(HeardSection(section.id, section.title, None, None, "nothing", 0.0))
            continue
        end = next((x for x in edges if x > one.at), len(speech))
        found.append(
            HeardSection(
                section.id, section.title, speech.ms(one.at), speech.ms(end), one.by, round(one.confidence, 2),
                tuple(speech.ms(x) for x in one.earlier),
                None if one.otherwise is None else speech.ms(one.otherwise),
                number not in chain,
            )
        )  # fmt: skip
    return tuple(found)


def word_spans(lined: Lined, length: int) -> list[tuple[int, int] | None]:
    """The words of each section in the take, the last one exclusive; None for what was left out."""
    edges = sorted({x for one in lined.placed if one is not None for x in (one.at, *one.earlier)})
    return [None if one is None else (one.at, next((x for x in edges if x > one.at), length)) for one in lined.placed]


def asides(lined: Lined, speech: Speech) -> tuple[Aside, ...]:
    """Stretches that stand nowhere in the script; none where the take is talked from notes and not read."""
    if lined.matched.count * 2 < len(lined.script.tokens):
        return ()
    hit = set(lined.matched.take_of)
    again = _said_before(lined, len(speech))
    found: list[Aside] = []
    first: int | None = None
    for at in range(len(lined.take) + 1):
        strange = at < len(lined.take) and at not in hit and not any(a <= lined.take.word[at] < b for a, b in again)
        if strange and first is None:
            first = at
        elif not strange and first is not None:
            if at - first >= _ASIDE_WORDS:
                begin, end = lined.take.word[first], lined.take.word[at] if at < len(lined.take) else len(speech)
                found.append(Aside(speech.ms(begin), speech.ms(end), speech.text(begin, end)))
            first = None
    return tuple(found)


def _said_before(lined: Lined, length: int) -> list[tuple[int, int]]:
    """The words of what was said again later."""
    edges = sorted({x for one in lined.placed if one is not None for x in (one.at, *one.earlier)})
    return [
        (x, next((edge for edge in edges if edge > x), length))
        for one in lined.placed
        if one is not None
        for x in one.earlier
    ]
