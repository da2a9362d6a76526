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
from producer.library.takes import take_captions
from producer.library.text import read_text
from producer.model.channel import Channel
from producer.model.episode import Episode, Setup
from producer.model.garage import Garage
from producer.model.library import Library, laps_file
from producer.model.record import Record
from producer.model.request import Request, RequestFile
from producer.model.track import Track

CHANNEL = "channel.yaml"
# Folders of a library that hold no episodes.
_OWN = frozenset({"garages", "tracks", "requests", "templates"})
_EPISODES_OWN = frozenset({"stints", "published", "take.srt", "take.vtt", "cut.srt", "cut.vtt"})
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
        return _given(given)
    for folder in (start, *start.parents):
        if _is_file(folder / CHANNEL):
            return folder
    if _is_file(start / "episodes" / CHANNEL):
        return start / "episodes"
    raise ProducerError("no library here: no channel.yaml here or above; 'producer new library PATH' makes one")


def _given(folder: Path) -> Path:
    """A folder that was named, if it is a library: its channel.yaml may be missing, but not everything."""
    if not folder.is_dir():
        raise ProducerError(f"there is no library at {folder}: that is not a folder")
    if any(name in (CHANNEL, "garages", "tracks") for name in _names(folder)):
        return folder
    near = next((one for one in (folder.resolve().parent, folder / "episodes") if _is_file(one / CHANNEL)), None)
    hint = f"; did you mean {near}?" if near else ""
    raise ProducerError(f"{folder} is not a library: there is no channel.yaml in it{hint}")


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
    takes = {one.episode: found for one in episodes.values() if (found := take_captions(shelf.root, one))}
    library = Library(channel, garages, tracks, episodes, requests, shelf.files, has_requests, broken, takes)
    return library, shelf.findings


class _Shelf:
    """Reads files one after another and keeps their places and findings."""

    def __init__(self, root: Path) -> None:
        self.root = root
        self.files: dict[str, Places] = {}
        self.findings: list[Finding] = []

    def read(self, kind: type[R], file: str) -> R | None:
        path = self.root / file
        if not _is_file(path):
            hint = _misnamed(path) or _MISSING[file == CHANNEL]
            self.say(Place(file, 1, 1), "missing-file", f"{file} is missing", hint)
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
        self.named_as_text(name)
        for path in _yaml_files(self.root / name):
            record = self.read(kind, f"{name}/{path.name}")
            if record is not None:
                self.keep(found, record, id_key, path.stem)
        return found

    def keep(self, found: dict[str, R], record: R, id_key: str, stem: str) -> None:
        """Keep a record under its own id, which is also the name of its file or folder."""
        own = str(getattr(record, id_key))
        if own in found:
            hint = f"write '{id_key}: {stem}' here, like the name of its {_home(id_key)}" if own != stem else ""
            self.twice(id_key, own, record.place(id_key), found[own].place(id_key), hint)
            return
        if own != stem:
            home = _home(id_key)
            hint = f"rename one of them: '{id_key}: {stem}', or the {home}"
            self.say(record.place(id_key), "id-differs", f"the {home} is called '{stem}', the {id_key} '{own}'", hint)
        found[own] = record

    def twice(self, kind: str, name: str, place: Place, first: Place, hint: str = "") -> None:
        """One id for two things: the first one counts."""
        message, hint = f"the {kind} '{name}' is already there: {first}", hint or "give one of them another name"
        self.findings.append(Finding("duplicate-id", Severity.ERROR, place, message, hint, related=(first,)))

    def named_as_text(self, folder: str) -> None:
        """Some editors add .txt to a name and hide it: such a file is never read, so it is told."""
        for name in _names(self.root / folder):
            if name.lower().endswith((".yaml.txt", ".yml.txt")):
                file, wanted = f"{folder}/{name}", name[: -len(".txt")]
                message = f"{name} is not read: its name ends in .txt"
                self.say(Place(file, 1, 1), "missing-file", message, f"rename it to {wanted}")

    def keep_text(self, path: Path, file: str) -> None:
        """Keep a file of laps as it stands: whoever needs the laps reads them, and findings show its lines."""
        if file not in self.files:
            text, findings = read_text(path, file)
            self.findings += findings
            if text is not None:
                self.files[file] = Places(file, text)

    def lacking(self, record: Record, file: str, hint: str) -> None:
        """A file that a record names is not there."""
        message, where = f"there is no file '{file[:80]}'", record.where("file")
        self.say(record.place("file"), "missing-file", message, hint, where)

    def say(self, place: Place, code: str, message: str, hint: str = "", where: str = "") -> None:
        self.findings.append(Finding(code, Severity.ERROR, place, message, hint, where))


def _is_file(path: Path) -> bool:
    """As `Path.is_file`, which raises where a folder on the way may not be looked into."""
    return os.path.isfile(path)  # noqa: PTH113 - it answers no instead


def _yaml_files(folder: Path) -> list[Path]:
    names = _names(folder)
    return [folder / name for name in names if name.endswith((".yaml", ".yml")) and not name.startswith(".")]


def _names(folder: Path) -> list[str]:
    """What is in a folder, sorted; nothing where there is none."""
    if not folder.is_dir():
        return []
    try:
        return sorted(os.listdir(folder))  # noqa: PTH208 - names only: sorting Path objects costs ten times as much
    except OSError as error:
        raise ProducerError(f"the folder {folder} cannot be read: {error.strerror}") from error


def _home(id_key: str) -> str:
    return "folder" if id_key == "episode" else "file"


def _misnamed(path: Path) -> str:
    """What to do where the file is there under nearly its name: `episode.yml`, `Episode.yaml`, `episode.yaml.txt`."""
    for name in _names(path.parent):
        if _nearly(name, path.name):
            return f"the file is called '{name}': rename it to {path.name}"
    return ""


def _nearly(name: str, wanted: str) -> bool:
    stem = wanted.rsplit(".", 1)[0]
    return name.lower() in {f"{stem}{end}" for end in (".yaml", ".yml", ".yaml.txt", ".yml.txt", ".txt")}


def _requests(shelf: _Shelf) -> dict[str, Request]:
    found: dict[str, Request] = {}
    shelf.named_as_text("requests")
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
            _stints(shelf, record, folder)
    return found, tuple(broken)


def _setups(shelf: _Shelf, episode: Episode) -> None:
    first: dict[str, Setup] = {}
    for setup in episode.setups:
        if setup.setup in first:
            shelf.twice("setup", setup.setup, setup.place("setup"), first[setup.setup].place("setup"))
        first.setdefault(setup.setup, setup)


def _stints(shelf: _Shelf, episode: Episode, folder: Path) -> None:
    """The files with test laps are there, not empty, and kept as text; the files of takes are there."""
    looked = f"it is looked for in {folder.name}; correct the name, or take the"
    for stint in episode.stints:
        size = _size(folder / stint.file)
        if size is None:
            shelf.lacking(stint, stint.file, f"{looked} stint out")
        elif size == 0:
            hint, place = "its lines are lap,time: '1,31.482'", stint.place("file")
            shelf.say(place, "empty-file", f"there is nothing in '{stint.file[:80]}'", hint, stint.where("file"))
        else:
            shelf.keep_text(folder / stint.file, laps_file(episode, stint))
    for take in episode.takes:
        if _size(folder / take.file) is None:
            shelf.lacking(take, take.file, f"{looked} line out")


def _size(path: Path) -> int | None:
    """Bytes of a file; None where there is none."""
    try:
        return path.stat().st_size if path.is_file() else None
    except (OSError, ValueError):
        return None


def _episode_folders(root: Path) -> Iterator[Path]:
    try:
        entries = sorted(os.scandir(root), key=lambda one: one.name)
    except OSError as error:
        raise ProducerError(f"the folder {root} cannot be read: {error.strerror}") from error
    for entry in entries:
        if entry.is_dir() and entry.name not in _OWN and not entry.name.startswith("."):
            path = Path(entry.path)
            if _is_file(path / "episode.yaml") or _meant(path):
                yield path


def _meant(folder: Path) -> bool:
    """Whether a folder without an episode.yaml holds what only an episode has, or cannot be looked into."""
    try:
        names = os.listdir(folder)  # noqa: PTH208 - names only
        return not _EPISODES_OWN.isdisjoint(names) or any(_nearly(name, "episode.yaml") for name in names)
    except OSError:
        return True
