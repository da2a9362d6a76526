"""The timeline as JSON."""

from __future__ import annotations

import json
from typing import Any

from producer.basics.frame_rate import frame_rate
from producer.captions.otio import marks_otio
from producer.model.cue import Mark

MARKS = [Mark(1001, 2002, "section", "Springs"), Mark(500, 500, "pick-up", "Track bar", "say 9.5")]


def timeline(clip: str = "") -> Any:
    return json.loads(marks_otio(MARKS, frame_rate("29.97"), 10_010, title="Marrow Creek", clip=clip))


def test_one_clip_as_long_as_the_cut() -> None:
    track = timeline()["tracks"]["children"][0]
    (clip,) = track["children"]
    assert clip["source_range"]["duration"]["value"] == 300
    assert clip["source_range"]["duration"]["rate"] == 30000 / 1001
    assert clip["media_reference"]["OTIO_SCHEMA"] == "MissingReference.1"


def test_marks_are_markers_in_order() -> None:
    markers = timeline()["tracks"]["markers"]
    spans = [(one["marked_range"]["start_time"]["value"], one["marked_range"]["duration"]["value"]) for one in markers]
    assert spans == [(14, 1), (30, 30)]
    assert [(one["name"], one["color"], one["comment"]) for one in markers] == [
        ("Track bar", "RED", "say 9.5"),
        ("Springs", "GREEN", ""),
    ]


def test_the_file_of_the_cut_is_a_reference() -> None:
    reference = timeline("the cut.mp4")["tracks"]["children"][0]["children"][0]["media_reference"]
    assert (reference["OTIO_SCHEMA"], reference["target_url"]) == ("ExternalReference.1", "the%20cut.mp4")


def test_the_same_bytes_each_time() -> None:
    first, second = (marks_otio(MARKS, frame_rate("25"), 9, title="x") for _ in range(2))
    assert first == second
    assert first.endswith("}\n")
