"""What an episode was last built from, so that a build does again only what has changed.

The record of a build holds digests and file names, never what a request says or who sent it. A record that is
missing, old or damaged only costs time.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

from producer import __version__
from producer.basics.located import Places
from producer.basics.shipped import shipped
from producer.jobs.own_pace import measured_from
from producer.model.episode import Episode
from producer.model.library import Library, laps_file
from producer.render.document import Document

CACHE = ".cache"
_BESIDE = frozenset({".csv", ".srt", ".vtt"})


@dataclass(frozen=True, slots=True)
class Built:
    """A build of one episode: the digest of all it was made from, and its files (path below its folder -> digest)."""

    made_from: str
    files: dict[str, str]


class Ingredients:
    """What each episode of a library is made from; what all of them share is read once."""

    def __init__(self, library: Library, root: Path) -> None:
        self._library = library
        self._root = root
        shared = (__version__, *program(), *_templates(root), *_takes(library))
        self._shared = hashlib.sha256("\n".join(shared).encode()).digest()

    def digest(self, episode: Episode, *, nameless: bool = False) -> str:
        """SHA-256 over all that an episode's files and findings depend on: its YAML, what it shares, stints, captions,
        the consent and handle of those it thanks, templates, and this program. `nameless`: but its own id.
        """
        total = hashlib.sha256(self._shared)
        for name, data in self._parts(episode, nameless=nameless):
            total.update(f"{len(name)}:{name}:{len(data)}:".encode())
            total.update(data)
        return total.hexdigest()

    def _parts(self, episode: Episode, *, nameless: bool) -> Iterator[tuple[str, bytes]]:
        files, requests = self._library.files, self._library.requests
        *shared, own_file = self._library.files_of(episode)
        for name in shared:
            yield name, files[name].text.encode()
        own = files[own_file]
        yield "episode", (_without_id(own, episode) if nameless else own.text).encode()
        for thanked in episode.thanks:
            request = requests.get(thanked)
            if request is not None:
                yield f"request {thanked}", f"{request.from_ or '' if request.credit else ''}".encode()
        folder = self._root / Path(own_file).parent
        beside = sorted(one for one in folder.rglob("*") if one.is_file() and one.suffix.lower() in _BESIDE)
        for path in beside:
            yield path.relative_to(folder).as_posix(), _content(path)
        # Takes and laps that are named may be called anything and stand anywhere.
        for take in self._library.takes.get(episode.episode, ()):
            if self._root / take.file not in beside:
                yield take.file, take.data
        for stint in episode.stints:
            held = files.get(laps_file(episode, stint))
            if held is not None and (folder / stint.file) not in beside:
                yield stint.file, held.text.encode()


def _without_id(own: Places, episode: Episode) -> str:
    """The episode's text with its id taken out of its own line."""
    place = episode.place("episode")
    lines = own.text.splitlines(keepends=True)
    row = lines[place.line - 1]
    lines[place.line - 1] = row[: place.column - 1] + row[place.column - 1 + place.width :]
    return "".join(lines)


def _templates(root: Path) -> Iterator[str]:
    """The library's own templates, whole."""
    for path in sorted(one for one in (root / "templates").glob("*") if one.is_file()):
        yield f"{path.name} {hashlib.sha256(_content(path)).hexdigest()}"


def _takes(library: Library) -> Iterator[str]:
    """The takes that tell how fast the author speaks: every estimate depends on them."""
    for one in measured_from(library):
        yield f"{one.file} {one.of} {hashlib.sha256(one.data).hexdigest()}"


def _content(path: Path) -> bytes:
    """What is in a file; of one that cannot be read, why: the check that needs it says so to the author."""
    try:
        return path.read_bytes()
    except OSError as error:
        return f"{type(error).__name__} {error.strerror}".encode()


def program() -> Iterable[str]:
    """Name, size and time of our own files and templates: an edited template or an update builds again."""
    package = Path(__file__).resolve().parent.parent
    for folder in (package, shipped("templates")):
        for path in sorted((*folder.rglob("*.py"), *folder.glob("*.j2"))):
            stat = path.stat()
            yield f"{path.name} {stat.st_size} {stat.st_mtime_ns}"


def read(out: Path, episode: str) -> Built | None:
    """The record of the last build, None where there is none that can be read."""
    try:
        data = json.loads((out / CACHE / f"{episode}.json").read_text(encoding="utf-8"))
        files = {str(path): str(digest) for path, digest in data["files"].items()}
        return Built(str(data["made_from"]), files)
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None


def record(episode: str, built: Built) -> Document:
    """The record as a document below the output folder."""
    text = json.dumps({"made_from": built.made_from, "files": built.files}, indent=0, sort_keys=True)
    return Document(f"{CACHE}/{episode}.json", text.encode())


def still_there(built: Built, folder: Path) -> bool:
    """Whether every file of a build is on disk as it was written."""
    return all(_digest_of(folder.joinpath(*path.split("/"))) == digest for path, digest in built.files.items())


def digests(documents: Iterable[Document]) -> dict[str, str]:
    """Path -> digest of each document."""
    return {one.path: hashlib.sha256(one.data).hexdigest() for one in documents}


def _digest_of(path: Path) -> str:
    try:
        return hashlib.sha256(path.read_bytes()).hexdigest()
    except OSError:
        return ""
