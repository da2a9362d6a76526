"""Which of the evidence is told, wherever it is told: what is compared, what stands alone, and the stints behind it."""

from __future__ import annotations

from collections.abc import Collection

from producer.model.stints import Comparison, Evidence, Stint


def compared(evidence: Evidence, setups: Collection[str]) -> tuple[Comparison, ...]:
    """The comparisons of these setups that have laps enough; one that is refused (`comparable` False) is among them."""
    return tuple(one for one in evidence.comparisons if one.enough and one.first in setups and one.second in setups)


def alone(evidence: Evidence, setups: Collection[str]) -> tuple[Stint, ...]:
    """The first stint that carries a claim, of each of these setups that is not compared, in the author's order."""
    spoken = {name for one in compared(evidence, setups) if one.comparable for name in (one.first, one.second)}
    able = [one for one in evidence.stints if one.may and one.pace and one.setup in setups and one.setup not in spoken]
    first = {one.setup: one for one in reversed(able)}
    return tuple(one for one in able if first[one.setup] is one)


def behind(evidence: Evidence, setups: Collection[str]) -> dict[str, tuple[Stint, ...]]:
    """The stints behind what is told, by setup: those of its line for what is compared, one for what stands alone."""
    pairs = [name for one in compared(evidence, setups) for name in (one.first, one.second)]
    found = {name: _of_line(evidence, name) for name in dict.fromkeys(pairs)}
    return found | {one.setup: (one,) for one in alone(evidence, setups) if one.setup not in found}


def _of_line(evidence: Evidence, setup: str) -> tuple[Stint, ...]:
    line = evidence.line(setup)
    return tuple(one for one in evidence.of(setup) if line is None or one.index in line.stints)
