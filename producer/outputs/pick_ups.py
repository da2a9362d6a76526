"""What has to be recorded again, and what a pick-up mends, as marks for the cue sheet.

Times are those of the take that the sheet is timed from. What is said wrongly stands where it is said. What is not said
at all stands where it has to be put in: a setting at the end of its section, a section that was left out where the next
one begins, a condition or the caution at the end of the section that tells them.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import PurePosixPath

from producer.captions.chapters import stamp
from producer.model.cue import Mark
from producer.model.dossier import Dossier
from producer.model.script import Section
from producer.model.take import TO_RECORD, Mended, TakeFinding

_BEFORE_END_MS = 50  # a frame and a little at every rate: a mark at the very end would make the cut longer


def pick_ups(dossier: Dossier) -> Iterator[Mark]:
    """The marks in no order; none without a take of this episode."""
    take = dossier.take
    if take is None or take.timeline is None:
        return
    sheet = _Sheet(dossier.told, dossier.narration.sections)
    gone = {(one.expected, one.setup) for one in take.findings if one.about == "section"}
    for one in take.findings:
        section = section_of(dossier.narration.sections, one)
        inside = section is not None and (section.title, section.setup) in gone
        # The settings of a section that was left out are recorded with it.
        if one.code in TO_RECORD and not (inside and one.about == "parameter" and one.at_ms is None):
            yield _mark(one, sheet, take.file)
    for some in mended_together(dossier.narration.sections, take.mended):
        yield _put_in(some, sheet)


def section_of(script: Sequence[Section], one: TakeFinding) -> Section | None:
    """The section of the script that tells what a finding is about."""
    return next((section for section in script if _tells(section, one)), None)


def mended_together(script: Sequence[Section], mended: Sequence[Mended]) -> list[tuple[Mended, ...]]:
    """What pick-ups mend: each slip by itself; what was not said of one section, and is in one file, together, in the
    order in which the file says it.
    """
    found: list[tuple[Mended, ...]] = [(one,) for one in mended if one.finding.at_ms is not None]
    together: dict[tuple[str, str], list[Mended]] = {}
    for one in mended:
        if one.finding.at_ms is None:
            section = section_of(script, one.finding)
            together.setdefault((section.id if section else "", one.file), []).append(one)
    return found + [tuple(sorted(some, key=lambda one: one.start_ms)) for some in together.values()]


def _mark(one: TakeFinding, sheet: _Sheet, file: str) -> Mark:
    again = f'say "{one.again}"' if one.again else ""
    if one.at_ms is None:
        at, what = sheet.place_for(one), one.message if again else f"{one.expected}"
        return Mark(at, at, "pick-up", f"Record: {what}", again or "Left out; it goes in here")
    if one.place.file == file:
        return Mark(one.at_ms, one.at_ms, "pick-up", f"Record again: {one.message}", again)
    # What a pick-up says has no time in the take.
    at = sheet.place_for(one)
    return Mark(at, at, "pick-up", f"Record again: {one.message}, in {PurePosixPath(one.place.file).name}", again)


def _put_in(some: Sequence[Mended], sheet: _Sheet) -> Mark:
    first = some[0]
    at = sheet.place_for(first.finding) if first.finding.at_ms is None else first.finding.at_ms
    what = "; ".join(one.finding.message for one in some)
    return Mark(at, at, "pick-up", f"Put in {PurePosixPath(first.file).name} from {stamp(first.start_ms)}", what)


class _Sheet:
    """Where in the told episode something missing belongs."""

    def __init__(self, told: Dossier, script: tuple[Section, ...]) -> None:
        starts, total = told.timeline.section_starts, told.timeline.total_ms
        self._last = max(0, total - _BEFORE_END_MS)
        names = [one.id for one in told.narration.sections]
        self._starts = dict(zip(names, starts, strict=True))
        self._ends = dict(zip(names, (*starts[1:], self._last), strict=True))
        self._script = script

    def place_for(self, one: TakeFinding) -> int:
        """Milliseconds of the take."""
        section = section_of(self._script, one)
        if section is None:
            return self._last
        if section.id in self._ends:
            return min(self._last, self._ends[section.id])
        after = self._script[self._script.index(section) + 1 :]
        return min(self._last, next((self._starts[x.id] for x in after if x.id in self._starts), self._last))


def _tells(section: Section, one: TakeFinding) -> bool:
    if one.about == "section":
        return (section.title, section.setup) == (one.expected, one.setup)
    if one.about == "parameter":
        return section.setup == one.setup and any(one.parameter in passage.settings for passage in section.passages)
    kind = "caution" if one.about == "caution" else "conditions"
    return any(passage.kind == kind for passage in section.passages)
