"""Settings, phases and movements in the middle of a sentence."""

from __future__ import annotations

from collections.abc import Mapping

from producer.handling.rules_table import Row
from producer.model.garage import Garage
from producer.model.words import Direction, Phase

PLACES: Mapping[Phase, str] = {"entry": "on entry", "middle": "in the middle", "exit": "on exit"}
DOING: Mapping[Direction, str] = {"raise": "raising", "lower": "lowering"}


def the(garage: Garage, address: str) -> str:
    """`the right front spring`, `the rear spring split`; a name in capitals keeps them."""
    name = garage.name_of(address)
    plain = name[:1].isupper() and name[1:2].islower()
    return f"the {name[0].lower()}{name[1:]}" if plain else f"the {name}"


def differs(row: Row | None) -> str:
    """What to do where the author knows better than the rule, and who states it."""
    if row is None:
        return "if this simulation differs, say so in the garage's handling block"
    if row.own:
        return f"or right {row.source.split(';')[0]}, which has the word here"
    return f"if this simulation differs, say so in the garage's handling block (rule: {row.source})"
