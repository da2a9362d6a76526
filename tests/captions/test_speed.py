"""Reading speed and the time a text needs."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.captions.speed import (
    characters,
    characters_per_second,
    needed_ms,
    too_fast,
    words_per_minute,
)
from producer.model.cue import Cue, ReadingProfile

WEB = ReadingProfile.web()


def test_speeds_of_a_cue() -> None:
    cue = Cue(1000, 3000, ("Cross weight", "51.5 %"))
    assert characters(cue.text) == 19
    assert characters_per_second(cue) == 9.5
    assert words_per_minute(cue) == 7 * 30


NEEDED = [
    ("", 833),
    ("Loose", 833),
    ("a b c d e f", 2000),  # six words at 180 a minute
    ("stabilises " * 3 + "stabilises", 2150),  # 43 characters at 20 a second
    ("750", 1300),  # seven hundred fifty: a second, and the figure
    ("51.5 % or 49 %", 3600),  # nine words and two figures
]


@pytest.mark.parametrize(("text", "ms"), NEEDED)
def test_needed_time(text: str, ms: int) -> None:
    assert needed_ms(text, WEB) == ms


TOO_FAST = [
    (Cue(0, 0, ("a",)), "lasts no time"),
    (Cue(5, 2, ("a",)), "lasts no time"),
    (Cue(0, 1000, ("x" * 21,)), "21 characters a second, at most 20"),
    (Cue(0, 9999, ("x" * 200,)), "20.1 characters a second, at most 20"),
    (Cue(0, 1000, ("a b c d",)), "240 words a minute, at most 180"),
    (Cue(0, 1000, ("750 in",)), "240 words a minute, at most 180"),
]


@pytest.mark.parametrize(("cue", "why"), TOO_FAST)
def test_too_fast(cue: Cue, why: str) -> None:
    assert too_fast(cue, WEB) == why


@pytest.mark.parametrize(
    "cue",
    [Cue(0, 1000, ("x" * 20,)), Cue(0, 1000, ("a b c",)), Cue(0, 10, ()), Cue(0, 1000, ("750",)), Cue(7, 8, ("",))],
)
def test_slow_enough(cue: Cue) -> None:
    assert too_fast(cue, WEB) is None


@given(st.text(), st.floats(0.5, 60), st.floats(20, 400))
def test_the_needed_time_is_never_too_fast(text: str, speed: float, words: float) -> None:
    profile = ReadingProfile(characters_per_second=speed, words_per_minute=words)
    assert too_fast(Cue(0, needed_ms(text, profile), (text,)), profile) is None
