"""A cue sheet as an OpenTimelineIO file: a timeline with the cut as its one clip and a marker for each mark.

Schemas as OpenTimelineIO publishes them (opentimelineio.readthedocs.io, "Serialized Data Documentation", from memory):
Timeline.1, Stack.1, Track.1, Clip.1, Marker.2, TimeRange.1, RationalTime.1. A time is a count of frames at a rate.
"""

from __future__ import annotations

import json
from collections.abc import Iterable

from producer.basics.frame_rate import FrameRate
from producer.captions.marks import COLOURS, frames_of, ordered
from producer.captions.timecode import frame_at
from producer.model.cue import Mark

_Json = dict[str, object]


def marks_otio(marks: Iterable[Mark], rate: FrameRate, total_ms: int, *, title: str, clip: str = "") -> str:
    """The timeline as JSON, times from zero. `clip` is the file of the cut, relative to this one; "" leaves the media
    open. A mark past `total_ms` makes the clip longer. Raises CaptionError as `ordered`.
    """
    found = ordered(marks)
    spans = [frames_of(mark, rate) for mark in found]
    length = max([1, frame_at(total_ms, rate), *(after for _, after in spans)])
    whole = _range(0, length, rate)
    cut = _named("Clip.1", clip or title, source_range=whole, media_reference=_media(clip, whole))
    track = _named("Track.1", "V1", source_range=None, kind="Video", children=[cut])
    markers = [_marker(mark, start, after, rate) for mark, (start, after) in zip(found, spans, strict=True)]
    stack = _named("Stack.1", "tracks", source_range=None, children=[track]) | {"markers": markers}
    timeline: _Json = {"OTIO_SCHEMA": "Timeline.1", "metadata": {}, "name": title}
    timeline |= {"global_start_time": _time(0, rate), "tracks": stack}
    return json.dumps(timeline, ensure_ascii=False, indent=2) + "\n"


def _named(schema: str, name: str, **parts: object) -> _Json:
    return {"OTIO_SCHEMA": schema, "metadata": {}, "name": name, "effects": [], "markers": [], **parts}


def _media(clip: str, whole: _Json) -> _Json:
    if not clip:
        return {"OTIO_SCHEMA": "MissingReference.1", "metadata": {}, "name": "", "available_range": None}
    from urllib.parse import quote

    reference: _Json = {"OTIO_SCHEMA": "ExternalReference.1", "metadata": {}, "name": clip}
    return reference | {"available_range": whole, "target_url": quote(clip)}


def _marker(mark: Mark, start: int, after: int, rate: FrameRate) -> _Json:
    return {
        "OTIO_SCHEMA": "Marker.2",
        "metadata": {"producer": {"kind": mark.kind}},
        "name": mark.name,
        "color": COLOURS[mark.kind],
        "comment": mark.note,
        "marked_range": _range(start, after, rate),
    }


def _range(start: int, after: int, rate: FrameRate) -> _Json:
    return {
        "OTIO_SCHEMA": "TimeRange.1",
        "start_time": _time(start, rate),
        "duration": _time(after - start, rate),
    }


def _time(frames: int, rate: FrameRate) -> _Json:
    return {"OTIO_SCHEMA": "RationalTime.1", "rate": float(rate.frames), "value": float(frames)}
