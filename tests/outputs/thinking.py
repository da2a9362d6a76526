"""Opinions of a chassis model written by hand, so that pictures can be tested without one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from producer.model.dossier import Dossier
from producer.model.opinion import Opinion, Opinions, PhaseOpinion
from producer.model.words import Phase

HALF: dict[Phase, float] = {"entry": 0.25, "middle": 0.2, "exit": 0.4}


def phase(halves: float, agreement: float = 0.99, half: float = 0.25) -> PhaseOpinion:
    """So many halves of a percent of cross weight, + tighter, in that share of the cars; 0 for nothing in any."""
    if not halves:
        return PhaseOpinion(0.0, 0.0, 0.0)
    tighter = agreement if halves > 0 else 1 - agreement
    return PhaseOpinion(tighter, 1 - tighter, halves * half, "rr")


def opinion(*halves: float, agreement: float = 0.99) -> Opinion:
    """Entry, middle, exit in halves of a percent of cross weight."""
    return Opinion(*(phase(size, agreement, half) for size, half in zip(halves, HALF.values(), strict=True)))


CLICKS: dict[str, Opinion] = {
    "front_weight": opinion(1.6, 2.3, 1.1),
    "cross_weight": opinion(1, 1, 1),
    "spring.lf": Opinion(phase(-0.3, 0.6), phase(0.02, 0.5, 0.2), phase(0.1, 0.7, 0.4)),
    "spring.rr": opinion(-1.2, -1.5, -1.4),
    "track_bar.left": opinion(-0.4, -0.4, -0.4),
    "compression.rf": opinion(0.2, 0, 0),
    "compression.lr": opinion(0, 0, 0.9),
    "brake_bias": opinion(0.4, 0, 0),
    "final_drive": opinion(0, 0, -0.02),
}


def opinions(
    clicks: Mapping[str, Opinion] = CLICKS, others: Mapping[str, Opinion] | None = None, half: float = 1.0
) -> Opinions:
    """One click up of each setting; going to the other setups; `half` stretches the measure."""
    measure: dict[Phase, float] = {name: size * half for name, size in HALF.items()}
    return Opinions(1000, {address: {1: one} for address, one in clicks.items()}, {}, others or {}, measure)


def thinking(dossier: Dossier, clicks: Mapping[str, Opinion] = CLICKS, between: Opinion | None = None) -> Dossier:
    """The dossier with these opinions for all its setups; `between` from the first setup to each other."""
    to = between or opinion(2.2, 2.6, 4.2)
    first, *others = (one.id for one in dossier.sheets)
    found = {first: opinions(clicks, dict.fromkeys(others, to))}
    found |= {one: opinions(clicks, {first: to.turned()}) for one in others}
    return replace(dossier, opinions=found)
