"""The author's advice, spoken: the feel, the words, the figures to try."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

import pytest

from producer.model.guide import Change, Guide, GuideRow
from tests.script.conftest import Told

Tell = Callable[..., Told]


def advised(tell: Tell, target: str, advice: str, **more: object) -> list[str]:
    reason = f"- for: {target}\n  because: Why.\n  if:\n    - {{ {advice} }}\n"
    told = tell(reason, **more)
    return [one.text for one in told.passages() if one.kind == "advice"]


@pytest.mark.parametrize(
    ("target", "advice", "says"),
    [
        ("spring.rf", "feels: loose entry, to: [725, 750], say: Go up.",
         "If it is loose going in: Go up. That is 725, then 750."),
        ("spring.rf", "feels: loose entry, to: 725, say: Go up.", "If it is loose going in: Go up. That is 725."),
        ("spring.rf", "feels: tight middle, to: [675, 650, 625], say: Go down.",
         "If it is tight in the middle: Go down. That is 675, then 650 and 625."),
        ("spring.rf", "feels: very loose exit, say: Wait.", "If it is very loose coming off: Wait."),
        ("spring.rf", "feels: a little tight, say: Wait.", "If it is a little tight: Wait."),
        ("spring.rf", "feels: loose exit, say: If it darts wait.", "Loose coming off? If it darts wait."),
        ("spring.rf", "feels: loose exit, tyres: worn, say: Wait.", "If it is loose coming off on worn tires: Wait."),
        ("spring.rf", "feels: loose exit, tyres: new, device: pad, say: Wait.",
         "If it is loose coming off on new tires, and you drive with a pad: Wait."),
        ("spring.rf", "feels: loose entry, to: [725, 750]",
         "If it is loose going in: Take the right front spring to 725, then 750."),
        ("spring.rf", "feels: loose entry, to: 725", "If it is loose going in: Try the right front spring at 725."),
        ("spring.rf", "feels: loose entry, direction: raise", "If it is loose going in: Raise the right front spring."),
        ("spring.rf", "feels: tight entry, direction: lower", "If it is tight going in: Lower the right front spring."),
        ("spring.rear_split", "feels: tight exit, to: [100, 125], say: Widen it.",
         "If it is tight coming off: Widen it. That is 325 on the right rear, then 350."),
        ("spring.rear_split", "feels: tight exit, to: [100], corner: lr, say: Widen it.",
         "If it is tight coming off: Widen it. That is 200 on the left rear."),
        ("camber.rf", "feels: tight middle, to: -4, say: Lean it.",
         "If it is tight in the middle: Lean it. That is \u22124.00."),
    ],
)  # fmt: skip
def test_how_advice_is_said(tell: Tell, target: str, advice: str, says: str) -> None:
    assert advised(tell, target, advice) == [says]


def test_advice_that_says_and_moves_nothing_is_left_out(tell: Tell) -> None:
    assert advised(tell, "spring.rf", "feels: loose entry") == []


def test_a_direction_with_words_takes_its_figure_from_the_guide(tell: Tell) -> None:
    change = Change("spring.rf", Decimal(700), Decimal(725), 1, "lb/in", "author", 23)
    by_rule = Change("spring.rf", Decimal(700), Decimal(675), -1, "lb/in", "rule", 23)
    rows = (GuideRow("tight", "entry", (by_rule,)), GuideRow("loose", "entry", (by_rule, change)))
    said = advised(
        tell, "spring.rf", "feels: loose entry, direction: raise, say: Go up a step.",
        guides={"short": Guide("test", "short", rows)},
    )  # fmt: skip
    assert said == ["If it is loose going in: Go up a step. That is 725."]


def test_forms_take_turns(tell: Tell) -> None:
    reason = (
        "- for: spring.rf\n  if:\n    - { feels: loose entry, to: 725, say: Go up. }\n"
        "    - { feels: tight entry, tyres: worn, to: 675, say: Go down. }\n"
    )
    assert [one.text for one in tell(reason).passages() if one.kind == "advice"] == [
        "If it is loose going in: Go up. That is 725.",
        "Tight going in on worn tires? Go down. So that is 675.",
    ]
