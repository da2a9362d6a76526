"""A folder of YAML files into a library of records, with findings for whatever could not be built."""

from __future__ import annotations

import os
from collections.abc import Iterator
from pathlib import Path
from typing import TypeVar

from producer.basics.collecting import collecting_paused
from producer.basics.errors import ProducerError
from producer.basics.finding import Finding, Severity
from producer.basics.located import Places
from producer.basics.place import Place
from producer.library.records import build
from producer.library.text import read_text
from producer.model.channel import Channel
from producer.model.episode import Episode, Setup
from producer.model.garage import Garage
from producer.model.library import Library
from producer.model.record import Record
from producer.model.request import Request, RequestFile
from producer.model.track import Track

CHANNEL = "channel.yaml"
# Folders of a library that hold no episodes.
_OWN = frozenset({"garages", "tracks", "requests", "templates"})
_EPISODES_OWN = frozenset({"stints", "published", "episode.yml", "take.srt", "take.vtt", "cut.srt", "cut.vtt"})
_MISSING = {
    True: "every library has one; 'producer new library' shows what goes in",
    False: "this folder holds what an episode has: add the file (its name ends in .yaml), or move the folder away",
}
R = TypeVar("R", bound=Record)


def find_library(given: Path | None, start: Path) -> Path:
    """The library's folder: as given, else the nearest folder upward with a channel.yaml, else ./episodes.

    Raises ProducerError where there is none.
    """
    if given is not None:
        if not given.is_dir():
            raise ProducerError(f"there is no library at {given}: that is not a folder")
        return given
    for folder in (start, *start.parents):
        if (folder / CHANNEL).is_file():
            return folder
    if (start / "episodes" / CHANNEL).is_file():
        return start / "episodes"
    raise ProducerError("no library here: no channel.yaml here or above; 'producer new library PATH' makes one")


def load(root: Path) -> tuple[Library, list[Finding]]:
    """The library below `root`. Never raises for what the author wrote; unreadable folders are ProducerError."""
    if not root.is_dir():
        raise ProducerError(f"there is no library at {root}")
    with collecting_paused():
        return _load(_Shelf(root))


def _load(shelf: _Shelf) -> tuple[Library, list[Finding]]:
    channel = shelf.read(Channel, CHANNEL)
    garages = shelf.folder(Garage, "garages", "garage")
    tracks = shelf.folder(Track, "tracks", "track")
    requests = _requests(shelf)
    episodes, broken = _episodes(shelf)
    has_requests = (shelf.root / "requests").is_dir()
    library = Library(channel, garages, tracks, episodes, requests, shelf.files, has_requests, broken)
    return library, shelf.findings


class _Shelf:
    """Reads files one after another and keeps their places and findings."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.files: dict[str, Places] = {}
        self.findings: list[Finding] = []

    def read(self, kind: type[R], file: str) -> R | None:
        path = self.root / file
        if not path.is_file():
            self.say(Place(file, 1, 1), "missing-file", f"{file} is missing", _MISSING[file == CHANNEL])
            return None
        text, findings = read_text(path, file)
        self.findings += findings
        if text is None:
            return None
        record, places, findings = build(kind, file, text)
        self.files[file] = places
        self.findings += findings
        return record

    def folder(self, kind: type[R], name: str, id_key: str) -> dict[str, R]:
        found: dict[str, R] = {}
        for path in _yaml_files(self.root / name):
            record = self.read(kind, f"{name}/{path.name}")
            if record is not None:
                self.keep(found, record, id_key, path.stem)
        return found

    def keep(self, found: dict[str, R], record: R, id_key: str, stem: str) -> None:
        """Keep a record under its own id, which is also the name of its file or folder."""
        own = str(getattr(record, id_key))
        if own in found:
            self.twice(id_key, own, record.place(id_key), found[own].place(id_key))
            return
        if own != stem:
            hint = f"rename one of them: '{id_key}: {stem}', or the file"
            self.say(record.place(id_key), "id-differs", f"the file is called '{stem}', the {id_key} '{own}'", hint)
        found[own] = record

    def twice(self, kind: str, name: str, place: Place, first: Place) -> None:
        """One id for two things: the first one counts."""
        message, hint = f"the {kind} '{name}' is already there: {first}", "give one of them another name"
        self.findings.append(Finding("duplicate-id", Severity.ERROR, place, message, hint, related=(first,)))

    def say(self, place: Place, code: str, message: str, hint: str = "") -> None:
        self.findings.append(Finding(code, Severity.ERROR, place, message, hint))


def _yaml_files(folder: Path) -> list[Path]:
    if not folder.is_dir():
        return []
    try:
        names = sorted(os.listdir(folder))  # noqa: PTH208 - names only: sorting Path objects costs ten times as much
    except OSError as error:
        raise ProducerError(f"the folder {folder} cannot be read: {error.strerror}") from error
    return [folder / name for name in names if name.endswith((".yaml", ".yml")) and not name.startswith(".")]


def _requests(shelf: _Shelf) -> dict[str, Request]:
    found: dict[str, Request] = {}
    for path in _yaml_files(shelf.root / "requests"):
        record = shelf.read(RequestFile, f"requests/{path.name}")
        for one in record.requests if record else ():
            if one.id in found:
                shelf.twice("request", one.id, one.place("id"), found[one.id].place("id"))
            else:
                found[one.id] = one
    return found


def _episodes(shelf: _Shelf) -> tuple[dict[str, Episode], tuple[str, ...]]:
    found: dict[str, Episode] = {}
    broken: list[str] = []
    for folder in _episode_folders(shelf.root):
        record = shelf.read(Episode, f"{folder.name}/episode.yaml")
        if record is None:
            broken.append(folder.name)
        else:
            shelf.keep(found, record, "episode", folder.name)
            _setups(shelf, record)
    return found, tuple(broken)


def _setups(shelf: _Shelf, episode: Episode) -> None:
    first: dict[str, Setup] = {}
    for setup in episode.setups:
        if setup.setup in first:
            shelf.twice("setup", setup.setup, setup.place("setup"), first[setup.setup].place("setup"))
        first.setdefault(setup.setup, setup)


def _episode_folders(root: Path) -> Iterator[Path]:
    try:
        entries = sorted(os.scandir(root), key=lambda one: one.name)
    except OSError as error:
        raise ProducerError(f"the folder {root} cannot be read: {error.strerror}") from error
    for entry in entries:
        if entry.is_dir() and entry.name not in _OWN and not entry.name.startswith("."):
            path = Path(entry.path)
            if (path / "episode.yaml").is_file() or _meant(path):
                yield path


def _meant(folder: Path) -> bool:
    """Whether a folder without an episode.yaml holds what only an episode has."""
    try:
        return not _EPISODES_OWN.isdisjoint(os.listdir(folder))  # noqa: PTH208 - names only
    except OSError:
        return False
