"""What the test laps say: stints, pace and falloff, two setups compared, tyres: engines fill it, outputs choose.

Times are seconds, falloff is seconds a lap (positive: slower and slower), lap 1 is the first lap of a stint,
intervals hold the truth 95 times in 100 as far as the scatter from lap to lap goes. Texts are whole sentences in
British spelling with real minus signs and figures tied to their units; `basics.spelling.spell` turns them.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal, NamedTuple

from producer.basics.figures import figure, give_or_take
from producer.basics.units import Quantity
from producer.model.tyre_readings import Tyres

Method = Literal["least squares", "Theil-Sen"]


class Interval(NamedTuple):
    """From `low` to `high`, both included, at 95 % unless said otherwise."""

    low: float
    high: float

    @property
    def half(self) -> float:
        """Half its width: the `give or take` of a symmetrical one."""
        return (self.high - self.low) / 2

    def holds(self, value: float) -> bool:
        """Whether a value lies in it."""
        return self.low <= value <= self.high


@dataclass(frozen=True, slots=True)
class Lap:
    """One lap as it stands in the file, at `line` (from 1). `left_out` says why it does not count, "" where it does.

    `seconds` is None where no time could be read; `fuel` is in the stint's unit.
    """

    number: int
    seconds: Decimal | None
    line: int
    fuel: Decimal | None = None
    note: str = ""
    left_out: str = ""

    @property
    def kept(self) -> bool:
        """Whether the lap counts."""
        return not self.left_out and self.seconds is not None


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line through lap times: `intercept` is its height at lap 0, `slope` in seconds a lap.

    Errors are standard errors and `scatter` the standard deviation of what remains (laps - 2 degrees of freedom);
    None where they cannot be had.
    """

    method: Method
    slope: float
    intercept: float
    slope_interval: Interval | None = None
    slope_error: float | None = None
    intercept_error: float | None = None
    scatter: float | None = None

    def at(self, lap: float) -> float:
        """Its height at a lap, in seconds."""
        return self.intercept + self.slope * lap


@dataclass(frozen=True, slots=True)
class PaceAt:
    """The least-squares line at one lap, with the interval of its mean; `beyond`: not within the laps driven."""

    lap: int
    seconds: float
    interval: Interval | None = None
    beyond: bool = False


@dataclass(frozen=True, slots=True)
class Breakpoint:
    """Where falloff turns for the worse: `before` and `after` in seconds a lap, from about `lap` on.

    `chance` is the probability, at most, of such a turn where there is none (Davies, 1987).
    """

    lap: int
    interval: tuple[int, int]
    before: float
    after: float
    chance: float
    text: str = ""


@dataclass(frozen=True, slots=True)
class FuelFalloff:
    """Falloff with the lighter car's gain put back: what the tyres alone do.

    `gain` is what a lap gets quicker by one lap's fuel being gone, seconds, positive; `own`: the author's figure,
    else the assumption that `basis` states.
    """

    gain: float
    falloff: float
    interval: Interval | None
    own: bool
    basis: str


@dataclass(frozen=True, slots=True)
class Pace:
    """Pace and falloff of the laps kept.

    `line` by least squares, `robust` by Theil-Sen (its intercept the median of what remains), `at` the pace at a few
    laps, `doubtful` laps that stand out a little and were kept (Grubbs).
    """

    line: Line
    robust: Line
    at: tuple[PaceAt, ...]
    breakpoint: Breakpoint | None = None
    fuel: FuelFalloff | None = None
    doubtful: tuple[int, ...] = ()

    @property
    def lap_one(self) -> float:
        """The fitted time of lap 1, seconds."""
        return self.line.at(1)

    @property
    def falloff(self) -> float:
        """Seconds a lap by Theil-Sen."""
        return self.robust.slope

    @property
    def falloff_interval(self) -> Interval | None:
        """The 95 % interval of `falloff`; None below five laps, where none exists."""
        return self.robust.slope_interval

    @property
    def consistency(self) -> float | None:
        """How far laps scatter around the line: standard deviation, seconds."""
        return self.line.scatter


@dataclass(frozen=True, slots=True)
class Stint:
    """One stint of one setup. `number` counts the stints of that setup from 1; `index` is its place in the episode.

    `pace` is None where `refusal` says why. `conditions` are as driven (option id, who or "", choice); `fuel` is
    what was in the tank at the start, `fuel_unit` the unit of the laps' fuel.
    `may` and `may_not`: what may be claimed, and what not.
    """

    setup: str
    setup_name: str
    index: int
    number: int
    file: str
    laps: tuple[Lap, ...]
    driving: str
    conditions: tuple[tuple[str, str, str], ...]
    fuel_unit: str
    pace: Pace | None
    refusal: str
    tyres: Tyres
    may: tuple[str, ...] = ()
    may_not: tuple[str, ...] = ()
    fuel: Quantity | None = None

    @property
    def kept(self) -> tuple[Lap, ...]:
        """The laps that count, in order."""
        return tuple(one for one in self.laps if one.kept)

    @property
    def left_out(self) -> tuple[Lap, ...]:
        """The laps that do not count, in order: `left_out` of each says why."""
        return tuple(one for one in self.laps if not one.kept)

    @property
    def last(self) -> int:
        """The highest lap number driven, counting or not, 0 without one that has a time."""
        return max((one.number for one in self.laps if one.seconds is not None), default=0)


@dataclass(frozen=True, slots=True)
class SetupLine:
    """One setup over all its comparable stints: the least-squares line of their laps kept, for charts and sums.

    `band` holds the line at each lap from 1 to `last`, with the interval of its mean. `stints` are indexes into the
    episode's stints; `points` are (lap, seconds, kept) of every lap with a time.
    """

    setup: str
    name: str
    line: Line
    robust: Line
    laps: int
    last: int
    stints: tuple[int, ...]
    band: tuple[PaceAt, ...]
    points: tuple[tuple[int, float, bool], ...]


@dataclass(frozen=True, slots=True)
class Total:
    """Total time after so many laps, second - first, seconds: negative where the second setup is ahead."""

    laps: int
    seconds: float
    interval: Interval | None
    beyond: bool = False

    @property
    def sure(self) -> bool:
        """Whether the two can be told apart."""
        return self.interval is not None and not self.interval.holds(0)

    @property
    def figures(self) -> tuple[str, str]:
        """How far apart, and give or take how much, as both are written wherever they are shown: `3.1`, `0.7`.

        One decimal more where rounding would make a difference beyond doubt look like one in doubt: `0.53`, `0.49`.
        """
        half = self.interval.half if self.interval else None
        written = give_or_take(self.seconds, half)
        if half is None or not self.sure or written[0] != written[1]:
            return written
        return figure(Decimal(repr(abs(self.seconds))), 2), figure(Decimal(repr(half)), 2)

    @property
    def way(self) -> Literal["faster", "slower"]:
        """What the second setup is."""
        return "faster" if self.seconds < 0 else "slower"


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two setups by their least-squares lines, summed from lap 1.

    `laps`: how many both have driven. `crossover_lap`: equal pace, `interval` its 95 % interval by `method`; None
    where the lines are parallel, the interval is unbounded, or it lies outside the laps driven. `ahead_from_lap`: the
    second setup's total is ahead from there to the last of `laps`; None where it is not, or where the laps do not
    tell. `ahead_interval`: from lap to lap, where equal pace has an interval. `crossover_beyond` and `ahead_beyond`:
    where it would come past the laps driven, for who says that it is a guess. `first_ahead_from` and
    `first_ahead_interval`: the same of the first setup, where the second leads at first and is behind at the end by
    more than chance. `enough`: laps for a claim.

    `comparable` False: different conditions or driving, `why_not` says which; then `may` is empty. `title` says the
    finding in a few words, `paragraph` is ready for script and notes, `may` and `may_not` are its sentences and
    what the laps do not carry.
    """

    first: str
    second: str
    first_name: str
    second_name: str
    laps: int
    comparable: bool
    why_not: tuple[str, ...]
    falloff_difference: float
    falloff_interval: Interval | None
    crossover_lap: float | None
    interval: Interval | None
    method: str
    ahead_from_lap: int | None
    totals: tuple[Total, ...]
    title: str
    paragraph: str
    crossover_text: str
    ahead_text: str
    may: tuple[str, ...] = ()
    may_not: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    crossover_beyond: float | None = None
    ahead_beyond: int | None = None
    ahead_interval: tuple[int, int] | None = None
    enough: bool = True
    first_ahead_from: int | None = None
    first_ahead_interval: tuple[int, int] | None = None

    @property
    def ahead_for_sure(self) -> bool:
        """Whether the second's total is ahead by more than chance once both have been driven to the end."""
        end = self.totals[-1] if self.totals else None
        return self.ahead_from_lap is not None and end is not None and end.seconds < 0 and end.sure

    @property
    def paces_cross(self) -> bool:
        """Whether the laps bear out that the quicker of the two changes: all of the interval lies within them."""
        return self.interval is not None and self.interval.low >= 1 and self.interval.high <= self.laps

    @property
    def passing(self) -> tuple[Literal["first", "second"], int, tuple[int, int] | None] | None:
        """Which setup passes the other in total time, from which lap on it is ahead, and between which laps that may
        be; None where neither does beyond doubt, or one leads from the first lap on."""
        if self.ahead_for_sure and self.ahead_from_lap is not None and self.ahead_from_lap > 1:
            return "second", self.ahead_from_lap, self.ahead_interval
        if self.first_ahead_from is not None:
            return "first", self.first_ahead_from, self.first_ahead_interval
        return None

    @property
    def telling(self) -> tuple[Total, ...]:
        """The totals beyond doubt that are worth a sentence: the last, and before it the first that goes the other
        way."""
        sure = [one for one in self.totals if one.sure]
        other = [one for one in sure if one.way != sure[-1].way]
        return (*other[:1], *sure[-1:])

    def total(self, laps: int) -> Total | None:
        """The total after so many laps, where it was computed."""
        return next((one for one in self.totals if one.laps == laps), None)


@dataclass(frozen=True, slots=True)
class Evidence:
    """Everything that the test laps of one episode say.

    `stints` in the author's order, `lines` by setup in the episode's order (setups with enough laps),
    `comparisons` of the first of them with each other one, then of further short run setups with long run ones.
    """

    episode: str
    stints: tuple[Stint, ...]
    lines: tuple[SetupLine, ...] = ()
    comparisons: tuple[Comparison, ...] = field(default=())

    @property
    def comparison(self) -> Comparison | None:
        """The first comparison, None where there are not two setups with laps."""
        return self.comparisons[0] if self.comparisons else None

    def line(self, setup: str) -> SetupLine | None:
        """The line of one setup."""
        return next((one for one in self.lines if one.setup == setup), None)

    def of(self, setup: str) -> tuple[Stint, ...]:
        """The stints of one setup."""
        return tuple(one for one in self.stints if one.setup == setup)
