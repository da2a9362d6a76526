"""One setup of one episode, checked, with what the chassis model thinks of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from producer.basics.errors import ProducerError
from producer.basics.finding import Finding
from producer.basics.located import Places
from producer.jobs.check import check
from producer.jobs.prose import filled
from producer.model.channel import Channel
from producer.model.library import Case
from producer.model.opinion import Opinions
from producer.model.sheet import Sheet


@dataclass(frozen=True, slots=True)
class OneSetup:
    """A setup and what it stands in; the prose is filled in."""

    case: Case
    sheet: Sheet
    channel: Channel
    opinions: Opinions | None


@dataclass(frozen=True, slots=True)
class Looked:
    """`found` is None where errors (among `findings`) hold the episode back."""

    found: OneSetup | None
    findings: tuple[Finding, ...]
    files: Mapping[str, Places]


def one_setup(root: Path, out: Path, episode: str, setup: str | None) -> Looked:
    """The setup of that id, the first without one.

    Raises ProducerError for an episode or a setup that is not there.
    """
    checked = check(root, (episode,), out)
    findings, files = checked.about((episode,)), checked.library.files
    channel = checked.library.channel
    if channel is None or checked.blocked(episode):
        return Looked(None, findings, files)
    case = checked.library.case(filled(checked.library.case(checked.library.episodes[episode])))
    sheet = _sheet(case, setup)
    return Looked(OneSetup(case, sheet, channel, checked.second.of(case).get(sheet.id)), findings, files)


def _sheet(case: Case, setup: str | None) -> Sheet:
    name, names = case.episode.episode, [one.id for one in case.sheets]
    if not names:
        raise ProducerError(f"'{name}' has no setup with values yet")
    if setup is not None and setup not in names:
        raise ProducerError(f"'{name}' has no setup '{setup[:60]}'; there are: {', '.join(names)}")
    return case.sheets[0 if setup is None else names.index(setup)]
