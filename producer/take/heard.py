"""What is heard of a take's settings, as records: statements with the setup spoken of, pages and setups as topics."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from producer.model.claim import Claim


@dataclass(frozen=True, slots=True)
class Heard:
    """One statement of a take. Words `first` to `last` (exclusive) hold it, `at` its figure (its first word without).

    `readings` are all that its figure may mean. `setup` is the topic; `sure` is False where another setup may be
    meant. `inferred`: the setting is taken from what was said before; `restarted`: and had a figure already. `advice`:
    it says what to change, not how it is. `named`: its words name the setting.
    """

    claim: Claim
    hedges: frozenset[str]
    first: int
    last: int
    at: int
    readings: tuple[Decimal, ...]
    setup: str
    sure: bool
    inferred: bool
    advice: bool
    named: bool
    restarted: bool
    sentence: int

    @property
    def figure(self) -> Decimal | None:
        """What is said to be the setting's value."""
        return self.claim.value if self.claim.value is not None else self.claim.to

    @property
    def figures(self) -> set[Decimal]:
        """All that its figure may mean, without signs: "three and a half of camber" leaves the minus out."""
        return {abs(x) for x in (self.figure, *self.readings) if x is not None}


@dataclass(frozen=True, slots=True)
class Turn:
    """A page named as a topic, or a setup (`page` is "" then), at the first word of what names it.

    `doubt`: another setup may be meant.
    """

    at: int
    page: str
    setup: str
    doubt: bool = False


@dataclass(frozen=True, slots=True)
class Listened:
    """All that is heard of settings, in order; where pages are named; which setup each sentence is about.

    `named`: words where an address, or a parameter without its place, is named, whatever is said of it. `figures`:
    (word, readings) of every number.
    """

    heard: tuple[Heard, ...]
    turns: tuple[Turn, ...]
    setups: tuple[tuple[str, ...], ...]
    named: tuple[tuple[int, str], ...]
    figures: tuple[tuple[int, tuple[Decimal, ...]], ...]
