"""The chassis model's opinions of every setup of an episode, kept below the output folder by what was asked.

Asking costs a tenth of a second a setup; an answer that is kept costs a read. A file that is missing, old or damaged,
or a disk that refuses, only costs time.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping, Sequence
from dataclasses import fields
from math import isfinite
from pathlib import Path
from typing import Any

from producer.basics.errors import ProducerError
from producer.handling.asking import Asked, Question, ask
from producer.handling.opinions import opinions
from producer.jobs.deliver import deliver
from producer.jobs.unchanged import CACHE, program
from producer.model.library import Case
from producer.model.opinion import Opinion, Opinions, PhaseOpinion
from producer.model.words import CORNERS, PHASES
from producer.render.document import Document

FOLDER = "opinions"
_Answers = tuple[int, tuple[Opinion, ...]]  # how many cars, what they say of each move
_Known = dict[str, _Answers]


class SecondOpinion:
    """Who asks the model. Without `out` nothing is kept beyond this run."""

    def __init__(self, out: Path | None = None) -> None:
        self._out = out
        self._program = "\n".join(program())
        self._known: _Known = {}
        self._said: dict[str, tuple[Case, dict[str, Opinions]]] = {}

    def of(self, case: Case) -> dict[str, Opinions]:
        """The opinions of each setup of an episode, by setup id."""
        before = self._said.get(case.episode.episode)
        if before is None or before[0].episode is not case.episode or before[0].library is not case.library:
            before = self._said[case.episode.episode] = case, self._of(case)
        return before[1]

    def _of(self, case: Case) -> dict[str, Opinions]:
        asked = {sheet.id: ask(case, sheet) for sheet in case.sheets}
        keys = {setup: self._key(one.question) for setup, one in asked.items()}
        if any(key not in self._known for key in keys.values()):
            moves = {key: len(asked[setup].question.moves) for setup, key in keys.items()}
            self._known.update(_read(self._out, case.episode.episode, moves))
        missing = {key: asked[setup] for setup, key in keys.items() if key not in self._known}
        if missing:
            self._known.update({key: _answers(one) for key, one in missing.items()})
            self._keep(case.episode.episode, keys)
        return {setup: opinions(asked[setup], *self._known[key]) for setup, key in keys.items()}

    def _key(self, question: Question) -> str:
        written = json.dumps(question, default=_parts, sort_keys=True)
        return hashlib.sha256(f"{self._program}\n{written}".encode()).hexdigest()

    def _keep(self, episode: str, keys: Mapping[str, str]) -> None:
        if self._out is None:
            return
        entries = {key: _packed(*self._known[key]) for key in keys.values()}
        text = json.dumps(entries, separators=(",", ":"))
        try:
            deliver([Document(f"{CACHE}/{FOLDER}/{episode}.json", text.encode())], self._out)
        except ProducerError:
            return  # a place that cannot be written to is no reason to fail


def _parts(record: Any) -> dict[str, Any]:
    """A record's fields; unlike `asdict` without a copy of everything below."""
    return {one.name: getattr(record, one.name) for one in fields(record)}


def _answers(asked: Asked) -> _Answers:
    from producer.handling.answering import answer

    found = answer(asked.question)
    return found.cars, found.opinions


def _packed(cars: int, found: Sequence[Opinion]) -> list[Any]:
    phases = [[one.at(phase) for phase in PHASES] for one in found]
    return [cars, [[[one.tighter, one.looser, one.size, one.pays] for one in three] for three in phases]]


def _read(out: Path | None, episode: str, moves: Mapping[str, int]) -> _Known:
    """What was kept of these keys, each with how many moves it asks about."""
    if out is None:
        return {}
    try:
        data = json.loads((out / CACHE / FOLDER / f"{episode}.json").read_text(encoding="utf-8"))
    except (OSError, ValueError, RecursionError):
        return {}
    found = data if isinstance(data, dict) else {}
    return {key: entry for key, count in moves.items() if (entry := _unpacked(found.get(key), count)) is not None}


def _unpacked(entry: Any, moves: int) -> _Answers | None:
    """An answer to so many moves; None for anything that no model could have said."""
    if not _listed(entry, 2) or type(entry[0]) is not int or entry[0] < 0:
        return None
    cars, found = entry
    if not _listed(found, moves if cars else 0):
        return None
    every = [_opinion(phases) for phases in found]
    whole = tuple(one for one in every if one is not None)
    return (cars, whole) if len(whole) == len(every) else None


def _opinion(phases: Any) -> Opinion | None:
    sound = _listed(phases, len(PHASES)) and all(_sound(phase) for phase in phases)
    return Opinion(*(PhaseOpinion(*phase) for phase in phases)) if sound else None


def _sound(phase: Any) -> bool:
    """Whether it is two shares of the cars, a size and the tyre that pays."""
    if not _listed(phase, 4) or any(type(one) is not float for one in phase[:3]):
        return False
    tighter, looser, size, pays = phase
    return 0 <= tighter <= 1 and 0 <= looser <= 1 and isfinite(size) and (pays is None or pays in CORNERS)


def _listed(data: Any, count: int) -> bool:
    return isinstance(data, list) and len(data) == count
