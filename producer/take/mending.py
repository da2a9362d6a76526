"""Words that the captions got wrong, mended where the script or the garage's names say what they were.

Only what surrounds the figures is mended, never a figure, a side, a direction, a choice or a name: those are what a
take is checked for. Nothing else depends on the script here; a take that is talked freely is read as it stands, with
misheard names of settings mended.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import accumulate, pairwise

from rapidfuzz.distance import Indel

from producer.language.number_words import OH, PARTS, SMALL, TENS
from producer.language.tokens import listed
from producer.take.likeness import ScriptTokens, Tokens
from producer.take.speech import Speech, plain

# What was said of these is never replaced by what should have been said.
KEPT = (
    listed(
        "left right front rear up down raise lower higher more less tight loose tighter looser softer stiffer not no "
        "entry exit middle in off on minus point hundred thousand sorry wait add drop take put"
    )
    | frozenset(SMALL) | frozenset(TENS) | frozenset(PARTS) | OH
)  # fmt: skip
_DRIFT = 40  # words that an aside within a section may take
_GAP = 4  # words on either side between two stretches that agree
_SAME_SHORT = 0.8
_SAME_NAME = 0.74  # "font" for front, "rera" for rear
_MARKS = ".?!,:;"
_STOPS = ".?!"


@dataclass(frozen=True, slots=True)
class Pair:
    """Script tokens `script` and take tokens `take` (ranges) agree token by token."""

    script: tuple[int, int]
    take: tuple[int, int]


def pairs(script: ScriptTokens, section: int, take: Tokens, at: int, end: int) -> list[Pair]:
    """How a section of the script agrees with the take from token `at` on, in order; before `end`, where the section
    begins again.
    """
    first, last = script.section(section)
    # A reading never grows by more than fillers and an aside; what does not agree costs nothing.
    room = last - first + max(40, (last - first) // 3)
    found = Indel.opcodes(script.tokens.text[first:last], take.text[at : min(at + room, end)])
    agreed = [
        Pair((first + one.src_start, first + one.src_end), (at + one.dest_start, at + one.dest_end))
        for one in found
        if one.tag == "equal"
    ]
    return _dense([one for one in agreed if _near(one, first, at)])


def _near(one: Pair, first: int, at: int) -> bool:
    """Whether words stand about as far from the beginning in the take as in the script."""
    ours, theirs = one.script[0] - first, one.take[0] - at
    return abs(ours - theirs) <= _DRIFT + ours // 5


def _dense(agreed: Sequence[Pair]) -> list[Pair]:
    """Without single words that agree by chance, far from any other."""
    kept = []
    for index, one in enumerate(agreed):
        size = one.script[1] - one.script[0]
        near = [
            other
            for other in agreed[max(0, index - 2) : index + 3]
            if other is not one and abs(other.take[0] - one.take[0]) <= 8 and abs(other.script[0] - one.script[0]) <= 8
        ]
        if size > 2 or near:
            kept.append(one)
    return kept


def mended(
    heard: Speech, take: Tokens, script: ScriptTokens, agreed: Sequence[Sequence[Pair]], kept: frozenset[str]
) -> tuple[Speech, Tokens]:
    """The take with misheard words put right and, where it has no stops, with those of the script; and its tokens.

    `agreed`: the pairs of every place where a section is read. `kept`: words that are never replaced (choices, names).
    """
    words, stops = [[word] for word in heard.words], [""] * len(heard)
    mender = _Mender(heard, take, script, KEPT | kept)
    for run in agreed:
        for one, following in pairwise(run):
            for word, text in mender.gap(one, following):
                words[word] = text.split()
        if not heard.punctuated:
            for word, mark in mender.marks(run):
                stops[word] = mark
    for some, mark in zip(words, stops, strict=True):
        if some[-1][-1:] not in _MARKS:
            some[-1] += mark
    begins = tuple(accumulate((len(some) for some in words), initial=0))
    told = tuple(word for some in words for word in some)
    owner = [at for at, some in enumerate(words) for _ in some]
    speech = replace(
        heard,
        words=told,
        plain=tuple(plain(one) for one in told),
        starts_ms=tuple(heard.starts_ms[at] for at in owner),
        line_of=tuple(heard.line_of[at] for at in owner),
    )
    return speech, Tokens(take.text, tuple(begins[at] for at in take.word))


def is_figure(token: str) -> bool:
    """Whether a token of a script or a take is a figure or part of one."""
    return token[:1].isdigit() or token in SMALL or token in TENS or token in PARTS


def one_figure(before: Pair, after: Pair, script: ScriptTokens, take: Tokens) -> Pair | None:
    """The one figure between two stretches that agree, where it was said otherwise; None where there are several."""
    own = [at for at in range(before.script[1], after.script[0]) if is_figure(script.tokens.text[at])]
    said = [at for at in range(before.take[1], after.take[0]) if is_figure(take.text[at])]
    return Pair((own[0], own[0] + 1), (said[0], said[0] + 1)) if len(own) == len(said) == 1 else None


@dataclass(frozen=True, slots=True)
class _Mender:
    heard: Speech
    take: Tokens
    script: ScriptTokens
    kept: frozenset[str]

    def gap(self, before: Pair, after: Pair) -> Iterator[tuple[int, str]]:
        """(word, text) for the words between two stretches that agree."""
        ours = list(range(before.script[1], after.script[0]))
        theirs = list(range(before.take[1], after.take[0]))
        if not ours or len(ours) > _GAP or len(theirs) > _GAP:
            return
        if any(is_figure(self.take.text[at]) for at in theirs) or any(
            is_figure(self.script.tokens.text[at]) for at in ours
        ):
            yield from self._around_a_figure(before, after, ours, theirs)
            return
        yield from self._replaced(before, ours, theirs, after)

    def _around_a_figure(
        self, before: Pair, after: Pair, ours: list[int], theirs: list[int]
    ) -> Iterator[tuple[int, str]]:
        """The words before a figure that was said otherwise, and those after it."""
        figure = one_figure(before, after, self.script, self.take)
        if figure is None:
            return
        (own, _), (said, _) = figure.script, figure.take
        yield from self._replaced(before, [x for x in ours if x < own], [x for x in theirs if x < said], figure)
        yield from self._replaced(figure, [x for x in ours if x > own], [x for x in theirs if x > said], after)

    def _replaced(self, before: Pair, ours: list[int], theirs: list[int], after: Pair) -> Iterator[tuple[int, str]]:
        if not ours:
            return
        right = [self._written(at) for at in ours]
        heard = [self.take.text[at] for at in theirs]
        if any(one in self.kept for one in heard):
            return
        if not theirs:
            yield from self._put_in(before, after, ours, right)
        elif len(ours) == len(theirs):
            yield from ((self.take.word[at], self._as_ended(at, text)) for at, text in zip(theirs, right, strict=True))
        elif len(ours) < len(theirs):
            last = theirs[-len(ours) :]
            yield from ((self.take.word[at], self._as_ended(at, text)) for at, text in zip(last, right, strict=True))
        else:
            shares = [right[index : index + 1] for index in range(len(theirs) - 1)] + [right[len(theirs) - 1 :]]
            joined = [" ".join(some) for some in shares]
            yield from ((self.take.word[at], self._as_ended(at, text)) for at, text in zip(theirs, joined, strict=True))

    def _written(self, at: int) -> str:
        """The script's word at a token; the token alone where it is part of a word ("right-front")."""
        text, words = self.script.tokens.text, self.script.words
        word = words[self.script.tokens.word[at]]
        return word if plain(word) == text[at] else text[at]

    def _as_ended(self, at: int, text: str) -> str:
        """`text` with the stop that the captions put after the word in its place."""
        mark = self.heard.words[self.take.word[at]][-1:]
        return text + mark if mark in _MARKS and text[-1:] not in _MARKS else text

    def _put_in(self, before: Pair, after: Pair, ours: list[int], right: list[str]) -> Iterator[tuple[int, str]]:
        """Words that the captions dropped, said with the next one that agrees; directions are not put in."""
        tokens = [self.script.tokens.text[at] for at in ours]
        if any(one in self.kept and one not in _PLACES for one in tokens):
            return
        following = self.take.word[after.take[0]]
        last = max(self.take.word[before.take[1] - 1], following - 1)  # a figure may be several words
        if not is_figure(self.take.text[after.take[0]]):
            yield following, " ".join([*right, self.heard.words[following]])
        elif not is_figure(self.take.text[before.take[1] - 1]):
            yield last, " ".join([self.heard.words[last], *right])
        elif right[-1][-1:] in _STOPS and not self.heard.punctuated and self.heard.words[last][-1:] not in _MARKS:
            yield last, self.heard.words[last] + right[-1][-1]  # what was dropped ended a sentence

    def marks(self, run: Sequence[Pair]) -> Iterator[tuple[int, str]]:
        """(word, punctuation) that the script has after a word of the take."""
        tokens = self.script.tokens
        between = (one_figure(one, following, self.script, self.take) for one, following in pairwise(run))
        for one in (*run, *(figure for figure in between if figure is not None)):
            for step in range(one.script[1] - one.script[0]):
                at, said = one.script[0] + step, one.take[0] + step
                last = tokens.word[at + 1] - 1 if at + 1 < len(tokens) else len(self.script.words) - 1
                end = self.take.word[said + 1] - 1 if said + 1 < len(self.take) else len(self.heard) - 1
                word = self.script.words[max(last, tokens.word[at])]
                if word[-1:] in _MARKS:
                    yield max(end, self.take.word[said]), word[-1]


# A corner that was dropped is put back: a slip says another one, it does not leave it out.
_PLACES = listed("left right front rear on in")


def names_mended(heard: Speech, names: Sequence[str], known: frozenset[str]) -> Speech:
    """Misheard words of the garage's names put right. `known`: words that are right as they stand."""
    wanted = sorted({word for name in names for word in name.lower().replace(",", "").split() if len(word) > 2})
    words, changed = list(heard.words), False
    for at, word in enumerate(heard.plain):
        if len(word) < 3 or word in known or word in KEPT or not word.isalpha():
            continue
        counts = at > 0 and is_figure(heard.plain[at - 1])
        best = max(wanted, key=lambda name, word=word: Indel.normalized_similarity(word, name), default="")  # type: ignore[misc]  # a default binds the loop's word
        if best == "track" and counts:
            continue  # "forty-six, tack your time" counts no tracks
        if best and Indel.normalized_similarity(word, best) >= (_SAME_NAME if len(best) > 3 else _SAME_SHORT):
            words[at], changed = best + heard.words[at][len(heard.words[at].rstrip(_MARKS)) :], True
    if not changed:
        return heard
    return replace(heard, words=tuple(words), plain=tuple(plain(one) for one in words))
