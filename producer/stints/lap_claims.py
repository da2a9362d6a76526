"""Sentences that name the lap from which a setup is ahead, or quicker: `the totals cross a little past lap twenty`.

Silent rather than wrong: a sentence that denies, doubts, asks or sets a condition is passed over, and so is one whose
lap no word of that kind leads to.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

Of = Literal["total", "pace", "either"]
_ONES = (
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen",
    "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
)  # fmt: skip
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_NUMBERS = {word: number for number, word in enumerate(_ONES, 1)} | {
    word: 10 * number for number, word in enumerate(_TENS, 2)
}
_MEET = r"cross(?:es|ed)?|meet|met|are level|were level|equal pace|same pace"
_LEAD = r"ahead|in front|takes the lead|earns? its keep|pays off|comes good|quicker|faster"
_ABOUT = r"(?:(?:about|around|roughly|a little|just|past|after)\s+)*"
_LED = (
    rf"\b(?:(?:{_MEET})\b[^.;?!]{{0,40}}?\b(?:from|by|at|past|after|around|about)"
    rf"|(?P<lead>{_LEAD})\b[^.;?!]{{0,40}}?\b(?:from|by))\s+{_ABOUT}"
)
_LAP = (
    rf"lap\s+(?:(?P<digits>\d{{1,3}})|(?P<tens>{'|'.join(_TENS)})(?:[ -](?P<unit>{'|'.join(_ONES[:9])}))?"
    rf"|(?P<word>{'|'.join(sorted(_ONES, key=len, reverse=True))}))\b"
)
_CLAIM = re.compile(_LED + _LAP, re.IGNORECASE)
_DOUBT = re.compile(
    r"\b(?:not|never|no|if|unless|would|could|might|maybe|perhaps|until|before|still)\b|n['\u2019]t\b|\?",
    re.IGNORECASE,
)
_TOTAL = re.compile(r"\btotals?\b|\bahead\b|\bin front\b|\blead\b", re.IGNORECASE)
_PACE = re.compile(r"\bpace\b|\blap times?\b", re.IGNORECASE)
_SENTENCE = re.compile(r"[^.;?!]*[.;?!]?")


@dataclass(frozen=True, slots=True)
class LapClaim:
    """The lap named, of total time, of pace, or of either as far as the sentence says; where it says it.

    `end` is exclusive. `leads`: one setup is said to be better from there; else the two are said to meet there.
    """

    of: Of
    lap: int
    leads: bool
    sentence: str
    start: int
    end: int


def lap_claims(text: str) -> Iterator[LapClaim]:
    """Every claim of a text, in order."""
    for sentence in _SENTENCE.finditer(text):
        said = sentence.group()
        if _DOUBT.search(said):
            continue
        of: Of = "total" if _TOTAL.search(said) else "pace" if _PACE.search(said) else "either"
        for claim in _CLAIM.finditer(said):
            start = sentence.start()
            lap, leads = _number(claim), claim["lead"] is not None
            yield LapClaim(of, lap, leads, said, start + claim.start(), start + claim.end())


def _number(claim: re.Match[str]) -> int:
    if claim["digits"]:
        return int(claim["digits"])
    if claim["word"]:
        return _NUMBERS[claim["word"].lower()]
    return _NUMBERS[claim["tens"].lower()] + _NUMBERS.get((claim["unit"] or "").lower(), 0)
