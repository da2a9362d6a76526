"""Make everything an episode needs, for the episodes named or the whole library."""

from __future__ import annotations

import pkgutil
from collections.abc import Iterable, Iterator
from importlib import import_module
from pathlib import Path
from types import ModuleType

from producer import outputs
from producer.basics.errors import ProducerError
from producer.jobs.check import Checked, Step, check, known
from producer.jobs.deliver import deliver, take_away
from producer.jobs.dossier import dossier
from producer.jobs.kit import kit_for
from producer.jobs.report import Made, Report
from producer.jobs.times import times_told
from producer.jobs.unchanged import Built, Ingredients, digests, read, record, still_there
from producer.model.dossier import Dossier
from producer.render.document import Document
from producer.render.fonts import font_documents
from producer.render.kit import Kit


def build(
    root: Path, out: Path, episodes: Iterable[str] = (), step: Step | None = None, *, anew: bool = False
) -> Report:
    """Build into `out/<episode>/`; `step` is called with what is done, its number and how many, before it is.

    An episode with an error in it or in what it shares is held back; the others are built. An output that cannot be
    drawn is held back alone. `anew` builds unchanged episodes too. Raises ProducerError for an episode that is not
    there or a disk that refuses.
    """
    asked = tuple(episodes)
    checked = check(root, asked, out, step)
    bench = _Bench(checked, root, out)
    names = known(checked.library, asked)
    for number, name in enumerate(names, 1):
        if step is not None:
            step(f"building {name}", number, len(names))
        bench.take(name, anew=anew)
    return Report(
        bench.built, tuple(bench.unchanged), bench.held_back, checked.about(asked), checked.library.files, bench.timed
    )


class _Bench:
    """Where one episode after another is made; what became of each is sorted as it is done."""

    def __init__(self, checked: Checked, root: Path, out: Path) -> None:
        self._checked = checked
        self._out = out
        self._kit = kit_for(root)
        self._ingredients = Ingredients(checked.library, root)
        self.built: dict[str, tuple[Path, ...]] = {}
        self.unchanged: list[str] = []
        self.held_back: dict[str, str] = {}
        self.timed: dict[str, str] = {}

    def take(self, name: str, *, anew: bool) -> None:
        """Make one episode, unless nothing has changed or something holds it back."""
        if self._checked.blocked(name):
            self.held_back[name] = "held back by errors"
            return
        episode = self._checked.library.episodes[name]
        digest = self._ingredients.digest(episode)
        before = read(self._out, name)
        if not anew and before and before.made_from == digest and still_there(before, self._out / name):
            self.unchanged.append(name)
            return
        whole = dossier(self._checked.library.case(episode), self._checked.second, self._checked.pace)
        if whole is None:
            self.held_back[name] = "held back: a setup has no values yet"
            return
        self.timed[name] = times_told(whole, self._checked.library.takes.get(name, ()))
        documents, troubles = self._documents(whole)
        if not troubles:
            self.built[name] = self._deliver(name, digest, documents, before)
            return
        if documents:
            # Recorded as made from nothing, so that the next build tries again.
            self._deliver(name, "", documents, before)
            troubles.append(f"{len(documents)} other files in {self._out / name}")
        self.held_back[name] = f"held back: {'; '.join(troubles)}"

    def _documents(self, whole: Dossier) -> tuple[list[Document], list[str]]:
        """What can be made, and what cannot and why: a letter that no font has, a garage too long for any card."""
        documents: list[Document] = []
        troubles: dict[str, list[str]] = {}
        for module in output_modules():
            try:
                documents += list(module.documents(whole, self._kit))
            except ProducerError as trouble:
                troubles.setdefault(str(trouble), []).append(module.__name__.rpartition(".")[2])
        return documents, [f"{' and '.join(names)}, as {why}" for why, names in troubles.items()]

    def _deliver(self, name: str, digest: str, documents: list[Document], before: Built | None) -> tuple[Path, ...]:
        deliver(font_documents(), self._out)
        files = deliver(documents, self._out / name)
        now = Built(digest, digests(documents))
        take_away((path for path in (before.files if before else ()) if path not in now.files), self._out / name)
        deliver([record(name, now)], self._out)
        return files


def made(root: Path, out: Path, episode: str, only: Iterable[str], setup: str | None = None) -> Made:
    """Make some outputs (modules by name: `card`) of one episode; with `setup` only that setup's files.

    Where errors hold the episode back nothing is written. Raises ProducerError for an episode or a setup that is
    not there.
    """
    checked = check(root, (episode,), out)
    case = None if checked.blocked(episode) else checked.library.case(checked.library.episodes[episode])
    whole = dossier(case, checked.second, checked.pace) if case is not None else None
    findings = checked.about((episode,))
    if whole is None:
        return Made(None, (), findings, checked.library.files)
    if setup is not None:
        _demand_setup(whole, setup)
    kit = kit_for(root)
    documents = [one for module in output_modules(only) for one in _documents(module, whole, kit, setup)]
    deliver(font_documents(), out)
    timed = times_told(whole, checked.library.takes.get(episode, ()))
    return Made(whole, deliver(documents, out / episode), findings, checked.library.files, timed)


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
