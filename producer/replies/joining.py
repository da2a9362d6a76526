"""One name for a track however viewers write it: "oak hollow", "Oakhollow Speedway", "oak holow"."""

from __future__ import annotations

import re

from producer.language.track_names import near
from producer.model.library import Library
from producer.replies.wording import readable

_TAIL = re.compile(r"\b(?:motor|international|super)?\s*(?:speedway|raceway|speedrome|circuit|track|oval)\s*$")
_SHORTEST = 5  # letters: below that one slip makes another name


class Names:
    """Tracks by id; one that the library has not keeps the first spelling that was met."""

    def __init__(self, library: Library) -> None:
        self._shown = {name: track.name for name, track in library.tracks.items()}
        self._bare = {_bare(form): name for name, shown in self._shown.items() for form in (shown, name)}
        self._garages = {name: garage.name for name, garage in library.garages.items()}

    def track(self, written: str) -> str:
        """The id of a track, else the spelling that stands for it."""
        if written in self._shown:
            return written
        bare = _bare(written)
        found = self._bare.get(bare) or next((name for form, name in self._bare.items() if _alike(form, bare)), None)
        if found is None:
            found = " ".join(written.split())
            self._shown[found] = readable(found)
            self._bare[bare] = found
        return found

    def shown(self, track: str) -> str:
        """A track's name for people."""
        return self._shown.get(track) or readable(track)

    def place(self, track: str, garage: str | None) -> str:
        """`Gannet Bowl, Grand Sedan`; a class that is not said is said to be missing."""
        named = self._garages.get(garage, readable(garage)) if garage else "class not said"
        return f"{self.shown(track)}, {named}"


def _bare(name: str) -> str:
    """The letters and figures alone, without what any oval may be called."""
    small = name.casefold().replace("-", " ").replace("_", " ").strip()
    short = _TAIL.sub("", small)
    return re.sub(r"[\W_]+", "", short) or re.sub(r"[\W_]+", "", small) or small


def _alike(one: str, other: str) -> bool:
    return min(len(one), len(other)) >= _SHORTEST and near(one, other, 1)
