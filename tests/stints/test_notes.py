"""Which notes take a lap out, and which only tell something about it."""

from __future__ import annotations

import pytest

from producer.stints.notes import why_left_out


@pytest.mark.parametrize(
    ("note", "why"),
    [
        ("out lap", "out lap"), ("out lap; invented for the demo", "out lap"), ("Outlap", "out lap"),
        ("out", "out lap"), ("in lap", "in lap"), ("in", "in lap"), ("pitted", "pit stop"), ("pit stop", "pit stop"),
        ("pace lap", "warm-up or cool-down"), ("warm-up", "warm-up or cool-down"), ("caution", "caution"),
        ("CAUTION lap", "caution"), ("yellow flag", "caution"), ("traffic", "traffic"),
        ("traffic off the far end", "traffic"), ("held up by a slower car", "traffic"),
        ("lifted for a slower car", "traffic"), ("two wide into 1", "traffic"), ("let him by", "traffic"),
        ("in a tow", "draft"), ("drafting the pack", "draft"), ("spun off 4", "spin"), ("hit the wall", "contact"),
        ("brushed the fence", "contact"), ("slid up a lane", "slide"), ("big lift; my fault", "lift"),
        ("lifted", "lift"), ("missed the bottom", "mistake"), ("not a clean lap, mistake in 3", "mistake"),
        ("game froze", "interrupted"), ("x", "marked by the author"), ("exclude", "marked by the author"),
        ("skip this one", "marked by the author"),
    ],
)  # fmt: skip
def test_it_does_not_count(note: str, why: str) -> None:
    assert why_left_out(note) == why


@pytest.mark.parametrize(
    "note",
    [
        "", "clean", "no traffic", "clear of traffic", "without traffic", "not in traffic", "after the caution",
        "never lifted", "no mistakes", "rears going away", "starting to push", "tires feel gone",
        "lift a car length earlier", "out of shape but fine", "wheel straight in 3", "best lap", "within a tenth",
        "input smoother", "pitch black", "no wall this time", "inside line", "extra cautious", "no slower cars",
        "loose in", "sliding a little more",
    ],
)  # fmt: skip
def test_it_counts(note: str) -> None:
    assert why_left_out(note) == ""
