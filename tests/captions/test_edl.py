"""The edit decision list as written."""

from __future__ import annotations

import pytest

from producer.basics.frame_rate import frame_rate
from producer.captions.edl import marks_edl, reel
from producer.model.cue import Mark

MARKS = [
    Mark(0, 12_000, "section", "Opening"),
    Mark(60_060, 61_000, "pick-up", "Right front", "said 705\u00a0lb/in"),
    Mark(61_000, 65_000, "caption", "725 \u2192 750"),
]


def test_a_whole_list_in_drop_frame() -> None:
    assert marks_edl(MARKS, frame_rate("29.97"), 600_600, title="Marrow Creek \u2013 night", clip="cut final.mp4") == (
        "TITLE: Marrow Creek - night\n"
        "FCM: DROP FRAME\n"
        "001  CUT_FINA V     C        00:00:00;00 00:10:00;18 01:00:00;00 01:10:00;18\n"
        "* FROM CLIP NAME: cut final.mp4\n"
        "* LOC: 01:00:00;00 GREEN   Opening\n"
        "* LOC: 01:01:00;02 RED     Right front - said 705 lb/in\n"
        "* LOC: 01:01:01;00 CYAN    725 to 750\n"
    )


def test_without_drop_frame() -> None:
    lines = marks_edl(MARKS[:1], frame_rate("25"), 10_000, title="x").splitlines()
    assert lines == [
        "TITLE: x",
        "FCM: NON-DROP FRAME",
        # The mark ends two seconds after the cut: the event holds it.
        "001  AX       V     C        00:00:00:00 00:00:12:00 01:00:00:00 01:00:12:00",
        "* LOC: 01:00:00:00 GREEN   Opening",
    ]


def test_nothing_marked_and_no_length() -> None:
    assert "00:00:00:00 00:00:00:01" in marks_edl([], frame_rate("24"), 0, title="")


@pytest.mark.parametrize(
    ("clip", "name"),
    [("cut.mp4", "CUT"), ("marrow-creek.v2.mov", "MARROW_C"), ("cut", "CUT"), ("", "AX"), ("\U0001f3c1.mp4", "AX")],
)
def test_a_reel(clip: str, name: str) -> None:
    assert reel(clip) == name
