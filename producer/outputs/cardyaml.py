"""A card as YAML for other programs: plain exact numbers, and a digest anyone can compute again."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import Any

from producer.model.dossier import Dossier
from producer.model.gearing import Gearing, GearStep
from producer.model.sheet import Sheet
from producer.outputs.carddata import Data
from producer.outputs.cardview import laps_on_card

_PLAIN_KEY = re.compile(r"[A-Za-z_][A-Za-z0-9_.-]*")
# Words that readers of older YAML take for something else.
_WORDS = frozenset({"y", "n", "yes", "no", "on", "off", "true", "false", "null"})
# JSON leaves these as they are, YAML does not let them stand.
_ODD = re.compile("[\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff\ud800-\udfff]")


def card_yaml(dossier: Dossier, sheet: Sheet, data: Data) -> str:
    """The file: first what stands around the card (caution, channel, revision, gearing, and what the test laps say
    where the author wants that), then what the digest covers.

    The figures of `gearing` follow from a stint's top speed; speeds of the engine in rpm.
    """
    stamp, gears = dossier.stamps[sheet.id], dossier.gearing.get(sheet.id)
    around = {
        "format": 1,
        "caution": dossier.channel.caution,
        "channel": {"id": dossier.channel.channel, "name": dossier.channel.name},
        "number": dossier.episode.number,
        "revision": stamp.number if stamp.day else "draft",
        "date": stamp.day.isoformat() if stamp.day else None,
        "digest": stamp.digest,
        "garage_version": dossier.garage.simulation.version or None,
        "gearing": _gearing(gears) if gears else None,
        "test_laps": " ".join(laps_on_card(dossier, sheet)) or None,
    }
    lines = _mapping({key: value for key, value in around.items() if value is not None}, "")
    note = f"# The digest is the SHA-256 of {', '.join(data)} as JSON: keys sorted, no spaces, UTF-8, 44.0 as 44."
    return "\n".join([*lines, note, *_mapping(data, "")]) + "\n"


def _gearing(gears: Gearing) -> dict[str, Any]:
    speed = gears.top_speed
    found = {
        "final_drive": gears.final_drive,
        f"rpm_per_10_{'mph' if gears.per_unit == 'mph' else 'kmh'}": gears.per_ten,
        "top_speed": {"value": speed.value, "unit": speed.unit} if speed else None,
        "rpm": gears.rpm,
        "limit": gears.limit,
        "margin": gears.margin,
        "step_down": _step(gears.lower),
        "step_up": _step(gears.higher),
    }
    return {key: value for key, value in found.items() if value is not None}


def _step(step: GearStep | None) -> dict[str, Any] | None:
    return {"final_drive": step.final_drive, "rpm": step.rpm} if step else None


def _mapping(data: Mapping[str, Any], indent: str) -> Iterator[str]:
    for key, value in data.items():
        if isinstance(value, Mapping) and value and any(isinstance(one, Mapping) for one in value.values()):
            yield f"{indent}{_key(key)}:"
            yield from _mapping(value, indent + "  ")
        else:
            yield f"{indent}{_key(key)}: {_value(value)}"


def _value(value: Any) -> str:
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{_key(key)}: {_value(one)}" for key, one in value.items()) + "}"
    if value is None or isinstance(value, bool):
        return json.dumps(value)
    if isinstance(value, str):
        return _text(value)
    # Never with an exponent: readers of older YAML would take 1e-06 for text.
    return format(Decimal(str(value)), "f")


def _key(key: str) -> str:
    return key if _PLAIN_KEY.fullmatch(key) and key.lower() not in _WORDS else _text(key)


def _text(text: str) -> str:
    quoted = json.dumps(text, ensure_ascii=False)
    return _ODD.sub(lambda match: f"\\u{ord(match.group()):04x}", quoted)
