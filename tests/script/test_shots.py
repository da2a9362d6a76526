"""The shots follow from what is told."""

from __future__ import annotations

from collections.abc import Callable

from tests.script.conftest import Told

ADVICE = """
- for: spring.rf
  if:
    - { feels: loose entry, say: Up. }
    - { feels: very loose entry, say: Up more. }
    - { feels: tight, say: Down. }
- for: cross_weight
  if: [{ feels: tight exit, say: Out. }]
"""


def test_a_page_is_shown_and_each_corner_once(tell: Callable[..., Told]) -> None:
    told = tell(ADVICE)
    assert told.section("short.under_floor").shots == (
        "Screen: the garage's under floor page, the short run loaded",
        "Corner: the car loose going in",
    )
    assert told.section("short.scales").shots[1:] == ("Corner: the car tight coming off",)
    assert told.section("short.drive").shots == ("Screen: the garage's drive page, the short run loaded",)


def test_driving_and_cards_around_it(tell: Callable[..., Told]) -> None:
    told = tell(top="approach: Brake early.")
    assert told.section("opening").shots == ("Driving: a clean lap of Test Oval with the short run",)
    assert told.section("conditions").shots == ("Driving: one lap from outside, driven as you describe it",)
    assert told.section("closing").shots[0] == "Screen: the card, long enough to pause on"
