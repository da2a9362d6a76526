"""A complaint as it is weighed: where in the corner, which way helps, how much is wanted, what helps and what feeds.

A complaint without a phase is about every phase that no other complaint claims for the opposite feel: `tight` beside
`loose exit` is tight on entry and in the middle.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from producer.handling.rules import cure
from producer.model.guide import Change
from producer.model.words import PHASES, Complaint, Effect, HowMuch, Phase, turned

# How many times the effect of half a percent of cross weight is wanted.
TIMES: Mapping[HowMuch, float] = {"little": 0.5, "plain": 1.0, "very": 2.0}
# What is left of nothing by rounding: no effect is smaller.
NOTHING = 1e-9
_WAY: Mapping[Effect, int] = {"tighter": 1, "looser": -1, "none": 0}


@dataclass(frozen=True, slots=True)
class Want:
    """`phases` in the order of the corner; `cure` the effect that helps and `way` its sign, + tighter; `targets` the
    change of balance that is wanted per phase, signed to the cure, 0 where the measure is not known."""

    complaint: Complaint
    phases: tuple[Phase, ...]
    cure: Effect
    targets: Mapping[Phase, float]

    @property
    def way(self) -> int:
        """+1 where the car has to become tighter, -1 looser."""
        return _WAY[self.cure]

    @property
    def clicks(self) -> int:
        """How many clicks a setting may move for it: two, three for `very`."""
        return 3 if self.complaint.how_much == "very" else 2

    def spoken(self, effects: Mapping[Phase, Effect | None]) -> tuple[Phase, ...]:
        """The phases in which a movement helps, () where it makes one worse as well."""
        if any(effects.get(one) == turned(self.cure, "lower") for one in self.phases):
            return ()
        return tuple(one for one in self.phases if effects.get(one) == self.cure)

    def fed_by(self, effects: Mapping[Phase, Effect | None]) -> bool:
        """Whether a movement with these effects makes the complaint worse: somewhere worse, nowhere better."""
        found = {effects.get(one) for one in self.phases}
        return turned(self.cure, "lower") in found and self.cure not in found

    def helped_by(self, change: Change) -> bool:
        """Whether by rule the change helps and its size, known wherever the rule helps, has that sign too."""
        spoken = self.spoken(change.rule)
        sizes = [change.effects.get(one) for one in spoken]
        return bool(spoken) and all(one is not None and one * self.way > NOTHING for one in sizes)


def wants(complaints: Iterable[Complaint], half_percent: Mapping[Phase, float]) -> tuple[Want, ...]:
    """Each feel and phase once, as strong as it was said at most, in the order first said."""
    strongest: dict[tuple[str, Phase | None], Complaint] = {}
    for one in complaints:
        held = strongest.get((one.feel, one.where))
        if held is None or TIMES[one.how_much] > TIMES[held.how_much]:
            strongest[one.feel, one.where] = one
    return tuple(_want(one, strongest.values(), half_percent) for one in strongest.values())


def feeding(change: Change, every: Iterable[Want]) -> tuple[Want, ...]:
    """The complaints that a change makes worse, by rule or because the model is sure of it."""
    return tuple(one for one in every if one.fed_by(change.rule) or one.fed_by(sure_effects(change)))


def sure_effects(change: Change) -> dict[Phase, Effect | None]:
    """What the model is sure of, phase by phase; nothing where the garage settles that nothing happens."""
    if change.opinion is None:
        return dict.fromkeys(PHASES)
    return {one: None if change.rule.get(one) == "none" else change.opinion.at(one).sure for one in PHASES}


def _want(one: Complaint, every: Iterable[Complaint], half_percent: Mapping[Phase, float]) -> Want:
    taken = {other.where for other in every if other.feel != one.feel}
    phases = (one.where,) if one.where else tuple(phase for phase in PHASES if phase not in taken)
    helps = cure(one.feel)
    much = _WAY[helps] * TIMES[one.how_much]
    return Want(one, phases, helps, {phase: much * abs(half_percent.get(phase, 0.0)) for phase in phases})
