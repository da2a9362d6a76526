"""A payload read: what people are shown, and the words in it with the times that stand between them.

WebVTT by the cue text steps of W3C WebVTT, section 6.4: whatever stands between `<` and `>` is hidden, references
such as `&lt;` are letters. SubRip by what players agree on: a few tags and braces are hidden, the rest is text.
What is hidden and is no markup (`wedge <49 & >47`) stays among the words: somebody said it.
"""

from __future__ import annotations

import html
import re
from dataclasses import dataclass, field

from producer.basics.place import Place
from producer.captions.blocks import Block, quoted
from producer.captions.complaints import Complaints
from producer.captions.payload import clean_line, clean_lines
from producer.captions.stamps import vtt_stamp
from producer.model.said import CaptionKind

_ANGLES = re.compile(r"<[^>]*(?:>|\Z)")
_MARKUP = re.compile(r"</?(?:(?:c|i|b|u|s|v|ruby|rt|lang|font)(?:\.[^\s>]*)?(?:\s[^>]*)?|)>", re.IGNORECASE)
_WORD = re.compile(r"\S+")
_BRACES = re.compile(r"\{(?:\\|[A-Za-z]:)[^}\n]*\}")


@dataclass(frozen=True, slots=True)
class TextLine:
    """One line of a payload as words, each with the last stamp before it in the payload, ms, or None.

    `text` has no markup and no space at its ends; a line without words has neither. `stamped`: a stamp stands in it.
    """

    text: str
    words: tuple[tuple[str, int | None], ...]
    stamped: bool


@dataclass(frozen=True, slots=True)
class CueText:
    """`shown` are the lines people see, none blank; `lines` those of the payload, blank ones included."""

    shown: tuple[str, ...]
    lines: tuple[TextLine, ...]


def cue_text(block: Block, kind: CaptionKind, complaints: Complaints) -> CueText:
    """The payload of a cue; hidden words and odd times of words are complained of. Never fails."""
    pieces = _Pieces()
    shown: list[str] = []
    raw, end = block.raw, 0
    for found in _ANGLES.finditer(raw):
        _plain(raw[end : found.start()], kind, pieces, shown)
        end = found.end()
        _angles(found, block, kind, pieces, shown, complaints)
    _plain(raw[end:], kind, pieces, shown)
    return CueText(clean_lines(("".join(shown),)), pieces.lines())


@dataclass
class _Pieces:
    """Text and stamps of a payload in their order."""

    found: list[str | int] = field(default_factory=list)
    last: int | None = None

    def lines(self) -> tuple[TextLine, ...]:
        """Cut at line ends; a word that a stamp divides counts by the stamp before its first letter."""
        lines: list[TextLine] = []
        parts: list[str | int] = []
        before: int | None = None
        for piece in self.found:
            first, *others = piece.split("\n") if isinstance(piece, str) else [piece]
            parts.append(first)
            for other in others:
                lines.append(_line(parts, before))
                before = next((one for one in reversed(parts) if isinstance(one, int)), before)
                parts = [other]
        return (*lines, _line(parts, before))


def _line(parts: list[str | int], before: int | None) -> TextLine:
    """One line from its text and stamps; `before` is the last stamp of the lines above it."""
    text, stamp = "", before
    stamps: list[tuple[int, int]] = []
    for part in parts:
        if isinstance(part, int):
            stamps.append((len(text), part))
        else:
            text += part
    words: list[tuple[str, int | None]] = []
    index = 0
    for found in _WORD.finditer(text):
        while index < len(stamps) and stamps[index][0] <= found.start():
            stamp = stamps[index][1]
            index += 1
        if word := clean_line(found.group()):
            words.append((word, stamp))
    return TextLine(" ".join(clean_lines((text,))), tuple(words), bool(stamps))


def _plain(text: str, kind: CaptionKind, pieces: _Pieces, shown: list[str]) -> None:
    if text:
        read = html.unescape(text) if kind == "vtt" else _BRACES.sub("", text)
        pieces.found.append(read)
        shown.append(read)


def _angles(
    found: re.Match[str],
    block: Block,
    kind: CaptionKind,
    pieces: _Pieces,
    shown: list[str],
    complaints: Complaints,
) -> None:
    """What stands between `<` and `>`: a stamp, markup, or text that players hide."""
    text = found.group()
    stamp = vtt_stamp(text[1:-1])
    if stamp is not None:
        _stamp(stamp, found, block, pieces, complaints)
    elif _MARKUP.fullmatch(text) is None:
        pieces.found.append(html.unescape(text) if kind == "vtt" else text)
        if kind == "srt":
            shown.append(text)
            return
        message = f"players hide {quoted(text)}, which they take for markup; here it counts as said"
        complaints.add("text-hidden", _place(found, block, complaints), message, "write &lt; for < and &amp; for &")


def _stamp(stamp: int, found: re.Match[str], block: Block, pieces: _Pieces, complaints: Complaints) -> None:
    """Keep a word's time, unless it lies outside its cue or goes back."""
    if block.start_ms <= stamp <= max(block.start_ms, block.end_ms) and stamp >= (pieces.last or 0):
        pieces.found.append(stamp)
        pieces.last = stamp
        return
    what = "goes back" if stamp < (pieces.last or 0) else "lies outside its cue"
    message = f"the time {found.group()} of a word {what}; it is left out"
    complaints.add("word-time-odd", _place(found, block, complaints), message)


def _place(found: re.Match[str], block: Block, complaints: Complaints) -> Place:
    """Where a piece of the payload stands in the file, as far as its first line goes."""
    before = block.raw[: found.start()].split("\n")
    return complaints.at(block.payload[len(before) - 1][0], len(before[-1]) + 1, len(found.group().split("\n")[0]))
