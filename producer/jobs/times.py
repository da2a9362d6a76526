"""What the captions, chapters and cue sheets of an episode are timed from, for the terminal."""

from __future__ import annotations

from producer.model.dossier import Dossier

_SOURCES = {"estimate": "", "raw": "times of the take as recorded", "cut": "times of the cut"}


def times_told(whole: Dossier) -> str:
    """`times of the cut`; "" for an estimate without a take."""
    take = whole.take
    if take is not None and take.stranger:
        return f"times estimated: {take.file.rsplit('/', 1)[-1]} is of something else"
    return _SOURCES[whole.told.timeline.source]
