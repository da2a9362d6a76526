"""What the captions, chapters and cue sheets of an episode are timed from, for the terminal."""

from __future__ import annotations

from collections.abc import Sequence

from producer.model.dossier import Dossier
from producer.model.library import TakeCaptions

_SOURCES = {"estimate": "", "raw": "times of the take as recorded", "cut": "times of the cut"}


def times_told(whole: Dossier, captions: Sequence[TakeCaptions]) -> str:
    """`times of the cut`; "" for an estimate without a take. `captions` are the episode's files."""
    take = whole.take
    if take is None and captions:
        return f"times estimated: no words in {captions[0].file.rsplit('/', 1)[-1]}"
    if take is not None and take.stranger:
        return f"times estimated: {take.file.rsplit('/', 1)[-1]} is of something else"
    return _SOURCES[whole.told.timeline.source]
