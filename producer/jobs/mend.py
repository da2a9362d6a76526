"""Repairs what needs no judgement in the author's files: each place by itself, nothing else touched."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from producer.basics.finding import Finding, Fix
from producer.jobs.changing import draft_of, save
from producer.jobs.check import Checked, Step, check
from producer.library.edit import Draft, EditError


@dataclass(frozen=True, slots=True)
class Mended:
    """What was repaired: the findings that had a fix, what the files said of it as unified diff ("" for nothing), the
    sentences of those that could not be made, and the library checked again (as it is where nothing was written)."""

    fixed: tuple[Finding, ...]
    diff: str
    refused: tuple[str, ...]
    checked: Checked


def mend(
    root: Path,
    episodes: Iterable[str] = (),
    out: Path | None = None,
    step: Step | None = None,
    *,
    dry_run: bool = False,
) -> Mended:
    """Put every fix that the checks offer into the files, then check again; with `dry_run` nothing is written.

    A file is written at once, and only where it reads as before but for what was fixed. `step` as for `check`.
    Raises ProducerError as `check` does, and where a file was changed meanwhile.
    """
    asked = tuple(episodes)
    checked = check(root, asked, out, step)
    drafts: dict[str, Draft] = {}
    fixed: list[Finding] = []
    refused: list[str] = []
    for one in _last_first(checked.about(asked)):
        file = one.place.file
        if file not in drafts:
            drafts[file] = draft_of(root, file)
        try:
            put(drafts[file], one)
            fixed.append(one)
        except EditError as trouble:
            refused.append(str(trouble))
    changed = [draft for _, draft in sorted(drafts.items()) if draft.changed]
    if not dry_run:
        for draft in changed:
            save(root, draft)
    diff = "\n".join(draft.diff() for draft in changed)
    after = checked if dry_run or not changed else check(root, asked, out, step)
    return Mended(tuple(reversed(fixed)), diff, tuple(reversed(refused)), after)


def put(draft: Draft, finding: Finding) -> None:
    """Put one finding's fix into its file: no character around it changes. Raises EditError where it cannot be."""
    fix = finding.fix
    if fix is None:
        return
    before, trouble = draft.text, None
    for new in dict.fromkeys(one for one in (fix.new, fix.plain) if one):
        try:
            draft.replace_inside(fix.path, fix.start, fix.end, new)
        except EditError as error:
            trouble = error
            continue
        if len(draft.text) == len(before) - (fix.end - fix.start) + len(new):
            return
        draft.text = before  # it took other quotes
    raise trouble or EditError(f"{finding.place}: '{fix.new}' cannot stand here without quotes; change it by hand")


def _last_first(findings: Iterable[Finding]) -> list[Finding]:
    """The findings with a fix, so that none moves the characters of one after it; of two in one place the first."""
    kept: list[tuple[Finding, Fix]] = []
    for one in findings:
        fix = one.fix
        if fix is not None and not any(_meet(fix, other) for _, other in kept):
            kept.append((one, fix))
    return [one for one, fix in sorted(kept, key=lambda pair: (pair[1].place, pair[1].start), reverse=True)]


def _meet(one: Fix, other: Fix) -> bool:
    same = (one.place.file, one.path) == (other.place.file, other.path)
    return same and one.start < other.end and other.start < one.end
