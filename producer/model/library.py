"""The whole library as records, and one episode with everything it refers to."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from producer.basics.located import Places
from producer.model.channel import Channel
from producer.model.episode import Episode, StintEntry
from producer.model.garage import Garage
from producer.model.request import Request
from producer.model.resolve import sheets
from producer.model.sheet import Sheet
from producer.model.track import Track


def laps_file(episode: Episode, stint: StintEntry) -> str:
    """What a stint's file is called in the library: `marrow-creek-grand-sedan/stints/short-1.csv`."""
    return f"{episode.place().file.rsplit('/', 1)[0]}/{stint.file}"


@dataclass(frozen=True, slots=True)
class TakeCaptions:
    """A file of captions as it stands: of the take as recorded or of the finished cut; `file` as in the library."""

    of: Literal["raw", "cut"]
    file: str
    data: bytes = field(repr=False)


@dataclass(frozen=True, slots=True)
class Library:
    """What could be built.

    `channel` is None where channel.yaml has an error; `files` holds the places and text of each file read
    (files of laps too).
    `has_requests` is False in a public copy without a requests folder: then nothing is said about thanks.
    `broken` are the ids (folder names) of episodes that could not be built; `takes` the captions by episode.
    """

    channel: Channel | None
    garages: Mapping[str, Garage]
    tracks: Mapping[str, Track]
    episodes: Mapping[str, Episode]
    requests: Mapping[str, Request]
    files: Mapping[str, Places] = field(repr=False)
    has_requests: bool = True
    broken: tuple[str, ...] = ()
    takes: Mapping[str, tuple[TakeCaptions, ...]] = field(default_factory=dict, repr=False)

    def files_of(self, episode: Episode) -> tuple[str, ...]:
        """The files an episode is made from, as they are called: channel, garage, track, its own last."""
        garage, track = self.garages.get(episode.garage), self.tracks.get(episode.track)
        shared = (one.place().file for one in (self.channel, garage, track) if one is not None)
        return (*shared, episode.place().file)

    def case(self, episode: Episode) -> Case:
        """The episode with what it refers to, unresolved sheets left out."""
        garage = self.garages.get(episode.garage)
        return Case(self, episode, garage, self.tracks.get(episode.track), sheets(episode, garage) if garage else ())


@dataclass(frozen=True, slots=True)
class Case:
    """One episode for checks and engines: the author's records and the resolved setups in the author's order."""

    library: Library
    episode: Episode
    garage: Garage | None
    track: Track | None
    sheets: tuple[Sheet, ...]

    @property
    def channel(self) -> Channel | None:
        """The channel, where it could be read."""
        return self.library.channel

    def sheet(self, setup: str) -> Sheet | None:
        """The resolved setup of that id."""
        return next((one for one in self.sheets if one.id == setup), None)
