"""Tyre temperatures are outside, middle, inside; wear is percent used.

Three figures a tyre, hot enough to have been driven and cool enough to still be a tyre (0 to 200 °C, 32 to 392 °F, in
the channel's unit), and wear from 0 to 100. A tyre with other readings is passed over by `stints`.
Source: common practice, no source.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    stints:
      - setup: short
        file: stints/short-1.csv
        temperatures: { lf: [176, 173], rf: [201, 206, 211] }
                        ^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    stints:
      - setup: short
        file: stints/short-1.csv
        temperatures: { lf: [176, 173, 1700] }
                                       ^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    stints:
      - setup: short
        file: stints/short-1.csv
        wear: { lf: 12, rf: 121 }
                            ^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    stints:
      - setup: short
        file: stints/short-1.csv
        temperatures: { lf: [176, 173, 170], rr: [205, 204, 207] }
        wear: { lf: 0, rf: 100 }
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from producer.basics.figures import figure
from producer.basics.finding import Finding, Severity
from producer.model.episode import StintEntry
from producer.model.library import Case

CODES = {"tyre-reading-odd": Severity.WARNING}
_HEAT = {"us": (Decimal(32), Decimal(392)), "metric": (Decimal(0), Decimal(200))}


def check_episode(case: Case) -> Iterator[Finding]:
    """Temperatures, then wear, of each stint."""
    limits = _HEAT[case.channel.units if case.channel else "us"]
    for stint in case.episode.stints:
        yield from _heat(stint, limits)
        for corner, used in stint.wear.items():
            if not 0 <= used <= 100:
                message = f"{figure(used)} is no share of a tyre: percent used is wanted, from 0 to 100"
                yield _finding(stint, ("wear", corner), message, "write how much is used, not how much is left")


def _heat(stint: StintEntry, limits: tuple[Decimal, Decimal]) -> Iterator[Finding]:
    for corner, three in stint.temperatures.items():
        if len(three) != 3:
            message = f"three temperatures are wanted for a tyre, not {len(three)}"
            place, where = stint.key_place("temperatures", corner), stint.where("temperatures", corner)
            hint = "outside, middle, inside: [201, 206, 211]"
            yield Finding("tyre-reading-odd", Severity.WARNING, place, message, hint, where)
        for index, heat in enumerate(three):
            if not limits[0] <= heat <= limits[1]:
                message = f"{figure(heat)} is no temperature of a tyre that was driven"
                hint = f"from {limits[0]} to {limits[1]} is believed, in the channel's unit"
                yield _finding(stint, ("temperatures", corner, index), message, hint)


def _finding(stint: StintEntry, path: tuple[str | int, ...], message: str, hint: str) -> Finding:
    return Finding("tyre-reading-odd", Severity.WARNING, stint.place(*path), message, hint, stint.where(*path))
