"""A payload read: what people are shown, and the words in it with the times that stand between them.

WebVTT by the cue text steps of W3C WebVTT, section 6.4: whatever stands between `<` and `>` is hidden, references
such as `&lt;` are letters. SubRip by what players agree on: a few tags and braces are hidden, the rest is text.
What is hidden and is no markup (`wedge <49 & >47`) stays among the words: somebody said it.
"""

from __future__ import annotations

import html
import re
from bisect import bisect_right
from dataclasses import dataclass, field
from itertools import accumulate

from producer.basics.place import Place
from producer.captions.blocks import Block, quoted
from producer.captions.complaints import Complaints
from producer.captions.payload import clean_line, clean_lines
from producer.captions.stamps import vtt_stamp
from producer.model.said import CaptionKind

_ANGLES = re.compile(r"<[^>]*(?:>|\Z)")
# Tags of WebVTT, and those of HTML that converters leave behind.
_TAGS = "c|i|b|u|s|v|ruby|rt|lang|font|span|div|p|em|strong"
_NEW_LINE = re.compile(r"<br\s*/?>", re.IGNORECASE)
_MARKUP = re.compile(rf"</?(?:(?:{_TAGS})(?:\.[^\s>]*)?(?:\s[^>]*)?|)>", re.IGNORECASE)
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
    reader = _Reader(block, block.raw, kind, complaints)
    end = 0
    for found in _ANGLES.finditer(reader.raw):
        reader.plain(reader.raw[end : found.start()])
        end = found.end()
        reader.angles(found)
    reader.plain(reader.raw[end:])
    return CueText(clean_lines(("".join(reader.shown),)), reader.lines())


@dataclass
class _Reader:
    """A payload as far as it is read: `pieces` are what was said, with stamps (ms) between, `shown` what people see."""

    block: Block
    raw: str
    kind: CaptionKind
    complaints: Complaints
    pieces: list[str | int] = field(default_factory=list)
    shown: list[str] = field(default_factory=list)
    last: int = 0
    starts: list[int] = field(default_factory=list)

    def plain(self, text: str) -> None:
        """Text outside `<` and `>`."""
        if text:
            read = html.unescape(text) if self.kind == "vtt" else _BRACES.sub("", text)
            self.pieces.append(read)
            self.shown.append(read)

    def angles(self, found: re.Match[str]) -> None:
        """What stands between `<` and `>`: a stamp, markup, or text that players hide."""
        text = found.group()
        stamp = vtt_stamp(text[1:-1])
        if stamp is not None:
            self._stamp(stamp, found)
        elif _NEW_LINE.fullmatch(text):
            self.pieces.append("\n")
            self.shown.append("\n" if self.kind == "srt" else "")
        elif _MARKUP.fullmatch(text) is None and self.kind == "srt":
            self.plain(text)
        elif _MARKUP.fullmatch(text) is None:
            self.pieces.append(html.unescape(text))
            message = f"players hide {quoted(text)}, which they take for markup; here it counts as said"
            self.complaints.add("text-hidden", self._place(found), message, "write &lt; for < and &amp; for &")

    def _stamp(self, stamp: int, found: re.Match[str]) -> None:
        """Keep a word's time, unless it lies outside its cue or goes back."""
        start, end = self.block.start_ms, self.block.end_ms
        if start <= stamp <= max(start, end) and stamp >= self.last:
            self.pieces.append(stamp)
            self.last = stamp
            return
        what = "goes back" if stamp < self.last else "lies outside its cue"
        message = f"the time {found.group()} of a word {what}; it is left out"
        self.complaints.add("word-time-odd", self._place(found), message)

    def _place(self, found: re.Match[str]) -> Place:
        """Where a piece of the payload stands in the file, as far as its first line goes."""
        if not self.starts:
            lengths = (len(text) + 1 for _, text in self.block.payload)
            self.starts = list(accumulate(lengths, initial=0))
        row = bisect_right(self.starts, found.start()) - 1
        column = found.start() - self.starts[row] + 1
        return self.complaints.at(self.block.payload[row][0], column, len(found.group().partition("\n")[0]))

    def lines(self) -> tuple[TextLine, ...]:
        """Cut at line ends; a word that a stamp divides counts by the stamp before its first letter."""
        lines: list[TextLine] = []
        parts: list[str | int] = []
        before: int | None = None
        for piece in self.pieces:
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
        if word := _clean(found.group()):
            words.append((word, stamp))
    return TextLine(_clean(text.strip()), tuple(words), bool(stamps))


def _clean(text: str) -> str:
    """As `clean_line`, which costs much and seldom changes anything."""
    return text if text.isprintable() else clean_line(text)
