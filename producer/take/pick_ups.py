"""Pick-ups: further raw files, and what of the take they mend."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

from producer.model.take import Mended, TakeFinding
from producer.take.advised import stops
from producer.take.heard import Heard, Listened
from producer.take.judging import Judge, Judged
from producer.take.speech import Speech

Key = tuple[str, str]  # setup, address
Where = tuple[str, int]  # a pick-up's file, and ms in it


@dataclass(frozen=True, slots=True)
class PickUp:
    """A pick-up: what it says rightly of any setup mends the take."""

    speech: Speech
    listened: Listened
    judge: Judge

    def rights(self) -> Iterator[tuple[Key, Where]]:
        """(setup, address) of everything said rightly, and where: of the setup named, of every one that fits where
        none is.
        """
        for one in self._figures():
            for sheet in self.judge.sheets:
                if self._fits(one, sheet.id) and self._meant(one, sheet.id):
                    yield (sheet.id, one.claim.parameter), self._where(one)

    def advises(self) -> Iterator[tuple[Key, Where]]:
        """The same of advice that is said with a figure it has."""
        for one in (x for x in self.listened.heard if x.advice):
            for sheet in self.judge.sheets:
                allowed = {abs(x) for x in stops(sheet, one.claim.parameter)}
                if one.figures & allowed and self._meant(one, sheet.id):
                    yield (sheet.id, one.claim.parameter), self._where(one)

    def wrongs(self) -> list[Judged]:
        """What is said wrongly here, too: of the setup named, or where it fits none."""
        ids = [sheet.id for sheet in self.judge.sheets]
        right = {one.claim.parameter for one in self._figures() for setup in ids if self._fits(one, setup)}
        judged = self.judge.judge(self.judge.settled(self.listened, {}), self.listened)
        return [one for one in judged if one.wrong and one.address not in right]

    def _meant(self, one: Heard, setup: str) -> bool:
        """Of the setup named; a page's name alone says no setup."""
        return one.setup == setup or all(turn.page for turn in self.listened.turns)

    def _where(self, one: Heard) -> Where:
        return self.speech.file, self.speech.ms(one.first)

    def _figures(self) -> list[Heard]:
        return [one for one in self.listened.heard if not one.advice and one.figure is not None]

    def _fits(self, one: Heard, setup: str) -> bool:
        value = self.judge.sheet(setup).value(one.claim.parameter)
        return value is not None and abs(value) in one.figures


@dataclass(frozen=True, slots=True)
class Mends:
    """What pick-ups say rightly (the last one where several do), as values and as advice; what they struck so far."""

    others: Sequence[PickUp]
    values: Mapping[Key, Where]
    advice: Mapping[Key, Where]
    struck: list[Mended] = field(default_factory=list)

    @classmethod
    def of(cls, pick_ups: Iterable[PickUp]) -> Mends:
        """Before anything is struck."""
        others = tuple(pick_ups)
        values = dict(x for one in others for x in one.rights())
        return cls(others, values, dict(x for one in others for x in one.advises()))

    def left(self, one: TakeFinding, said: Mapping[Key, Where]) -> Iterator[TakeFinding]:
        """The finding, or nothing where a pick-up mends it."""
        where = said.get((one.setup or "", one.parameter or ""))
        if where is None:
            yield one
        else:
            self.struck.append(Mended(one, *where))

    def strike(self, one: TakeFinding, speech: Speech, word: int) -> None:
        """Strike a finding that a pick-up mends with its word `word`."""
        self.struck.append(Mended(one, speech.file, speech.ms(word)))

    def in_time(self) -> tuple[Mended, ...]:
        """What was struck, in order of the take's time."""
        return tuple(sorted(self.struck, key=lambda one: (one.finding.at_ms is None, one.finding.at_ms or 0)))
