"""The script's sections in the take: where each begins and ends, what was left out, said twice, or moved."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from rapidfuzz.distance import LCSseq

from producer.language.number_words import SMALL
from producer.model.script import Narration
from producer.model.take import Aside, HeardSection, PlacedBy
from producer.take.chain import rising
from producer.take.crossing import Matched, matched, start_of
from producer.take.likeness import ScriptTokens, Tokens
from producer.take.mending import Pair, is_figure, pairs
from producer.take.placing import Named
from producer.take.speech import Speech
from producer.take.voting import Place, index, last_of, places

_HEAD, _COVERED = 60, 0.45  # words of a section's beginning, and the share of them that must agree
_NEAR_START = 5
_LONG_SILENCE_S = 0.8
_LEAD = 6  # words from "Okay, so next is" to the page
_STRETCH, _ECHO = 30, 0.6
_OPENING, _OPENS = 8, 0.5  # the very first words of a section, and the share of them that tells it from an echo
_AGAIN, _UNHEADED = 60, 0.25  # words back to the heading, and the share of it that is there by chance
_TAKEN = 40  # words from the start of a section that is read
_SNAP, _SILENCE_S = 3, 0.4
_SHARED = 0.4  # of the words that agree, so many may be another section's
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
class Read:
    """A section is read from token `at` of the take on.

    `score`: how alike its first words are; `cover`: how much of its beginning agrees; `agreed`: which words.
    """

    at: int
    score: float
    cover: float
    agreed: tuple[Pair, ...]

    def tokens(self) -> set[int]:
        """The tokens of the take that agree."""
        return {token for one in self.agreed for token in range(*one.take)}


@dataclass(frozen=True, slots=True)
class Lined:
    """Script and take lined up: a place for each section, where it is read, and which words were found in both."""

    placed: tuple[Placed | None, ...]
    read: tuple[tuple[Read, ...], ...]
    matched: Matched
    script: ScriptTokens
    take: Tokens


def reads(script: ScriptTokens, take: Tokens) -> list[list[Read]]:
    """Every place where each section is read, in the order of the take, the one that counts last; [] where it is left
    out or told freely.
    """
    known = index(take.text)
    found: list[list[Read]] = []
    for number in range(len(script.starts)):
        first, last = script.section(number)
        begun = _begun(script, number, take, places(script.tokens.text[first:last], known))
        rows: list[Read] = []
        end = len(take)
        # From the last one back: a place that is no reading ends none before it.
        for place in reversed(begun):
            agreed = pairs(script, number, take, place.at, end)
            cover = _cover(agreed, first, min(last, first + max(_OPENING, end - place.at)))
            if cover >= _COVERED:
                rows.append(Read(_begin(agreed, first, place.at, take), place.score, cover, tuple(agreed)))
                end = place.at
        found.append(rows[::-1])
    return _without_clashes(found)


def _begun(script: ScriptTokens, number: int, take: Tokens, some: Sequence[Place]) -> list[Place]:
    """The places where a section is begun, without its own echoes: the second list of corners on a page is like the
    first, but the reading from the first one on has these words in their place already. Where the section's very first
    words are said again it is begun again, however well the rest of it fits the first time.
    """
    runs = [pairs(script, number, take, one.at, len(take)) for one in some] if len(some) > 1 else [[]]
    kept: list[int] = []
    for at, one in enumerate(some):
        own = _hits(runs[at], one.at)
        before = max((_hits(runs[x], one.at) for x in kept), default=-1)
        near = [some[x].at for x in kept if one.at - some[x].at <= _AGAIN]
        if _headed(script, number, take, one.at) <= _UNHEADED and any(
            _headed(script, number, take, x) >= _OPENS for x in near
        ):
            continue  # what follows the heading is said again, the heading is not
        if before < _ECHO * own or (before <= own and _opening(script, number, take, one.at) >= _OPENS):
            kept.append(at)
    return [some[at] for at in kept]


def _opening(script: ScriptTokens, number: int, take: Tokens, at: int) -> float:
    """How much of the very first words of a section is said at token `at` of the take, 0 to 1."""
    first, last = script.section(number)
    return _said(script.tokens.text[first : min(last, first + _OPENING)], take, at)


def _headed(script: ScriptTokens, number: int, take: Tokens, at: int) -> float:
    """The same of the heading: "On the scales page", the section's first passage."""
    first, last = script.section(number)
    end = next((x for x in range(first + 1, last) if script.passages[x] != script.passages[first]), last)
    return _said(script.tokens.text[first : min(end, first + _OPENING)], take, at)


def _said(words: Sequence[str], take: Tokens, at: int) -> float:
    return float(LCSseq.similarity(words, take.text[max(0, at - 1) : at + len(words) + 1])) / max(1, len(words))


def _hits(run: Sequence[Pair], at: int) -> int:
    """How many tokens of the take agree in the stretch from `at` on."""
    end = at + _STRETCH
    return sum(max(0, min(one.take[1], end) - max(one.take[0], at)) for one in run)


def _without_clashes(read: Sequence[Sequence[Read]]) -> list[list[Read]]:
    """Where two sections claim the same words the likelier has them, and the other was not said there: lists of corners
    are alike on every page.
    """
    found: list[list[Read]] = [[] for _ in read]
    used: list[set[int]] = [set() for _ in read]
    every = [(at, one) for at, some in enumerate(read) for one in some]
    for at, one in sorted(every, key=lambda pair: -pair[1].cover):
        others = set().union(*(tokens for number, tokens in enumerate(used) if number != at))
        if _free(one, others):
            found[at].append(one)
            used[at] |= one.tokens()
    for at, some in enumerate(found):
        if some:
            some.sort(key=lambda one: one.at)
            counts = last_of([one.score for one in some], [one.cover for one in some])
            found[at] = some[: counts + 1]
    return found


def _free(one: Read, used: set[int]) -> bool:
    mine = one.tokens()
    return len(mine & used) <= _SHARED * len(mine)


def _cover(agreed: Sequence[Pair], first: int, last: int) -> float:
    """How much of what a section begins with agrees, 0 to 1; of what there was room for, where it is begun again."""
    end = min(last, first + _HEAD)
    return sum(max(0, min(one.script[1], end) - one.script[0]) for one in agreed) / max(1, end - first)


def _begin(agreed: Sequence[Pair], first: int, at: int, take: Tokens) -> int:
    """The token of the take where a section begins: by the first words that agree, if they are near its start. A
    figure ahead of them belongs to the section before.
    """
    one = next((one for one, following in pairwise(agreed) if _with(one, following)), agreed[0])
    ahead = one.script[0] - first
    if ahead > _NEAR_START:
        return at
    begin = one.take[0]
    while begin and begin > one.take[0] - ahead and not is_figure(take.text[begin - 1]):
        begin -= 1
    return begin


def _with(one: Pair, following: Pair) -> bool:
    """Whether words that agree are no chance: they stand as far from the next ones as in the script, or nearly."""
    long = one.script[1] - one.script[0] > 1
    return long or abs((following.take[0] - one.take[1]) - (following.script[0] - one.script[1])) <= _AGREE


def line_up(
    script: ScriptTokens,
    take: Tokens,
    read: Sequence[Sequence[Read]],
    named: Sequence[Named | None],
    pages: Sequence[bool],
    speech: Speech,
) -> Lined:
    """Place every section, by words where they are read, else by what names them. `pages`: whether it tells a page."""
    both = matched(script.tokens.text, take.text)
    free = [_by_names(one, read, take, _TAKEN if page else 0) for one, page in zip(named, pages, strict=True)]
    placed = [_placed(read[at], free[at], both, script.section(at), take, speech) for at in range(len(read))]
    return Lined(tuple(placed), tuple(tuple(some) for some in read), both, script, take)


def _by_names(named: Named | None, chosen: Sequence[Sequence[Read]], take: Tokens, apart: int) -> Named | None:
    """A place by names, None where the words of another section are read there, or say that it begins just there."""
    if named is None:
        return None
    for some in chosen:
        begin = take.word[min(some[-1].at, len(take) - 1)] if some else 0
        end = take.word[some[-1].agreed[-1].take[1] - 1] if some and apart else begin
        if some and begin <= named.at <= max(end, begin + apart):
            return None
    return named


def _placed(
    read: Sequence[Read], named: Named | None, both: Matched, tokens: tuple[int, int], take: Tokens, speech: Speech
) -> Placed | None:
    if not read:
        return None if named is None else Placed(_sentence(named.at, speech), "names", named.share, named.earlier)
    chosen = read[-1]
    at = _snapped(take.word[min(chosen.at, len(take) - 1)], speech)
    earlier = tuple(_snapped(take.word[one.at], speech) for one in read[:-1])
    other = start_of(both, *tokens)
    otherwise = at if other is None or earlier else _snapped(take.word[other], speech)
    return Placed(at, "words", chosen.score, earlier, otherwise if abs(otherwise - at) > _AGREE else None)


def _sentence(word: int, speech: Speech) -> int:
    """The beginning of what leads up to a page's name: after a long silence shortly before it, where no figure stands
    between, else of its sentence, as far as the captions or a silence show it.
    """
    for at in range(word, max(-1, word - 2 * _LEAD), -1):
        if at == 0 or speech.pause_after(at - 1) >= _LONG_SILENCE_S * 1000:
            return at
        if speech.plain[at - 1][:1].isdigit() or speech.plain[at - 1] in SMALL:
            break
    for at in range(word, max(-1, word - _LEAD), -1):
        if at == 0 or speech.words[at - 1].endswith((".", "?", "!")) or speech.pause_after(at - 1) >= _SILENCE_S * 1000:
            return at
    return word


def _snapped(word: int, speech: Speech) -> int:
    """The beginning of a sentence close by: a section begins with one, most likely after a silence."""
    best, most = word, 0.0
    for at in range(max(0, word - _SNAP), min(len(speech), word + _SNAP + 1)):
        ends = at == 0 or speech.words[at - 1].endswith((".", "?", "!"))
        pause = min(1500, speech.pause_after(at - 1)) / 1000 if at else 1.5
        worth = max(pause, 0.5 if ends else 0.0) - 0.2 * abs(at - word)
        if worth > most and (ends or pause >= _SILENCE_S):
            best, most = at, worth
    return best


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
    hit = {token for some in lined.read for one in some for token in one.tokens()}
    found: list[Aside] = []
    first: int | None = None
    for at in range(len(lined.take) + 1):
        strange = at < len(lined.take) and at not in hit
        if strange and first is None:
            first = at
        elif not strange and first is not None:
            if at - first >= _ASIDE_WORDS:
                begin, end = lined.take.word[first], lined.take.word[at] if at < len(lined.take) else len(speech)
                found.append(Aside(speech.ms(begin), speech.ms(end), speech.text(begin, end)))
            first = None
    return tuple(found)
