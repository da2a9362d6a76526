"""New files for the author: a small valid library, commented, to write over."""

from __future__ import annotations

from pathlib import Path

from producer.basics.shipped import shipped

_FOLDER = "new-library"
_IGNORED = "gitignore"  # without its dot, so that it does not hide files of our own


def starting_files() -> dict[str, bytes]:
    """Path -> content of a new library's files."""
    folder = shipped("templates") / _FOLDER
    found = {path.relative_to(folder).as_posix(): path for path in sorted(folder.rglob("*")) if path.is_file()}
    return {(f".{name}" if name == _IGNORED else name): path.read_bytes() for name, path in found.items()}


def demo_files() -> dict[str, bytes]:
    """Path -> content of the demo library."""
    folder = shipped("episodes")
    found: list[Path] = sorted(path for path in folder.rglob("*") if path.is_file() and not path.name.startswith("."))
    ignored = {f".{_IGNORED}": starting_files()[f".{_IGNORED}"]}
    return ignored | {path.relative_to(folder).as_posix(): path.read_bytes() for path in found}
