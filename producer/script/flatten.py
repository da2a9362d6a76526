"""The author's Markdown made into plain paragraphs that can be read aloud.

Only what an author writes in a paragraph or a short list is undone: emphasis, code ticks, links (the words stay, the
address goes), headings, quotes, bullets, line breaks. Nothing is added, no figure is touched.
"""

from __future__ import annotations

import re

_FENCE = re.compile(r"^\s*(```|~~~).*$", re.MULTILINE)
_LINK = re.compile(r"!?\[([^\]\[]*)\]\((?:[^()\s]|\([^()]*\))*(?:\s+\"[^\"]*\")?\)")
_ADDRESS = re.compile(r"<(?:https?://|mailto:)[^>\s]+>|https?://\S+")
_STRONG = re.compile(r"(\*\*|__)(?=\S)(.+?)(?<=\S)\1", re.DOTALL)
_EMPHASIS = re.compile(r"(?<![\w*_\\])([*_])(?=[^\s*_])(.+?)(?<=[^\s*_\\])\1(?![\w*_])", re.DOTALL)
_CODE = re.compile(r"`+([^`]+)`+")
_LINE_START = re.compile(r"^\s{0,3}(?:#{1,6}\s+|>\s?|[-*+]\s+|\d{1,3}[.)]\s+)+")
_ITEM = re.compile(r"^\s*(?:[-*+]|\d{1,3}[.)])\s+")
_RULE = re.compile(r"^\s*(?:[-*_]\s*){3,}$|^\s*=+\s*$")
_ESCAPE = re.compile(r"\\([!-/:-@\[-`{-~])")
_BREAK = re.compile(r"\\?\n")


def paragraphs(prose: str) -> tuple[str, ...]:
    """The paragraphs of a piece of Markdown without its marks, each on one line; () for nothing but white space."""
    blocks = re.split(r"\n\s*\n", _FENCE.sub("", prose.replace("\r\n", "\n")))
    found = (_paragraph(part) for block in blocks for part in _parts(block))
    return tuple(one for one in found if one)


def flat(prose: str) -> str:
    """The same as one paragraph."""
    return " ".join(paragraphs(prose))


def _parts(block: str) -> list[str]:
    """A block as it is read: a heading and every item of a list is a paragraph of its own."""
    parts: list[list[str]] = [[]]
    for line in block.split("\n"):
        if _RULE.match(line):
            continue
        heading = line.lstrip().startswith("#")
        if heading or _ITEM.match(line):
            parts.append([])
        parts[-1].append(_LINE_START.sub("", line))
        if heading:
            parts.append([])
    return ["\n".join(part) for part in parts]


def _paragraph(text: str) -> str:
    text = _ADDRESS.sub("", _LINK.sub(r"\1", text))
    text = _CODE.sub(r"\1", text)
    text = _EMPHASIS.sub(r"\2", _STRONG.sub(r"\2", text))
    text = _ESCAPE.sub(r"\1", _BREAK.sub("\n", text))
    # Only blanks and line ends: a no-break space holds a figure to its unit.
    return re.sub(r"[ \t\n]+", " ", text).strip(" \t\n")
