"""SubRip as written."""

from __future__ import annotations

import pytest

from producer.captions.payload import CaptionError
from producer.captions.srt import to_srt
from producer.model.cue import Cue


def test_a_whole_file() -> None:
    cues = [
        Cue(0, 1500, ("Right front spring", "725\u00a0lb/in")),
        Cue(1500, 1600, ()),
        Cue(3_600_000, 3_602_500, ("Track bar",)),
    ]
    assert to_srt(cues) == (
        "1\n"
        "00:00:00,000 --> 00:00:01,500\n"
        "Right front spring\n"
        "725\u00a0lb/in\n"
        "\n"
        "2\n"
        "01:00:00,000 --> 01:00:02,500\n"
        "Track bar\n"
        "\n"
    )


PAYLOADS = [
    ("plain", "plain"),
    ("under < 50 & over", "under < 50 & over"),
    ("over > 50", "over > 50"),
    ("1 > 0 < 2", "1 > 0 < 2"),
    ("<b>bold</b>", "‹b›bold‹/b›"),
    ("a <\n> b", "a ‹\n› b"),
    ("{\\an8}top", "(\\an8)top"),
    ("750 --> 725", "750 → 725"),
    ("750 ----> 725", "750 → 725"),
    ("->", "->"),
    ("C:\\New", "C:\\ New"),
    ("C:\\setups", "C:\\setups"),
    ("&lt;", "&lt;"),
    ("12", "12"),
]


@pytest.mark.parametrize(("text", "payload"), PAYLOADS)
def test_the_authors_text_is_made_legal(text: str, payload: str) -> None:
    assert to_srt([Cue(0, 1000, (text,))]) == f"1\n00:00:00,000 --> 00:00:01,000\n{payload}\n\n"


def test_nothing_to_write() -> None:
    assert to_srt([]) == ""


def test_starts_must_rise() -> None:
    with pytest.raises(CaptionError, match="cue 2"):
        to_srt([Cue(0, 9, ("a",)), Cue(0, 9, ("b",))])
