"""Laws of claims that hold for any text. Labelled sentences stand in `tests/outside`."""

from __future__ import annotations

import time

from hypothesis import given, settings
from hypothesis import strategies as st

from producer.language.claims import claims
from producer.language.terms import Vocabulary


@settings(deadline=None)
@given(st.text(max_size=300))
def test_any_text_is_read(vocabulary: Vocabulary, text: str) -> None:
    for one in claims(text, vocabulary, ("spring.rf",)):
        assert 0 <= one.start < one.end <= len(text)
        assert one.text == text[one.start : one.end]


_TRADE = """raise drop the right front left rear rf lr spring springs cross wedge by to from at 25 750 fifty one and a
half seven , . if it is tight loose going in off the gas not won't keeps more less stiffer than split percent clicks
which so take out put in back up down um lap 52 pounds sorry"""
_WORDS = st.sampled_from(_TRADE.split())


@settings(deadline=None)
@given(st.lists(_WORDS, max_size=60).map(" ".join))
def test_any_words_of_the_trade_are_read(vocabulary: Vocabulary, text: str) -> None:
    for one in claims(text, vocabulary):
        said = (one.frm, one.to, one.amount, one.value, one.direction, one.feel)
        assert any(x is not None for x in said)
        assert one.to is None or one.value is None
        assert one.amount is None or one.amount > 0
        assert one.parameter in vocabulary.grids


@settings(max_examples=8, deadline=None)
@given(st.lists(_WORDS, min_size=5, max_size=40).map(" ".join))
def test_noise_costs_one_pass(vocabulary: Vocabulary, piece: str) -> None:
    text = ((piece + " ") * (100_000 // len(piece) + 1))[:100_000]
    begin = time.process_time()
    claims(text, vocabulary, ("spring.rf",))
    assert time.process_time() - begin < 10
