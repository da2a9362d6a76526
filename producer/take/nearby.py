"""Whose a figure is where its setting's name was not heard clearly: a neighbour's that has exactly this figure.

The captions lose names, or a word of them, and a figure that is said again ("always came back to 410") lands on the
name behind it. What the sheet has for a neighbour is then that neighbour's, and no slip.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from producer.language.tokens import listed
from producer.take.heard import Listened
from producer.take.judging import Judge, Judged
from producer.take.names import name_words

_BEFORE, _AFTER = 12, 8  # words beside a figure
_SHORT = 3  # words before a figure that name nothing: "It's at"
_AGAIN = 16  # words to where a figure is said again
_PLACES = listed("left right front rear")


@dataclass(frozen=True, slots=True)
class Nearby:
    """Tells figures of neighbours from slips by the words that tell two names apart."""

    judge: Judge
    listened: Listened

    def doubts(self, one: Judged, every: Sequence[Judged]) -> bool:
        """Whether a wrong figure is another's, or nobody knows whose: no slip of this setting."""
        where = (one.setup, one.address, one.figure, one.heard.at)
        return self.anothers(*where) or self._lost(*where) or self._unclear(one, every)

    def anothers(self, setup: str, address: str, figure: Decimal, at: int) -> bool:
        """Whether a figure at word `at`, put to one setting, is exactly what another has that is named nearer, or named
        where it is said again.
        """
        having = (other for other, _ in self._having(setup, address, figure))
        return any(self._again(address, x, figure, at) or self._nearer(address, x, at) for x in having)

    def _lost(self, setup: str, address: str, figure: Decimal, at: int) -> bool:
        """Whether a figure is exactly what another setting of the page has, and its own setting's place was lost, or
        was said for the figure that follows.
        """
        near, before = {*self._before(at), *self._after(at)}, self._before(at)
        for other, same_page in self._having(setup, address, figure):
            ours, _ = self._apart(address, other)
            if same_page and ours <= near and ours.isdisjoint(before) and self._goes_on_rightly(setup, address, at):
                return True
            if same_page and ours & _PLACES - near:
                return True
        return False

    def _unclear(self, one: Judged, every: Sequence[Judged]) -> bool:
        """Whether a wrong figure stands under part of a name that may be a neighbour's as well, and its setting has its
        right figure elsewhere: in which turn it stands tells more.
        """
        right = any(not x.wrong and (x.setup, x.address) == (one.setup, one.address) for x in every)
        return right and self.placeless(one.address, one.heard.at)

    def placeless(self, address: str, at: int) -> bool:
        """Whether beside a figure only what a setting's name has in common with another of its parameter or page was
        heard: "front spring", "weight".
        """
        garage = self.judge.sheets[0].garage
        own = garage.settings.get(address)
        near = {*self._before(at), *self._after(at)}
        heard, lost = self._words(address) & near, self._words(address) & _PLACES - near
        if own is None or not heard or not lost:
            return False
        return any(x.address != address and heard <= self._words(x.address) for x in garage.on_page(own.page))

    def _having(self, setup: str, address: str, figure: Decimal) -> Iterator[tuple[str, bool]]:
        """(address, whether on the same page) of the other settings that have a figure."""
        sheet = self.judge.sheet(setup)
        own = sheet.garage.settings.get(address)
        for other, setting in sheet.garage.settings.items():
            value = sheet.values.get(other)
            if own is not None and other != address and value is not None and abs(value) == abs(figure):
                yield other, setting.page == own.page

    def _nearer(self, address: str, other: str, at: int) -> bool:
        """Whether what tells the other name from this one is beside a figure, and this one's is not, or is farther."""
        before = self._before(at)
        near = {*before, *self._after(at)}
        ours, theirs = self._apart(address, other)
        return theirs <= near and (not ours <= near or _last(before, theirs) > _last(before, ours))

    def _goes_on_rightly(self, setup: str, address: str, at: int) -> bool:
        """Whether the next figure is what the setting has: its name, said after this one, is that one's."""
        value = self.judge.sheet(setup).value(address)
        following = self._figure(self._index(at) + 1)
        return value is not None and following is not None and abs(value) in {abs(x) for x in following[1]}

    def _again(self, address: str, other: str, figure: Decimal, at: int) -> bool:
        """Whether the next figure is the same under the other's name, and this one's is not heard."""
        following = self._figure(self._index(at) + 1)
        if following is None or following[0] - at > _AGAIN or abs(figure) not in {abs(x) for x in following[1]}:
            return False
        ours, theirs = self._apart(address, other)
        there = {*self.judge.repeats.speech.plain[at + 1 : following[0]], *self._after(following[0])}
        return theirs <= there and not ours <= there and not ours <= {*self._before(at)}

    def _apart(self, address: str, other: str) -> tuple[frozenset[str], frozenset[str]]:
        """The words of each name that the other has not."""
        ours, theirs = self._words(address), self._words(other)
        return ours - theirs, theirs - ours

    def _words(self, address: str) -> frozenset[str]:
        return frozenset(name_words(self.judge.sheets[0].garage.name_of(address)))

    def _before(self, at: int) -> Sequence[str]:
        """The words before a figure, from the figure before it on; with stops its sentence's, and those of the one
        before "It's at ...".
        """
        repeats, figure = self.judge.repeats, self._figure(self._index(at) - 1)
        first = max(at - _BEFORE, figure[0] + 1 if figure else 0)
        if repeats.speech.punctuated:
            number = repeats.sentence(at)
            begin = repeats.sentences[number][0]
            first = max(first, begin if at - begin > _SHORT else repeats.sentences[max(0, number - 1)][0])
        return repeats.speech.plain[first:at]

    def _after(self, at: int) -> Sequence[str]:
        """The words after a figure, to the next one and the end of the sentence."""
        repeats, figure = self.judge.repeats, self._figure(self._index(at) + 1)
        last = min(at + 1 + _AFTER, figure[0] if figure else len(repeats.speech))
        if repeats.speech.punctuated:
            last = min(last, repeats.sentences[repeats.sentence(at)][1])
        return repeats.speech.plain[at + 1 : last]

    def _index(self, at: int) -> int:
        """The number of the figure at a word; of the next one where there is none."""
        return bisect_left(self.listened.figures, at, key=lambda one: one[0])

    def _figure(self, index: int) -> tuple[int, tuple[Decimal, ...]] | None:
        return self.listened.figures[index] if 0 <= index < len(self.listened.figures) else None


def _last(words: Sequence[str], some: frozenset[str]) -> int:
    """The place of the last of some words, -1 without any."""
    return max((at for at, word in enumerate(words) if word in some), default=-1)
