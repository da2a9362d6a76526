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
        """The message with every field that is written or can be read; `under` is the episode it was written below."""
        above = self._library.episodes.get(request.episode or under or "")
        garage = request.garage or (above.garage if above else None)
        track = request.track or (above.track if above else None)
        return understood(request, self._reader.read(request.text, garage, track), self._library)
