"""What a check found out at some cost, kept by the digest of all it depends on.

An episode's own id changes nothing but the digest of its cards and the file that findings name: a renamed episode, and
one that starts as a copy of another, are known already.

The file holds no handle and no text of a request: the handles in a description, which are there by consent, are left
out and put back. A file that is missing, old or damaged, or a disk that refuses, only costs time.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Iterable
from dataclasses import asdict
from pathlib import Path
from types import ModuleType, TracebackType
from typing import Any

from producer.basics.errors import ProducerError
from producer.basics.finding import Finding, Fix, Severity
from producer.basics.place import Place
from producer.jobs.deliver import deliver
from producer.jobs.dossier import cards_digest
from producer.jobs.unchanged import CACHE, Ingredients
from producer.model.episode import Episode
from producer.model.library import Case, Library
from producer.model.summary import Summary
from producer.render.document import Document

FILE = "checked.json"
_OWN = "./"  # in place of an episode's own folder


class Remembered:
    """Use as a context: what was asked for is kept when it ends. Without `out` nothing is remembered."""

    def __init__(self, library: Library, root: Path, out: Path | None) -> None:
        self._library = library
        self._out = out
        self._ingredients = Ingredients(library, root) if out is not None else None
        self._before = _read(out) if out is not None else {}
        self._now: dict[str, dict[str, Any]] = {}
        self._known: dict[str, tuple[str, str]] = {}  # episode -> its key, the digest of its cards

    def __enter__(self) -> Remembered:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, where: TracebackType | None
    ) -> None:
        if self._out is None or kind is not None or self._now == self._before:
            return
        # Episodes that were not looked at this time keep what is known of them.
        entries = {**self._before, **self._now} if len(self._now) < len(self._library.episodes) else self._now
        try:
            deliver([Document(f"{CACHE}/{FILE}", _written(entries))], self._out)
        except ProducerError:
            return  # a place that cannot be written to is no reason to fail a check

    def summary(self, episode: Episode, compute: Callable[[], Summary | None]) -> Summary | None:
        """The summary of an episode, as it was or computed."""
        entry = self._entry(episode)
        if entry is None:
            return compute()
        if "summary" not in entry:
            entry["summary"] = self._packed(compute(), episode)
        return self._unpacked(entry["summary"], episode)

    def findings(self, check: ModuleType, case: Case, find: Callable[[], Iterable[Finding]]) -> Iterable[Finding]:
        """What a costly check finds in an episode, as it was or found now."""
        entry = self._entry(case.episode)
        if entry is None:
            return find()
        name = check.__name__.rsplit(".", 1)[-1]
        own = case.episode.place().file.rsplit("/", 1)[0] + "/"
        if name not in entry:
            entry[name] = [_packed_finding(one, own) for one in find()]
        return [_finding(one, own) for one in entry[name]]

    def _entry(self, episode: Episode) -> dict[str, Any] | None:
        if self._ingredients is None:
            return None
        key, _ = self._key(episode, self._ingredients)
        return self._now.setdefault(key, dict(self._before.get(key, {})))

    def _key(self, episode: Episode, ingredients: Ingredients) -> tuple[str, str]:
        """The key of an episode's entry, and the digest of its cards."""
        found = self._known.get(episode.episode)
        if found is None:
            cards = cards_digest(self._library.case(episode))
            # Whether the cards are still those of the last revision shows in the notes.
            holds = bool(episode.published) and episode.published[-1].digest == cards
            found = f"{ingredients.digest(episode, nameless=True)}{'' if holds else ' draft'}", cards
            self._known[episode.episode] = found
        return found

    def _packed(self, summary: Summary | None, episode: Episode) -> dict[str, Any] | None:
        if summary is None:
            return None
        text = summary.description
        for number, handle in enumerate(self._handles(episode)):
            text = text.replace(handle, f"\0{number}\0")
        return {**asdict(summary), "description": text}

    def _unpacked(self, data: dict[str, Any] | None, episode: Episode) -> Summary | None:
        if data is None:
            return None
        text = str(data["description"])
        for number, handle in enumerate(self._handles(episode)):
            text = text.replace(f"\0{number}\0", handle)
        chapters = tuple((start, title) for start, title in data["chapters"])
        fast = tuple((start, shown, why) for start, shown, why in data["fast_captions"])
        cards = self._known[episode.episode][1]
        return Summary(**{**data, "description": text, "chapters": chapters, "fast_captions": fast, "digest": cards})

    def _handles(self, episode: Episode) -> list[str]:
        asked = (self._library.requests.get(one) for one in episode.thanks)
        return [one.from_ for one in asked if one is not None and one.credit and one.from_]


def _packed_finding(finding: Finding, own: str) -> dict[str, Any]:
    """A finding as data; places in the episode's own folder do not name it."""
    data = asdict(finding)
    fixed = [data["fix"]["place"]] if data["fix"] else []
    for place in (data["place"], *data["related"], *fixed):
        if place["file"].startswith(own):
            place["file"] = _OWN + place["file"].removeprefix(own)
    return data


def _finding(data: dict[str, Any], own: str) -> Finding:
    place, *related = (_place(one, own) for one in (data["place"], *data["related"]))
    told = {"severity": Severity(data["severity"]), "place": place, "related": tuple(related)}
    return Finding(**{**data, **told, "fix": _fix(data["fix"], own)})


def _fix(data: dict[str, Any] | None, own: str) -> Fix | None:
    return None if data is None else Fix(**{**data, "place": _place(data["place"], own), "path": tuple(data["path"])})


def _place(data: dict[str, Any], own: str) -> Place:
    file = str(data["file"])
    return Place(**{**data, "file": own + file.removeprefix(_OWN) if file.startswith(_OWN) else file})


def _read(out: Path) -> dict[str, dict[str, Any]]:
    try:
        data = (out / CACHE / FILE).read_bytes()
        entries: dict[str, dict[str, Any]] = json.loads(data)["entries"]
        # What was written by nobody but us needs no other proof of its shape.
        return entries if _written(entries) == data else {}
    except (OSError, ValueError, TypeError, KeyError, RecursionError):
        return {}


def _written(entries: dict[str, dict[str, Any]]) -> bytes:
    """The file's text, with a digest by which damage is noticed."""
    text = json.dumps(entries, ensure_ascii=False)
    return f'{{"digest": "{hashlib.sha256(text.encode()).hexdigest()}", "entries": {text}}}'.encode()
