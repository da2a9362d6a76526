"""The only writer of disk: whole files or nothing, each replaced in one step."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterable
from pathlib import Path

from producer.basics.errors import ProducerError
from producer.render.document import Document


def deliver(documents: Iterable[Document], folder: Path) -> tuple[Path, ...]:
    """Write documents below `folder` (made if it is missing); the paths written, in order.

    All are written beside their places first and moved only when every one is on disk, so that a full disk
    leaves the files of last time. Raises ProducerError where the disk refuses, ValueError for a path that leaves
    `folder` (a bug of ours).
    """
    waiting: list[tuple[Path, Path]] = []
    try:
        for document in documents:
            target = _target(folder, document.path)
            waiting.append((_beside(target, document.data), target))
        for temporary, target in waiting:
            os.replace(temporary, target)  # noqa: PTH105 - same call, and the one that replaces on Windows too
    except OSError as error:
        raise ProducerError(f"cannot write {error.filename or folder}: {error.strerror or error}") from error
    finally:
        for temporary, _ in waiting:
            temporary.unlink(missing_ok=True)
    return tuple(target for _, target in waiting)


def take_away(paths: Iterable[str], folder: Path) -> None:
    """Remove files of an earlier delivery that are no longer made; missing ones are fine."""
    for path in paths:
        try:
            _target(folder, path).unlink(missing_ok=True)
        except OSError as error:
            raise ProducerError(f"cannot remove {error.filename or path}: {error.strerror or error}") from error


def _target(folder: Path, path: str) -> Path:
    parts = path.split("/")
    if any(part in ("", ".", "..") or "\\" in part or ":" in part for part in parts):
        raise ValueError(f"a document's path stays inside its folder: {path!r}")
    return folder.joinpath(*parts)


def _beside(target: Path, data: bytes) -> Path:
    target.parent.mkdir(parents=True, exist_ok=True)
    number, name = tempfile.mkstemp(prefix=f".{target.name}.", suffix=".part", dir=target.parent)
    temporary = Path(name)
    try:
        with os.fdopen(number, "wb") as file:
            file.write(data)
        # mkstemp makes files only their owner can read; what is published is as readable as any new file.
        temporary.chmod(0o644)
    except BaseException:
        temporary.unlink(missing_ok=True)
        raise
    return temporary
