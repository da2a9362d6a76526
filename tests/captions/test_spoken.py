"""Words as spoken: a table of what the trade writes, laws over whole numbers, and the time it costs."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.captions.spoken import figures, spoken_words

# text, how it is said aloud, figures in it
SAID = [
    ("", "", 0),
    ("61.5 %", "sixty one point five percent", 1),
    ("61.5\u00a0%", "sixty one point five percent", 1),
    ("61.5%", "sixty one point five percent", 1),
    ("750 lb/in", "seven hundred fifty pounds per inch", 1),
    ("750\u00a0lb/in", "seven hundred fifty pounds per inch", 1),
    ("131.3 N/mm", "one hundred thirty one point three newtons per millimetre", 1),
    ("28 psi", "twenty eight p s i", 1),
    ("9,200 rpm", "nine thousand two hundred r p m", 1),
    ("140 mph", "one hundred forty miles per hour", 1),
    ("190\u00a0°F", "one hundred ninety degrees fahrenheit", 1),
    ("1,050", "one thousand fifty", 1),
    ("1050", "one thousand fifty", 1),
    ("1,000,000", "one million", 1),
    ("1,05", "one zero five", 2),
    ("0.5", "zero point five", 1),
    (".05", "point zero five", 1),
    ("-3.5", "minus three point five", 1),
    ("\u22123.5", "minus three point five", 1),
    ("+25", "plus twenty five", 1),
    ("±0.5", "plus or minus zero point five", 1),
    ("51½", "fifty one and one half", 1),
    ("51 1/2 %", "fifty one and one half percent", 1),
    ("3/4 in", "three quarters inch", 1),
    ('3/4" bar', "three quarters inch bar", 1),
    ("3.90:1", "three point nine zero to one", 1),
    ("14:32", "fourteen thirty two", 1),
    ("0:31.482", "thirty one point four eight two", 1),
    ("1:02:03", "one two three", 1),
    ("80–120 psi", "eighty to one hundred twenty p s i", 2),
    ("80-120", "eighty to one hundred twenty", 2),
    ("on 2026-11-20", "on november twenty twenty twenty six", 1),
    ("750 → 725", "seven hundred fifty to seven hundred twenty five", 2),
    ("number 07", "number zero seven", 1),
    ("lap 52.", "lap fifty two", 1),
    ("tire & wheel", "tire and wheel", 0),
    ("the RF spring", "the right front spring", 0),
    ("OK then", "ok then", 0),
    ("right-front", "right front", 0),
    ("It's the driver's car", "its the drivers car", 0),
    ("cafe\u0301s", "cafes", 0),
    ("tyre's \u2018own\u2019 \u201cway\u201d \u2014 (yes)", "tyres own way yes", 0),
    ("… - -- ''", "", 0),
]


@pytest.mark.parametrize(("text", "said", "count"), SAID)
def test_counts_what_is_said(text: str, said: str, count: int) -> None:
    assert spoken_words(text) == len(said.split())
    assert figures(text) == count


@given(st.lists(st.text("abcdefghij", min_size=1)))
def test_plain_words_are_counted_as_they_stand(words: list[str]) -> None:
    assert spoken_words(" ".join(words)) == len(words)


@given(st.integers(0, 10**12))
def test_commas_do_not_change_what_is_said(number: int) -> None:
    assert spoken_words(f"{number:,}") == spoken_words(str(number))


@given(st.integers(1, 999), st.integers(1, 999))
def test_thousands_are_said_in_groups(thousands: int, rest: int) -> None:
    joined = f"{thousands}{rest:03d}"
    assert spoken_words(joined) == spoken_words(str(thousands)) + 1 + spoken_words(str(rest))


@given(st.text())
def test_any_text_is_counted(text: str) -> None:
    assert 0 <= figures(text) <= spoken_words(text)


@pytest.mark.parametrize("unit", ["9", "1/", "1,111", "1:11", "a'", "1 1/", "2026-11", "-", "1½", "1.1"])
def test_time_grows_with_the_length_only(unit: str) -> None:
    """A quadratic reading of 100,000 pieces would take minutes; the suite's patience is the limit."""
    assert spoken_words(unit * 100_000) >= 0
