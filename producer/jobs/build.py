"""Make everything an episode needs, for the episodes named or the whole library."""

from __future__ import annotations

import pkgutil
from collections.abc import Callable, Iterable, Iterator
from importlib import import_module
from pathlib import Path
from types import ModuleType

from producer import outputs
from producer.basics.errors import ProducerError
from producer.jobs.check import Checked, check, known
from producer.jobs.deliver import deliver, take_away
from producer.jobs.dossier import dossier
from producer.jobs.kit import kit_for
from producer.jobs.report import Made, Report
from producer.jobs.unchanged import Built, digests, made_from, read, record, still_there
from producer.model.dossier import Dossier
from producer.render.document import Document
from producer.render.fonts import font_documents
from producer.render.kit import Kit

Step = Callable[[str, int, int], None]


def build(
    root: Path, out: Path, episodes: Iterable[str] = (), step: Step | None = None, *, anew: bool = False
) -> Report:
    """Build into `out/<episode>/`; `step` is called with an episode's name, its number and how many, before its turn.

    An episode with an error in it or in what it shares is held back, the others are built. `anew` builds unchanged
    ones too. Raises ProducerError for an episode that is not there or a disk that refuses.
    """
    asked = tuple(episodes)
    checked = check(root, asked)
    kit = kit_for(root)
    names = known(checked.library, asked)
    done: dict[str, tuple[Path, ...] | None] = {}
    for number, name in enumerate(names, 1):
        if step is not None:
            step(name, number, len(names))
        done[name] = None if checked.blocked(name) else _one(checked, name, root, out, kit, anew=anew)
    return Report(
        built={name: files for name, files in done.items() if files},
        unchanged=tuple(name for name, files in done.items() if files == ()),
        held_back=tuple(name for name, files in done.items() if files is None),
        findings=checked.about(asked),
        files=checked.library.files,
    )


def made(root: Path, out: Path, episode: str, only: Iterable[str], setup: str | None = None) -> Made:
    """Make some outputs (modules by name: `card`) of one episode; with `setup` only that setup's files.

    Where errors hold the episode back nothing is written. Raises ProducerError for an episode or a setup that is
    not there.
    """
    checked = check(root, (episode,))
    whole = None if checked.blocked(episode) else dossier(checked.library.case(checked.library.episodes[episode]))
    findings = checked.about((episode,))
    if whole is None:
        return Made(None, (), findings, checked.library.files)
    if setup is not None:
        _demand_setup(whole, setup)
    kit = kit_for(root)
    documents = [one for module in output_modules(only) for one in _documents(module, whole, kit, setup)]
    deliver(font_documents(), out)
    return Made(whole, deliver(documents, out / episode), findings, checked.library.files)


def _documents(module: ModuleType, whole: Dossier, kit: Kit, setup: str | None) -> Iterator[Document]:
    """An output's documents; an output that speaks of one setup alone has `of_setup`."""
    if setup is not None and hasattr(module, "of_setup"):
        yield from module.of_setup(whole, kit, setup)
    else:
        yield from module.documents(whole, kit)


def _demand_setup(whole: Dossier, setup: str) -> None:
    names = [one.id for one in whole.sheets]
    if setup not in names:
        raise ProducerError(f"'{whole.episode.episode}' has no setup '{setup[:60]}'; there are: {', '.join(names)}")


def output_modules(only: Iterable[str] = ()) -> Iterator[ModuleType]:
    """The output modules by name, found by their folder; all of them, or those named."""
    wanted = set(only)
    for found in sorted(pkgutil.iter_modules(outputs.__path__), key=lambda one: one.name):
        if not wanted or found.name in wanted:
            module = import_module(f"{outputs.__name__}.{found.name}")
            if hasattr(module, "documents"):
                yield module


def _one(checked: Checked, name: str, root: Path, out: Path, kit: Kit, *, anew: bool) -> tuple[Path, ...] | None:
    """The files written; () for an unchanged episode, None for one that cannot be put together."""
    episode = checked.library.episodes[name]
    digest = made_from(checked.library, episode, root)
    before = read(out, name)
    folder = out / name
    if not anew and before is not None and before.made_from == digest and still_there(before, folder):
        return ()
    whole = dossier(checked.library.case(episode))
    if whole is None:
        return None
    documents: list[Document] = [one for module in output_modules() for one in module.documents(whole, kit)]
    deliver(font_documents(), out)
    files = deliver(documents, folder)
    now = Built(digest, digests(documents))
    take_away((path for path in (before.files if before else ()) if path not in now.files), folder)
    deliver([record(name, now)], out)
    return files
