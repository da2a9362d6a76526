"""How large a change is, and how sure the model is of it, in words."""

from __future__ import annotations

import pytest

from producer.basics.figures import NO_BREAK
from producer.handling.measure import (
    agreeing,
    as_cross_weight,
    fold,
    how_sure,
    in_words,
    measure,
    of_cars,
    of_hundred,
    times,
)
from producer.model.opinion import PhaseOpinion
from producer.model.words import Effect


@pytest.mark.parametrize(
    ("size", "half", "found"),
    [(0.5, 0.25, 2.0), (-0.5, 0.25, -2.0), (0.0, 0.25, 0.0), (None, 0.25, None), (0.5, None, None), (0.5, 0.0, None)],
)
def test_measure(size: float | None, half: float | None, found: float | None) -> None:
    assert measure(size, half) == found


@pytest.mark.parametrize(
    ("halves", "short", "words"),
    [
        (0.0, f"under{NO_BREAK}0.1×", "a tenth of a percent"),
        (0.049, f"under{NO_BREAK}0.1×", "a tenth of a percent"),
        (0.2, "0.2×", "a tenth of a percent"),
        (-0.5, "0.5×", "a quarter of a percent"),
        (1.0, "1.0×", "half a percent"),
        (-1.2, "1.2×", "half a percent"),
        (1.5, "1.5×", "three quarters of a percent"),
        (2.0, "2.0×", "one percent"),
        (3.1, "3.1×", "one and a half percent"),
        (16.2, "16×", "eight percent"),
        (27.0, "27×", "13 and a half percent"),
        (-40.0, "40×", "20 percent"),
    ],
)
def test_sizes(halves: float, short: str, words: str) -> None:
    assert times(halves) == short
    assert as_cross_weight(halves) == f"as much as {words} of cross weight"
    small = abs(halves) < 0.05
    assert in_words(halves) == ("hardly enough to feel" if small else f"about as much as {words} of cross weight")


@pytest.mark.parametrize("halves", [40.1, -41.0, 1e9])
def test_beyond_what_anybody_has_felt(halves: float) -> None:
    said = f"more than 20{NO_BREAK}percent of cross weight would do"
    assert as_cross_weight(halves) == in_words(halves) == said


@pytest.mark.parametrize(
    ("tighter", "looser", "effect", "found"),
    [
        (0.99, 0.01, "tighter", "the model agrees (99 of 100 cars)"),
        (1.0, 0.0, "tighter", "the model agrees (all cars)"),
        (0.9996, 0.0004, "tighter", "the model agrees (99 of 100 cars)"),
        (0.85, 0.15, "tighter", "the model agrees (85 of 100 cars)"),
        (0.6, 0.4, "tighter", "the model: depends on the car (60 of 100)"),
        (0.6, 0.4, "looser", "the model: depends on the car (40 of 100)"),
        (0.1, 0.7, "tighter", "the model: depends on the car (10 of 100)"),
        (0.03, 0.97, "tighter", "the model is against it (97 of 100 cars)"),
        (0.0, 0.0, "tighter", "the model: nothing happens"),
        (0.0, 0.0, "none", "the model agrees (all cars)"),
        (1.0, 0.0, "none", "the model is against it (all cars)"),
    ],
)
def test_how_sure(tighter: float, looser: float, effect: Effect, found: str) -> None:
    assert how_sure(PhaseOpinion(tighter, looser, 0.0), effect) == found


@pytest.mark.parametrize(
    ("share", "found"),
    [
        (None, ""),
        (1.0, "the chassis model agrees in nearly all plausible cars"),
        (0.85, "the chassis model agrees in nearly all plausible cars"),
        (0.8, "by the chassis model it depends on the car (80 of 100 agree)"),
        (0.15, "the chassis model disagrees in nearly all plausible cars"),
        (0.0, "the chassis model disagrees in nearly all plausible cars"),
    ],
)
def test_agreeing(share: float | None, found: str) -> None:
    assert agreeing(share) == found


@pytest.mark.parametrize(
    ("share", "found"), [(0.0, "0"), (0.0004, "1"), (0.5, "50"), (0.995, "99"), (0.9999, "99"), (1.0, "100")]
)
def test_of_hundred(share: float, found: str) -> None:
    assert of_hundred(share) == f"{found} of 100"


@pytest.mark.parametrize(("share", "found"), [(1.0, "all"), (0.9999, "99 of 100"), (0.85, "85 of 100")])
def test_of_cars(share: float, found: str) -> None:
    assert of_cars(share) == f"{found} plausible cars"


@pytest.mark.parametrize(
    ("ratio", "found"),
    [
        (0.1, "next to nothing"),
        (0.2, "about a fifth as much"),
        (0.33, "about a third as much"),
        (0.5, "about half as much"),
        (0.7, "about two thirds as much"),
        (0.8, "about as much"),
        (1.24, "about as much"),
        (1.3, "about one and a half times as much"),
        (2.0, "about twice as much"),
        (2.6, "about two and a half times as much"),
        (4.1, "about four times as much"),
        (15.0, "about 15 times as much"),
    ],
)
def test_fold(ratio: float, found: str) -> None:
    assert fold(ratio) == found
