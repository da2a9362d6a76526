"""Start a library: commented files to fill in, or a copy of the demo."""

from __future__ import annotations

from pathlib import Path

from producer.basics.errors import ProducerError
from producer.jobs.deliver import deliver
from producer.library.scaffold import demo_files, starting_files
from producer.render.document import Document


def new_library(path: Path, *, demo: bool) -> tuple[Path, ...]:
    """Write the files below `path` and return them. Raises ProducerError where something is there already."""
    if path.exists() and (not path.is_dir() or any(path.iterdir())):
        raise ProducerError(f"{path} is there already and not empty; nothing was written")
    files = demo_files() if demo else starting_files()
    return deliver((Document(name, data) for name, data in files.items()), path)
