"""Viewers' messages read with the words of the library they are about."""

from __future__ import annotations

from producer.language.messages import message_reader
from producer.model.library import Library
from producer.model.request import Request
from producer.replies.understand import Understood, understood


class Reader:
    """Reads what a message says, beside what the author filled in."""

    def __init__(self, library: Library) -> None:
        self._library = library
        self._reader = message_reader(library.garages, library.tracks)

    def understood(self, request: Request, under: str | None = None) -> Understood:
        """The message with every field that is written or can be read; `under` is the episode it was written below.

        Settings and turns are read with the words of the class and the track that the message turns out to be about.
        """
        above = self._library.episodes.get(request.episode or under or "")
        garage = request.garage or (above.garage if above else None)
        track = request.track or (above.track if above else None)
        whole = self._read(request, garage, track)
        if request.episode is not None:
            return whole
        about = whole.request.track or track
        known = whole.request.garage or garage or self._only_class(about)
        return whole if (known, about) == (garage, track) else self._read(request, known, about)

    def _read(self, request: Request, garage: str | None, track: str | None) -> Understood:
        return understood(request, self._reader.read(request.text, garage, track), self._library)

    def _only_class(self, track: str | None) -> str | None:
        """The class of a track's episodes with figures, where it is one."""
        there = (one for one in self._library.episodes.values() if one.track == track and one.at_least("scripted"))
        found = sorted({one.garage for one in there})
        return found[0] if len(found) == 1 else None
