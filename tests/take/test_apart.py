"""Figures in words that run into one another, and words that the captions ran together."""

from __future__ import annotations

import pytest

from producer.captions.reading import read_captions
from producer.language.tokens import listed
from producer.take.apart import figures_apart
from producer.take.merged import unmerged
from producer.take.speech import speech
from tests.take.takes import plain_srt


@pytest.mark.parametrize(
    ("said", "apart"),
    [
        ("that is fifty point seven five fifty point five", "that is fifty point seven five, fifty point five"),
        ("from one point seven five one point five", "from one point seven five, one point five"),
        ("from one and three quarters one and a half", "from one and three quarters, one and a half"),
        ("from fifty two fifty one point five", "from fifty two, fifty one point five"),
        ("from sixty forty percent", "from sixty, forty percent"),
        ("from five six clicks", "from five, six clicks"),
        ("left rear and right rear four three and three", "left rear and right rear four, three and three"),
        ("seven seventy five seven hundred fifty", "seven seventy five, seven hundred fifty"),
        ("seven fifty seven fifty", "seven fifty, seven fifty"),
        ("twenty six one point seven five", "twenty six, one point seven five"),
        ("compression seven two clicks more", "compression seven, two clicks more"),
        ("nine sorry four three and three", "nine sorry, four, three and three"),
    ],
)
def test_two_figures(said: str, apart: str) -> None:
    words = said.split()
    assert " ".join(figures_apart(words, tuple(words))) == apart


@pytest.mark.parametrize(
    "said",
    [
        "fifty one and a half", "seven seventy five", "three point seven three", "ten fifty", "twelve twenty five",
        "twenty one point five", "zero point zero five", "one hundred and twenty five", "four eleven",
        "point oh five", "minus three and three quarters", "three ninety", "sixty two sixty two rpm",
        "seven hundred and seventy five", "one two five",
    ],
)  # fmt: skip
def test_one_figure(said: str) -> None:
    words = said.split()
    assert " ".join(figures_apart(words, tuple(words))) == said


@pytest.mark.parametrize(
    ("said", "parted"),
    [
        ("the leftrear spring", "the left rear spring"),
        ("onthe scales page", "on the scales page"),
        ("down totwenty five.", "down to twenty five."),
        ("seven imean eight", "seven i mean eight"),
        ("the rear spring", "the rear spring"),
        ("a strange onlooker", "a strange onlooker"),
        ("left weight", "left weight"),
    ],
)
def test_words_that_ran_together(said: str, parted: str) -> None:
    known = listed("the left rear spring on scales page down to twenty five i mean seven eight a weight")
    heard = unmerged(speech(read_captions(plain_srt(said).encode(), "take.srt")), known)
    assert heard.text(0, len(heard)) == parted
    assert len(heard.plain) == len(heard.starts_ms) == len(heard.line_of) == len(heard.words)
