"""Which setup and which page a presenter is speaking of: the last one named as a topic.

"Now the long run" turns to it until another is announced; "for the long run, 750" speaks of it until the next setup
or page is named; "over a long run" and "than the short run has" change nothing. Which words announce is common
practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from producer.language.number_words import SMALL, TENS
from producer.language.tokens import listed
from producer.model.sheet import Sheet

TopicKind = Literal["turn", "aside", "page"]
_PASSING = listed("a an every any than like as one each most")
_ANNOUNCES = listed(
    "now next onto over move moving switch switching turn turning start starting here here's let's lets brings that's "
    "okay ok right alright garage to get into"
)
_ASIDE = listed("for on in with")
_ARTICLES = listed("the my our your this that")
_FILLED = (
    _ANNOUNCES | _ARTICLES | listed("and so well then on is up we i'll we'll go with for setup car one all of us it")
)
_FIGURES = (frozenset(SMALL) | frozenset(TENS)) - {"one"}
_STRONG = listed("now next onto switching moving turning")
_TAKES = listed("gets takes has runs goes wants is uses stays at car setup one")
_PAGE_WORDS = listed(
    "page screen tab next is the first last then and let's on to go look at are first's now so section okay ok well "
    "start we i come comes"
)
_TURNS = (["now", "the"], ["on", "the"], ["onto", "the"])
_SHORT = 9  # words: a sentence that only names a setup or a page
# Directly before "the long run" these make it something else's place or measure: "it belongs to the short run".
_NOT_ABOUT = ("than the", "as in the", "as in", "belongs to the", "you have the", "like the", "is the", "as the")


@dataclass(frozen=True, slots=True)
class Topic:
    """A setup or page named as a topic: words `at` to `end` (exclusive), for a page with what leads up to its name."""

    at: int
    end: int
    kind: TopicKind
    name: str


@dataclass(frozen=True, slots=True)
class TopicNames:
    """How setups and pages are named, ready for reading: each a row of words, longest first."""

    setups: tuple[tuple[tuple[str, ...], str], ...]
    pages: tuple[tuple[tuple[str, ...], str], ...]


def topic_names(sheets: Sequence[Sheet], pages: Sequence[str]) -> TopicNames:
    """The names of an episode's setups and of its garage's pages."""
    setups: dict[tuple[str, ...], str] = {}
    for sheet in sheets:
        for form in _forms(sheet):
            setups.setdefault(form, sheet.id)
    if len(sheets) == 2:
        for form in (("other", "one"), ("other", "setup"), ("other", "car"), ("second", "one"), ("second", "setup")):
            setups.setdefault(form, sheets[1].id)
    named = {tuple(page.replace("_", " ").replace("-", " ").split()): page for page in pages}
    return TopicNames(_longest_first(setups), _longest_first(named))


def _forms(sheet: Sheet) -> Iterator[tuple[str, ...]]:
    for name in (sheet.name, sheet.setup.purpose or "", sheet.id.replace("-", " ").replace("_", " ")):
        words = tuple(_bare(name).split())
        if len(words) > 1:
            yield words
        if words:
            yield from ((*words, noun) for noun in ("one", "car", "setup", "run"))
            yield from ((words[0], noun) for noun in ("one", "car", "setup"))


def _longest_first(found: Mapping[tuple[str, ...], str]) -> tuple[tuple[tuple[str, ...], str], ...]:
    return tuple(sorted(found.items(), key=lambda one: -len(one[0])))


def _bare(name: str) -> str:
    return re.sub(r"[^\w\s]+", " ", name.lower().replace("-", " "))


def topics(plain: Sequence[str], first: int, last: int, names: TopicNames) -> list[Topic]:
    """The topics that the sentence of words `first` to `last` names, in order. "short-run" is two words of a name."""
    said, places = _split(plain, first, last)
    named = [one for one in _named(said, names.setups) if not _in_passing(said, one[0])]
    if not named:
        named = list(_half(said, names.setups))
    several = len({name for _, _, name in named}) > 1
    setups = (_setup(said, places, at, size, name, several) for at, size, name in named)
    pages = (_page(said, places, at, size, name) for at, size, name in _named(said, names.pages))
    return sorted((one for one in (*setups, *pages) if one is not None), key=lambda one: one.at)


def _half(said: list[str], forms: Sequence[tuple[tuple[str, ...], str]]) -> Iterator[tuple[int, int, str]]:
    """As in "on to the long", the rest of the name lost: its first word straight after what announces it."""
    firsts = {form[0]: name for form, name in forms if len(form) > 1}
    for at in range(2, len(said)):
        if said[at] in firsts and said[at - 1] == "the" and _strong(said, at)[:1] + _strong(said, at)[-1:] in _TURNS:
            yield at, 1, firsts[said[at]]


def _in_passing(said: list[str], at: int) -> bool:
    """As in "over a long run", "than the short run has", "it belongs to the short run"."""
    return bool(at) and (said[at - 1] in _PASSING or " ".join(said[max(0, at - 3) : at]).endswith(_NOT_ABOUT))


def _split(plain: Sequence[str], first: int, last: int) -> tuple[list[str], list[int]]:
    """The words with hyphens taken apart, and the place in the speech of each."""
    said: list[str] = []
    places: list[int] = []
    for at in range(first, last):
        for part in plain[at].split("-"):
            if part:
                said.append(part)
                places.append(at)
    return said, places


def _named(said: list[str], forms: Sequence[tuple[tuple[str, ...], str]]) -> Iterator[tuple[int, int, str]]:
    """(place, words, name) of each name said."""
    starts = {form[0] for form, _ in forms}
    at = 0
    while at < len(said):
        found = None
        if said[at] in starts:
            found = next((one for one in forms if tuple(said[at : at + len(one[0])]) == one[0]), None)
        if found is not None:
            yield at, len(found[0]), found[1]
        at += len(found[0]) if found else 1


def _setup(said: list[str], places: list[int], at: int, size: int, name: str, several: bool) -> Topic | None:
    before, after = said[max(0, at - 5) : at], said[at + size :]
    end = places[at + size - 1] + 1
    figures = any(word[0].isdigit() or word in _FIGURES for word in said)
    lead_in = said[:at]
    if not all(word in _FILLED for word in lead_in):
        lead_in = _strong(said, at) or lead_in
    strange = [word for word in lead_in if word not in _FILLED]
    # "Now tho long run", or one word misheard and nothing else in the sentence.
    forgiven = len(strange) == 1 and (bool(_strong(said, at)) or (not after and len(said) <= _SHORT and not figures))
    opens = not strange or forgiven
    if several and not figures and not (opens and _strong(said, at)):
        return None  # "two setups here: the short run and the long run"
    if opens and (len(said) <= _SHORT or not _ASIDE.intersection(lead_in[-2:])) and _announced(lead_in, after, said):
        return Topic(places[at - len(lead_in)], end, "turn", name)
    preposed = len(before) >= 2 and before[-1] in _ARTICLES and before[-2] in _ASIDE
    if preposed and (figures or at <= 3 or not after):
        return Topic(places[at], end, "aside", name)
    if not lead_in and figures:
        return Topic(places[at], end, "aside", name)  # "long run, 750"
    if figures and lead_in and lead_in[-1] in _ARTICLES and after and after[0] in _TAKES:
        return Topic(places[at], end, "aside", name)
    return None


def _strong(said: list[str], at: int) -> list[str]:
    """The words before a name from "now", "on to" and the like on; [] where none is near."""
    for x in range(at - 1, max(-1, at - 5), -1):
        if said[x] in _STRONG or (said[x] == "on" and said[x + 1 : x + 2] == ["to"]):
            return said[x:at]
    return []


def _announced(lead_in: list[str], after: list[str], said: list[str]) -> bool:
    """Whether a sentence that begins with these words and the name turns to it."""
    if _ANNOUNCES.intersection(lead_in):
        return True
    return len(said) <= _SHORT and all(word in _FILLED for word in after)


def _page(said: list[str], places: list[int], at: int, size: int, name: str) -> Topic | None:
    """A page is named by "... page", or where a sentence hardly says anything else. It begins with its lead words."""
    after = said[at + size : at + size + 1]
    alone = len(said) <= _SHORT and all(word in _FILLED or word in _PAGE_WORDS for word in said[:at])
    if after != ["page"] and not (alone and all(word in _PAGE_WORDS for word in said[at + size :])):
        return None
    first = at
    while first and (said[first - 1] in _FILLED or said[first - 1] in _PAGE_WORDS):
        first -= 1
    return Topic(places[first], places[at + size - 1] + 1, "page", name)
