"""The request log within 80 columns, and as other programs read it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby
from textwrap import wrap
from typing import Any

from producer.replies.log import PURPOSES, Covered, Log, Waiting, Wanted
from producer.replies.wording import counted

_COLUMNS = 80
_ASKS = {"track request": "wants it", "correction": "corrects"}
_NOTHING = "nothing asked yet: 'producer requests --add' logs messages that you paste"


def log_text(log: Log) -> str:
    """What is wanted most, what to begin next, who waits, what is covered."""
    lines = [_head(log), *_wanted(log), *_waiting(log), *_coverage(log)]
    return "\n".join(lines)


def log_json(log: Log) -> dict[str, Any]:
    """The shape of `requests --json`; `next` is the order in which to begin what is not underway."""
    return {
        "format": 1,
        "wanted": [_wanted_json(one) for one in log.wanted],
        "next": [{"track": one.track, "garage": one.garage} for one in log.wanted if not one.underway],
        "waiting": [_waiting_json(one) for one in log.waiting],
        "coverage": [
            {
                "track": one.track,
                "garage": one.garage,
                "purpose": one.purpose,
                "episode": one.episode,
                "status": one.status,
            }
            for one in log.coverage
        ],
    }


def _wanted_json(one: Wanted) -> dict[str, Any]:
    return {
        "track": one.track,
        "garage": one.garage,
        "asked": one.asked,
        "waiting_days": one.days,
        "requests": list(one.requests),
        "because": list(one.because),
        "episode": one.episode,
        "status": one.status,
    }


def _waiting_json(one: Waiting) -> dict[str, Any]:
    return {
        "request": one.request,
        "asks": one.asks,
        "status": one.status,
        "track": one.track,
        "garage": one.garage,
        "waiting_days": one.days,
        "published": one.out,
    }


def _head(log: Log) -> str:
    new = sum(one.status == "new" for one in log.waiting)
    if not log.waiting and not log.wanted:
        return _NOTHING
    return f"{counted(new, 'message')} without an answer, {len(log.waiting) - new} waiting for an episode"


def _wanted(log: Log) -> Iterator[str]:
    for title, rows in (
        ("next to begin", [one for one in log.wanted if not one.underway]),
        ("underway", [one for one in log.wanted if one.underway]),
    ):
        if rows:
            yield from ("", title)
        for number, one in enumerate(rows, 1):
            mark = f"{number:>3}. " if title == "next to begin" else "     "
            yield f"{mark}{log.names.place(one.track, one.garage)}"
            yield from _hanging("; ".join(one.because), 5)
            yield from _hanging(", ".join(one.requests), 5)


def _waiting(log: Log) -> Iterator[str]:
    for title, status in (("without an answer", "new"), ("waiting for an episode", "planned")):
        found = [one for one in log.waiting if one.status == status]
        if found:
            yield from ("", title, *_table(found, log))


def _table(found: Sequence[Waiting], log: Log) -> Iterator[str]:
    rows = [_row(one, log) for one in found]
    wide = [max(len(row[at]) for row in rows) for at in range(len(rows[0]))]
    for one, row in zip(found, rows, strict=True):
        line = "  ".join(f"{cell:<{size}}" for cell, size in zip(row, wide, strict=True)).rstrip()
        yield from [f"  {line}"] if len(line) < _COLUMNS - 1 else _hanging("  ".join(row), 5, first=2)
        if one.out:
            yield f"     it is out: answer with 'producer reply {one.request} --mark'"


def _row(one: Waiting, log: Log) -> tuple[str, ...]:
    days = "no date" if one.days is None else counted(one.days, "day") if one.days else "today"
    about = log.names.place(one.track, one.garage) if one.track else "no track"
    return one.request, days, _ASKS.get(one.asks, one.asks), about, one.handle or "no name"


def _coverage(log: Log) -> Iterator[str]:
    if not log.coverage:
        return
    wide = max(len(log.names.place(one.track, one.garage)) for one in log.coverage)
    wide = min(wide, _COLUMNS - 4 - 13 * len(PURPOSES))
    yield from ("", f"{'covered':<{wide + 2}}" + "".join(f"  {purpose:<11}" for purpose in PURPOSES).rstrip())
    for (track, garage), cells in groupby(log.coverage, key=lambda one: (one.track, one.garage)):
        named = log.names.place(track, garage)
        named = named if len(named) <= wide else named[: wide - 1] + "\u2026"
        yield (f"  {named:<{wide}}" + "".join(f"  {_cell(one):<11}" for one in cells)).rstrip()


def _cell(one: Covered) -> str:
    return one.status or "-"


def _hanging(text: str, indent: int, first: int | None = None) -> Sequence[str]:
    begin = " " * (indent if first is None else first)
    return wrap(text, _COLUMNS, initial_indent=begin, subsequent_indent=" " * indent, break_on_hyphens=False)
