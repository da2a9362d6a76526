"""What two setups' laps say, in sentences: what may be claimed, and what not."""

from __future__ import annotations

from dataclasses import replace

from producer.basics.figures import with_unit
from producer.model.lap_figures import beyond_doubt
from producer.model.stints import Comparison, Interval, Total
from producer.stints.pace import ENOUGH
from producer.stints.wording import count, sentence, the

_TENS = {10: "ten laps", 20: "twenty laps", 40: "forty laps"}


def tell(
    found: Comparison,
    first_laps: int,
    second_laps: int,
    first_stints: int,
    second_stints: int,
    bends: tuple[tuple[str, int], ...] = (),
) -> Comparison:
    """The comparison with its sentences. The counts are laps kept and stints of either setup.

    `bends` are the names of setups whose laps do not lie on one straight line, and from which lap on they part from it.
    """
    words = _Words(found)
    few = min(first_laps, second_laps) < ENOUGH
    refused = "not told, they were driven differently." if not found.comparable else ""
    refused = refused or ("not told from so few laps." if few else "")
    may, may_not = words.claims()
    may_not = (*may_not, *_bent(bends), *_limits(found, first_stints, second_stints))
    if refused:
        may = ()
        may_not = (*found.why_not, *_too_few(found, first_laps, second_laps), *may_not[-2:])
    return replace(
        found,
        title=words.title(few),
        crossover_text=f"Equal pace: {refused}" if refused else words.crossover(),
        ahead_text=f"Total time: {refused}" if refused else words.ahead(),
        paragraph=_paragraph(found, words.short() if may else (), few),
        may=may,
        may_not=may_not,
        enough=not few,
    )


def _paragraph(found: Comparison, may: tuple[str, ...], few: bool) -> str:
    first, second = the(found.first_name), the(found.second_name)
    if not found.comparable:
        return (
            f"{sentence(first)} and {second} were driven differently, so their laps say nothing about which is better."
        )
    if few:
        return f"There are too few laps of {first} or {second} to say which is quicker."
    if not may:
        return f"Over the {found.laps} laps that both have run, {first} and {second} cannot be told apart by the clock."
    return " ".join(may)


def _too_few(found: Comparison, first: int, second: int) -> tuple[str, ...]:
    named = ((found.first_name, first), (found.second_name, second))
    return tuple(
        f"{sentence(the(name))} has {count(laps, 'lap')} that count{'s' if laps == 1 else ''}; a claim needs {ENOUGH}."
        for name, laps in named
        if laps < ENOUGH
    )


def _limits(found: Comparison, first: int, second: int) -> tuple[str, ...]:
    driven = f"Nothing about more than {count(found.laps, 'lap')}: that is as far as both were driven."
    if min(first, second) > 1:
        return driven, "Nothing about another driver: only the scatter from lap to lap is counted."
    once = "each" if first == second else the(found.first_name if first == 1 else found.second_name)
    return (
        driven,
        f"Nothing about another evening: {once} was driven once, and only the scatter from lap to lap is counted.",
    )


def _bent(bends: tuple[tuple[str, int], ...]) -> tuple[str, ...]:
    return tuple(
        f"How far apart single laps are: the laps of {the(name)} turn at about lap {lap}, and these figures take them "
        "along one straight line."
        for name, lap in bends
    )


class _Words:
    """The sentences of one comparison."""

    def __init__(self, found: Comparison) -> None:
        self._found = found
        self._first = the(found.first_name)
        self._second = the(found.second_name)

    def short(self) -> tuple[str, ...]:
        """For the notes: what one loses to the other at first, where the paces meet and the totals, how it ends."""
        end = self._found.totals[-1]
        told = [*(self._total(one) for one in self._found.telling if one is not end), *self._paces()]
        # A pace without a total would be heard as one.
        return (*told, self._total(end)) if told or end.sure else ()

    def claims(self) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """What may be claimed and what not, of totals, paces and falloff."""
        may: list[str] = []
        may_not: list[str] = []
        for one in self._found.totals:
            (may if one.sure else may_not).append(self._total(one))
        may += self._paces()
        if self._found.crossover_lap is not None and not self._found.paces_cross:
            may_not.append(f"Who is quicker from which lap: equal pace may lie anywhere {self._around()}.")
        if self._found.ahead_from_lap is not None and not self._found.ahead_for_sure:
            may_not.append(f"That {self._second} is ahead in total: by the lines it is, but not by more than chance.")
        fall = self._falloff()
        (may if _sure(self._found.falloff_interval) else may_not).append(fall)
        return tuple(may), tuple(may_not)

    def _total(self, one: Total) -> str:
        over = f"Over {_TENS.get(one.laps, count(one.laps, 'lap'))}"
        amount, give = one.figures
        doubt = f", give or take {give}" if give else ""
        if not one.sure:
            return f"{over} their total times cannot be told apart: {with_unit(amount, 's')}{doubt}."
        return f"{over} {self._second} is {with_unit(amount, 's')} {one.way}{doubt}."

    def _paces(self) -> list[str]:
        found = self._found
        told: list[str] = []
        if found.crossover_lap is not None and found.paces_cross:
            quicker = self._second if found.falloff_difference < 0 else self._first
            told.append(f"{sentence(quicker)} is the quicker of the two from about lap {round(found.crossover_lap)}.")
        if found.passing is not None:
            who, lap, _ = found.passing
            told.append(
                f"In total time {self._second if who == 'second' else self._first} is ahead from about lap {lap}."
            )
        return told

    def _falloff(self) -> str:
        found = self._found
        interval = found.falloff_interval
        if interval is None or not _sure(interval):
            return "Which of the two falls off more: the laps do not tell."
        less = "less" if found.falloff_difference < 0 else "more"
        amount, give = beyond_doubt(found.falloff_difference, interval.half)
        return f"{sentence(self._second)} falls off by {with_unit(amount, 's')} a lap {less}, give or take {give}."

    def crossover(self) -> str:
        """The lap of equal pace, or that there is none."""
        found = self._found
        if found.crossover_lap is not None and found.interval is not None:
            return f"Equal pace at lap {found.crossover_lap:.0f} (95 %: {self._around()}, {found.method})."
        none = f"Equal pace: none within the {count(found.laps, 'lap')} driven"
        if found.crossover_beyond is not None:
            return f"{none}; if both went on as they did, at about lap {found.crossover_beyond:.0f}, not driven."
        return f"{none}."

    def _around(self) -> str:
        """Where equal pace may lie."""
        low, high = self._found.interval or (1.0, float(self._found.laps))
        return _stretch(low, high, self._found.laps)

    def ahead(self) -> str:
        """The lap from which one is ahead in total, or that the second is not."""
        found = self._found
        if found.ahead_from_lap is not None and not self._found.ahead_for_sure:
            level = f"after {count(found.laps, 'lap')} the two cannot be told apart"
            return f"Total time: by the lines {self._second} is ahead from lap {found.ahead_from_lap}, but {level}."
        if found.ahead_from_lap is not None:
            return self._ahead_from(self._second, found.ahead_from_lap, found.ahead_interval)
        if found.first_ahead_from is not None:
            return self._ahead_from(self._first, found.first_ahead_from, found.first_ahead_interval)
        end = found.totals[-1]
        if not end.sure:
            return f"Total time: after {count(found.laps, 'lap')} the two cannot be told apart."
        none = f"Total time: {self._second} is not ahead within the {count(found.laps, 'lap')} driven"
        if found.ahead_beyond is not None:
            return f"{none}; if both went on as they did, from about lap {found.ahead_beyond}, not driven."
        return f"{none}."

    def _ahead_from(self, name: str, lap: int, around: tuple[int, int] | None) -> str:
        doubt = f" (95 %: {_stretch(*around, self._found.laps)})" if around else ""
        return f"Total time: {name} is ahead from lap {lap}{doubt}."

    def title(self, few: bool) -> str:
        """The finding in a few words."""
        found = self._found
        if not found.comparable:
            return "Driven differently: no comparison"
        if few:
            return "Too few laps for a comparison"
        if self._found.ahead_for_sure:
            start = "the first lap" if found.ahead_from_lap == 1 else f"lap {found.ahead_from_lap}"
            return f"{found.second_name} is ahead from {start}"
        if found.first_ahead_from is not None:
            return f"{found.first_name} is ahead from lap {found.first_ahead_from}"
        end = found.totals[-1]
        if found.crossover_lap is not None and found.paces_cross and found.falloff_difference < 0:
            level = "not ahead" if end.sure else "level in total"
            return f"{found.second_name} is quicker from lap {found.crossover_lap:.0f}, {level} by lap {found.laps}"
        if end.sure:
            behind_first = found.crossover_lap is not None
            return (
                f"{found.first_name} is ahead {'by lap ' + str(found.laps) if behind_first else _for_all(found.laps)}"
            )
        return f"{found.first_name} and {found.second_name} cannot be told apart"


def _stretch(low: float, high: float, laps: int) -> str:
    """`lap 6 to 13`; what lies outside the laps driven is only said to: `from before lap 1 to past lap 38`."""
    if low >= 1 and high <= laps:
        return f"lap {low:.0f} to {high:.0f}"
    start = "before lap 1" if low < 1 else f"lap {low:.0f}"
    return f"from {start} to {f'past lap {laps}' if high > laps else f'lap {high:.0f}'}"


def _for_all(laps: int) -> str:
    return f"for all {count(laps, 'lap')}"


def _sure(interval: Interval | None) -> bool:
    return interval is not None and not interval.holds(0)
