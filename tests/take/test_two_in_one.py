"""Two figures that the captions ran together."""

from __future__ import annotations

from decimal import Decimal

import pytest

from producer.captions.reading import read_captions
from producer.take.speech import speech
from producer.take.two_in_one import cuts
from tests.take.takes import plain_srt


@pytest.mark.parametrize(
    ("text", "both"),
    [
        ("five four on the right rear", [("5", "4")]),
        ("minus three point zero five on the front toe", [("3", "0.05")]),
        ("thirty one on the stagger", [("30", "1")]),
        ("forty four point one five on the final drive", [("40", "4.15")]),
        ("five and a half on the bar", []),
        ("five on the right rear", []),
        ("12 on the right rear", []),
    ],
)
def test_figures_are_cut(text: str, both: list[tuple[str, str]]) -> None:
    heard = speech(read_captions(plain_srt(text).encode(), "take.srt"))
    found = [(first, second) for _, _, first, second in cuts(heard, 0)]
    for one, other in both:
        assert any(Decimal(one) in first and Decimal(other) in second for first, second in found)
    assert bool(found) is bool(both)
