"""Tracks and classes by the short names viewers use: "gannet" for Gannet Bowl, "the sedan" for the Grand Sedan."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping

from producer.language.tokens import listed
from producer.model.garage import Garage
from producer.model.track import Track

_LEAST = 5  # letters: shorter words mean too much else
_WORD = re.compile(r"[^\W\d_]+")
# Words of names that a message has for other reasons.
_COMMON_FIRST = listed(
    "north south upper lower little grand great green white black short speed county first second third light heavy "
    "river national tight loose right front night sunday saturday friday"
)
_COMMON_LAST = listed("class series stock model models")


def short_track(text: str, tracks: Mapping[str, Track], garages: Mapping[str, Garage]) -> str | None:
    """The id of the one track whose name's first word stands in the text, None for none or several."""
    firsts = {name: _words(track.name)[:1] for name, track in tracks.items()}
    taken = [word for garage in garages.values() for word in _words(garage.name)]
    return _only(text, firsts, {*taken, *_COMMON_FIRST})


def short_class(text: str, garages: Mapping[str, Garage], tracks: Mapping[str, Track]) -> str | None:
    """The id of the one class whose name's last word stands in the text, None for none or several."""
    lasts = {name: _words(garage.name)[-1:] for name, garage in garages.items()}
    taken = [word for track in tracks.values() for word in _words(track.name)]
    return _only(text, lasts, {*taken, *_COMMON_LAST})


def _only(text: str, names: Mapping[str, list[str]], other: Collection[str]) -> str | None:
    said = set(_words(text))
    found = [
        name
        for name, words in names.items()
        if words and len(words[0]) >= _LEAST and words[0] not in other and words[0] in said
    ]
    return found[0] if len(found) == 1 else None


def _words(text: str) -> list[str]:
    return [word.casefold() for word in _WORD.findall(text)]
