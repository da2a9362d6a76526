"""The reading profile of a channel: a named one, with the author's own numbers over it."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from producer.model.channel import CaptionLimits
    from producer.model.cue import ReadingProfile


def reading_profile(limits: CaptionLimits) -> ReadingProfile:
    """What `channel.yaml` says under `captions`; impossible limits were refused while it was read."""
    return limits.reading()
