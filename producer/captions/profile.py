"""The reading profile of a channel: a named one, with the author's own numbers over it."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import TYPE_CHECKING

from producer.model.cue import ReadingProfile, named_profile

if TYPE_CHECKING:
    from producer.model.channel import CaptionLimits


def reading_profile(limits: CaptionLimits) -> ReadingProfile:
    """What `channel.yaml` says under `captions`, seconds made milliseconds.

    Raises ValueError, with a sentence for the author, for limits that no caption can meet.
    """
    own: dict[str, int | float | None] = {
        "characters_per_line": limits.characters,
        "lines": limits.lines,
        "characters_per_second": _number(limits.characters_per_second),
        "words_per_minute": _number(limits.words_per_minute),
        "shortest_ms": _ms(limits.shortest),
        "longest_ms": _ms(limits.longest),
        "gap_ms": _ms(limits.gap),
        "figure_ms": _ms(limits.per_figure),
    }
    stated = {name: value for name, value in own.items() if value is not None}
    return replace(named_profile(limits.profile), **stated)  # type: ignore[arg-type]  # whole fields keep their kind


def _number(value: Decimal | None) -> float | None:
    return None if value is None else float(value)


def _ms(seconds: Decimal | None) -> int | None:
    return None if seconds is None else int((seconds * 1000).to_integral_value())
