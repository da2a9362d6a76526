"""What the chassis model thinks of a movement: a second opinion that says how sure it is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from producer.model.words import PHASES, Corner, Effect, Phase

# Share of the cars in which a sign holds from which on the model is sure of it; below the other it is sure of the
# opposite. Between them it depends on the car.
SURE, UNLIKELY = 0.85, 0.15


@dataclass(frozen=True, slots=True)
class PhaseOpinion:
    """One phase of the corner. `tighter` and `looser` are shares of the cars, 0..1, both included; in the rest
    nothing happens. `size` is the median change of balance, + tighter; `pays` the tyre that works harder for it,
    None where none does.
    """

    tighter: float
    looser: float
    size: float
    pays: Corner | None = None

    def agreement(self, effect: Effect) -> float:
        """Share of the cars in which the effect holds."""
        if effect == "none":
            return max(0.0, 1.0 - self.tighter - self.looser)
        return self.tighter if effect == "tighter" else self.looser

    @property
    def sure(self) -> Effect | None:
        """The effect that the model is sure of, None where it depends on the car."""
        every: tuple[Effect, ...] = ("tighter", "looser", "none")
        return next((one for one in every if self.agreement(one) >= SURE), None)

    def turned(self) -> PhaseOpinion:
        """The opinion of the opposite movement."""
        return PhaseOpinion(self.looser, self.tighter, -self.size, None)


@dataclass(frozen=True, slots=True)
class Opinion:
    """The model's opinion of one movement, phase by phase."""

    entry: PhaseOpinion
    middle: PhaseOpinion
    exit: PhaseOpinion

    def at(self, phase: Phase) -> PhaseOpinion:
        """The opinion about one phase."""
        return {"entry": self.entry, "middle": self.middle, "exit": self.exit}[phase]

    def sizes(self) -> dict[Phase, float]:
        """Median change of balance per phase, + tighter."""
        return {phase: self.at(phase).size for phase in PHASES}

    def turned(self) -> Opinion:
        """The opinion of the opposite movement; which tyre pays is not known of it."""
        return Opinion(self.entry.turned(), self.middle.turned(), self.exit.turned())


@dataclass(frozen=True, slots=True)
class Opinions:
    """Everything the model was asked about one setup at its track.

    `cars` is how many cars were asked. `clicks` by setting, then by signed clicks from its present value: settings the
    model cannot read are not in it. `reasons` by the reason's place in the sheet: the whole movement that it explains.
    `others` by setup: going from this setup to that one. `half_percent` is the size of half a percent more cross
    weight per phase, the measure that sizes are told in.
    """

    cars: int
    clicks: Mapping[str, Mapping[int, Opinion]] = field(default_factory=dict)
    reasons: Mapping[int, Opinion] = field(default_factory=dict)
    others: Mapping[str, Opinion] = field(default_factory=dict)
    half_percent: Mapping[Phase, float] = field(default_factory=dict)

    def click(self, address: str, clicks: int) -> Opinion | None:
        """The opinion of moving a setting by signed clicks; None where the model has none."""
        return self.clicks.get(address, {}).get(clicks)
