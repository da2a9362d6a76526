"""Reading speed of captions: how fast a cue must be read and how long a text needs to be shown."""

from __future__ import annotations

from math import ceil

from producer.captions.spoken import figures, spoken_words
from producer.model.cue import Cue, ReadingProfile

__all__ = ["characters", "characters_per_second", "needed_ms", "spoken_words", "too_fast", "words_per_minute"]

_ROUNDING = 1 + 1e-9  # a time computed from a limit keeps that limit, whatever the last binary digit says


def characters(text: str) -> int:
    """Characters a viewer reads: spaces and punctuation count, a new line counts as a space."""
    return len(" ".join(text.split("\n")))


def characters_per_second(cue: Cue) -> float:
    """Reading speed of a cue in characters a second; infinite for one that lasts no time."""
    return characters(cue.text) * 1000 / cue.duration_ms if cue.duration_ms > 0 else float("inf")


def words_per_minute(cue: Cue) -> float:
    """Reading speed of a cue in spoken words a minute; infinite for one that lasts no time."""
    return spoken_words(cue.text) * 60_000 / cue.duration_ms if cue.duration_ms > 0 else float("inf")


def needed_ms(text: str, profile: ReadingProfile) -> int:
    """How long a text must be shown to be read: the slower of its characters and its words, and time for each
    figure; never under the shortest cue. It may exceed the longest: such a text belongs into several cues.
    """
    by_characters = characters(text) * 1000 / profile.characters_per_second
    by_words = spoken_words(text) * 60_000 / profile.words_per_minute
    reading = ceil(max(by_characters, by_words)) + figures(text) * profile.figure_ms
    return max(profile.shortest_ms, reading)


def too_fast(cue: Cue, profile: ReadingProfile) -> str | None:
    """Why a cue can't be read in its time, as part of a sentence, or None. Time for figures is not asked of it."""
    if cue.duration_ms <= 0:
        return "lasts no time"
    if (speed := characters_per_second(cue)) > profile.characters_per_second * _ROUNDING:
        return f"{_rounded_up(speed)} characters a second, at most {profile.characters_per_second:g}"
    if (speed := words_per_minute(cue)) > profile.words_per_minute * _ROUNDING:
        return f"{_rounded_up(speed)} words a minute, at most {profile.words_per_minute:g}"
    return None


def _rounded_up(speed: float) -> str:
    """One decimal, rounded up: never shown as equal to the limit that it breaks."""
    return f"{ceil(speed * 10) / 10:g}"
