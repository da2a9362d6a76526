"""Figures in their place: where the script is read word for word, the words around a figure tell whose it is.

A second witness beside the reader of claims, which needs the names that the captions may have garbled. Nothing depends
on it: a take that is talked freely agrees with no passage and is judged by its claims alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise

from producer.model.script import Narration, Passage
from producer.model.sheet import Sheet
from producer.take.heard import Heard
from producer.take.likeness import ScriptTokens, Tokens
from producer.take.mending import KEPT, Pair, is_figure, one_figure
from producer.take.sections import Read

_GAP = 6  # words between two stretches that agree, for a figure between them to be the script's said otherwise
_BY_CHANCE = 2  # words between two gaps that are no stretch of their own
# Words on each side of a figure, and the share of them that must agree, in the script and in the take: lists of corners
# are told alike by whoever tells them.
_AROUND, _READ = 6, 0.4


@dataclass(frozen=True, slots=True)
class Owned:
    """The figure at word `at` stands where the script has that of `addresses` of `setup`; `wrong`: it is another."""

    at: int
    setup: str
    addresses: tuple[str, ...]
    wrong: bool


@dataclass(frozen=True, slots=True)
class AsWritten:
    """`figures` by their word; `words`: the words of the take that are the script's own in their place."""

    figures: Mapping[int, Owned]
    words: frozenset[int]

    def holds(self, one: Heard, plain: Sequence[str]) -> bool:
        """Whether a statement's figure, and every direction in its words, is the script's own."""
        telling = [at for at in range(one.first, one.last) if plain[at] in KEPT or at == one.at]
        return bool(telling) and all(at in self.words for at in telling)


NOTHING = AsWritten({}, frozenset())


def as_written(
    narration: Narration, sheets: Sequence[Sheet], script: ScriptTokens, take: Tokens, read: Sequence[Sequence[Read]]
) -> AsWritten:
    """What of a take is the script's. `read`: where each section is read, the one that counts last: only there a figure
    may be said otherwise.
    """
    owners = _owners(narration, sheets, script)
    figures: dict[int, Owned] = {}
    words: set[int] = set()
    for some in read:
        for number, one in enumerate(some):
            close = _Close.around(one.agreed)
            agreed = [(own, said) for own, said in _agreed(one.agreed) if close.read(own, said)]
            words.update(take.word[said] for _, said in agreed)
            words.update(take.word[said] for said in _meaning_nothing(one.agreed, take))
            joined = [both for both in _run_together(one.agreed, script, take) if close.read(*both)]
            words.update(take.word[said] for _, said in joined)
            found = [(own, said, False) for own, said in (*agreed, *joined)]
            if number == len(some) - 1:
                taken = {said for _, said in joined}
                otherwise = ((own, said) for own, said in _otherwise(one.agreed, script, take) if said not in taken)
                found += [(*both, True) for both in otherwise if close.read(*both)]
            for own, said, wrong in found:
                if own in owners:
                    figures[take.word[said]] = Owned(take.word[said], *owners[own], wrong=wrong)
    return AsWritten(figures, frozenset(words))


@dataclass(frozen=True, slots=True)
class _Close:
    """How much agrees around a word: the tokens of the script and of the take that do."""

    script: frozenset[int]
    take: frozenset[int]

    @staticmethod
    def around(run: Sequence[Pair]) -> _Close:
        agreed = [*_agreed(run)]
        return _Close(frozenset(own for own, _ in agreed), frozenset(said for _, said in agreed))

    def read(self, own: int, said: int) -> bool:
        return _share(own, self.script) >= _READ and _share(said, self.take) >= _READ


def _share(at: int, agreed: frozenset[int]) -> float:
    return sum(x in agreed for x in range(at - _AROUND, at + _AROUND + 1) if x != at) / (2 * _AROUND)


def _agreed(run: Sequence[Pair]) -> Iterator[tuple[int, int]]:
    """(script token, take token) of all that agrees."""
    for one in run:
        yield from zip(range(*one.script), range(*one.take), strict=True)


def _meaning_nothing(run: Sequence[Pair], take: Tokens) -> Iterator[int]:
    """The take's tokens between stretches that agree that say nothing else: garbled words that are no direction."""
    for own, said in _gaps(run):
        if max(len(own), len(said)) <= _GAP:
            yield from (at for at in said if not is_figure(take.text[at]) and take.text[at] not in KEPT)


def _run_together(run: Sequence[Pair], script: ScriptTokens, take: Tokens) -> Iterator[tuple[int, int]]:
    """(script token, take token) of a figure that ran into the one behind it: "thirty. Two pounds more", "seven. Two
    clicks more".
    """
    for own, said in _gaps(run):
        ours = [at for at in own if script.tokens.text[at].isdigit()]
        theirs = [at for at in said if take.text[at].isdigit()]
        if len(ours) == 2 and len(theirs) <= 2 and theirs:
            one, other = (script.tokens.text[at] for at in ours)
            if take.text[theirs[-1]] in (str(int(one) + int(other)), one + other):
                yield ours[0], theirs[-1]


def _gaps(run: Sequence[Pair]) -> Iterator[tuple[range, range]]:
    """What stands between the stretches that agree, in the script and in the take."""
    for before, after in pairwise(run):
        yield range(before.script[1], after.script[0]), range(before.take[1], after.take[0])


def _otherwise(run: Sequence[Pair], script: ScriptTokens, take: Tokens) -> Iterator[tuple[int, int]]:
    """(script token, take token) of figures that were said otherwise."""
    for index, (before, after) in enumerate(pairwise(run)):
        own, said = before.script[1], before.take[1]
        between = own < after.script[0] and said < after.take[0]
        if between and is_figure(script.tokens.text[own]) and is_figure(take.text[said]):
            yield own, said  # straight after the same words, whatever follows: it may have been broken off
            continue
        found = _one_between(before, after, script, take)
        following = run[index + 2] if index + 2 < len(run) else None
        if found is None and following is not None and after.script[1] - after.script[0] <= _BY_CHANCE:
            # "Left | 700 write | front | 950": the word between may agree with the wrong one of two.
            found = _one_between(before, following, script, take)
        if found is not None:
            yield found.script[0], found.take[0]


def _one_between(before: Pair, after: Pair, script: ScriptTokens, take: Tokens) -> Pair | None:
    room = max(after.script[0] - before.script[1], after.take[0] - before.take[1])
    return one_figure(before, after, script, take) if room <= _GAP else None


def _owners(
    narration: Narration, sheets: Sequence[Sheet], script: ScriptTokens
) -> dict[int, tuple[str, tuple[str, ...]]]:
    """Script token of a value's figure -> (setup, addresses)."""
    tokens: dict[tuple[int, int], list[int]] = {}
    for at, owner in enumerate(script.passages):
        if is_figure(script.tokens.text[at]):
            tokens.setdefault(owner, []).append(at)
    found: dict[int, tuple[str, tuple[str, ...]]] = {}
    for (section, passage), figures in tokens.items():
        told = narration.sections[section]
        sheet = next((one for one in sheets if one.id == told.setup), None)
        if sheet is not None:
            found.update(
                (at, (sheet.id, addresses))
                for at, addresses in _of_passage(told.passages[passage], sheet, figures, script.tokens.text)
            )
    return found


def _of_passage(
    passage: Passage, sheet: Sheet, figures: Sequence[int], text: Sequence[str]
) -> Iterator[tuple[int, tuple[str, ...]]]:
    """(token, addresses) where a passage tells values: one figure each, one for all, or the last of a movement."""
    if passage.kind != "value" or not passage.settings:
        return
    digits = [_digits(sheet.value(one)) for one in passage.settings]
    said = [text[at] for at in figures]
    if said == digits:
        yield from ((at, (one,)) for at, one in zip(figures, passage.settings, strict=True))
    elif len(figures) == 1 and set(digits) == set(said):
        yield figures[0], passage.settings
    elif len(digits) == 1 and digits[0] in said:
        yield figures[len(said) - 1 - said[::-1].index(digits[0])], passage.settings


def _digits(value: Decimal | None) -> str:
    """A value as a token of the script."""
    return "" if value is None else f"{value.normalize():f}".lstrip("-").replace(".", "")
