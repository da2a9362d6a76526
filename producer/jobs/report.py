"""What a job has done, for whoever prints it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from producer.basics.finding import Finding
from producer.basics.located import Places
from producer.model.dossier import Dossier


@dataclass(frozen=True)
class Report:
    """A build: episodes built (with their files), skipped as unchanged, held back whole or in part (and why).

    `files` holds the text and places of what was read, for excerpts; `timed` says of each episode built what its
    captions, chapters and cue sheets are timed from, "" for an estimate.
    """

    built: Mapping[str, tuple[Path, ...]]
    unchanged: tuple[str, ...]
    held_back: Mapping[str, str]
    findings: tuple[Finding, ...]
    files: Mapping[str, Places]
    timed: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Made:
    """Some outputs of one episode: `dossier` None and no files where errors hold it back; `timed` as of a build."""

    dossier: Dossier | None
    written: tuple[Path, ...]
    findings: tuple[Finding, ...]
    files: Mapping[str, Places]
    timed: str = ""
