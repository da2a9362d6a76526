"""Findings as a good compiler prints them: place, message, the source line with the span marked, a hint."""

from __future__ import annotations

import json
import os
import sys
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from shutil import get_terminal_size
from textwrap import wrap
from typing import TYPE_CHECKING

from producer.basics.finding import Finding, Severity
from producer.basics.located import Places

if TYPE_CHECKING:
    from producer.jobs.mend import Mended
    from producer.jobs.overlays import Drawn
    from producer.jobs.report import Report

NOTES_SHOWN = 3
_NO_EPISODES = "no episodes yet: each is a folder of the library with an episode.yaml in it"
_COLOURS = {Severity.ERROR: "31", Severity.WARNING: "33", Severity.NOTE: "36"}


def findings_text(findings: Sequence[Finding], files: Mapping[str, Places], *, every_note: bool, colour: bool) -> str:
    """All findings and a count last; "" where there is nothing to say.

    Notes beyond the first three are only counted, unless `every_note`.
    """
    shown, hidden = _choose(findings, every_note=every_note)
    blocks = [_block(one, files.get(one.place.file), colour=colour) for one in shown]
    if hidden:
        blocks.append(f"{_count(hidden, 'more note')} not shown; --all shows every one")
    if findings:
        fixable = sum(one.fix is not None for one in findings)
        blocks.append(counts_text(findings) + (f" ({fixable} fixable with 'producer check --fix')" if fixable else ""))
    return "\n\n".join(blocks)


def clean_text(episodes: int) -> str:
    """What a check says where nothing was found: silence might as well mean that nothing was read."""
    if not episodes:
        return _NO_EPISODES
    return f"nothing to mend in {_count(episodes, 'episode')}"


def counts(findings: Iterable[Finding]) -> dict[str, int]:
    """How many of each severity, zeros included."""
    found = Counter(one.severity for one in findings)
    return {str(severity): found[severity] for severity in Severity}


def counts_text(findings: Sequence[Finding]) -> str:
    """`2 errors, 1 warning`."""
    found = counts(findings)
    return ", ".join(_count(number, name) for name, number in found.items() if number) or "nothing to mend"


def findings_json(findings: Sequence[Finding], mended: Mended | None = None) -> str:
    """The shape that other programs rely on; after a repair with what was mended."""
    shape: dict[str, object] = {"format": 1, "counts": counts(findings), "findings": finding_rows(findings)}
    if mended is not None:
        shape |= {"mended": finding_rows(mended.fixed), "refused": list(mended.refused), "diff": mended.diff}
    return json.dumps(shape, ensure_ascii=False, indent=2)


def finding_rows(findings: Iterable[Finding]) -> list[dict[str, object]]:
    """Findings as they stand in every JSON shape."""
    return [
        {
            "code": one.code,
            "severity": str(one.severity),
            "file": one.place.file,
            "line": one.place.line,
            "column": one.place.column,
            "where": one.where,
            "message": one.message,
            "hint": one.hint,
            "width": one.place.width,
            "related": [{"file": at.file, "line": at.line, "column": at.column} for at in one.related],
            "fix": _fix_row(one),
        }
        for one in findings
    ]


def _fix_row(finding: Finding) -> dict[str, object] | None:
    """Which characters of the file become what (`plain` where the form of the text there allows no `new`)."""
    fix = finding.fix
    if fix is None:
        return None
    at = fix.place
    return {"line": at.line, "column": at.column, "width": at.width, "new": fix.new, "plain": fix.plain}


def mended_text(mended: Mended, *, dry_run: bool) -> str:
    """What a repair did: the diff, how many places, and what has to be done by hand."""
    blocks = [mended.diff] if mended.diff else []
    blocks += mended.refused
    files = len({one.place.file for one in mended.fixed})
    if mended.fixed:
        done = "to mend; nothing was written" if dry_run else "mended"
        blocks.append(f"{_count(len(mended.fixed), 'place')} in {_count(files, 'file')} {done}")
    else:
        blocks.append("nothing here is mended without you")
    return "\n\n".join(blocks)


def exit_code(findings: Iterable[Finding], *, strict: bool) -> int:
    """1 where an error stands (with `strict` a warning too), else 0."""
    failing = {Severity.ERROR, Severity.WARNING} if strict else {Severity.ERROR}
    return 1 if any(one.severity in failing for one in findings) else 0


def errors_text(findings: Sequence[Finding], files: Mapping[str, Places], *, colour: bool) -> str:
    """The errors alone, as a build shows them: what else there is, `check` tells."""
    errors = [one for one in findings if one.severity is Severity.ERROR]
    return findings_text(errors, files, every_note=False, colour=colour)


def build_text(report: Report, out: Path) -> str:
    """What a build did, a line an episode, and one more where a take gives its times."""
    rows: list[str] = []
    for name, files in report.built.items():
        rows.append(f"  {name}: {_count(len(files), 'file')} in {out / name}")
        rows += [f"    {told}" for told in (report.timed.get(name),) if told]
    rows += [f"  {name}: unchanged" for name in report.unchanged]
    rows += [f"  {name}: {why}" for name, why in report.held_back.items()]
    if not rows:
        return _NO_EPISODES
    made = _count(len(report.built), "episode")
    return "\n".join([f"{made} built, {len(report.unchanged)} unchanged, {len(report.held_back)} held back", *rows])


def overlays_text(drawn: Drawn) -> str:
    """How many captions were drawn, and where they are."""
    total = drawn.drawn + drawn.unchanged
    if not total:
        return "no caption to draw"
    folder, shapes = drawn.folders[0].parent, ", ".join(one.name for one in drawn.folders)
    return f"{_count(total, 'picture')} in {folder} ({shapes}): {drawn.drawn} drawn, {drawn.unchanged} unchanged"


def colour_wanted() -> bool:
    """Colour on a terminal only, and not where NO_COLOR is set (no-color.org) or the terminal is dumb."""
    return sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def width() -> int:
    """Columns to print in: the terminal's, at most 100; 80 where there is none."""
    return min(100, get_terminal_size((80, 24)).columns)


def _choose(findings: Sequence[Finding], *, every_note: bool) -> tuple[list[Finding], int]:
    notes = [one for one in findings if one.severity is Severity.NOTE]
    dropped = set() if every_note else set(notes[NOTES_SHOWN:])
    return [one for one in findings if one not in dropped], len(dropped)


def _block(finding: Finding, source: Places | None, *, colour: bool) -> str:
    head = f"{finding.severity}[{finding.code}]"
    if colour:
        head = f"\033[{_COLOURS[finding.severity]}m{head}\033[0m"
    lines = [f"{finding.place}: {head}", *_wrapped(finding.message, "  ")]
    if source is not None:
        lines += _excerpt(finding, source)
    if finding.hint:
        lines += _wrapped(f"hint: {finding.hint}", "  ")
    return "\n".join(lines)


def _wrapped(text: str, indent: str) -> list[str]:
    return wrap(_clean(text), width(), initial_indent=indent, subsequent_indent=indent, break_on_hyphens=False)


def _excerpt(finding: Finding, source: Places) -> list[str]:
    """The source line and the marks under it, cut to the width around the span."""
    row = _clean(source.line(finding.place.line)).rstrip()
    if not row:
        return []
    number = str(finding.place.line)
    room = max(20, width() - len(number) - 6)
    start = min(finding.place.column - 1, len(row))
    first = max(0, min(start - room // 3, len(row) - room))
    last = min(len(row), first + room)
    marks = max(1, min(finding.place.width, last - start))
    bar = " " * len(number)
    return [f"  {number} | {_cut(row, first, last)}", f"  {bar} | {' ' * (start - first)}{'^' * marks}"]


def _cut(row: str, first: int, last: int) -> str:
    """Part of a line, as wide as before, with an ellipsis in place of the letter at each cut."""
    part = row[first:last]
    if first > 0:
        part = "\u2026" + part[1:]
    return part[:-1] + "\u2026" if last < len(row) else part


def _clean(text: str) -> str:
    """Control characters as blanks: an author's file must not steer the terminal."""
    return "".join(letter if letter.isprintable() or letter == "\u00a0" else " " for letter in text)


def _count(number: int, name: str) -> str:
    return f"{number} {name}{'' if number == 1 else 's'}"
