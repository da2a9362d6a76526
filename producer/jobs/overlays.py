"""On-screen captions as pictures, when they are asked for: what has changed is drawn, what is no longer shown goes."""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path

from producer import __version__
from producer.jobs.deliver import deliver, take_away
from producer.jobs.kit import kit_for
from producer.jobs.unchanged import Built, digests, read, record, still_there
from producer.model.dossier import Dossier
from producer.outputs.overlays import FOLDER, SHAPES, Wanted, wanted

Step = Callable[[str, int, int], None]


@dataclass(frozen=True, slots=True)
class Drawn:
    """Pictures in `folders` (one for each shape): how many were drawn, how many are as they were."""

    folders: tuple[Path, ...]
    drawn: int
    unchanged: int


def overlays(root: Path, out: Path, whole: Dossier, step: Step | None = None) -> Drawn:
    """Draw an episode's captions into `out/<episode>/overlays/<shape>/`; `step` is called as in a build, before each
    picture.

    A picture that is on disk as it was drawn from the same text is kept. Those of an earlier time that are no longer
    shown are taken away; files of the author's stay. Raises ProducerError for a text that cannot be drawn (nothing is
    written then) or a disk that refuses.
    """
    episode, kit = whole.episode.episode, kit_for(root)
    folder, name = out / episode, f"{FOLDER}/{episode}"
    before = read(out, name)
    known = before.files if before else {}
    every = wanted(whole, kit)
    lacking = [one for one in every if not _kept(one, known, folder)]
    documents = []
    for number, one in enumerate(lacking, 1):
        if step is not None:
            step(one.path, number, len(lacking))
        documents.append(one.drawn(kit))
    deliver(documents, folder)
    now = _known(every, known, digests(documents))
    take_away((path for path in known if path not in now), folder)
    deliver([record(name, Built(__version__, now))], out)
    folders = tuple(folder / FOLDER / shape.name for shape in SHAPES)
    return Drawn(folders, len(lacking), len(every) - len(lacking))


def _kept(one: Wanted, known: Mapping[str, str], folder: Path) -> bool:
    """Whether the picture is on disk as it was drawn from this very source."""
    source, _, picture = known.get(one.path, "").partition(" ")
    return source == _source(one) and still_there(Built("", {one.path: picture}), folder)


def _known(every: tuple[Wanted, ...], known: Mapping[str, str], drawn: Mapping[str, str]) -> dict[str, str]:
    """Path -> digest of the source, a space, digest of the picture."""
    return {
        one.path: f"{_source(one)} {drawn[one.path]}" if one.path in drawn else known[one.path] for one in every
    }  # fmt: skip


def _source(one: Wanted) -> str:
    return hashlib.sha256(f"{__version__}\n{one.source}".encode()).hexdigest()
