"""Figures in words that run into one another: "fifty point seven five fifty point five" are two.

Captions drop the "then" and the comma between them, and automatic ones have no commas at all. Which words cannot belong
to one figure is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from producer.language.number_words import OH, PARTS, SMALL, TENS
from producer.language.numbers import STARTS
from producer.language.tokens import listed

# From one number word to the next, and more for each letter of the first: they are two figures then. "Thirty. Two
# pounds more" is not thirty-two.
_APART_MS, _LETTER_MS = 400, 70
_DIGITS = frozenset(word for word, value in SMALL.items() if value < 10)
_TWO_DIGITS = frozenset(TENS) | (frozenset(SMALL) - _DIGITS)
_GROUPS = _DIGITS | _TWO_DIGITS
_AXLES = listed("front rear end")
# What takes back the figure before it.
PUT_RIGHT = listed("sorry no wait mean correction")
_CLICKS = listed("click clicks step steps")
_CORNERS = _AXLES | listed("left right")


def figures_apart(words: Sequence[str], plain: tuple[str, ...], starts_ms: Sequence[int] = ()) -> tuple[str, ...]:
    """The words with a comma after each that ends a figure where the next one begins another.

    `starts_ms`: when each word starts, where captions without stops leave it to the silence between them; () where
    they do not say it word by word.
    """
    found = list(words)
    for at in {*_by_sense(plain), *_by_silence(plain, starts_ms)}:
        if found[at][-1:].isalnum():
            found[at] += ","
    return tuple(found)


def parted(word: str, until_next_ms: int) -> bool:
    """Whether a number word is followed by a silence; `until_next_ms`: from its start to the next word's."""
    return until_next_ms > _APART_MS + _LETTER_MS * len(word)


def _by_silence(plain: tuple[str, ...], starts_ms: Sequence[int]) -> Iterator[int]:
    for at in range(len(starts_ms) - 1):
        if (
            plain[at] in STARTS
            and plain[at] != "point"
            and plain[at + 1] in STARTS
            and parted(plain[at], starts_ms[at + 1] - starts_ms[at])
        ):
            yield at


def _by_sense(plain: tuple[str, ...]) -> Iterator[int]:
    for at in range(1, len(plain)):
        word = plain[at]
        if word == "track" and (plain[at - 1] in STARTS or plain[at - 1] in PARTS or plain[at - 1][:1].isdigit()):
            apart = True  # "forty-six and a half, track your time" counts no tracks
        elif plain[at - 1] in PUT_RIGHT and (word in STARTS or word[:1].isdigit()):
            apart = True  # "no one and a half" numbers nothing
        elif word in _TWO_DIGITS:
            apart = _after_part(plain, at) or _after_decimals(plain, at) or _after_another(plain, at)
        elif word in _DIGITS:
            parts = plain[at + 1 : at + 2] == ("and",) and not PARTS.keys().isdisjoint(plain[at + 2 : at + 4])
            pointed = parts or plain[at + 1 : at + 2] == ("point",)
            hundreds = plain[at + 1 : at + 2] == ("hundred",) and plain[at - 1] in _GROUPS
            apart = (
                hundreds
                or _again(plain, at)
                or _after_part(plain, at)
                or (
                    _after_decimals(plain, at) or plain[at - 1] in _DIGITS
                    if pointed
                    else _of_corners(plain, at) or _of_movement(plain, at) or _of_clicks(plain, at)
                )
            )
        else:
            apart = False
        if apart:
            yield at - 1


def _after_part(plain: tuple[str, ...], at: int) -> bool:
    """ "One and three quarters | one and a half": nothing comes behind a half or quarters."""
    return plain[at - 1] in PARTS


def _after_decimals(plain: tuple[str, ...], at: int) -> bool:
    """ "Point seven five | fifty", "point seven five | one point five": behind single digits after a point another
    figure begins.
    """
    first = at
    while first and (plain[first - 1] in _DIGITS or plain[first - 1] in OH):
        first -= 1
    return first < at and plain[max(0, first - 1)] == "point"


def _after_another(plain: tuple[str, ...], at: int) -> bool:
    """ "Fifty two | fifty one", "sixty | forty", "ten | ten point five": what is above twenty or stands before a point
    begins no longer figure, unless it counts revolutions.
    """
    end = at + 2 if plain[at] in TENS and plain[at + 1 : at + 2] and plain[at + 1] in _DIGITS else at + 1
    tens = plain[at - 1] in TENS or (at > 1 and plain[at - 1] in _DIGITS and plain[at - 2] in TENS)
    pointed = plain[end : end + 1] == ("point",)
    if at > 1 and _again(plain, at - 1):
        return False
    return (tens or (pointed and plain[at - 1] in _TWO_DIGITS)) and "rpm" not in plain[end : end + 2]


def _again(plain: tuple[str, ...], at: int) -> bool:
    """ "Seven fifty | seven fifty": hundreds said without the word, one after the other."""
    return (
        at > 1
        and plain[at] in _DIGITS
        and plain[at - 2] in _DIGITS
        and plain[at - 1] in TENS
        and not TENS.keys().isdisjoint(plain[at + 1 : at + 2])
    )


def _of_movement(plain: tuple[str, ...], at: int) -> bool:
    """ "From five | six clicks", the "to" lost."""
    return plain[at - 1] in _DIGITS and plain[max(0, at - 2)] == "from"


def _of_clicks(plain: tuple[str, ...], at: int) -> bool:
    """ "Seven | two clicks more": what counts clicks is a figure of its own."""
    return plain[at - 1] in _DIGITS and not _CLICKS.isdisjoint(plain[at + 1 : at + 2])


def _of_corners(plain: tuple[str, ...], at: int) -> bool:
    """ "Left rear and right rear four | three and three": after a row of corners single digits are one each."""
    first = at
    while first and plain[first - 1] in _DIGITS:
        first -= 1
    if first == at or first < 2:
        return False
    if plain[first - 1] in PUT_RIGHT:
        return True  # "five, sorry, four | three and three"
    if _CORNERS.isdisjoint(plain[first - 2 : first]):
        return False
    return "and" in plain[max(0, first - 4) : first] or not _AXLES.isdisjoint(plain[max(0, first - 5) : first - 2])
