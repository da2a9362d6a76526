"""Lap times, lap numbers and fuel as people write them."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from producer.stints.times import amount, is_time, lap_number, seconds


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("21.482", "21.482"), ("0:21.482", "21.482"), ("1:02.3", "62.3"), ("1'02.300", "62.300"), ("21,482", "21.482"),
        ("0:21,482", "21.482"), ("0:01:02.3", "62.3"), ("00:00:31.482", "31.482"), ("1.02.300", "62.300"),
        ("21.482 s", "21.482"), ("21.482s", "21.482"), ("31", "31"), ("  31.5 ", "31.5"), ("31.", "31."),
        ("1:02", "62"), ("59:59", None), ("0:75.1", None), ("31.5.1.2", None), ("abc", None), ("", None),
        ("   ", None), ("0", None), ("0.000", None), ("-31.5", None), ("31482", None), ("601", None), ("600", "600"),
        ("1e3", None), ("nan", None), ("inf", None), ("\u0663\u0661.5", None), ("31.4821234", None), ("31..5", None),
        (":31", None), ("DNF", None),
    ],
)  # fmt: skip
def test_seconds(text: str, expected: str | None) -> None:
    assert is_time(text) == (expected is not None)
    if expected is None:
        with pytest.raises(ValueError, match=r"^.{10,}$"):
            seconds(text)
    else:
        assert seconds(text) == Decimal(expected)


@given(st.integers(1, 599_999))
def test_a_time_is_the_same_however_it_is_written(thousandths: int) -> None:
    whole, rest = divmod(thousandths, 1000)
    minutes, left = divmod(whole, 60)
    plain = Decimal(thousandths) / 1000
    for text in (
        f"{whole}.{rest:03}",
        f"{whole},{rest:03}",
        f"{minutes}:{left:02}.{rest:03}",
        f"0:{minutes:02}:{left:02}.{rest:03}",
    ):
        assert seconds(text) == plain


@given(st.text(max_size=30))
def test_no_text_does_more_than_be_refused(text: str) -> None:
    lap_number(text)
    amount(text)
    if is_time(text):
        assert 0 < seconds(text) <= 600


@pytest.mark.parametrize(
    ("text", "expected"),
    [("12", 12), ("Lap 12", 12), ("#12", 12), ("L12", 12), ("12.0", 12), ("0", 0), ("no. 3", 3), ("", None),
    ("out", None), ("1.5", None), ("-1", None), ("12a", None)],
)  # fmt: skip
def test_lap_number(text: str, expected: int | None) -> None:
    assert lap_number(text) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("17.6", "17.6"),
        ("17,6", "17.6"),
        ("17.6 gal", "17.6"),
        ("60 L", "60"),
        ("-1", "-1"),
        ("full", None),
        ("", None),
    ],
)
def test_amount(text: str, expected: str | None) -> None:
    found = amount(text)
    assert (found[0] if found else None) == (Decimal(expected) if expected else None)
