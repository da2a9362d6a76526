"""What to change for what a car does wrong: settings to move together, and what stays unanswered."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from producer.model.guide import Change
from producer.model.words import PHASES, Complaint, Corner, Phase

# Why a complaint stays unanswered, from the first hurdle to the last: no rule speaks of it; nothing that helps has a
# click left inside the limits; nobody gives what helps a size; the chassis model's middle car goes the other way; all
# that helps feeds another complaint; it does not fit beside what the others need.
Why = Literal["silent", "limits", "unsized", "doubted", "against", "room"]


@dataclass(frozen=True, slots=True)
class Step:
    """One setting to move, and the complaints that it is meant to make smaller."""

    change: Change
    answers: tuple[Complaint, ...]

    def pays(self, phase: Phase) -> Corner | None:
        """The tyre that works harder for it in that phase, None where nothing happens or nobody knows."""
        opinion = self.change.opinion
        return opinion.at(phase).pays if opinion and self.change.effects.get(phase) else None


@dataclass(frozen=True, slots=True)
class Unanswered:
    """A complaint that nothing is offered for; `against` are the complaints that pull the other way."""

    complaint: Complaint
    why: Why
    against: tuple[Complaint, ...] = ()


@dataclass(frozen=True, slots=True)
class Plan:
    """Advice for one setup: `steps` are made together, in that order, each at most once a setting.

    `expected` is the sum of their effects per phase, + tighter, None where none of them has a size. `half_percent` is
    what half a percent more cross weight does per phase, the measure of all sizes. `notes` are sentences for the
    author: advice of his own that was left out and why, and why a complaint stays unanswered. `cars` is how many cars
    the chassis model asked: 0 where too few are plausible, None where it was not asked.
    """

    complaints: tuple[Complaint, ...]
    steps: tuple[Step, ...]
    expected: Mapping[Phase, float | None] = field(default_factory=lambda: dict.fromkeys(PHASES))
    unanswered: tuple[Unanswered, ...] = ()
    notes: tuple[str, ...] = ()
    half_percent: Mapping[Phase, float] = field(default_factory=dict)
    cars: int | None = None

    @property
    def changes(self) -> tuple[Change, ...]:
        """The changes alone, in their order."""
        return tuple(one.change for one in self.steps)
