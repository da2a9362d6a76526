"""The channel's reading profile: named, with own numbers over it."""

from __future__ import annotations

import pytest

from producer.captions.profile import reading_profile
from producer.model.channel import CaptionLimits
from producer.model.cue import ReadingProfile, named_profile


def limits(**written: str) -> CaptionLimits:
    return CaptionLimits.model_validate(written)


def test_named() -> None:
    assert reading_profile(limits()) == ReadingProfile.web() == ReadingProfile()
    assert reading_profile(limits(profile="broadcast")) == ReadingProfile(characters_per_line=37)


def test_own_numbers_over_a_named_one() -> None:
    profile = reading_profile(
        limits(profile="broadcast", lines="3", characters_per_second="17.5", shortest="1", longest="6.5", gap="0")
    )
    assert profile == ReadingProfile(
        characters_per_line=37, lines=3, characters_per_second=17.5, shortest_ms=1000, longest_ms=6500, gap_ms=0
    )
    assert reading_profile(limits(words_per_minute="160", per_figure="0.25")) == ReadingProfile(
        words_per_minute=160, figure_ms=250
    )


@pytest.mark.parametrize(
    ("written", "message"),
    [
        ({"shortest": "8"}, "the longest caption must last"),
        ({"longest": "1"}, "at least 1.333 s"),
        ({"gap": "-1"}, "must not be negative"),
        ({"shortest": "0"}, "at least a millisecond"),
        ({"characters_per_second": "0"}, "above zero"),
        ({"words_per_minute": "-5"}, "above zero"),
    ],
)
def test_limits_no_caption_can_meet(written: dict[str, str], message: str) -> None:
    with pytest.raises(ValueError, match=message):
        reading_profile(limits(**written))


def test_a_line_holds_something() -> None:
    with pytest.raises(ValueError, match="at least one line"):
        ReadingProfile(lines=0)


def test_only_named_profiles_have_a_name() -> None:
    with pytest.raises(ValueError, match="web or broadcast"):
        named_profile("cinema")
