"""The author's Markdown into HTML or plain text: CommonMark and tables, no raw HTML, no odd links, no images."""

from __future__ import annotations

import re
from collections.abc import Sequence
from html import escape
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.token import Token

# With a scheme only these; without one a relative address or a place on the page, never another host ("//...").
_SAFE = re.compile(r"(?:https?://|mailto:)|(?!//|\\)[^:/?#]*(?:[/?#]|$)", re.IGNORECASE)
_HIDDEN = re.compile(r"[\x00-\x20\x7f-\x9f\u200b-\u200f\u2028-\u202e]")


def to_html(text: str) -> str:
    """Markdown as HTML blocks. Raw HTML stays text; links only to http, https, mailto, relative and #; images are
    replaced by their description."""
    return str(_parser().render(text))


def to_inline_html(text: str) -> str:
    """As `to_html`, for text that stands inside a line: no paragraph around it."""
    return str(_parser().renderInline(text))


def to_plain(text: str) -> str:
    """Markdown as plain text: paragraphs apart by an empty line, list items with a dash or their number, no marks.

    A link keeps its address in parentheses where the words are another text.
    """
    parser = _parser()
    return _Plain().read(parser.parse(text))


def safe_link(address: str) -> bool:
    """Whether a link of the author may be followed from a page of ours."""
    return not _HIDDEN.search(address) and _SAFE.match(address) is not None


def _parser() -> MarkdownIt:
    from markdown_it import MarkdownIt

    parser = MarkdownIt("commonmark", {"html": False}).enable("table")
    parser.validateLink = safe_link  # type: ignore[method-assign, assignment]  # the documented way to narrow links
    parser.add_render_rule("image", _description)
    return parser


def _description(_renderer: object, tokens: Sequence[Token], index: int, *_: object) -> str:
    return escape(tokens[index].content)


class _Plain:
    """Walks the block tokens of one text and writes its lines."""

    def __init__(self) -> None:
        self.blocks: list[str] = []
        self.markers: list[str] = []
        self.counts: list[int | None] = []
        self.cells: list[str] = []
        self.in_cell = False
        self.tight_to_last = False

    def read(self, tokens: list[Token]) -> str:
        for token in tokens:
            self.take(token)
        return "\n".join(self.blocks).strip("\n")

    def take(self, token: Token) -> None:
        kind = token.type
        if kind in {"bullet_list_open", "ordered_list_open"}:
            self.counts.append(int(token.attrs.get("start", 1)) if kind.startswith("ordered") else None)
        elif kind in {"bullet_list_close", "ordered_list_close"}:
            self.counts.pop()
            self.tight_to_last = bool(self.counts)
        elif kind == "list_item_open":
            self.markers.append(self.marker())
        elif kind in {"th_open", "td_open"}:
            self.in_cell = True
        elif kind == "table_close":
            self.tight_to_last = False
        elif kind == "tr_close":
            self.put("; ".join(self.cells), together=True)
            self.cells, self.in_cell = [], False
        elif kind == "inline":
            self.inline(token)
        elif kind in {"fence", "code_block"}:
            self.put(token.content.rstrip("\n"))

    def inline(self, token: Token) -> None:
        text = _inline_text(token.children or [])
        if self.in_cell:
            self.cells.append(text)
        else:
            self.put(text)

    def marker(self) -> str:
        count = self.counts[-1]
        if count is None:
            return "- "
        self.counts[-1] = count + 1
        return f"{count}. "

    def put(self, text: str, *, together: bool = False) -> None:
        marker = self.markers.pop() if self.markers else ""
        depth = max(0, len(self.counts) - 1)
        close = together or bool(self.counts)
        if self.blocks and not (close and self.tight_to_last):
            self.blocks.append("")
        self.tight_to_last = close
        first, *rest = text.split("\n")
        self.blocks.append(f"{'  ' * depth}{marker}{first}")
        hanging = "  " * depth + " " * len(marker)
        self.blocks += [hanging + line for line in rest]


def _inline_text(tokens: list[Token]) -> str:
    parts: list[str] = []
    opened: list[tuple[str, int]] = []
    for token in tokens:
        if token.type in {"text", "code_inline", "image"}:
            parts.append(token.content)
        elif token.type in {"softbreak", "hardbreak"}:
            parts.append(" " if token.type == "softbreak" else "\n")
        elif token.type == "link_open":
            opened.append((str(token.attrs.get("href", "")), len(parts)))
        elif token.type == "link_close":
            address, start = opened.pop()
            if address and address != "".join(parts[start:]):
                parts.append(f" ({address})")
    return "".join(parts)
