"""Typst: sources into PDF and PNG, with the family of everything rendered and no other font."""

from __future__ import annotations

import re
from typing import Any

from producer.basics.errors import ProducerError
from producer.render.fonts import folder

_NO_GLYPH = re.compile(r"the text `\"(.+?)\"` could not be displayed", re.DOTALL)
_PANIC = re.compile(r"^panicked with: ", re.DOTALL)


def fonts() -> Any:
    """The fonts for the other two functions; made once for many documents."""
    import typst

    return typst.Fonts(include_system_fonts=False, include_embedded_fonts=False, font_paths=[str(folder())])


def pdf(source: str, fonts: Any) -> bytes:
    """A tagged PDF/UA-1, the same bytes for the same source. Raises ProducerError with one sentence."""
    return b"".join(_pages(source, fonts, format="pdf", pdf_standards="ua-1"))


def png(source: str, fonts: Any) -> bytes:
    """The one page of a source as PNG, one pixel a point. Raises ProducerError, also for a second page."""
    pages = _pages(source, fonts, format="png", ppi=72)
    if len(pages) != 1:
        raise ProducerError(f"a picture has one page, this one came to {len(pages)}: something on it is too long")
    return pages[0]


def _pages(source: str, fonts: Any, **options: Any) -> list[bytes]:
    import typst

    try:
        # The fonts' folder as root: a template reads nothing else of this machine.
        made = typst.compile(source.encode("utf-8"), font_paths=fonts, root=str(folder()), **options)
    except typst.TypstError as error:
        raise ProducerError(_sentence(error.message)) from error
    if isinstance(made, list):
        return made
    return [made] if made else []


def _sentence(message: str) -> str:
    missing = _NO_GLYPH.search(message)
    if missing:
        return f"the card's font has no '{missing.group(1)[:40]}': write what holds it in other letters"
    if _PANIC.match(message):
        return _PANIC.sub("", message)
    return f"the picture cannot be set: {message}"
