"""Findings the author lives with (`allow:`): hidden, and reported once they hide nothing."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from difflib import get_close_matches

from producer.basics.finding import Finding, Severity
from producer.model.episode import Waiver
from producer.model.library import Case, laps_file

# Codes that other commands raise, or that need evidence this run does not look at: never unknown, never unused.
ELSEWHERE = frozenset({"not-said", "said-differs"})


def waived(findings: Iterable[Finding], case: Case, ran: Mapping[str, bool]) -> list[Finding]:
    """`findings` without those that the episode's waivers hide, plus what is wrong with the waivers themselves.

    `ran` holds every code, True where its check has run.
    """
    waivers = case.episode.allow
    if not waivers:
        return list(findings)
    files = {case.episode.place().file, *(laps_file(case.episode, one) for one in case.episode.stints)}
    codes = {one.code for one in waivers}
    kept: list[Finding] = []
    used: set[int] = set()
    for finding in findings:
        hiding = _hiding(finding, case) if finding.place.file in files and finding.code in codes else []
        used.update(hiding)
        if not hiding:
            kept.append(finding)
    for index, one in enumerate(waivers):
        kept += _complaints(one, index in used, ran)
    return kept


def _hiding(finding: Finding, case: Case) -> list[int]:
    """The indexes of the waivers that hide a finding."""
    return [
        index
        for index, one in enumerate(case.episode.allow)
        if one.code == finding.code and (one.for_ is None or _names(one.for_, finding, case))
    ]


def _names(subject: str, finding: Finding, case: Case) -> bool:
    """Whether a finding is about `subject`: a setting, split, parameter, page or setup."""
    if f".{subject}." in f".{finding.where}.":
        return True
    garage = case.garage
    meant = {subject, *garage.covers(subject)} if garage else {subject}
    return not meant.isdisjoint(_subjects(finding, case))


def _subjects(finding: Finding, case: Case) -> Iterator[str]:
    """What the reason or the values of a finding's `where` are about."""
    garage = case.garage
    for setup in case.episode.setups:
        for index, reason in enumerate(setup.reasons):
            if finding.where.startswith(setup.where("reasons", index)):
                for target in reason.for_:
                    yield target
                    yield from garage.covers(target) if garage else ()
        for key in ("values", "changes"):
            start = setup.where(key) + "."
            if finding.where.startswith(start):
                address = finding.where.removeprefix(start)
                yield address
                yield from garage.covers(address) if garage else ()


def _complaints(waiver: Waiver, used: bool, ran: Mapping[str, bool]) -> Iterator[Finding]:
    place, where = waiver.place("code"), waiver.where("code")
    if waiver.code not in ran and waiver.code not in ELSEWHERE:
        near = get_close_matches(waiver.code, ran, 1, 0.5)
        hint = f"did you mean '{near[0]}'?" if near else "'producer check' prints the code of each finding"
        message = f"there is no finding with the code '{waiver.code}'"
        yield Finding("unknown-reference", Severity.ERROR, place, message, hint, where)
    elif not used and ran.get(waiver.code, False):
        about = f" about {waiver.for_}" if waiver.for_ else ""
        message = f"this waiver hides nothing: there is no {waiver.code}{about} in this episode"
        hint = "take it out, or look whether its 'for' still names what you mean" if about else "take it out"
        yield Finding("waiver-unused", Severity.WARNING, place, message, hint, where)
