"""A take as the data that other programs rely on."""

from __future__ import annotations

from decimal import Decimal

from producer.model.take import HeardSection, Mended, Take, TakeFinding


def take_json(take: Take) -> dict[str, object]:
    """The shape of `take --json`: times in seconds of the file named, figures as numbers, null for what is nowhere.

    A section that was left out has no start and no end.
    """
    return {
        "format": 1,
        "of": take.of,
        "file": take.file,
        "pick_ups": list(take.pick_ups),
        "length": _seconds(take.length_ms),
        "words_per_minute": take.words_per_minute or None,
        "sections": [_section(one) for one in take.sections],
        "words": {"matched": take.words.matched, "script": take.words.script, "take": take.words.take},
        "asides": [{"start": _seconds(one.start_ms), "end": _seconds(one.end_ms)} for one in take.asides],
        "findings": [_finding(one) for one in take.findings],
        "mended": [_mended(one) for one in take.mended],
    }


def _section(one: HeardSection) -> dict[str, object]:
    return {
        "section": one.section,
        "title": one.title,
        "start": _seconds(one.start_ms),
        "end": _seconds(one.end_ms),
        "placed_by": one.placed_by,
        "confidence": one.confidence,
        "earlier": [_seconds(time) for time in one.earlier],
        "or_start": _seconds(one.otherwise_ms),
    }


def _mended(one: Mended) -> dict[str, object]:
    """What is struck from the findings: `start` is where the pick-up `file` says it, `at` where the take went wrong."""
    struck = one.finding
    return {
        "about": struck.about,
        "at": _seconds(struck.at_ms),
        "parameter": struck.parameter,
        "setup": struck.setup,
        "message": struck.message,
        "file": one.file,
        "start": _seconds(one.start_ms),
    }


def _finding(one: TakeFinding) -> dict[str, object]:
    return {
        "code": one.code,
        "severity": str(one.severity),
        "about": one.about,
        "at": _seconds(one.at_ms),
        "said": _figure(one.said),
        "expected": _figure(one.expected),
        "parameter": one.parameter,
        "setup": one.setup,
        "file": one.place.file,
        "line": one.place.line,
        "message": one.message,
        "again": one.again,
    }


def _seconds(ms: int | None) -> float | None:
    return None if ms is None else ms / 1000


def _figure(value: Decimal | str | None) -> int | float | str | None:
    if not isinstance(value, Decimal):
        return value
    return int(value) if value == value.to_integral_value() else float(value)
