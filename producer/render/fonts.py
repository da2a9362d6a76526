"""Fira Sans, the one family of everything rendered: two weights, and the licence that travels with them.

The files come from the package `fontpkg-fira-sans` (Fira Sans 4.203, SIL Open Font License 1.1).
"""

from __future__ import annotations

from pathlib import Path

from producer.basics.errors import ProducerError
from producer.render.document import Document

FAMILY = "Fira Sans"
REGULAR = "FiraSans-Regular.ttf"
STRONG = "FiraSans-SemiBold.ttf"
LICENCE = "OFL.txt"
FOLDER = "fonts"


def root() -> Path:
    """The folder of the installed font package. Raises ProducerError where it is missing."""
    try:
        import fontpkg_fira_sans  # type: ignore[import-untyped]  # a folder of files, no types to check
    except ImportError as error:
        raise ProducerError("the fonts are missing: install fontpkg-fira-sans") from error
    return Path(fontpkg_fira_sans.__file__).resolve().parent


def folder() -> Path:
    """Where the font files are, for Typst."""
    return root() / "files"


def licence() -> str:
    """The text of the licence (SIL OFL 1.1), which goes wherever the fonts go."""
    return (root() / "LICENSE").read_text(encoding="utf-8")


def font_documents() -> tuple[Document, ...]:
    """The two weights and the licence, for `fonts/` beside the episodes of a build (pages refer to `../fonts/`)."""
    fonts = (Document(f"{FOLDER}/{name}", (folder() / name).read_bytes()) for name in (REGULAR, STRONG))
    return (*fonts, Document.of_text(f"{FOLDER}/{LICENCE}", licence()))
