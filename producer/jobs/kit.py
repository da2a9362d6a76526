"""The templates and fonts an output is made with: the library's own first, the shipped ones behind."""

from __future__ import annotations

from pathlib import Path

from producer.basics.shipped import shipped
from producer.render.kit import Kit


def kit_for(root: Path | None) -> Kit:
    """The kit for a library's folder, or with the shipped templates alone."""
    own = [root / "templates"] if root is not None and (root / "templates").is_dir() else []
    return Kit([*own, shipped("templates")])
