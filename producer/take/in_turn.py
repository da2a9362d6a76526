"""Settings told in their turn: a figure under a name that the captions lost is that of the setting whose turn it is.

Whoever talks goes through a page in its order. Between the figure of the setting before and that of the one after, a
figure that is nobody else's and equals the sheet's is this setting's, whatever its name was heard as. One that is some
clicks away from the sheet's is a slip where half of the name is heard beside it.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise

from rapidfuzz.distance import Indel

from producer.language.numbers import settle
from producer.language.tokens import listed
from producer.model.claim import Claim
from producer.model.grid import Grid
from producer.model.script import Narration
from producer.model.sheet import Sheet
from producer.take.advised import stops
from producer.take.as_written import AsWritten
from producer.take.heard import Heard, Listened
from producer.take.judging import Judge, Judged
from producer.take.missing import wanted
from producer.take.names import name_words
from producer.take.nearby import Nearby
from producer.take.speech import Speech
from producer.take.two_in_one import cuts

Key = tuple[str, str]  # a setup and an address
_FARTHEST = 150  # words from the settings before and after: what is farther away is told of something else
_ONE = Decimal(1)
_CLICKS = 6  # what is farther from the sheet's is no slip of the tongue, but something else
_BEFORE, _AFTER, _SENTENCE = 7, 5, 12  # words beside a figure
_ALIKE = 0.74
_OPPOSITE = {"left": "right", "right": "left", "front": "rear", "rear": "front"}
# Beside these a figure is somebody's try, an advice or a comparison.
_FEELS = listed("loose tight pushing try")
_ROUGHLY = ("loose", "try")  # these are told from other words where they are misheard
_OTHERWISE = listed(
    "if try tried would could default stock from used instead more less up down than then first between click "
    "clicks step steps sorry no rpm lap laps"
)


def order_of(narration: Narration, sheets: Sequence[Sheet]) -> tuple[Key, ...]:
    """What has to be said, in the script's order."""
    due = {(sheet.id, address) for sheet, address, _ in wanted(sheets)}
    told = (
        (section.setup or "", address)
        for section in narration.sections
        for passage in section.passages
        if passage.kind == "value"
        for address in passage.settings
    )
    return tuple(dict.fromkeys(one for one in told if one in due))


def in_turn(
    judged: Sequence[Judged], listened: Listened, judge: Judge, order: Sequence[Key], written: AsWritten
) -> list[Judged]:
    """The judgements with what was said in its turn, and without the wrong ones that were such a figure, where their
    own setting has its right figure elsewhere. `written`: where a script is read, its words find every slip.
    """
    heard, nearby = judge.repeats.speech, Nearby(judge, listened)
    doubted = [x for x in judged if x.wrong and x.heard.at not in written.figures and nearby.doubts(x, judged)]
    judged = [x for x in judged if x not in doubted]
    nowhere = frozenset((x.heard.at, x.setup, x.address) for x in doubted)
    finder = _Finder(heard, judge, listened, list(judged), nearby, nowhere)
    added = [one for key, following in pairwise(order) for one in finder.both(key, following, order)]
    added += [one for key in order for one in finder.found(key, order)]
    if len(written.figures) * 2 < len(order):
        added += [one for key in order for one in finder.slips(key, order)]
    taken = {one.heard.at for one in added if not one.wrong}
    right = {(one.setup, one.address) for one in (*judged, *added) if not one.wrong}
    kept = [
        x
        for x in judged
        if not (x.wrong and ((x.heard.at in taken and (x.setup, x.address) in right) or finder.advises(x)))
    ]
    return sorted([*kept, *added], key=lambda one: one.heard.at)


@dataclass(slots=True)
class _Finder:
    """Finds what was said in its turn; `judged` grows with it. `nowhere`: (word, setup, address) that are no slips."""

    speech: Speech
    judge: Judge
    listened: Listened
    judged: list[Judged]
    nearby: Nearby
    nowhere: frozenset[tuple[int, str, str]]

    def found(self, key: Key, order: Sequence[Key]) -> Iterator[Judged]:
        """The judgement of a setting that was not said rightly, where its turn has its figure."""
        value = self.judge.sheet(key[0]).value(key[1])
        if value is None or any((one.setup, one.address) == key and not one.wrong for one in self.judged):
            return
        stretch = self._stretch(key, order)
        if stretch is None:
            return
        rights = {one.heard.at for one in self.judged if not one.wrong}
        for at, readings in self._figures(*stretch, value):
            if abs(value) in {abs(x) for x in readings} and (at not in rights or self._lent(key, at)):
                one = self._said(key, value, at, readings, value)
                self.judged.append(one)
                yield one
                return

    def both(self, key: Key, following: Key, order: Sequence[Key]) -> Iterator[Judged]:
        """The judgements of two settings, told one after the other, whose figures ran together."""
        one, other = (self.judge.sheet(setup).value(address) for setup, address in (key, following))
        right = {(x.setup, x.address) for x in self.judged if not x.wrong}
        if one is None or other is None or following in right:
            return
        wrong = self._wrongs(key)
        stretch = (0, 0) if wrong or key in right else self._stretch(key, order)
        places = [*wrong, *(at for at, _ in self._figures(*(stretch or (0, 0)), one))]
        name = self.judge.sheet(following[0]).garage.name_of(following[1])
        for at, (cut, last, first, second) in ((place, x) for place in places for x in cuts(self.speech, place)):
            around = self.speech.plain[last : min(last + _AFTER, self._following(last))]
            if abs(one) in first and abs(other) in second and _half_of(name, around):
                found = [self._said(key, one, at, (one,), one)]
                found.append(self._said(following, other, cut, (other,), other))
                self.judged += found
                yield from found
                return

    def _wrongs(self, key: Key) -> list[int]:
        """Where a setting is heard wrongly."""
        return [x.heard.at for x in self.judged if x.wrong and (x.setup, x.address) == key]

    def _lent(self, key: Key, at: int) -> bool:
        """Whether a figure was put to a setting that has its right one elsewhere, beside half of this one's name."""
        owners = {(one.setup, one.address) for one in self.judged if one.heard.at == at}
        elsewhere = {(one.setup, one.address) for one in self.judged if one.heard.at != at and not one.wrong}
        return owners <= elsewhere and self._named(self.judge.sheet(key[0]).garage.name_of(key[1]), at)

    def slips(self, key: Key, order: Sequence[Key]) -> Iterator[Judged]:
        """The judgement of a figure some clicks away from a setting's, said in its turn under half of its name."""
        sheet = self.judge.sheet(key[0])
        setting, value = sheet.garage.settings.get(key[1]), sheet.value(key[1])
        if setting is None or value is None or any(x.wrong and (x.setup, x.address) == key for x in self.judged):
            return
        stretch = self._stretch(key, order)
        taken = {one.heard.at for one in self.judged} | {one.at for one in self.listened.heard if one.advice}
        for at, readings in self._figures(*stretch, value) if stretch else ():
            signed = tuple(-abs(x) if value < 0 else x for x in readings)
            figure = settle(signed, setting.grid) if at not in taken and (at, *key) not in self.nowhere else None
            if figure is None or figure == value or not _some_clicks(setting.grid, figure, value):
                continue
            one = self._said(key, figure, at, readings, value)
            meant = self._named(setting.name, at) and not self._told_before(key, at)
            if meant and self._is_value(one, sheet) and self._stands(one) and not self.advises(one):
                self.judged.append(one)
                yield one
                return

    def _told_before(self, key: Key, at: int) -> bool:
        """Whether a name without its place is the next one's: this setting had its right figure before."""
        rights = (one.heard.at for one in self.judged if (one.setup, one.address) == key and not one.wrong)
        return self.nearby.placeless(key[1], at) and any(x < at for x in rights)

    def _named(self, name: str, at: int) -> bool:
        """Whether half of a setting's name stands beside a figure, and no other side or axle."""
        figures = self.listened.figures
        index = bisect_left(figures, at, key=lambda one: one[0])
        last = min(at + _AFTER, figures[index + 1][0] if index + 1 < len(figures) else len(self.speech))
        return _half_of(name, self.speech.plain[max(at - _BEFORE, self._before(at)) : last])

    def _following(self, at: int) -> int:
        """The word of the first figure from word `at` on."""
        index = bisect_left(self.listened.figures, at, key=lambda one: one[0])
        return self.listened.figures[index][0] if index < len(self.listened.figures) else len(self.speech)

    def _before(self, at: int) -> int:
        """The word after the figure before the one at word `at`."""
        index = bisect_left(self.listened.figures, at, key=lambda one: one[0])
        return self.listened.figures[index - 1][0] + 1 if index else 0

    def _is_value(self, one: Judged, sheet: Sheet) -> bool:
        """Whether nothing beside a figure makes it anything but the setting's value, and nothing of its page has it."""
        at = one.heard.at
        first, last = self.judge.repeats.sentences[one.heard.sentence]
        near = self.speech.plain[max(first, self._before(at), at - _SENTENCE) : min(last, at + 2)]
        page = sheet.garage.on_page(sheet.setting(one.address).page)
        known = {abs(sheet.values[x.address]) for x in page if x.address in sheet.values}
        known |= {abs(x) for x in self.judge.starts(one.setup, one.address)}
        return _OTHERWISE.isdisjoint(near) and abs(one.figure) not in known

    def _stands(self, one: Judged) -> bool:
        return self.judge.stands(one, self.judged, self.listened, sure=True)

    def advises(self, one: Judged) -> bool:
        """Whether a figure that the written advice has is told beside a feel: its "if" and "try" were lost."""
        near = self.speech.plain[max(0, one.heard.at - _SENTENCE) : one.heard.at]
        misheard = any(Indel.normalized_similarity(word, x) >= _ALIKE for word in near for x in _ROUGHLY)
        written = {abs(x) for x in stops(self.judge.sheet(one.setup), one.address)}
        return abs(one.figure) in written and (misheard or not _FEELS.isdisjoint(near))

    def _stretch(self, key: Key, order: Sequence[Key]) -> tuple[int, int] | None:
        """The words between the settings before and after that were heard; None where those are in another order."""
        index = order.index(key)
        before = next((x for one in reversed(order[:index]) if (x := self._places(one))), None)
        after = next((x for one in order[index + 1 :] if (x := self._places(one))), None)
        first = before[0] if before else -1
        last = next((x for x in after if x > first), None) if after else len(self.speech)
        if last is None or (before is None and after is None):
            return None
        own = [x for x in before or () if x < last]
        first = own[-1] if own else first
        return max(first + 1, last - 2 * _FARTHEST if before is None else 0), min(last, first + 2 * _FARTHEST)

    def _places(self, key: Key) -> list[int]:
        """Where a setting is heard, rightly if it is anywhere."""
        every = [one for one in self.judged if (one.setup, one.address) == key and not one.heard.advice]
        return [one.heard.at for one in every if not one.wrong] or [one.heard.at for one in every]

    def _figures(self, first: int, last: int, value: Decimal) -> Iterator[tuple[int, tuple[Decimal, ...]]]:
        yield from (one for one in self.listened.figures if first <= one[0] < last)
        if value == _ONE:
            yield from ((at, (_ONE,)) for at in range(first, last) if self.speech.plain[at] == "one")

    def _said(self, key: Key, figure: Decimal, at: int, readings: tuple[Decimal, ...], value: Decimal) -> Judged:
        setup, address = key
        claim = Claim("", 0, 0, address, value=figure)
        sentence = self.judge.repeats.sentence(at)
        heard = Heard(claim, frozenset(), at, at + 1, at, readings, setup, False, True, False, False, False, sentence)
        return Judged(heard, setup, address, figure != value, figure, value)


def _half_of(name: str, around: Sequence[str]) -> bool:
    """Whether half of a name is among some words, and no other side or axle."""
    near = [word for word in around if len(word) > 2]
    words = name_words(name)
    others = [_OPPOSITE[word] for word in words if word in _OPPOSITE]
    heard = [any(Indel.normalized_similarity(word, x) >= _ALIKE for x in near) for word in words]
    return sum(heard) * 2 >= len(words) and not any(x in near for x in others)


def _some_clicks(grid: Grid, figure: Decimal, value: Decimal) -> bool:
    there, here = grid.index(figure), grid.index(value)
    return grid.inside(figure) and there is not None and here is not None and abs(there - here) <= _CLICKS
