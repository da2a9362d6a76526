"""Words with their places, and where sentences end."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.language.tokens import LONGEST, lowered, sentences, words


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Right-front, fifty-one", ["right", "front", ",", "fifty", "one"]),
        ("it’s won’t the bar's", ["it", "'s", "won't", "the", "bar", "'s"]),
        ("-3 3/4 1,050 51½ 3.90:1", ["-", "3", "3/4", "1,050", "51", "½", "3.90:1"]),
        ("700 lb/in −3.5", ["700", "lb/in", "-", "3.5"]),
        ("75 -> 50", ["75", "->", "50"]),
    ],
)
def test_words(text: str, found: list[str]) -> None:
    assert words(text).text == found


@pytest.mark.parametrize(
    ("text", "count"),
    [
        ("At 51.5 it waits. It does.", 2),
        ("No stops here at all", 1),
        ("25 lb. more on the left. Yes.", 2),
        ("Really? Yes! Go on.", 3),
        ("one line\nand the next", 1),
        ("one\n\ntwo", 2),
        ("- one\n- two\n- three", 3),
        ("", 0),
        ("...", 0),
    ],
)
def test_sentences(text: str, count: int) -> None:
    assert len(list(sentences(text))) == count


@given(st.text(max_size=300))
def test_places_hold_the_words(text: str) -> None:
    low = lowered(text)
    assert len(low) == len(text)
    for run in sentences(text):
        assert 0 < len(run) <= LONGEST
        for word, start, end in zip(run.text, run.start, run.end, strict=True):
            assert low[start:end] == word


def test_a_sentence_without_end_is_read_in_pieces() -> None:
    runs = list(sentences("and the right front spring is at seven fifty " * 100))
    assert len(runs) > 5
    assert sum(len(run) for run in runs) == 900
