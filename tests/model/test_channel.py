"""The channel: the rate of its videos, and what is said of one that no video has."""

from __future__ import annotations

import pytest

from producer.basics.finding import Finding
from producer.basics.frame_rate import frame_rate
from producer.library.records import build
from producer.model.channel import Channel

CHANNEL = "format: 1\nchannel: notebook\nname: The Notebook\n"


def read(written: str) -> tuple[Channel | None, list[Finding]]:
    record, _, findings = build(Channel, "channel.yaml", CHANNEL + written)
    return record, findings


@pytest.mark.parametrize("text", ["30000/1001", "29.97", "25", "'60'", "23.976", "24000/1001", " 50"])
def test_a_rate_that_videos_have(text: str) -> None:
    channel, findings = read(f"frame_rate: {text}\n")
    assert findings == []
    assert channel is not None
    assert channel.frame_rate == frame_rate(text.strip("'"))


@pytest.mark.parametrize("written", ["", "frame_rate:\n"])
def test_no_rate(written: str) -> None:
    channel, findings = read(written)
    assert findings == []
    assert channel is not None
    assert channel.frame_rate is None


@pytest.mark.parametrize(
    ("text", "code", "message", "hint"),
    [
        ("29.9", "wrong-value", "'29.9' is not a frame rate: 24000/1001, 24, 25", "write one of these, or 23.976"),
        ("25 fps", "wrong-value", "'25 fps' is not a frame rate", "write one of these"),
        ("30000/0", "wrong-value", "is not a frame rate", "write one of these"),
        ("0", "wrong-value", "'0' is not a frame rate", "write one of these"),
        ("''", "wrong-kind", "frames a second are wanted here, not nothing", "like 30000/1001, 29.97 or 25"),
        ("[25]", "wrong-kind", "frames a second are wanted here, not a list", "like 30000/1001, 29.97 or 25"),
        ("{ a: 25 }", "wrong-kind", "frames a second are wanted here, not a mapping", "like 30000/1001"),
    ],
)
def test_a_rate_that_none_has(text: str, code: str, message: str, hint: str) -> None:
    channel, (found,) = read(f"frame_rate: {text}\n")
    assert channel is None
    assert found.code == code
    assert message in found.message
    assert hint in found.hint
    assert (found.place.line, found.where) == (4, "frame_rate")
