"""The sample episode with opinions of the model written by hand, in its guides as in itself."""

from __future__ import annotations

from dataclasses import replace

from producer.handling.guide import guide
from producer.model.dossier import Dossier
from producer.model.opinion import Opinion, Opinions, PhaseOpinion
from producer.model.words import Phase
from tests.outputs.dossiers import sample_case, sample_dossier

HALF: dict[Phase, float] = {"entry": 0.25, "middle": 0.2, "exit": 0.4}


def _phase(halves: float, share: float, half: float) -> PhaseOpinion:
    if not halves:
        return PhaseOpinion(0.0, 0.0, 0.0)
    tighter = share if halves > 0 else 1 - share
    return PhaseOpinion(tighter, 1 - tighter, halves * half, "rf" if halves > 0 else "rr")


def _up(entry: float, middle: float, leave: float, share: float = 0.99) -> Opinion:
    """One click up: entry, middle, exit in halves of a percent of cross weight."""
    sizes = zip((entry, middle, leave), HALF.values(), strict=True)
    return Opinion(*(_phase(size, share, half) for size, half in sizes))


# One of each kind: sure, in doubt, against the rule and the author, hardly felt, nothing in a phase that a rule names.
UP: dict[str, Opinion] = {
    "front_weight": _up(1.6, 2.3, 1.1, 1.0),
    "cross_weight": _up(1, 1, 1),
    "spring.rf": _up(-0.3, -0.3, -0.3),
    "spring.lr": _up(0.5, 0.6, 0.5, 0.7),
    "spring.rr": _up(-1.2, -1.5, -1.4),
    "compression.rf": _up(0, 0, 0),
    "brake_bias": _up(0.4, 0, 0),
    "final_drive": _up(0, 0, -0.02),
}


def sample_opinions() -> Opinions:
    """Up to three clicks either way; sizes grow with the clicks."""
    clicks = {address: {count: _times(one, count) for count in (-3, -2, -1, 1, 2, 3)} for address, one in UP.items()}
    return Opinions(1000, clicks, half_percent=HALF)


def _times(one: Opinion, count: int) -> Opinion:
    way = one if count > 0 else one.turned()
    return Opinion(*(_grown(way.at(phase), abs(count)) for phase in HALF))


def _grown(one: PhaseOpinion, count: int) -> PhaseOpinion:
    size = one.size * count
    return replace(one, size=size, pays="rf" if size > 0 else "rr" if size < 0 else None)


def modelled_dossier() -> Dossier:
    """The sample dossier as a job hands it on once the model has been asked."""
    case, known = sample_case(), sample_opinions()
    whole = sample_dossier(case)
    guides = {one.id: guide(case, one, known) for one in case.sheets}
    return replace(whole, guides=guides, opinions={one.id: known for one in case.sheets})
