"""The guide of one setup as a table for the terminal, or as JSON."""

from __future__ import annotations

import json

from producer.handling.guide_json import guide_json as shape
from producer.model.dossier import Dossier
from producer.model.guide import Change
from producer.model.sheet import Sheet

_NAME = 28  # columns for a setting's name
_LEGEND = """\
left: clicks from there to the garage's limit; author: your own advice, from the
episode; rule: the tuning rules"""


def guide_json(whole: Dossier, setup: str | None) -> str:
    """The shape that other programs rely on; without a setup, of the first."""
    return json.dumps(shape(whole.guides[setup or whole.first.id]), ensure_ascii=False, indent=2)


def guide_text(whole: Dossier, setup: str | None) -> str:
    """A block for each feel, within 80 columns, and what the columns mean; without a setup, every setup."""
    chosen = [one for one in whole.sheets if setup in (None, one.id)]
    return "\n\n".join([*(_setup(whole, one) for one in chosen), _LEGEND])


def _setup(whole: Dossier, sheet: Sheet) -> str:
    lines = [f"{whole.episode.title}", f"{sheet.name}"]
    for row in whole.guides[sheet.id].rows:
        lines += ["", f"{row.feels} {row.where}"]
        lines += [_change(one, sheet) for one in row.changes] or [
            "  no rule speaks of it, or nothing is left inside the limits"
        ]
    return "\n".join(lines)


def _change(change: Change, sheet: Sheet) -> str:
    setting = sheet.setting(change.parameter)
    moved = f"{setting.figure(change.start)} -> {setting.shown(change.to)}"
    clicks = f"{change.clicks:+d} click{'' if abs(change.clicks) == 1 else 's'}"
    name = setting.name if len(setting.name) <= _NAME else setting.name[: _NAME - 1] + "\u2026"
    return f"  {name:<{_NAME}} {moved:<21} {clicks:<9} {change.headroom:>3} left  {change.voice}"
