"""Where a text may be broken, gap by gap."""

from __future__ import annotations

import pytest

from producer.captions.phrases import (
    BEFORE_PHRASE,
    BOUND,
    CLAUSE,
    NEVER,
    SENTENCE,
    break_cost,
    is_figure,
    measures,
)

KEPT = [
    "the spring", "a click", "An inch", "their setup", "in turn", "of it", "to 750", "without it",
    "has been", "is pushing", "doesn't turn", "it's tight", "It\u2019s tight", "right front", "LEFT REAR", "750 lb/in",
    "51.5 %", "two clicks", "2 clicks.", "fifty one", "one point", "turn 3", "lap 52", "setup two",
    "\u201cthe bar\u201d", "so \u2013",
]  # fmt: skip


@pytest.mark.parametrize("pair", KEPT)
def test_kept_together(pair: str) -> None:
    before, after = pair.split(" ")
    assert break_cost(before, after) == NEVER


FREE = [
    ("spring. The", SENTENCE), ("tight? Then", SENTENCE), ("\u201ctight.\u201d The", SENTENCE), ("in. Then", SENTENCE),
    ("spring, the", CLAUSE), ("bar: two", CLAUSE), ("in, drop", CLAUSE), ("\u2013 so", CLAUSE),
    ("car through", BEFORE_PHRASE), ("it is", BOUND), ("and the", BOUND), ("when you", BOUND), ("725 right", BOUND),
    ("goes from", BEFORE_PHRASE), ("is and", 10), ("track bar", 10), ("spring the", 5), ("750 down", 25),
    ("tight and", CLAUSE + 1),
]  # fmt: skip


@pytest.mark.parametrize(("pair", "cost"), FREE)
def test_may_be_parted(pair: str, cost: int) -> None:
    before, after = pair.split(" ")
    assert break_cost(before, after) == cost < NEVER


@pytest.mark.parametrize(
    "word", ["750", "\u22123.5", "+25", "51½", "½", ".05", "3.90:1", "1,050", "(750)", "14:32", "3/4"]
)
def test_figures(word: str) -> None:
    assert is_figure(word)


@pytest.mark.parametrize("word", ["", "T3", "two", "-", "a5", "."])
def test_not_figures(word: str) -> None:
    assert not is_figure(word)


@pytest.mark.parametrize(("figure", "word"), [("750", "lb/in"), ("51.5", "%."), ("2", "clicks,"), ("190", "°F")])
def test_figure_and_unit(figure: str, word: str) -> None:
    assert measures(figure, word)


@pytest.mark.parametrize(("figure", "word"), [("750", "down"), ("the", "lb/in"), ("750,", "clicks"), ("750", "")])
def test_not_figure_and_unit(figure: str, word: str) -> None:
    assert not measures(figure, word)
