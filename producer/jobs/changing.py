"""Takes a file of the library in hand, and writes it back only where nobody else has changed it meanwhile."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path

from producer.basics.errors import ProducerError
from producer.jobs.deliver import deliver
from producer.library.edit import Draft
from producer.render.document import Document


def today() -> date:
    """The day on the author's clock."""
    return datetime.now().astimezone().date()


def draft_of(root: Path, file: str) -> Draft:
    """A file of the library, ready to be changed. Raises ProducerError where it cannot be read."""
    return Draft(file, _bytes(root / file))


def save(root: Path, draft: Draft) -> None:
    """Write a changed file in one step. Raises ProducerError where it is no longer what was read."""
    if not draft.changed:
        return
    if _bytes(root / draft.file) != draft.before:
        raise ProducerError(f"{draft.file} was changed while this ran, so nothing was written; run it again")
    path = (root / draft.file).resolve()  # a link stays a link: what it leads to is written
    deliver([Document(path.name, draft.data)], path.parent)


def _bytes(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError as error:
        raise ProducerError(f"{path} cannot be read: {error.strerror or error}") from error
