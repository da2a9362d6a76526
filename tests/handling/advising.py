"""Opinions by hand for tests of advice: sizes per click, in halves of a percent of cross weight."""

from __future__ import annotations

from collections.abc import Mapping

from producer.model.advice import Plan
from producer.model.opinion import Opinion, Opinions, PhaseOpinion
from producer.model.words import PHASES, Complaint, complaint

Sizes = tuple[float, float, float]
# About what a model says of the test garage; half a percent of cross weight is 1.
USUAL: Mapping[str, Sizes] = {
    "compression.rf": (0.3, 0, 0),
    "compression.lr": (0, 0, 0.9),
    "front_weight": (2, 3, 1.5),
    "cross_weight": (1, 1, 1),
    "spring.lf": (-0.2, -0.3, 0.1),
    "spring.rf": (0.25, 0.25, 0.25),
    "spring.lr": (0.5, 0.6, 0.5),
    "spring.rr": (-1.5, -2, -1.6),
    "track_bar.left": (-0.4, -0.5, -0.45),
    "track_bar.right": (-0.4, -0.5, -0.45),
    "brake_bias": (0.45, 0, 0),
    "final_drive": (0, 0, -0.8),
}
_FAR = 60  # clicks: as far as any advice of the tests goes


def opinions(
    sizes: Mapping[str, Sizes] = USUAL, shares: Mapping[str, float] | None = None, half: float = 1.0
) -> Opinions:
    """Sizes grow with the clicks; `shares` by setting (else 1.0): how many cars agree with the size's sign."""
    agreed = shares or {}
    counts = [one for one in range(-_FAR, _FAR + 1) if one]
    clicks = {
        address: {count: _opinion([count * one for one in three], agreed.get(address, 1.0)) for count in counts}
        for address, three in sizes.items()
    }
    return Opinions(1000, clicks, half_percent=dict.fromkeys(PHASES, half))


def _opinion(sizes: list[float], share: float) -> Opinion:
    return Opinion(*(_phase(size, share) for size in sizes))


def _phase(size: float, share: float) -> PhaseOpinion:
    if not size:
        return PhaseOpinion(0.0, 0.0, 0.0)
    return PhaseOpinion(share, 1 - share, size, "rf") if size > 0 else PhaseOpinion(1 - share, share, size, "rr")


def feels(text: str) -> tuple[Complaint, ...]:
    """`tight entry, loose exit` as complaints."""
    return tuple(complaint(one) for one in text.split(","))


def told(plan: Plan) -> list[str]:
    """`author spring.rf 700 -> 675`, one a change."""
    return [f"{one.voice} {one.parameter} {one.start} -> {one.to}" for one in plan.changes]
