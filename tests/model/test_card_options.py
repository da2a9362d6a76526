"""What the author wants on a card besides the figures: left out, yes, no, and what is neither."""

from __future__ import annotations

import pytest

from producer.library.records import build
from producer.model.channel import Channel

CHANNEL = "format: 1\nchannel: notebook\nname: The Notebook\n"


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("", None),
        ("card: {}\n", None),
        ("card: { test_laps: yes }\n", True),
        ("card: { test_laps: true }\n", True),
        ("card: { test_laps: no }\n", False),
    ],
)
def test_what_stands_on_a_card(text: str, wanted: bool | None) -> None:
    record, _, findings = build(Channel, "channel.yaml", CHANNEL + text)
    assert findings == []
    assert record is not None
    assert record.card.test_laps is wanted


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("card: { test_laps: maybe }\n", "wrong-kind"),
        ("card: { tests_laps: yes }\n", "unknown-key"),
        ("card: yes\n", "wrong-kind"),
    ],
)
def test_what_is_refused_at_its_place(text: str, code: str) -> None:
    _, _, findings = build(Channel, "channel.yaml", CHANNEL + text)
    assert [(one.code, one.place.line) for one in findings] == [(code, 4)]
