"""What the author's prose states about settings, beside the sheet it must agree with."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

from producer.basics.finding import Finding, Fix, Severity
from producer.language.reading import Reader, reader
from producer.language.statements import Statement
from producer.model.episode import Advice, Episode
from producer.model.garage import Garage
from producer.model.library import Case
from producer.model.prose import Prose, prose
from producer.model.sheet import Sheet, SheetReason

_REFERENCE = re.compile(r"\{\{.*?\}\}", re.DOTALL)
# Said beside a figure, these make it somebody's wish, try or other car.
UNSURE = frozenset({"if", "would", "past", "neg", "someone", "worth", "question", "occasion", "vague"})


@dataclass(frozen=True, slots=True)
class Spoken:
    """One text with the sheet that it speaks of (the first setup's for the episode's own texts).

    `reason` and `advice` are None in texts that belong to no reason.
    """

    prose: Prose
    sheet: Sheet
    garage: Garage
    reason: SheetReason | None = None

    @property
    def text(self) -> str:
        """What the author wrote."""
        return self.prose.text

    @property
    def advice(self) -> Advice | None:
        """The advice it is said in."""
        return self.prose.advice

    @property
    def literal(self) -> str:
        """The text with its references as words that say nothing: they are no literals."""
        return _REFERENCE.sub(lambda match: "x" * len(match.group()), self.text)

    @property
    def subject(self) -> tuple[str, ...]:
        """What its reason is for."""
        return self.reason.targets if self.reason else ()

    def finding(
        self, code: str, severity: Severity, span: tuple[int, int], message: str, hint: str, fix: Fix | None = None
    ) -> Finding:
        """A finding about characters `span` of the text."""
        return Finding(code, severity, self.prose.place(*span), message, hint, self.prose.where, fix=fix)

    def words(self, span: tuple[int, int]) -> str:
        """The author's words there, on one line."""
        return " ".join(self.text[span[0] : span[1]].split())


@dataclass(frozen=True, slots=True)
class Said(Spoken):
    """One statement of a text."""

    statement: Statement = field(kw_only=True)

    @property
    def address(self) -> str:
        """The setting or split that is spoken of."""
        return self.statement.claim.parameter


def spoken(case: Case) -> Iterator[Spoken]:
    """Every text of an episode whose sheet is known, in the order of the file's records."""
    if case.garage is None or not case.sheets:
        return
    for one in prose(case.episode):
        sheet = case.sheets[0] if one.setup is None else case.sheet(one.setup.setup)
        if sheet is not None:
            reason = next((x for x in sheet.reasons if x.reason is one.reason), None)
            yield Spoken(one, sheet, case.garage, reason)


def said(case: Case) -> Iterator[Said]:
    """Everything that reasons, advice and the texts around the setups state.

    Statements that are conditions, wishes, tries, denials or about another setup of the episode are left out.
    """
    names = setup_names(case.episode)
    for text in spoken(case):
        for one in statements(text, reader(text.garage)):
            if _meant(one, names):
                yield one


def statements(text: Spoken, reading: Reader) -> list[Said]:
    """All that one text states, meant or not."""
    found = reading.statements(text.literal, text.subject)
    return [Said(text.prose, text.sheet, text.garage, text.reason, statement=one) for one in found]


def setup_names(episode: Episode) -> dict[str, re.Pattern[str]]:
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


def names_another(text: Spoken, sentence: tuple[int, int], names: dict[str, re.Pattern[str]]) -> bool:
    """Whether a sentence names a setup other than the one whose reason it stands in."""
    words = re.sub(r"[\s-]+", " ", text.text[sentence[0] : sentence[1]])
    others = (name for setup, name in names.items() if text.reason is None or setup != text.sheet.id)
    return any(name.search(words) for name in others)


def _meant(one: Said, names: dict[str, re.Pattern[str]]) -> bool:
    """Whether the statement is meant as a fact about its own setup."""
    statement = one.statement
    if statement.hedges & UNSURE or statement.claim.if_feels or (one.advice is None and "then" in statement.hedges):
        return False
    return not names_another(one, statement.sentence, names)
