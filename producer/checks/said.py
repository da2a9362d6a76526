"""What the author's prose states about settings, beside the sheet it must agree with."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from producer.basics.finding import Finding, Severity
from producer.language.reading import Reader, reader
from producer.language.statements import Statement
from producer.model.episode import Advice, Episode
from producer.model.library import Case
from producer.model.record import Record
from producer.model.sheet import Sheet, SheetReason

_REFERENCE = re.compile(r"\{\{.*?\}\}", re.DOTALL)
# Said beside a figure, these make it somebody's wish, try or other car.
UNSURE = frozenset({"if", "would", "past", "neg", "someone", "worth", "question", "occasion", "vague"})


@dataclass(frozen=True, slots=True)
class Said:
    """One statement and where it stands. `reason` and `advice` are None in texts that belong to no reason."""

    record: Record
    path: tuple[str, ...]
    text: str
    statement: Statement
    sheet: Sheet
    reason: SheetReason | None = None
    advice: Advice | None = None

    @property
    def address(self) -> str:
        """The setting or split that is spoken of."""
        return self.statement.claim.parameter

    def finding(self, code: str, severity: Severity, span: tuple[int, int], message: str, hint: str) -> Finding:
        """A finding about characters `span` of the text."""
        place = self.record.inside(self.path, *span)
        return Finding(code, severity, place, message, hint, self.record.where(*self.path))

    def words(self, span: tuple[int, int]) -> str:
        """The author's words there, on one line."""
        return " ".join(self.text[span[0] : span[1]].split())


def said(case: Case) -> Iterator[Said]:
    """Everything that reasons, advice and the texts around the setups state, in the order written.

    Statements that are conditions, wishes, tries, denials or about another setup of the episode are left out.
    """
    if case.garage is None or not case.sheets:
        return
    reading = reader(case.garage)
    names = _setup_names(case.episode)
    for sheet in case.sheets:
        for reason in sheet.reasons:
            if not reason.inherited:
                for one in _of_reason(sheet, reason, reading):
                    if _meant(one, names):
                        yield one
    for one in _around(case, reading):
        if _meant(one, names):
            yield one


def _of_reason(sheet: Sheet, reason: SheetReason, reading: Reader) -> Iterator[Said]:
    for one in _read(reason.because, reading, reason.targets):
        yield Said(reason.reason, ("because",), reason.because, one, sheet, reason)
    for advice in reason.advice:
        for one in _read(advice.say, reading, reason.targets):
            yield Said(advice, ("say",), advice.say, one, sheet, reason, advice)


def _around(case: Case, reading: Reader) -> Iterator[Said]:
    episode, first = case.episode, case.sheets[0]
    points = episode.talking_points
    texts: tuple[tuple[Record, str, str], ...] = (
        (episode, "title", episode.title),
        (episode, "approach", episode.approach),
        (points, "opening", points.opening),
        (points, "closing", points.closing),
    )
    for record, key, text in texts:
        for one in _read(text, reading, ()):
            yield Said(record, (key,), text, one, first)


def _read(text: str, reading: Reader, subject: tuple[str, ...]) -> tuple[Statement, ...]:
    """References are no literals: they are read as a word that says nothing."""
    if not text:
        return ()
    return reading.statements(_REFERENCE.sub(lambda match: "x" * len(match.group()), text), subject)


def _setup_names(episode: Episode) -> dict[str, re.Pattern[str]]:
    """What each setup may be called in prose, by its id."""
    return {
        one.setup: re.compile(
            r"\b(?:"
            + "|".join(re.escape(name) for name in dict.fromkeys((one.name, one.purpose or one.name)))
            + r")\b",
            re.IGNORECASE,
        )
        for one in episode.setups
    }


def _meant(one: Said, names: dict[str, re.Pattern[str]]) -> bool:
    """Whether the statement is meant as a fact about its own setup."""
    statement = one.statement
    if statement.hedges & UNSURE or statement.claim.if_feels or (one.advice is None and "then" in statement.hedges):
        return False
    sentence = re.sub(r"[\s-]+", " ", one.text[statement.sentence[0] : statement.sentence[1]])
    others = (name for setup, name in names.items() if one.reason is None or setup != one.sheet.id)
    return not any(name.search(sentence) for name in others)
