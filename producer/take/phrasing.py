"""How figures stand in a sentence: alone, in a row, for an advice, and of which setup."""

from __future__ import annotations

import re
from collections.abc import Sequence

from producer.language.numbers import STARTS, Number
from producer.language.statements import Statement
from producer.language.terms import Mention, Vocabulary
from producer.language.tokens import listed
from producer.take.topics import Topic

_SHORT = 5
_BESIDE_A_NAME = 2  # words, "the" and "of" among them
_BARE = listed(
    "it it's its that's that is at i'm i we're we run running set sits stays here um uh so and the a of percent pounds "
    "per inch inches psi degrees clicks on about to point minus half quarter three quarters an oh hundred first then "
    "or okay again so both"
)


def spoken_of(at: int, following: int, told: Sequence[Topic], before: tuple[str, str, bool]) -> tuple[str, bool]:
    """The setup that a figure at word `at` is about: the last one named before it, or the one named straight after it.

    `following`: the word of the next figure, that of this one where setups are named before their figures: "40, and for
    the long run 39" against "775 on the short run, 750 on the long run".
    """
    setups = [one for one in told if one.kind != "page"]
    ahead = [one for one in setups if one.at <= at]
    if ahead:
        return ahead[-1].name, True
    after = next((one for one in setups if at < one.at <= following and one.kind == "aside"), None)
    if after is not None:
        return after.name, True
    setup, aside, doubt = before
    if any(one.kind == "page" for one in told):
        aside = ""
    return aside or setup, not (aside or doubt)


def chained(text: str, counted: Sequence[Number]) -> Sequence[Number]:
    """The first figures with nothing but "and" or a comma between them."""
    for at in range(1, len(counted)):
        if text[counted[at - 1].end : counted[at].start].strip(" ,").lower() not in {"", "and"}:
            return counted[:at]
    return counted


def more_than_names(text: str, found: Sequence[Mention]) -> bool:
    """Whether a sentence says something of the settings it names: one that only names them begins a new thought."""
    named = set().union(*(range(one.start, one.end) for one in found))
    rest = "".join(" " if at in named else letter for at, letter in enumerate(text))
    return len(re.findall(r"\w+", rest)) > _BESIDE_A_NAME


def stands_for(words: Sequence[str], at: int) -> bool:
    """Whether a figure at word `at` says what the advice before it comes to: "that is 175 on the left rear"."""
    before = words[max(0, at - 2) : at]
    return tuple(before) == ("that", "is") or before[-1:] in (("that's",), ("so",), ("try",))


def possible(one: Statement, vocabulary: Vocabulary) -> bool:
    figure = one.claim.value if one.claim.value is not None else one.claim.to
    return figure is not None and vocabulary.grids[one.claim.parameter].inside(figure)


def only_figures(words: Sequence[str]) -> bool:
    """Whether a sentence says hardly more than figures: "It's at nine", one word of it misheard or not."""
    strange = sum(not _bare_word(word) for word in words)
    return strange == 0 or (strange == 1 and len(words) <= _SHORT)


def _bare_word(word: str) -> bool:
    return word in _BARE or word[:1].isdigit() or word[:1] in "\u2212-+." or word in STARTS


def comes_to(words: Sequence[str], counted: Sequence[Number]) -> bool:
    """As in "So one first, then 0.875", or several figures at once: an advice, as likely as a value."""
    return len(counted) > 1 or tuple(words[:1]) == ("so",) or tuple(words[:2]) == ("that", "is")
