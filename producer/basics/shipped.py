"""Where the files that travel with the program are: beside the package in a wheel, at the root of a checkout."""

from __future__ import annotations

from pathlib import Path

from producer.basics.errors import ProducerError


def shipped(name: str) -> Path:
    """The folder `templates` or `episodes` (the demo library). Raises ProducerError where the installation lacks it."""
    package = Path(__file__).resolve().parent.parent
    for folder in (package / "shipped" / name, package.parent / name):
        if folder.is_dir():
            return folder
    raise ProducerError(f"this installation lacks its folder '{name}': install oval-producer again")
