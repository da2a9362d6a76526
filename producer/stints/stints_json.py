"""The evidence of an episode in the shape that other programs rely on."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from producer.basics.spelling import spell
from producer.model.guide import Change
from producer.model.stints import Comparison, Evidence, Interval, Line, Stint
from producer.model.tyre_readings import TyreFinding, Wear

_DIGITS = 6  # of seconds: a millionth is finer than any clock


# What holds sentences of ours; names and ids stay as the author wrote them.
_TEXTS = frozenset({"finding", "text", "basis", "may", "may_not", "notes", "why_not", "sentences", "paragraph"})


def stints_json(evidence: Evidence | None, spelling: str) -> dict[str, Any]:
    """Seconds, laps, points; intervals 95 %. Without stints: empty lists and no comparison."""
    whole: dict[str, Any] = _spelled(_shape(evidence), spelling)
    return whole


def _spelled(value: Any, spelling: str, *, ours: bool = False) -> Any:
    if isinstance(value, dict):
        return {key: _spelled(one, spelling, ours=key in _TEXTS) for key, one in value.items()}
    if isinstance(value, list):
        return [_spelled(one, spelling, ours=ours) for one in value]
    return spell(value, spelling) if ours and isinstance(value, str) else value


def _shape(evidence: Evidence | None) -> dict[str, Any]:
    stints = evidence.stints if evidence else ()
    comparisons = [_comparison(one) for one in evidence.comparisons] if evidence else []
    return {
        "format": 1,
        "episode": evidence.episode if evidence else None,
        "stints": [_stint(one) for one in stints],
        "comparison": comparisons[0] if comparisons else None,
        "temperatures": [
            {
                "corner": one.corner,
                "spread": number(one.spread),
                "finding": one.finding,
                "setup": stint.setup,
                "file": stint.file,
                "unit": one.unit,
                "mean": number(one.mean),
            }
            for stint in stints
            for one in stint.tyres.temperatures
        ],
        "comparisons": comparisons,
        "findings": [_finding(stint, one) for stint in stints for one in stint.tyres.findings],
    }


def _stint(stint: Stint) -> dict[str, Any]:
    pace = stint.pace
    return {
        "setup": stint.setup,
        "file": stint.file,
        "laps": len(stint.laps),
        "used": len(stint.kept),
        "outliers": sorted(one.number for one in stint.left_out),
        "pace": number(pace.lap_one) if pace else None,
        "falloff_per_lap": number(pace.falloff) if pace else None,
        "falloff_interval": interval(pace.falloff_interval) if pace else None,
        "method": pace.robust.method if pace else None,
        "wear": _wear(stint.tyres.wear),
        "left_out": [{"lap": one.number, "line": one.line, "why": one.left_out} for one in stint.left_out],
        "pace_at": {str(one.lap): number(one.seconds) for one in pace.at if not one.beyond} if pace else {},
        "consistency": number(pace.consistency) if pace and pace.consistency is not None else None,
        "least_squares": _line(pace.line) if pace else None,
        "fuel": _fuel(stint),
        "breakpoint": _breakpoint(stint),
        "doubtful": list(pace.doubtful) if pace else [],
        "refused": stint.refusal or None,
        "may": list(stint.may),
        "may_not": list(stint.may_not),
    }


def _line(line: Line) -> dict[str, Any]:
    return {
        "slope": number(line.slope),
        "intercept": number(line.intercept),
        "slope_interval": interval(line.slope_interval),
    }


def _fuel(stint: Stint) -> dict[str, Any] | None:
    fuel = stint.pace.fuel if stint.pace else None
    if fuel is None:
        return None
    return {
        "gain_per_lap": number(fuel.gain),
        "falloff_per_lap": number(fuel.falloff),
        "falloff_interval": interval(fuel.interval),
        "basis": fuel.basis,
    }


def _breakpoint(stint: Stint) -> dict[str, Any] | None:
    found = stint.pace.breakpoint if stint.pace else None
    if found is None:
        return None
    return {
        "lap": found.lap,
        "interval": list(found.interval),
        "before": number(found.before),
        "after": number(found.after),
    }


def _wear(wear: Wear | None) -> dict[str, Any] | None:
    if wear is None:
        return None
    return {
        "front_to_rear": number(wear.front_to_rear),
        "right_to_left": number(wear.right_to_left),
        "used": {corner: number(one) for corner, one in wear.used.items()},
        "first": wear.first,
        "lasts": wear.lasts,
    }


def _comparison(found: Comparison) -> dict[str, Any]:
    return {
        "first": found.first,
        "second": found.second,
        "crossover_lap": number(found.crossover_lap),
        "interval": interval(found.interval),
        "ahead_from_lap": found.ahead_from_lap,
        "total_after": {str(one.laps): number(one.seconds) for one in found.totals},
        "total_interval": {str(one.laps): interval(one.interval) for one in found.totals},
        "ahead_interval": list(found.ahead_interval) if found.ahead_interval else None,
        "first_ahead_from_lap": found.first_ahead_from,
        "first_ahead_interval": list(found.first_ahead_interval) if found.first_ahead_interval else None,
        "method": found.method,
        "laps": found.laps,
        "falloff_difference": number(found.falloff_difference),
        "falloff_interval": interval(found.falloff_interval),
        "comparable": found.comparable,
        "why_not": list(found.why_not),
        "title": found.title,
        "sentences": [found.crossover_text, found.ahead_text],
        "paragraph": found.paragraph,
        "may": list(found.may),
        "may_not": list(found.may_not),
        "notes": list(found.notes),
    }


def _finding(stint: Stint, found: TyreFinding) -> dict[str, Any]:
    return {
        "setup": stint.setup,
        "file": stint.file,
        "about": found.about,
        "corner": found.corner,
        "text": found.text,
        "change": _change(found.change),
    }


def _change(change: Change | None) -> dict[str, Any] | None:
    if change is None:
        return None
    return {
        "parameter": change.parameter,
        "from": number(change.start),
        "to": number(change.to),
        "clicks": change.clicks,
        "unit": change.unit,
    }


def interval(found: Interval | None) -> list[float] | None:
    """`[low, high]`."""
    return [round(found.low, _DIGITS), round(found.high, _DIGITS)] if found else None


def number(value: float | Decimal | None) -> float | int | None:
    """A JSON number: whole where it is, seconds to a millionth."""
    if value is None:
        return None
    if isinstance(value, Decimal):
        return int(value) if value == value.to_integral_value() else round(float(value), _DIGITS)
    return round(value, _DIGITS)
