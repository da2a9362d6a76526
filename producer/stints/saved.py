"""Sentences that say a tyre is saved: `saves the right rear`, `easier on the rear tires`.

Silent rather than wrong: a sentence that denies, doubts, asks or sets a condition is passed over.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from producer.model.words import CORNERS, Corner

_SAVING = (
    r"(?:sav(?:e|es|ed|ing)|spar(?:e|es|ed|ing)|protect(?:s|ed|ing)?|look(?:s|ed|ing)? after|tak(?:e|es|ing) care of"
    r"|(?:is |be |are )?(?:kind|kinder|gentle|gentler|easy|easier) (?:on|to|with))"
)
_TYRE = (
    r"(?:(?P<side>left|right)[ -](?P<end>front|rear)|(?P<corner>lf|rf|lr|rr)\b|(?P<both>front|rear)s?"
    r"(?= (?:tires?|tyres?)|s\b))"
)
_CLAIM = re.compile(
    rf"\b{_SAVING}\s+(?:(?:the|your|my|its|both|up)\s+)*{_TYRE}(?:[ ](?:tires?|tyres?))?", re.IGNORECASE
)
_DOUBT = re.compile(
    r"\b(?:not|no|never|nothing|without|if|unless|would|could|might|may|should|perhaps|maybe|supposed|hoped?|instead|"
    r"than|rather|neither|hardly)\b|n't\b|n\u2019t\b|\?",
    re.IGNORECASE,
)
_SENTENCE = re.compile(r"[^.;?]*[.;?]?")


@dataclass(frozen=True, slots=True)
class Saved:
    """The tyres that are said to be saved, and the stretch of text that says it (`end` exclusive)."""

    corners: tuple[Corner, ...]
    start: int
    end: int


def saved(text: str) -> Iterator[Saved]:
    """Every claim of a text, in order."""
    for sentence in _SENTENCE.finditer(text):
        if _DOUBT.search(sentence.group()):
            continue
        for claim in _CLAIM.finditer(sentence.group()):
            yield Saved(_corners(claim), sentence.start() + claim.start(), sentence.start() + claim.end())


def _corners(claim: re.Match[str]) -> tuple[Corner, ...]:
    if claim["corner"]:
        wanted = {claim["corner"].lower()}
    elif claim["both"]:
        wanted = {side + claim["both"][0].lower() for side in "lr"}
    else:
        wanted = {claim["side"][0].lower() + claim["end"][0].lower()}
    return tuple(one for one in CORNERS if one in wanted)
