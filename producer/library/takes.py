"""The captions of an episode's takes: those it names, and those that are called `take` or `cut`."""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from pathlib import Path

from producer.model.episode import Episode
from producer.model.library import TakeCaptions

# take.srt, take-2.srt, take2.srt, take.en.vtt; cut.srt ...
_NAME = re.compile(r"(take|cut)(?:\d+|[-_. ].*)?\.(srt|vtt)", re.IGNORECASE)
# A language as platforms put it before the ending (BCP 47): `take.en`, `take.en-GB`.
_LANGUAGE = re.compile(r"\.([a-z]{2,3})(?:-[a-z0-9]{2,8})*", re.IGNORECASE)
_LARGEST = 16 * 1024 * 1024  # bytes: nothing larger holds captions


def take_captions(root: Path, episode: Episode) -> tuple[TakeCaptions, ...]:
    """The files in the order they count: of the raw ones the take, then pick-ups by name, then those of the cut.

    Where a take is there as SubRip and as WebVTT the second counts: only it holds the times of words; where it is there
    in several languages, the one without a language in its name or in English. A file that is not there, or cannot be
    read, is left out; the loader complains of one that is named.
    """
    folder = episode.place().file.rsplit("/", 1)[0]
    found: dict[str, TakeCaptions] = {}
    for name, of in _files(root / folder, episode):
        data = _content(root / folder / name)
        if data is not None:
            found[name] = TakeCaptions("cut" if of == "cut" else "raw", f"{folder}/{name}", data)
    return tuple(sorted(found.values(), key=lambda one: one.of == "cut"))


def _files(folder: Path, episode: Episode) -> Iterator[tuple[str, str]]:
    named = {one.file: one.of for one in episode.takes}
    yield from named.items()
    beside = [(name, match[1].lower()) for name in _names(folder) if (match := _NAME.fullmatch(name))]
    # One that is named is not looked for in another format or language.
    stems = {_take(name)[0] for name in named}
    best: dict[str, tuple[str, str]] = {}
    for one in sorted(beside, key=_rank):
        best.setdefault(_take(one[0])[0], one)
    # The take itself before its pick-ups: the shortest name first.
    for stem, (name, of) in sorted(best.items(), key=lambda one: (len(one[0]), one[0])):
        if stem not in stems:
            yield name, of


def _rank(one: tuple[str, str]) -> tuple[bool, bool, str]:
    """The best file of a take first."""
    name = one[0].lower()
    return _take(name)[1] not in {"", "en"}, not name.endswith(".vtt"), name


def _take(name: str) -> tuple[str, str]:
    """`take-2` and `en` of `take-2.en-GB.vtt`: what the take is called, and its language ("" for none)."""
    stem = Path(name).stem.lower()
    found = _LANGUAGE.search(stem)
    if found is None or found.end() != len(stem):
        return stem, ""
    return stem[: found.start()], found[1]


def _names(folder: Path) -> list[str]:
    try:
        return sorted(os.listdir(folder))  # noqa: PTH208 - names only
    except OSError:
        return []


def _content(path: Path) -> bytes | None:
    try:
        return path.read_bytes() if path.stat().st_size <= _LARGEST else None
    except (OSError, ValueError):
        return None
