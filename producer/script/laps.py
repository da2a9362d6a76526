"""What the test laps say, told aloud: how far each setup was driven, who is ahead from when, what that is worth.

Only what the laps carry is told, in the figures of the records. Setups that were driven differently are said to be
so; of too few laps nothing is said.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from producer.basics.figures import NO_BREAK, figure, with_unit
from producer.model.lap_figures import loss, start
from producer.model.script import Board, Passage, Section
from producer.model.sheet import Sheet
from producer.model.stints import Comparison, Evidence, Pace, Stint, Total
from producer.model.told_laps import alone, behind, compared
from producer.script.shots import laps_shots
from producer.script.speaker import Speaker, capital, counted, listed, setup_name

_TENS = {20: "twenty", 40: "forty"}
_SECONDS = "s"


def laps_section(speaker: Speaker, sheets: Sequence[Sheet], evidence: Evidence | None) -> Section:
    """The section about the clock, after the last setup; without passages where there is nothing to tell."""
    told = _Laps(speaker, {one.id: one for one in sheets}, evidence).passages() if evidence else ()
    return Section("laps", "What the test laps say", None, None, told, laps_shots())


class _Laps:
    """The evidence of one episode on its way into passages."""

    def __init__(self, speaker: Speaker, sheets: Mapping[str, Sheet], evidence: Evidence) -> None:
        self._speaker = speaker
        self._sheets = sheets
        self._comparisons = compared(evidence, sheets)
        self._alone = alone(evidence, sheets)
        self._driven = behind(evidence, sheets)

    def passages(self) -> tuple[Passage, ...]:
        """How many laps, then each comparison, then the setups that stand alone."""
        if not self._driven:
            return ()
        intro = Passage("talk", self._speaker.say("clock", laps=self._laps()))
        pairs = (passage for one in self._comparisons for passage in self._compared(one))
        return (intro, *pairs, *(self._own(one, one.pace) for one in self._alone if one.pace is not None))

    def _laps(self) -> str:
        """`66 laps in two stints with the short run and 42 with the long run`."""
        items: list[str] = []
        for setup, stints in self._driven.items():
            laps = str(sum(len(one.laps) for one in stints)) + ("" if items else f"{NO_BREAK}laps")
            several = f" in {counted(len(stints))} stints" if len(stints) > 1 else ""
            items.append(f"{laps}{several} with {self._name(setup)}")
        return listed(items)

    def _compared(self, found: Comparison) -> Iterator[Passage]:
        names = {"first": self._name(found.first), "second": self._name(found.second)}
        if not found.comparable:
            yield Passage("laps", self._speaker.say("driven-differently", **names))
            return
        lead = (self._speaker.say("against", **names),) if len(self._comparisons) > 1 else ()
        sentences = list(self._claims(found))
        if not sentences:
            level = self._speaker.say("level", laps=_laps(found.laps), **names)
            sentences = [(level, (_close(found),))]
        boards = tuple(Board(lines, text) for text, lines in sentences)
        yield Passage("laps", " ".join((*lead, *(text for text, _ in sentences))), (), boards)
        yield Passage("talk", " ".join((*self._fuel(found, names), self._worth(found))))

    def _claims(self, found: Comparison) -> Iterator[tuple[str, tuple[str, ...]]]:
        """Each sentence with the lines for the screen: what one loses at first, where they meet, how it ends."""
        subject, end = _Subject(self._name(found.second)), found.totals[-1]
        before = [one for one in found.telling if one is not end]
        for one in before:
            yield self._total(found, one, subject)
        crossed = found.crossover_lap if found.paces_cross else None
        if crossed is not None:
            yield self._quicker(found, round(crossed), subject)
        if found.passing is not None:
            yield self._passing(found, subject)
        if end.sure:
            yield self._total(found, end, subject)
        elif before or crossed is not None:
            level = self._speaker.say("level-total", laps=_laps(found.laps))
            yield level, (_close(found),)

    def _total(self, found: Comparison, total: Total, subject: _Subject) -> tuple[str, tuple[str, ...]]:
        amount, give = total.figures
        said = self._speaker.say(
            f"total-{total.way}", laps=_laps(total.laps), name=subject.next(),
            amount=self._speaker.amount(amount, _SECONDS), give=give,
        )  # fmt: skip
        title = f"{self._title(found.second)}, over {_laps(total.laps, digits=True)}"
        return said, (title, f"{with_unit(amount, _SECONDS)} {total.way}, give or take {give}")

    def _passing(self, found: Comparison, subject: _Subject) -> tuple[str, tuple[str, ...]]:
        who, lap, _ = found.passing or ("second", found.ahead_from_lap or 1, None)
        setup = found.second if who == "second" else found.first
        name = subject.next() if who == "second" else subject.other(self._name(setup))
        text = self._speaker.say("ahead-from", name=name, lap=str(lap))
        return text, (f"{self._title(setup)} ahead from about lap {lap}",)

    def _quicker(self, found: Comparison, lap: int, subject: _Subject) -> tuple[str, tuple[str, ...]]:
        second = found.falloff_difference < 0
        setup = found.second if second else found.first
        name = subject.next() if second else subject.other(self._name(setup))
        text = self._speaker.say("quicker-from", lap=str(lap), name=name)
        return text, (f"{self._title(setup)} quicker from about lap {lap}",)

    def _fuel(self, found: Comparison, names: Mapping[str, str]) -> Iterator[str]:
        """Another load of fuel, where both are written down."""
        one, other = (self._driven[setup][0].fuel for setup in (found.first, found.second))
        if one is not None and other is not None and one != other:
            start_first, start_second = (self._speaker.amount(figure(x.value), x.unit) for x in (one, other))
            yield self._speaker.say("fuel", start_first=start_first, start_second=start_second, **names)

    def _worth(self, found: Comparison) -> str:
        """What the laps do not carry: another evening, and laps that were not driven."""
        once = [setup for setup in (found.first, found.second) if len(self._driven[setup]) == 1]
        if len(once) == 1:
            return self._speaker.say("worth-one", lap=str(found.laps), name=self._name(once[0]))
        return self._speaker.say("worth-once" if once else "worth", lap=str(found.laps))

    def _own(self, stint: Stint, pace: Pace) -> Passage:
        """One setup by itself: where it starts, what a lap costs."""
        name, begin, told = self._name(stint.setup), start(pace), loss(pace)
        pair = {"name": name, "start": self._speaker.amount(begin, _SECONDS)}
        board = [f"{self._title(stint.setup)}, lap 1: {with_unit(begin, _SECONDS)}"]
        if told is None:
            return Passage("laps", self._speaker.say("own-steady", **pair), (), (Board(tuple(board)),))
        way = "loses" if pace.falloff > 0 else "gains"
        amount, give = told
        said = self._speaker.say(f"own-{way}", amount=self._speaker.amount(amount, _SECONDS), give=give, **pair)
        board.append(f"{way} {with_unit(amount, _SECONDS)} a lap, give or take {give}")
        return Passage("laps", said, (), (Board(tuple(board)),))

    def _name(self, setup: str) -> str:
        return setup_name(self._sheets[setup])

    def _title(self, setup: str) -> str:
        return capital(self._sheets[setup].name)


class _Subject:
    """Who a sentence is about: the name once, then `it`, and the name again after somebody else was named."""

    def __init__(self, name: str) -> None:
        self._name = name
        self._known = False

    def next(self) -> str:
        """What to call it now."""
        found = "it" if self._known else self._name
        self._known = True
        return found

    def other(self, name: str) -> str:
        """Somebody else's name, said in between."""
        self._known = False
        return name


def _close(found: Comparison) -> str:
    return f"Total over {_laps(found.laps, digits=True)}: too close to call"


def _laps(number: int, *, digits: bool = False) -> str:
    """`ten laps`, `38 laps`; in digits for the screen."""
    word = "lap" if number == 1 else "laps"
    written = str(number) if digits else _TENS.get(number, counted(number))
    return f"{written}{NO_BREAK if written.isdigit() else ' '}{word}"
