"""Where a section begins in a take that is talked from notes: by what names its page, its setup and its settings."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from rapidfuzz.distance import Indel

from producer.language.numbers import STARTS
from producer.language.tokens import listed
from producer.model.garage import Garage
from producer.model.script import Narration, Section
from producer.take.heard import Listened, Turn
from producer.take.sentences import Sentence
from producer.take.speech import Speech

# A setup that is announced so many words before its first page begins with the announcement.
_ANNOUNCED = 45
_RUN = 60
_CLOSING, _SILENCE_MS = 45, 800  # words before the caution, and the silence after which a closing begins
_ENDS = (
    "that's it", "that is it", "that's both", "that's all", "that's the car", "to wrap up", "wrapping up",
    "before you go", "there you have it", "one last thing", "last thing", "both cars are",
)  # fmt: skip
_NEARLY = 0.85
_CLOCK = listed("clock laps stints stopwatch")


@dataclass(frozen=True, slots=True)
class Named:
    """A section begins at word `at`; `share` 0 to 1 of its settings are named before the next page; `earlier` words
    where it was begun before.
    """

    at: int
    share: float
    earlier: tuple[int, ...] = ()


def by_names(
    narration: Narration,
    garage: Garage,
    heard: Speech,
    sentences: Sequence[Sentence],
    listened: Listened,
    conditions: Sequence[int],
    caution: int | None,
) -> list[Named | None]:
    """A place for each section, None where nothing names it. `conditions`: words where options are told,
    `caution` where the caution is said.
    """
    owners = _owners(narration, listened)
    named = [_page(one, garage, listened, sentences, owners) if one.page else None for one in narration.sections]
    last = max((one.at for one in named if one is not None), default=0)
    for index, section in enumerate(narration.sections):
        at = _around(section, heard, sentences, conditions, last)
        if at is None and section.id == "closing" and caution is not None and caution > last:
            at = _before(heard, caution)
        if named[index] is None and at is not None:
            named[index] = Named(at, 0.5)
    return named


def _owners(narration: Narration, listened: Listened) -> dict[int, str]:
    """Word of each turn to a page -> the section it begins; where the setup is in doubt the one that is told there."""
    found: dict[int, str] = {}
    ends = [*(one.at for one in listened.turns), 1 << 60]
    for turn in listened.turns:
        sections = [one for one in narration.sections if one.page == turn.page and turn.page]
        own = [one for one in sections if one.setup == turn.setup]
        stretch = (turn.at, next(end for end in ends if end > turn.at))
        if turn.doubt and sections:
            # A page told whole says more than one told where it differs; of equal shares the topic's counts.
            best = max(sections, key=lambda one: (round(_share(_wanted(one), stretch, listened), 1), one in own))
            found[turn.at] = best.id
        elif own:
            found[turn.at] = own[0].id
    return found


def _wanted(section: Section) -> set[str]:
    return {x for one in section.passages for x in one.settings}


def _before(heard: Speech, caution: int) -> int | None:
    """The last long silence not far before the caution: the closing begins after it."""
    for at in range(caution, max(0, caution - _CLOSING), -1):
        if heard.pause_after(at - 1) >= _SILENCE_MS:
            return at
    return None


def _page(
    section: Section, garage: Garage, listened: Listened, sentences: Sequence[Sentence], owners: Mapping[int, str]
) -> Named | None:
    wanted = _wanted(section)
    stretches = [one for one in _stretches(section, listened, owners) if one[1] > one[0]]
    shares = [_share(wanted, stretch, listened) for stretch in stretches]
    told = zip(stretches, shares, strict=True)
    good = [(first, share) for (first, _), share in told if share and share * 2 >= max(shares)]
    if not good:
        return _without_turn(section, wanted, garage, listened, sentences)
    (at, share), before = good[-1], good[:-1]
    return Named(_with_announcement(at, section.setup or "", listened), share, tuple(first for first, _ in before))


def _stretches(section: Section, listened: Listened, owners: Mapping[int, str]) -> list[tuple[int, int]]:
    """Words from each naming of the section's page, in its setup, to the next page or setup."""
    ends = [*(one.at for one in listened.turns), 1 << 60]
    return [
        (one.at, next(end for end in ends if end > one.at))
        for one in listened.turns
        if one.page and owners.get(one.at) == section.id
    ]


def _share(wanted: set[str], stretch: tuple[int, int], listened: Listened) -> float:
    """How many of the settings are named in a stretch, by address or by their parameter."""
    first, last = stretch
    inside = {name for at, name in listened.named if first <= at < last}
    inside |= {one.claim.parameter for one in listened.heard if first <= one.at < last}
    hits = sum(one in inside or one.split(".")[0] in inside for one in wanted)
    return hits / len(wanted) if wanted else 0.0


def _with_announcement(at: int, setup: str, listened: Listened) -> int:
    """The start of "Now the long run ..." where its first page follows soon and nothing is told between."""
    said: Turn | None = next((one for one in reversed(listened.turns) if one.at < at), None)
    if said is None or said.page or said.setup != setup or at - said.at > _ANNOUNCED:
        return at
    between = any(said.at <= one.at < at and one.figure is not None for one in listened.heard)
    return at if between else said.at


def _without_turn(
    section: Section, wanted: set[str], garage: Garage, listened: Listened, sentences: Sequence[Sentence]
) -> Named | None:
    """The first sentence of a run that tells this page's settings, in this setup, where its name was not heard."""
    mine = [one for one in listened.heard if one.setup == section.setup and one.figure is not None and not one.advice]
    on_page = [one for one in mine if one.claim.parameter in wanted]
    for one in on_page:
        run = [x for x in mine if one.at <= x.at < one.at + _RUN]
        own = [x for x in run if x.claim.parameter in wanted]
        if len(own) * 2 > len(run) and len({x.claim.parameter for x in own}) * 3 >= min(3, len(wanted)):
            first = _first_word(one.at, section, garage, listened, sentences)
            share = len({x.claim.parameter for x in on_page}) / len(wanted)
            return Named(_with_announcement(first, section.setup or "", listened), share)
    return None


def _first_word(at: int, section: Section, garage: Garage, listened: Listened, sentences: Sequence[Sentence]) -> int:
    """The sentence of a figure, or the one before it where that names its parameter ("Springs.")."""
    begin = next((first for first, last in sentences if first <= at < last), at)
    pages = {name: parameter.page for name, parameter in garage.parameters.items()}
    before = ((word, name.split(".")[0]) for word, name in listened.named if begin - 8 <= word < begin)
    naming = [word for word, name in before if pages.get(name) == section.page]
    if not naming:
        return begin
    return next((first for first, last in sentences if first <= naming[0] < last), begin)


def _around(
    section: Section, heard: Speech, sentences: Sequence[Sentence], conditions: Sequence[int], last: int
) -> int | None:
    """What is told before and after the pages."""
    if section.id == "opening":
        return 0 if len(heard) else None
    if section.id == "conditions" and conditions:
        close = [one for one in conditions if sum(abs(one - x) <= _RUN for x in conditions) > 1] or list(conditions)
        return next((first for first, end in sentences if first <= close[0] < end), close[0])
    if section.id == "laps":
        return _first_with(heard, sentences, last, _of_laps)
    if section.id == "closing":
        return _first_with(heard, sentences, last, _of_the_end)
    return None


def _first_with(
    heard: Speech, sentences: Sequence[Sentence], last: int, fits: Callable[[Sequence[str]], bool]
) -> int | None:
    return next((first for first, end in sentences if first > last and fits(heard.plain[first:end])), None)


def _of_laps(words: Sequence[str]) -> bool:
    return not _CLOCK.isdisjoint(words) and any(word[:1].isdigit() or word in STARTS for word in words)


def _of_the_end(words: Sequence[str]) -> bool:
    text = " ".join(words)
    if text.startswith(_ENDS) or any(f" {one}" in text[:24] for one in _ENDS):
        return True
    return any(Indel.normalized_similarity(text[: len(one)], one) >= _NEARLY for one in _ENDS)
