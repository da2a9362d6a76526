"""What the outline has and the take has not: settings, one by one."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from rapidfuzz.distance import Indel

from producer.model.sheet import Sheet
from producer.take.heard import Listened
from producer.take.judging import Judged
from producer.take.names import name_words
from producer.take.speech import Speech

_ANYWHERE = ((0, 1 << 60),)
_NAME_BEFORE, _NAME_AFTER = 7, 3
_ALIKE = 0.7
_MOST = 0.6  # of a name's words, where its page was not found
# Words that stand in half of all names tell nothing apart from the figure beside them.


@dataclass(frozen=True, slots=True)
class Unsaid:
    """A setting whose value was not said for a setup."""

    setup: str
    address: str
    expected: Decimal


def wanted(sheets: Sequence[Sheet]) -> Iterator[tuple[Sheet, str, Decimal]]:
    """What has to be said: every setting of the first setup, of the others those that differ from it."""
    for sheet in sheets:
        told = sheet.values if sheet is sheets[0] else sheet.differs(sheets[0])
        for address in told:
            value = sheet.values.get(address)
            if value is not None:
                yield sheet, address, value


def unsaid(
    heard: Speech,
    listened: Listened,
    judged: Sequence[Judged],
    sheets: Sequence[Sheet],
    zones: Mapping[tuple[str, str], Sequence[tuple[int, int]]],
) -> Iterator[Unsaid]:
    """The settings that were not said, rightly or wrongly. `zones`: the words of each page of each setup.

    Where the captions garbled a name, its figure still counts if it stands in its page's words and belongs to nothing.
    """
    said = {(one.setup, one.address) for one in judged}
    owned = {at for one in listened.heard if one.figure is not None for at in range(one.first, one.last)}
    free = [(at, {abs(x) for x in readings}) for at, readings in listened.figures if at not in owned]
    for sheet, address, value in wanted(sheets):
        if (sheet.id, address) in said:
            continue
        spans = zones.get((sheet.id, sheet.setting(address).page), _ANYWHERE)
        index = _garbled(heard, sheet, address, value, free, spans)
        if index is None:
            yield Unsaid(sheet.id, address, value)
        else:
            del free[index]


def _garbled(
    heard: Speech,
    sheet: Sheet,
    address: str,
    value: Decimal,
    free: Sequence[tuple[int, set[Decimal]]],
    spans: Sequence[tuple[int, int]],
) -> int | None:
    """The free figure that is this setting's under a name the captions got wrong."""
    names = name_words(sheet.setting(address).name)
    for index, (at, readings) in enumerate(free):
        if abs(value) not in readings or not any(first <= at < last for first, last in spans):
            continue
        around = (*heard.plain[max(0, at - _NAME_BEFORE) : at], *heard.plain[at + 1 : at + 1 + _NAME_AFTER])
        # A figure of three digits or a fraction is hardly there by chance.
        telling = len(f"{value.normalize():f}".strip("-").replace(".", "")) >= 3
        heard_of = sum(any(_alike(word, name) for word in around) for name in names) / len(names)
        if (telling and spans is not _ANYWHERE) or heard_of > (_MOST if spans is _ANYWHERE else 0):
            return index
    return None


def _alike(word: str, name: str) -> bool:
    return len(word) > 2 and Indel.normalized_similarity(word, name) >= _ALIKE
