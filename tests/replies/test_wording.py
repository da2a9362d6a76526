"""The words a reply is put together from."""

from __future__ import annotations

from datetime import date

import pytest

from producer.model.words import complaint
from producer.replies import wording


@pytest.mark.parametrize(
    ("written", "said"),
    [
        ("tight", "tight"),
        ("very tight middle", "very tight in the middle"),
        ("a little loose entry", "a little loose on entry"),
        ("loose exit", "loose on exit"),
    ],
)
def test_feel(written: str, said: str) -> None:
    assert wording.feel(complaint(written)) == said


@pytest.mark.parametrize(
    ("parts", "said"),
    [((), ""), (("a",), "a"), (("a", "b"), "a and b"), (("a", "b", "c"), "a, b and c")],
)
def test_listed(parts: tuple[str, ...], said: str) -> None:
    assert wording.listed(parts) == said


def test_day() -> None:
    assert wording.day(date(2026, 11, 6), "us") == "November 6, 2026"
    assert wording.day(date(2026, 11, 6), "uk") == "6 November 2026"


@pytest.mark.parametrize(("name", "said"), [("Short run", "short run"), ("LR car", "LR car"), ("A", "A"), ("", "")])
def test_small(name: str, said: str) -> None:
    assert wording.small(name) == said


@pytest.mark.parametrize(
    ("name", "said"),
    [("oak-hollow", "Oak Hollow"), ("Oak Hollow", "Oak Hollow"), ("st. mary's", "St. Mary's"), ("", "")],
)
def test_readable(name: str, said: str) -> None:
    assert wording.readable(name) == said


def test_flat() -> None:
    assert wording.flat(" a\n  b\u00a0c ") == "a b c"
