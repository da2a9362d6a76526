"""The guide and its changes as other programs read them: exact decimals become JSON numbers here and nowhere else.

The program's own sentences are in the channel's spelling (`us` or `uk`), the author's words as they stand.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from producer.basics.spelling import spell
from producer.model.guide import Change, Guide
from producer.model.words import PHASES


def guide_json(guide: Guide, spelling: str) -> dict[str, Any]:
    """The shape of `guide --json`."""
    rows = [
        {"feels": row.feels, "where": row.where, "changes": [change_json(one, spelling) for one in row.changes]}
        for row in guide.rows
    ]
    return {"format": 1, "episode": guide.episode, "setup": guide.setup, "rows": rows}


def change_json(change: Change, spelling: str) -> dict[str, Any]:
    """One change: `effects` are sizes (+ tighter, null without one), `rule` what the table says of the movement."""
    return {
        "parameter": change.parameter,
        "from": json_number(change.start),
        "to": json_number(change.to),
        "clicks": change.clicks,
        "unit": change.unit,
        "voice": change.voice,
        "agreement": change.agreement,
        "effects": {phase: change.effects.get(phase) for phase in PHASES},
        "headroom": change.headroom,
        "also": spell(change.also, spelling),
        "rule": {phase: change.rule.get(phase) for phase in PHASES},
        "say": change.say,
        "tyres": change.tyres,
        "device": change.device,
    }


def json_number(value: Decimal) -> int | float:
    """750 for a whole number, 51.5 else: the shortest float that reads back as the figure."""
    return int(value) if value == value.to_integral_value() else float(value)
