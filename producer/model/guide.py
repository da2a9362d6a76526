"""The adjustment guide and single changes: what to do when the car is tight or loose."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from producer.model.opinion import Opinion
from producer.model.words import Effect, Feel, Phase

Voice = Literal["author", "rule"]


@dataclass(frozen=True, slots=True)
class Change:
    """One setting moved by whole clicks: `clicks` is signed, + to the larger number.

    `effects` is the change of balance per phase, + tighter, None where nobody gives a size; `rule` what
    the rule table says this movement does per phase (None: no opinion). `headroom` counts the clicks left
    in the same direction after the change. `say` holds the author's words, `also` what else to know.
    `agreement` is the share of cars (0..1) in which the change does what it is offered for, None without an opinion of
    the chassis model; `opinion` is all that the model says of this movement.
    """

    parameter: str
    start: Decimal
    to: Decimal
    clicks: int
    unit: str
    voice: Voice
    headroom: int
    also: str = ""
    say: str = ""
    agreement: float | None = None
    effects: Mapping[Phase, float | None] = field(default_factory=lambda: {"entry": None, "middle": None, "exit": None})
    rule: Mapping[Phase, Effect | None] = field(default_factory=lambda: {"entry": None, "middle": None, "exit": None})
    tyres: str | None = None
    device: str | None = None
    opinion: Opinion | None = None

    @property
    def conditional(self) -> bool:
        """Whether it is only meant for some tyres or some device."""
        return self.tyres is not None or self.device is not None


@dataclass(frozen=True, slots=True)
class GuideRow:
    """What helps one feel in one part of the corner; at most four changes, the author's first."""

    feels: Feel
    where: Phase
    changes: tuple[Change, ...]


@dataclass(frozen=True, slots=True)
class Guide:
    """Six rows for one setup: tight then loose, each entry, middle, exit."""

    episode: str
    setup: str
    rows: tuple[GuideRow, ...]
