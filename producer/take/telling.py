"""Findings about a take as the author reads them: what was said, what the sheet has, what to say again."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal

from producer.basics.figures import figure as written
from producer.basics.finding import Severity
from producer.basics.place import Place
from producer.model.dossier import Dossier
from producer.model.sheet import Sheet
from producer.model.take import DIFFERS, MISSING, HeardSection, TakeFinding
from producer.take.advised import Misadvised
from producer.take.conditions import Condition, Wanted
from producer.take.directions import FromWrong, Turned
from producer.take.judging import Judged
from producer.take.missing import Unsaid
from producer.take.names import Misnamed
from producer.take.speech import Speech

_WAY = {"raise": "up", "lower": "down"}


class Teller:
    """Puts findings about one take into words."""

    def __init__(self, dossier: Dossier) -> None:
        self._dossier = dossier

    def differs(self, one: Judged, speech: Speech) -> TakeFinding:
        """A figure that is not the sheet's."""
        garage = self._dossier.garage
        has = garage.shown(one.address, one.expected)
        message = f"{self._about(one.address, one.setup)}: said {written(one.figure)}, the sheet has {has}"
        return self._at(speech, one.heard.at, "parameter", one.figure, one.expected, one.address, one.setup, message,
                        self._again(one.address, one.setup))  # fmt: skip

    def misadvised(self, one: Misadvised, speech: Speech) -> TakeFinding:
        """An advice said otherwise than written."""
        garage = self._dossier.garage
        about = f"{self._about(one.address, one.setup)}, advice"
        if one.figure is None:
            way = one.direction or "raise"
            other = "down" if way == "raise" else "up"
            message = f"{about}: said to go {other}, the advice written goes {_WAY[way]}"
            return self._at(speech, one.heard.at, "parameter", other, _WAY[way], one.address, one.setup, message,
                            self._advice(one.address, one.setup))  # fmt: skip
        stops = ", ".join(garage.figure(one.address, x) for x in one.stops)
        message = f"{about}: said {written(one.figure)}, the advice written has {stops}"
        return self._at(speech, one.heard.at, "parameter", one.figure, stops, one.address, one.setup, message,
                        self._advice(one.address, one.setup))  # fmt: skip

    def turned(self, one: Turned, speech: Speech) -> TakeFinding:
        """A movement said the wrong way."""
        message = f"{self._about(one.address, one.setup)}: said to go {_WAY[one.said]}, it goes {_WAY[one.expected]}"
        return self._at(speech, one.heard.at, "parameter", _WAY[one.said], _WAY[one.expected], one.address, one.setup,
                        message, self._again(one.address, one.setup))  # fmt: skip

    def from_wrong(self, one: FromWrong, speech: Speech) -> TakeFinding:
        """A movement told from another figure than it came from."""
        garage = self._dossier.garage
        has = garage.shown(one.address, one.expected)
        message = f"{self._about(one.address, one.setup)}: said to come from {written(one.figure)}, it comes from {has}"
        return self._at(speech, one.heard.at, "parameter", one.figure, one.expected, one.address, one.setup, message,
                        self._again(one.address, one.setup))  # fmt: skip

    def condition(self, one: Condition, speech: Speech) -> TakeFinding:
        """A condition that was another one."""
        message = f"{one.wanted.name}: said {one.said}, it was driven on {one.wanted.shown}"
        return self._at(speech, one.at, "condition", one.said, one.wanted.shown, None, None, message,
                        f"{one.wanted.name}: {one.wanted.shown}.")  # fmt: skip

    def misnamed(self, one: Misnamed, speech: Speech) -> TakeFinding:
        """The name of another track or class."""
        message = f"{one.kind}: said {one.said}, this episode is about {one.expected}"
        return self._at(speech, one.at, "name", one.said, one.expected, None, None, message, self._opening())

    def unsaid(self, one: Unsaid, file: str) -> TakeFinding:
        """A setting that was not said."""
        has = self._dossier.garage.shown(one.address, one.expected)
        message = f"{self._about(one.address, one.setup)}: not said, it is {has}"
        return _nowhere(file, "parameter", one.expected, one.address, one.setup, message,
                        self._again(one.address, one.setup))  # fmt: skip

    def no_condition(self, one: Wanted, file: str) -> TakeFinding:
        """A condition that was not said."""
        message = f"{one.name}: not said, it was {one.shown}"
        return _nowhere(file, "condition", one.shown, None, None, message, f"{one.name}: {one.shown}.")

    def no_caution(self, file: str) -> TakeFinding:
        """The caution that was not said."""
        caution = " ".join(self._dossier.channel.caution.split())
        return _nowhere(file, "caution", caution, None, None, "the caution was not said", caution)

    def left_out(self, one: HeardSection, setup: str | None, file: str) -> TakeFinding:
        """A section that is not in the take."""
        return _nowhere(file, "section", one.title, None, setup, f"{one.title}: left out", "")

    def said_twice(self, one: HeardSection, file: str) -> TakeFinding:
        """A section that was begun before: the last time counts."""
        times = " and ".join(clock(x) for x in one.earlier)
        message = f"{one.title}: said before at {times}, the one at {clock(one.start_ms or 0)} counts"
        return TakeFinding("said-twice", "section", one.start_ms, one.title, None, None, None, message, "",
                           Place(file, 1, 1), Severity.NOTE)  # fmt: skip

    def moved(self, one: HeardSection, file: str) -> TakeFinding:
        """A section told out of order."""
        message = f"{one.title}: told in another order than the script's"
        return TakeFinding("told-out-of-order", "section", one.start_ms, one.title, None, None, None, message, "",
                           Place(file, 1, 1), Severity.NOTE)  # fmt: skip

    def doubtful(self, one: HeardSection, file: str) -> TakeFinding:
        """A section that two ways of lining up put at different places."""
        message = f"{one.title}: begins at {clock(one.start_ms or 0)}, or at {clock(one.otherwise_ms or 0)}; look which"
        return TakeFinding("start-doubtful", "section", one.start_ms, one.title, None, None, None, message, "",
                           Place(file, 1, 1), Severity.NOTE)  # fmt: skip

    def stranger(self, why: str, file: str) -> TakeFinding:
        """Captions of something else."""
        message = f"these captions are not of '{self._dossier.episode.episode}': {why}"
        return TakeFinding("other-episode", "name", None, None, self._dossier.episode.episode, None, None, message, "",
                           Place(file, 1, 1), Severity.ERROR)  # fmt: skip

    def _at(
        self,
        speech: Speech,
        word: int,
        about: str,
        said: Decimal | str | None,
        expected: Decimal | str | None,
        parameter: str | None,
        setup: str | None,
        message: str,
        again: str,
    ) -> TakeFinding:
        return TakeFinding(DIFFERS, about, speech.ms(word), said, expected, parameter, setup, message, again,  # type: ignore[arg-type]  # `about` is one of ours
                           speech.place(word))  # fmt: skip

    def _about(self, address: str, setup: str) -> str:
        name = self._dossier.garage.name_of(address)
        return f"{name} ({self._sheet(setup).name})" if len(self._dossier.sheets) > 1 else name

    def _sheet(self, setup: str) -> Sheet:
        return next((one for one in self._dossier.sheets if one.id == setup), self._dossier.first)

    def _again(self, address: str, setup: str) -> str:
        """The script's shortest sentence with that value; the name and the figure where the script has none."""
        found = self._passages(setup, "value", address)
        if found:
            return min(found, key=len)
        return f"{self._dossier.garage.name_of(address)}: {self._sheet(setup).shown(address)}."

    def _advice(self, address: str, setup: str) -> str:
        """The script's advice that follows the setting's value, in one piece."""
        sections = [one for one in self._dossier.narration.sections if one.setup == setup]
        figures = {self._dossier.garage.figure(address, x) for x in _stops(self._sheet(setup), address)}
        for section in sections:
            for one in section.passages:
                if one.kind == "advice" and any(x in one.text for x in figures):
                    return _flat(one.text)
        return self._again(address, setup)

    def _passages(self, setup: str, kind: str, address: str) -> list[str]:
        return [
            _flat(one.text)
            for section in self._dossier.narration.sections
            if section.setup == setup
            for one in section.passages
            if one.kind == kind and address in one.settings
        ]

    def _opening(self) -> str:
        name = self._dossier.track.name
        texts = [one.text for section in self._dossier.narration.sections[:1] for one in section.passages]
        return next((_flat(one) for one in texts if name in one), f"{name} in the {self._dossier.garage.name}.")


def _stops(sheet: Sheet, address: str) -> Iterator[Decimal]:
    for reason in sheet.reasons:
        if address in reason.targets:
            for advice in reason.advice:
                yield from advice.to


def _flat(text: str) -> str:
    return " ".join(text.split())


def _nowhere(
    file: str,
    about: str,
    expected: Decimal | str | None,
    parameter: str | None,
    setup: str | None,
    message: str,
    again: str,
) -> TakeFinding:
    return TakeFinding(MISSING, about, None, None, expected, parameter, setup, message, again, Place(file, 1, 1))  # type: ignore[arg-type]  # `about` is one of ours


def clock(ms: int) -> str:
    """A time for people: `8:13`, `1:02:03`."""
    minutes, seconds = divmod(ms // 1000, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02}:{seconds:02}" if hours else f"{minutes}:{seconds:02}"


def in_time(findings: Sequence[TakeFinding]) -> tuple[TakeFinding, ...]:
    """In order of time, those without one last, as they came."""
    return tuple(sorted(findings, key=lambda one: (one.at_ms is None, one.at_ms or 0)))
