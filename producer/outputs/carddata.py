"""A card as data, and its digest: what a published revision is recognised by.

Pure functions of the author's records; no revision, no date, nothing computed from a stint is in them.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal
from typing import Any

from producer.basics.figures import plain
from producer.model.dossier import ConditionLine
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.sheet import Sheet
from producer.model.track import Track

Data = dict[str, Any]


def card_data(
    garage: Garage, track: Track, episode: Episode, sheet: Sheet, conditions: Sequence[ConditionLine]
) -> Data:
    """What one setup's card says, as plain data (text, whole numbers, decimals, mappings).

    `values` by address in the garage's order, each a Decimal as it is shown, in its `unit`; `splits` the
    differences that follow from
    them, right minus left. The version of the garage file is left out: that its limits were read anew does not
    change a card. `tested_with` does, it says what was driven.
    """
    return {
        "episode": episode.episode,
        "track": {"id": track.track, "name": track.name},
        "garage": {"id": garage.garage, "name": garage.name},
        "setup": {
            "id": sheet.id,
            "name": sheet.name,
            "purpose": sheet.setup.purpose,
            "tested": sheet.setup.tested,
        },
        "tested_with": episode.tested_with,
        "conditions": {line.name: line.value for line in conditions},
        "values": _figures(sheet, sheet.values),
        "splits": _figures(sheet, (one for one in garage.splits if sheet.value(one) is not None)),
    }


def digest(data: Data) -> str:
    """SHA-256 (hexadecimal) of the data as JSON: keys sorted, no spaces, UTF-8, numbers in their shortest form."""
    return hashlib.sha256(_canonical(data)).hexdigest()


def episode_digest(cards: Iterable[Data]) -> str:
    """The digest of all cards of one episode in the author's order: that of their digests as a JSON list."""
    return hashlib.sha256(_canonical([digest(one) for one in cards])).hexdigest()


def _canonical(data: object) -> bytes:
    text = json.dumps(
        data, sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False, default=_shortest
    )
    return text.encode("utf-8")


def _figures(sheet: Sheet, addresses: Iterable[str]) -> dict[str, Mapping[str, Any]]:
    garage = sheet.garage
    return {
        address: {
            "name": garage.name_of(address),
            "value": _as_shown(garage, address, value),
            "unit": garage.unit_of(address),
        }
        for address in addresses
        if (value := sheet.value(address)) is not None
    }


def _as_shown(garage: Garage, address: str, value: Decimal) -> Decimal:
    """The figure with the decimals it has everywhere else."""
    return Decimal(plain(value, garage.settings[garage.splits.get(address, (address,))[0]].decimals))


def _shortest(value: object) -> int | float:
    """44.0 is 44: an author's figure has at most 15 digits, which a double gives back exactly."""
    if not isinstance(value, Decimal):
        raise TypeError(f"not a figure of a card: {value!r}")
    return int(value) if value == value.to_integral_value() else float(value)
