"""The captions of an episode's takes: those it names, and those that are called `take` or `cut`."""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from pathlib import Path

from producer.model.episode import Episode
from producer.model.library import TakeCaptions

# take.srt, take-2.srt, take.en.vtt; cut.srt ...
_NAME = re.compile(r"(take|cut)(?:[-_. ].*)?\.(srt|vtt)", re.IGNORECASE)
_LARGEST = 16 * 1024 * 1024  # bytes: nothing larger holds captions


def take_captions(root: Path, episode: Episode) -> tuple[TakeCaptions, ...]:
    """The files in the order they count: of the raw ones the take, then pick-ups by name, then those of the cut.

    Where a file is there as SubRip and as WebVTT the second counts: only it holds the times of words. A file that is
    not there, or cannot be read, is left out; the loader complains of one that is named.
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
    stems = {Path(name).stem.lower() for name, _ in beside if name.lower().endswith(".vtt")}
    # The take itself before its pick-ups: the shortest name first.
    for name, of in sorted(beside, key=lambda one: (len(one[0]), one[0])):
        twice = name.lower().endswith(".srt") and Path(name).stem.lower() in stems
        if name not in named and not twice:
            yield name, of


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
