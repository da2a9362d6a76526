"""Every figure that is heard against the sheet: right, wrong, or none of our business.

A false alarm costs the author's trust: a figure is wrong only where it is plainly meant as the setting's value, of one
setup, and nothing near it takes it back. The reading that equals the sheet wins over any other.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from producer.language.numbers import settle
from producer.language.tokens import listed
from producer.model.claim import Claim
from producer.model.sheet import Sheet
from producer.take.apart import PUT_RIGHT
from producer.take.as_written import NOTHING, AsWritten, Owned
from producer.take.heard import Heard, Listened
from producer.take.repeats import Repeats

# Said beside a figure, these make it somebody's wish, try or other car.
UNSURE = frozenset({"if", "would", "past", "neg", "someone", "worth", "question", "occasion", "vague"})
# "The garage has 850 here, and I run 775": the first figure is what it is compared with.
_COMPARES = listed("default default's garage stock standard baseline instead from was has usually had not")
_DEFAULT = listed("default default's garage stock standard baseline")
_NEAR_WORDS, _LONG_BEFORE = 40, 100
_MOVEMENT = 8  # words from the first figure of a movement to the second
_REVOLUTIONS, _NEXT = 7, 3  # words from a gear to its rpm, and from rpm to how far it is from the limiter
_SWITCHED = 3  # figures in a row that only another setup has: it was turned to without a word we know


@dataclass(frozen=True, slots=True)
class Judged:
    """One statement and what it comes to for one setup: `wrong` says its `figure` is not the sheet's `expected`."""

    heard: Heard
    setup: str
    address: str
    wrong: bool
    figure: Decimal
    expected: Decimal


@dataclass(frozen=True, slots=True)
class Judge:
    """Holds what is heard against an episode's sheets, in the author's order, the first one told whole."""

    sheets: Sequence[Sheet]
    repeats: Repeats

    def settled(self, listened: Listened, placed: Mapping[int, str]) -> list[Heard]:
        """Every statement with the setup that is meant. `placed`: word -> setup, where the script's words say it."""
        return self._switched([self._in_place(one, placed) for one in listened.heard])

    def judge(self, heard: Sequence[Heard], listened: Listened, written: AsWritten = NOTHING) -> list[Judged]:
        """Rights and wrongs of settled statements, in order. `written`: figures whose owner their place in the script
        tells, whatever they were read as; figures that are as the script has them there are never wrong.
        """
        said = {**dict.fromkeys(self._ones(written), (Decimal(1),)), **dict(listened.figures)}
        found = [x for one in written.figures.values() for x in self._in_its_place(one, said.get(one.at, ()))]
        elsewhere = [one for one in heard if one.at not in written.figures]
        found += [judged for one in elsewhere for judged in self._judged(one, listened)]
        found.sort(key=lambda one: one.heard.at)
        found = [self._of_another(self._of_setup(one, found, listened), found) for one in found]
        found = [self._of_following(one, found, listened) for one in found]
        found = [replace(one, wrong=one.wrong and not self._put_right(one, listened)) for one in found]
        return [one for one in found if not one.wrong or self._is_wrong(one, found, listened, written)]

    def _ones(self, written: AsWritten) -> list[int]:
        """Where "one" is a figure, as no reader of sentences can tell: it stands for one."""
        return [at for at in written.figures if self.repeats.speech.plain[at] == "one"]

    def _is_wrong(self, one: Judged, every: Sequence[Judged], listened: Listened, written: AsWritten) -> bool:
        first = one.heard.at
        return first not in written.words and self.stands(one, every, listened, sure=first in written.figures)

    def _in_its_place(self, one: Owned, readings: tuple[Decimal, ...]) -> Iterator[Judged]:
        """A figure whose owner its place tells, as a statement."""
        for address in one.addresses:
            value = self.sheet(one.setup).value(address)
            if value is None:
                continue
            right = not one.wrong or abs(value) in {abs(x) for x in readings}
            figure = value if right else self._meant(address, value, readings)
            if figure is None:
                continue
            claim = Claim("", 0, 0, address, value=figure)
            heard = Heard(claim, frozenset(), one.at, one.at + 1, one.at, readings, one.setup, True, False, False, True,
                          False, self.repeats.sentence(one.at))  # fmt: skip
            yield self._result(heard, one.setup, address, figure, wrong=not right)

    def _meant(self, address: str, value: Decimal, readings: Sequence[Decimal]) -> Decimal | None:
        """What a figure means for a setting whose value is another, with its sign; None where it is open."""
        setting = self.sheets[0].garage.settings.get(address)
        signed = tuple(-abs(x) if value < 0 else x for x in readings)
        return settle(signed, setting.grid) if setting is not None and signed else next(iter(signed), None)

    def _in_place(self, one: Heard, placed: Mapping[int, str]) -> Heard:
        setup = placed.get(one.at)
        if setup is None:
            return one
        if setup == one.setup:
            return replace(one, sure=True)
        # The words of the script say another setup than the topic does: whichever has the figure is meant.
        right = self._right(one, one.setup) and not one.advice
        return replace(one, sure=False) if right else replace(one, setup=setup, sure=False)

    def _switched(self, heard: list[Heard]) -> list[Heard]:
        """A run of figures that all are another setup's and not this one's belongs to that one."""
        found = list(heard)
        telling = [index for index, one in enumerate(heard) if self._tells(one)]
        for other in self.sheets:
            run: list[int] = []
            for index in [*telling, -1]:
                one = heard[index] if index >= 0 else None
                if one and one.setup != other.id and self._right(one, other.id) and not self._right(one, one.setup):
                    run.append(index)
                    continue
                if len(run) >= _SWITCHED:
                    for at in run:
                        found[at] = replace(heard[at], setup=other.id)
                run = []
        return found

    def _tells(self, one: Heard) -> bool:
        """Whether a figure can tell the setups apart."""
        values = {sheet.value(one.claim.parameter) for sheet in self.sheets}
        return (
            one.figure is not None
            and not one.advice
            and len(values) > 1
            and any(self._right(one, x.id) for x in self.sheets)
        )

    def _judged(self, one: Heard, listened: Listened) -> Iterator[Judged]:
        figure, address = one.figure, one.claim.parameter
        if figure is None:
            return
        setups = dict.fromkeys((one.setup, *(listened.setups[one.sentence] if not one.sure else ())))
        rights = [setup for setup in setups if self._right(one, setup)]
        for setup in rights:
            yield self._result(one, setup, address, figure, wrong=False)
        if one.advice:
            return  # what to change may be as it is; it is never wrong here
        sibling = self._sibling(one) if not rights else None
        if sibling is not None:
            yield self._result(one, one.setup, sibling, figure, wrong=False)
        elif not rights and self.sheet(one.setup).value(address) is not None and not one.hedges & UNSURE:
            yield self._result(one, one.setup, address, figure, wrong=True)

    def _result(self, one: Heard, setup: str, address: str, figure: Decimal, *, wrong: bool) -> Judged:
        expected = self.sheet(setup).value(address)
        return Judged(one, setup, address, wrong, figure, expected if expected is not None else figure)

    def sheet(self, setup: str) -> Sheet:
        """The sheet of a setup; the first for one that is not there."""
        return next((one for one in self.sheets if one.id == setup), self.sheets[0])

    def _right(self, one: Heard, setup: str) -> bool:
        """Whether any reading of a figure is the sheet's; the sign may be left out: "three and a half of camber"."""
        expected = self.sheet(setup).value(one.claim.parameter)
        if expected is None or one.figure is None:
            return False
        return abs(expected) in one.figures

    def _sibling(self, one: Heard) -> str | None:
        """Where the captions lost a heading the corner goes on with the parameter before it: the one of the same corner
        and page that has this figure is meant."""
        garage = self.sheets[0].garage
        setting = garage.settings.get(one.claim.parameter)
        if not one.restarted or setting is None or not setting.part:
            return None
        sheet = self.sheet(one.setup)
        for other in garage.on_page(setting.page):
            if other.part == setting.part and other.address != setting.address:
                value = sheet.values.get(other.address)
                if value is not None and abs(value) in one.figures:
                    return other.address
        return None

    def stands(self, one: Judged, every: Sequence[Judged], listened: Listened, *, sure: bool) -> bool:
        """Whether a wrong figure was neither taken back, nor meant as what the setting was, nor another corner's.

        `sure`: its place says whose it is.
        """
        if self._turns(one) or self._moved_on(one, listened) or not plausible(self.sheets[0], one.address, one.figure):
            return False
        same = [x for x in every if not x.wrong and x.address == one.address and x.setup == one.setup]
        if any(self.repeats.taken_back(one.heard, x.heard) for x in same):
            return False
        beside = [x for x in same if abs(x.heard.sentence - one.heard.sentence) <= 1]
        first, last = self.repeats.sentences[one.heard.sentence]
        words = self.repeats.speech.plain[first:last]
        setting = self.sheets[0].garage.settings.get(one.address)
        if setting is not None and one.figure == setting.default and not _DEFAULT.isdisjoint(words):
            return False  # "the default is 850"
        compares = not _COMPARES.isdisjoint(words)
        if beside and compares and abs(one.figure) in {abs(x) for x in self.starts(one.setup, one.address)}:
            return False
        if one.heard.claim.direction and abs(one.figure) in {abs(x) for x in self.starts(one.setup, one.address)}:
            return "than" not in one.heard.hedges
        return sure or not self._anothers(one, every, same)

    def _of_setup(self, one: Judged, every: Sequence[Judged], listened: Listened) -> Judged:
        """Where the setup is in doubt, a figure that is neither's belongs to the one that is told differently here."""
        if not one.wrong or one.heard.sure:
            return one
        right = {(x.setup, x.address) for x in every if not x.wrong}
        for setup in listened.setups[one.heard.sentence]:
            differs = self.sheet(setup).value(one.address) != self.sheets[0].value(one.address)
            if (one.setup, one.address) in right and (setup, one.address) not in right and differs:
                return self._result(one.heard, setup, one.address, one.figure, wrong=True)
        return one

    def _of_following(self, one: Judged, every: Sequence[Judged], listened: Listened) -> Judged:
        """Where a setting was told rightly long before, exactly what a later setup has is that one's: the captions lost
        its name.
        """
        if not one.wrong:
            return one
        at, key = one.heard.at, (one.setup, one.address)
        told = [x.heard.at for x in every if not x.wrong and (x.setup, x.address) == key]
        named = any(turn.setup == one.setup and not turn.page for turn in listened.turns if turn.at < at)
        if named or not told or min(abs(x - at) for x in told) < _LONG_BEFORE or max(told) > at:
            return one
        order = [sheet.id for sheet in self.sheets]
        for setup in order[order.index(one.setup) + 1 :]:
            value = self.sheet(setup).value(one.address)
            if value is not None and abs(value) in one.heard.figures:
                return self._result(one.heard, setup, one.address, value, wrong=False)
        return one

    def _of_another(self, one: Judged, every: Sequence[Judged]) -> Judged:
        """A figure that its setting cannot have belongs to one of the page that has it and is not told otherwise: the
        captions lost its name.
        """
        garage, sheet = self.sheets[0].garage, self.sheet(one.setup)
        setting = garage.settings.get(one.address)
        if not one.wrong or setting is None or setting.grid.inside(one.figure):
            return one
        told = {x.address for x in every if x.setup == one.setup and not x.wrong}
        for other in garage.on_page(setting.page):
            value = sheet.values.get(other.address)
            if value is not None and abs(value) in one.heard.figures and other.address not in told:
                return self._result(one.heard, one.setup, other.address, value, wrong=False)
        return one

    def _turns(self, one: Judged) -> bool:
        """ "A gear of 4.56 would turn 5,433 rpm" tells another gear."""
        first = one.heard.at
        return "rpm" in self.repeats.speech.plain[max(0, first - _NEXT) : first + _REVOLUTIONS]

    def _put_right(self, one: Judged, listened: Listened) -> bool:
        """Whether the right figure follows "sorry" or the like, whatever it was read as: "two fifty, sorry, two"."""
        first, words = one.heard.at, self.repeats.speech.plain
        after = ((at, readings) for at, readings in listened.figures if first < at <= first + _MOVEMENT)
        return any(
            abs(one.expected) in {abs(x) for x in seen} and not PUT_RIGHT.isdisjoint(words[first:at])
            for at, seen in after
        )

    def _moved_on(self, one: Judged, listened: Listened) -> bool:
        """The first figure of "two seventy-five down to two fifty", where the captions lost the "from"."""
        if abs(one.figure) not in {abs(x) for x in self.starts(one.setup, one.address)}:
            return False
        words, first = self.repeats.speech.plain, one.heard.at
        after = ((at, readings) for at, readings in listened.figures if first < at <= first + _MOVEMENT)
        return any(abs(one.expected) in {abs(x) for x in seen} and "to" in words[first:at] for at, seen in after)

    def _named_whole(self, one: Judged) -> bool:
        """Whether the parameter's own name stands with the figure: then no other can be meant."""
        name = self.sheets[0].garage.parameters[one.address.split(".")[0]].name.lower().split()[-1]
        heard = one.heard
        return name in self.repeats.speech.plain[max(0, heard.first - 2) : heard.last + 2]

    def _anothers(self, one: Judged, every: Sequence[Judged], same: Sequence[Judged]) -> bool:
        """A figure put to the wrong corner by a lost word: it is a neighbour's that has none, and this has its own."""
        if self._named_whole(one) or not any(abs(x.heard.at - one.heard.at) <= _NEAR_WORDS for x in same):
            return False
        garage, sheet = self.sheets[0].garage, self.sheet(one.setup)
        setting = garage.settings.get(one.address)
        if setting is None:
            return False
        for other in garage.on_page(setting.page):
            value = sheet.values.get(other.address)
            if other.address != one.address and value is not None and abs(value) == abs(one.figure):
                said = (x for x in every if x.address == other.address and not x.wrong)
                if not any(abs(x.heard.at - one.heard.at) <= _NEAR_WORDS for x in said):
                    return True
        return False

    def starts(self, setup: str, address: str) -> set[Decimal]:
        """What a movement of a setting may be told from: what a reason compares, the setup below, the default."""
        sheet = self.sheet(setup)
        setting = sheet.garage.settings.get(address)
        found = {sheet.garage.value_of(address, sheet.base), self.sheets[0].value(address)}
        defaults = {name: one.default for name, one in sheet.garage.settings.items() if one.default is not None}
        found.add(setting.default if setting else sheet.garage.value_of(address, defaults))
        movements = (reason.movement(address) for reason in sheet.reasons)
        found.update(one.start for one in movements if one is not None)
        return {x for x in found if x is not None}


def plausible(sheet: Sheet, address: str, figure: Decimal) -> bool:
    """Whether a figure may be meant as a setting's value.

    No few clicks of one that has no such value are ("half a percent", its verb lost), and nothing far outside its
    limits, which the captions put to the wrong name.
    """
    setting = sheet.garage.settings.get(address)
    if setting is None or setting.grid.inside(figure):
        return True
    grid = setting.grid
    if grid.step is not None and abs(figure) <= 10 * grid.step:
        return False
    span = grid.high - grid.low
    return grid.low - span <= figure <= grid.high + span
