"""Engine speed after the final drive."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from typing import Any

import pytest

from producer.basics.units import quantity
from producer.model.gearing import Gearing, GearStep
from tests.script.conftest import Told

AT = {"top_speed": quantity("142 mph"), "rpm": 7072}
LOWER, HIGHER = GearStep(Decimal("3.70"), 6816), GearStep(Decimal("4.11"), 7327)


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ({}, "Every 10\u00a0miles an hour is worth 520 rpm."),
        (AT, "At 142\u00a0miles an hour that is 7072 rpm."),
        ({**AT, "margin": 528}, "At 142\u00a0miles an hour that is 7072 rpm, 528 short of the limiter."),
        ({**AT, "margin": 0}, "At 142\u00a0miles an hour that is 7072 rpm, right on the limiter."),
        ({**AT, "margin": -72}, "At 142\u00a0miles an hour that is 7072 rpm, and the limiter is 72 below that."),
        (
            {**AT, "lower": LOWER},
            "At 142\u00a0miles an hour that is 7072 rpm. A gear of 3.70 would turn 6816 rpm there.",
        ),
        (
            {**AT, "lower": LOWER, "higher": HIGHER},
            "At 142\u00a0miles an hour that is 7072 rpm. "
            "A gear of 3.70 would turn 6816 rpm there, and 4.11 would turn 7327.",
        ),
    ],
)
def test_the_line(tell: Callable[..., Told], gears: Callable[..., Gearing], more: dict[str, Any], says: str) -> None:
    told = tell(gearing={"short": gears(**more)})
    assert told.texts("short.drive")[-1] == says


def test_another_setup_says_it_only_where_the_gear_changes(
    tell: Callable[..., Told], gears: Callable[..., Gearing]
) -> None:
    same = "- { setup: long, name: Long run, based_on: short, changes: { cross_weight: 53 } }"
    other = "- { setup: long, name: Long run, based_on: short, changes: { final_drive: 4.11 } }"
    both = {"short": gears(), "long": gears()}
    assert tell(more=same, gearing=both).whole.count("Every 10") == 1
    assert tell(more=other, gearing=both).whole.count("Every 10") == 2
