"""The guide of one setup as a table for the terminal, or as JSON."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence

from producer.basics.spelling import spell
from producer.handling.guide_json import guide_json as shape
from producer.handling.measure import hundredths, measure, times
from producer.handling.rules import cure
from producer.handling.saying import for_whom
from producer.model.dossier import Dossier
from producer.model.guide import Change, GuideRow
from producer.model.opinion import Opinions
from producer.model.sheet import Sheet

_NAME = 23  # columns for a setting's name
# Of a line: name, movement, clicks, clicks left, who says so, and by the model how much and how sure.
_LINE = "  {:<23} {:<20} {:>6} {:>5}  {:<6} {:>6} {:>5}"
_HEADS = ("", "", "clicks", "left", "who", "size", "cars")
_LEGEND = """\
left: clicks from there to the garage's limit; author: your own advice, from the
episode; rule: the tuning rules"""
_MODEL = """\
the chassis model's second opinion - size: how much it helps, times what half a
percent of cross weight does there; cars: how many of 100 plausible cars agree"""


def guide_json(whole: Dossier, setup: str | None) -> str:
    """The shape that other programs rely on; without a setup, of the first."""
    data = shape(whole.guides[setup or whole.first.id], whole.channel.spelling)
    return json.dumps(data, ensure_ascii=False, indent=2)


def guide_text(whole: Dossier, setup: str | None) -> str:
    """A block for each feel, within 80 columns, and what the columns mean; without a setup, every setup."""
    chosen = [one for one in whole.sheets if setup in (None, one.id)]
    asked = any(one.cars for one in whole.opinions.values())
    legend = f"{_LEGEND}\n{_MODEL}" if asked else _LEGEND
    return "\n\n".join([*(_setup(whole, one) for one in chosen), legend])


def _setup(whole: Dossier, sheet: Sheet) -> str:
    opinions = whole.opinions.get(sheet.id)
    heads = _HEADS if opinions and opinions.cars else (*_HEADS[:-2], "", "")
    lines = [whole.episode.title, sheet.name, _line(heads)]
    for row in whole.guides[sheet.id].rows:
        lines += ["", f"{row.feels} {row.where}"]
        changes = [line for one in row.changes for line in _lines(row, one, sheet, whole)]
        lines += changes or ["  no rule speaks of it, or nothing is left inside the limits"]
    return "\n".join(lines)


def _lines(row: GuideRow, change: Change, sheet: Sheet, whole: Dossier) -> Iterator[str]:
    """The change, and below it for whom it is where it is not for everybody."""
    yield _change(row, change, sheet, whole.opinions.get(sheet.id))
    only = for_whom(change.tyres, change.device)
    if only:
        yield spell(f"    only {only}", whole.channel.spelling)


def _change(row: GuideRow, change: Change, sheet: Sheet, opinions: Opinions | None) -> str:
    setting = sheet.setting(change.parameter)
    moved = f"{setting.figure(change.start)} -> {setting.shown(change.to)}"
    name = setting.name if len(setting.name) <= _NAME else setting.name[: _NAME - 1] + "\u2026"
    who = (f"{change.clicks:+d}", str(change.headroom), change.voice)
    return _line((name, moved, *who, _size(row, change, opinions), _cars(change)))


def _size(row: GuideRow, change: Change, opinions: Opinions | None) -> str:
    """`1.2×` the way it is meant, `-1.2×` the other way; "" without an opinion."""
    if change.agreement is None or opinions is None:
        return ""
    halves = measure(change.effects[row.where], opinions.half_percent.get(row.where))
    if halves is None:
        return ""
    helps = halves if cure(row.feels) == "tighter" else -halves
    said = times(helps).replace("under", "<").replace("\u00a0", "")
    return f"-{said}" if helps < 0 and not said.startswith("<") else said


def _cars(change: Change) -> str:
    return "" if change.agreement is None else str(hundredths(change.agreement))


def _line(cells: Sequence[str]) -> str:
    return _LINE.format(*cells).rstrip()
