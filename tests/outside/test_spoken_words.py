"""Words of whole numbers: the words counted are words that spell the number.

Referee: text2num 3.1, which reads number words back into the number they spell. The counting rule is the trade of
copywriters, common practice, no source.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from text_to_num import text2num

from producer.captions.spoken import spoken_words

ONES = (
    "zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
    "seventeen eighteen nineteen"
)
TENS = "twenty thirty forty fifty sixty seventy eighty ninety"


def said(number: int) -> str:
    """A whole number below a million in American words without "and"."""
    if number >= 1000:
        rest = number % 1000
        return f"{said(number // 1000)} thousand" + (f" {said(rest)}" if rest else "")
    if number >= 100:
        rest = number % 100
        return f"{said(number // 100)} hundred" + (f" {said(rest)}" if rest else "")
    if number >= 20:
        tens = TENS.split()[number // 10 - 2]
        return tens + (f" {said(number % 10)}" if number % 10 else "")
    return ONES.split()[number]


@pytest.mark.parametrize("number", range(1000))
def test_small_numbers(number: int) -> None:
    assert text2num(said(number), "en") == number
    assert spoken_words(str(number)) == len(said(number).split())


@given(st.integers(0, 999_999))
def test_numbers_below_a_million(number: int) -> None:
    assert text2num(said(number), "en") == number
    assert spoken_words(str(number)) == spoken_words(f"{number:,}") == len(said(number).split())
