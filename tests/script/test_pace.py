"""The narration in time. Rates: Brysbaert 2019 (reading aloud 183), Rodero 2012 (radio 160-180), from memory."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.captions.spoken import spoken_words
from producer.model.channel import Channel
from producer.model.script import Narration, Passage, Section
from producer.script.pace import (
    PASSAGE_PAUSE_MS,
    SECTION_PAUSE_MS,
    lasts,
    minutes,
    speaking_ms,
    timeline,
    words_of,
)


def channel(rate: str = "150") -> Channel:
    voice = {"words_per_minute": rate}
    return Channel.model_validate({"format": "1", "channel": "c", "name": "C", "presenter": "Jo", "voice": voice})


def narration(*sections: tuple[str, ...]) -> Narration:
    told = (tuple(Passage("talk", text) for text in texts) for texts in sections)
    return Narration(tuple(Section(f"s{n}", f"S{n}", None, None, passages) for n, passages in enumerate(told)))


TEN = "one two three four five six seven eight nine ten"


@pytest.mark.parametrize(("rate", "ms"), [("150", 4000), ("120", 5000), ("180", 3333)])
def test_ten_words_at_a_rate(rate: str, ms: int) -> None:
    assert speaking_ms(TEN, Decimal(rate)) == ms
    assert timeline(narration((TEN,)), channel(rate)).total_ms == ms


def test_figures_count_as_spoken() -> None:
    assert speaking_ms("61.5 %", Decimal(150)) == speaking_ms("sixty one point five percent", Decimal(150)) == 2000


def test_pauses_stand_between_passages_and_sections_and_nowhere_else() -> None:
    laid = timeline(narration((TEN, TEN), (TEN,)), channel())
    second = 4000 + PASSAGE_PAUSE_MS
    third = second + 4000 + SECTION_PAUSE_MS
    assert [(one.start_ms, one.end_ms) for one in laid.spans] == [
        (0, 4000), (second, second + 4000), (third, third + 4000)
    ]  # fmt: skip
    assert laid.section_starts == (0, third)
    assert laid.total_ms == third + 4000
    # 9.75 s and 4 s: from 0:00 to 0:09, and from there to the end, 0:14.
    assert (lasts(laid, 0), lasts(laid, 1)) == ("0:09", "0:05")
    assert laid.source == "estimate"


@pytest.mark.parametrize(
    ("rate", "fast", "slow"), [("150", 3333, 4615), ("180", 3333, 4615), ("200", 3000, 4615), ("100", 3333, 6000)]
)
def test_the_band_is_130_to_180_and_always_holds_the_channels_rate(rate: str, fast: int, slow: int) -> None:
    laid = timeline(narration((TEN,)), channel(rate))
    assert (laid.fast_ms, laid.slow_ms) == (fast, slow)
    assert laid.fast_ms <= laid.total_ms <= laid.slow_ms


@pytest.mark.parametrize(
    ("ms", "shown"),
    [
        (0, "0:00"),
        (499, "0:00"),
        (500, "0:01"),
        (59_499, "0:59"),
        (59_500, "1:00"),
        (872_000, "14:32"),
        (3_723_000, "1:02:03"),
    ],
)
def test_a_length_for_people(ms: int, shown: str) -> None:
    assert minutes(ms) == shown


@given(st.lists(st.lists(st.text("ab 1", min_size=1, max_size=30), min_size=1, max_size=4), min_size=1, max_size=4))
def test_spans_follow_one_another_and_end_with_the_whole(texts: list[list[str]]) -> None:
    told = narration(*(tuple(some) for some in texts))
    laid = timeline(told, channel())
    edges = [edge for one in laid.spans for edge in (one.start_ms, one.end_ms)]
    assert edges == sorted(edges)
    assert laid.total_ms == edges[-1]
    shown = [lasts(laid, n).split(":") for n in range(len(texts))]
    assert sum(60 * int(whole) + int(part) for whole, part in shown) == (laid.total_ms + 500) // 1000
    assert sum(words_of(one) for one in told.sections) == sum(spoken_words(text) for some in texts for text in some)
