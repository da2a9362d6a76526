"""Read a library and say what is wrong with it."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

from producer.basics.collecting import collecting_paused
from producer.basics.errors import ProducerError
from producer.basics.finding import Finding, Severity, in_order
from producer.jobs.opinions import SecondOpinion
from producer.jobs.own_pace import OwnPace
from producer.library.load import load
from producer.model.library import Library
from producer.model.summary import Summary

Step = Callable[[str, int, int], None]  # what is done, its number from 1, how many


@dataclass(frozen=True)
class Checked:
    """A library, every finding about it in the order they are shown, who asks the chassis model, who measures takes."""

    library: Library
    findings: tuple[Finding, ...]
    second: SecondOpinion = field(default_factory=SecondOpinion, compare=False)
    pace: OwnPace = field(default_factory=OwnPace, compare=False)

    def about(self, episodes: Collection[str]) -> tuple[Finding, ...]:
        """The findings that concern these episodes: their own files, and everything they share."""
        if not episodes:
            return self.findings
        others = {self._folder(one) for one in (*self.library.episodes, *self.library.broken) if one not in episodes}
        return tuple(one for one in self.findings if _first(one) not in others)

    def blocked(self, episode: str) -> bool:
        """Whether an error stands in the episode or in a file it is made from: nothing wrong is handed out."""
        record = self.library.episodes.get(episode)
        if record is None or self.library.channel is None:
            return True
        needed = self.library.files_of(record)
        own = self._folder(episode)
        errors = (one for one in self.findings if one.severity is Severity.ERROR)
        return any(one.place.file in needed or _first(one) == own for one in errors)

    def _folder(self, episode: str) -> str:
        """The folder an episode stands in, which a slip may have named otherwise than its id."""
        record = self.library.episodes.get(episode)
        return record.place().file.split("/", 1)[0] if record is not None else episode


def _first(finding: Finding) -> str:
    return finding.place.file.split("/", 1)[0]


def check(root: Path, episodes: Iterable[str] = (), out: Path | None = None, step: Step | None = None) -> Checked:
    """Load and check a library; with `episodes`, only these are looked into (shared files always).

    What is costly to find out is remembered below `out`, where one is given. `step` is called with what is done, its
    number and how many, before an episode's turn. Raises ProducerError for an episode that is not there.
    """
    from producer.checks.registry import run
    from producer.jobs.kit import kit_for
    from producer.jobs.remembered import Remembered
    from producer.jobs.summaries import summary_of

    library, findings = load(root)
    chosen = known(library, episodes)
    kit, second, pace = kit_for(root), SecondOpinion(out), OwnPace()
    with collecting_paused(), Remembered(library, root, out) as memory:
        there = [library.episodes[name] for name in chosen if name in library.episodes]
        summaries: dict[str, Summary] = {}
        for number, one in enumerate(there, 1):
            if step is not None:
                step(f"working out {one.episode}", number, len(there))
            summary = memory.summary(one, partial(summary_of, library, one, kit, second, pace))
            if summary is not None:
                summaries[one.episode] = summary
        every = in_order([*findings, *run(library, summaries, chosen, memory.findings, second.of, step)])
    return Checked(library, tuple(every), second, pace)


def known(library: Library, episodes: Iterable[str]) -> tuple[str, ...]:
    """The episodes asked for, or all. Raises ProducerError naming what there is for one that is not there."""
    from difflib import get_close_matches

    every = (*library.episodes, *library.broken)
    asked = tuple(dict.fromkeys(episodes))
    for name in asked:
        if name not in every:
            near = get_close_matches(name, every, 1, 0.4)
            hint = f"did you mean '{near[0]}'?" if near else f"there are: {', '.join(sorted(every)) or 'none yet'}"
            raise ProducerError(f"there is no episode '{name[:60]}'; {hint}")
    return asked or tuple(sorted(every))
