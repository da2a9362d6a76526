"""Repairs that need no judgement, as data on the finding: `check --fix` puts them into the file."""

from __future__ import annotations

import re
from decimal import Decimal

from producer.basics.finding import Fix
from producer.checks.said import UNSURE, Said, statements
from producer.language.figures import figure_at
from producer.language.numbers import numbers
from producer.language.reading import reader
from producer.language.tokens import words
from producer.model.library import Case
from producer.model.record import Record
from producer.model.sheet import SheetReason

_WHOLE = "whole"  # a figure that cannot be taken apart from its unit
_COUNTED = frozenset({"clicks", "turns"})  # units that are words: they stay
_MINUS = frozenset({"minus", "negative", "-"})
_ARTICLE = re.compile(r"\b(an?)\s+$", re.IGNORECASE)
_EIGHTS = re.compile(r"8|1[18](?!\d)")  # spoken with a vowel first: eight, eleven, eighteen
_UNSETTLED = re.compile(r"1[18]\d\d(?!\d)")  # eleven hundred, or one thousand one hundred


def repair(record: Record, path: tuple[str, ...], start: int, end: int, new: str, plain: str = "") -> Fix | None:
    """A fix of characters `start` to `end` (exclusive) of what stands at `path` below a record."""
    source = record.source
    if source is None:
        return None
    whole = (*source.path, *path)
    return Fix(source.places.inside(whole, start, end), whole, start, end, new, plain)


def held(record: Record, *path: str) -> str:
    """The text of a value as the file holds it."""
    source = record.source
    return source.places.texts.get((*source.path, *path), "") if source else ""


def by_reference(one: Said, span: tuple[int, int], value: Decimal) -> Fix | None:
    """The figure at `span` as a reference to its setting, whose value on the sheet is `value`; its unit stays.

    Where the file's form does not allow a reference, the figure. A minus that the author leaves to the hearer ("three
    degrees of camber") stays away. None where the words around would no longer fit.
    """
    parts = _parts(one.text[span[0] : span[1]])
    if parts is None or not _fits_article(one.text[: span[0]], one.sheet.figure(one.address)):
        return None
    signed, end, unit = parts
    record, path, start = one.prose.record, one.prose.path, span[0]
    if value < 0 and not signed:
        shown = one.garage.figure(one.address, abs(value))
        return repair(record, path, start, start + end, shown, shown)
    shown, symbol = one.sheet.figure(one.address), one.garage.unit_of(one.address)
    if unit == _WHOLE or (unit and unit == symbol and unit not in _COUNTED):
        plain = one.sheet.shown(one.address) if unit == _WHOLE else shown + one.text[start + end : span[1]]
        return repair(record, path, *span, f"{{{{ {one.address} | with_unit }}}}", plain)
    return repair(record, path, start, start + end, f"{{{{ {one.address} }}}}", shown)


def by_figure(one: Said, span: tuple[int, int], value: Decimal) -> Fix | None:
    """The figure at `span` as another one of the same setting; its unit stays."""
    parts = _parts(one.text[span[0] : span[1]])
    shown = one.garage.figure(one.address, value)
    if parts is None or not _fits_article(one.text[: span[0]], shown) or parts[2] == _WHOLE or value < 0:
        return None
    return repair(one.prose.record, one.prose.path, span[0], span[0] + parts[1], shown, shown)


def stands_alone(one: Said) -> bool:
    """Whether the sentence is about one setting, with one figure, and says which way only as the sheet went."""
    begin, end = one.statement.sentence
    figures = [x for x in numbers(one.text[begin:end]) if not x.foreign]
    about = [x for x in statements(one, reader(one.garage)) if x.statement.sentence == one.statement.sentence]
    if len(figures) != 1 or len(about) != 1 or "{{" in one.text[begin:end]:
        return False
    hedged = one.statement.hedges & {"than", "general", "then"}
    return not hedged and one.statement.claim.direction in (None, _way(one))


def _way(one: Said) -> str | None:
    if one.advice is not None:
        return one.advice.direction
    movement = one.reason.movement(one.address) if one.reason else None
    return movement.direction if movement else None


def agrees_with_prose(
    case: Case, reason: SheetReason, *, figure: Decimal | None = None, way: str | None = None
) -> bool:
    """Whether the reason's own words say the same figure or direction: then the sheet may be what is wrong."""
    if case.garage is None:
        return False
    for one in reader(case.garage).statements(reason.because, reason.targets):
        claim = one.claim
        if one.hedges & UNSURE or claim.parameter not in reason.targets:
            continue
        if figure is not None and figure in (claim.value, claim.to):
            return True
        if way is not None and claim.direction == way:
            return True
    return False


def _parts(text: str) -> tuple[bool, int, str] | None:
    """Of "minus 3 degrees": whether it has a minus, where its figure ends, its unit as written; `_WHOLE` for "an inch
    and a quarter" and "3.90:1". None for what is no single figure."""
    row = words(text)
    if not row.text or row.text[0] == "+":
        return None
    at = 1 if row.text[0] in _MINUS else 0
    said = figure_at(row, at) if at < len(row) else None
    if said is None or not said.readings:
        return None
    end = row.end[said.next - 1]
    if said.unit or text[:end].endswith(":1"):
        return at == 1, len(text), _WHOLE
    return at == 1, end, text[end:].strip()


def _fits_article(before: str, shown: str) -> bool:
    """Whether "a" or "an" before a figure is right for another one, too."""
    article = _ARTICLE.search(before)
    if article is None:
        return True
    if _UNSETTLED.match(shown):
        return False
    return (article.group(1).lower() == "an") == bool(_EIGHTS.match(shown))
