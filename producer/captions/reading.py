"""A caption file read: cues in order, words in time, what was said once, and what is wrong with the file."""

from __future__ import annotations

from collections.abc import Sequence

from producer.basics.finding import Finding, Severity
from producer.captions.blocks import Block
from producer.captions.complaints import Complaints
from producer.captions.cue_text import cue_text
from producer.captions.opening import LARGEST, caption_kind, caption_text, has_signature
from producer.captions.srt_reading import srt_blocks
from producer.captions.unrolling import Part, new_lines, timed
from producer.captions.vtt_reading import vtt_blocks
from producer.model.said import CaptionFile, CaptionKind, ReadCue, SaidLine, SaidWord


def read_captions(data: bytes, file: str) -> CaptionFile:
    """A SubRip or WebVTT file of any origin. Never fails: what cannot be read at all is one error among the findings.

    `file` is its name in places; one that ends in `.vtt`, and any with WebVTT's signature, is read as WebVTT.
    """
    complaints = Complaints(file)
    if len(data) > LARGEST:
        message = f"the file is larger than {LARGEST >> 20} MiB, it is no caption file"
        complaints.add("too-large", 1, message, severity=Severity.ERROR)
        return CaptionFile(caption_kind("", file), file, findings=complaints.findings())
    text = caption_text(data, complaints)
    kind = caption_kind(text, file)
    blocks = vtt_blocks(text, complaints) if kind == "vtt" else srt_blocks(text, complaints)
    if not blocks:
        return CaptionFile(kind, file, findings=_nothing(text, kind, complaints))
    _check_order(blocks, complaints)
    ordered = sorted(blocks, key=lambda block: block.start_ms)
    parts = [Part(block, cue_text(block, kind, complaints)) for block in ordered]
    cues: list[ReadCue] = []
    said: list[SaidLine] = []
    for part, lines in zip(parts, new_lines(parts), strict=True):
        words = timed(lines, part.block)
        cue = _cue(part, words, complaints)
        cues.append(cue)
        if words:
            line = " ".join(line.text for line in lines)
            said.append(SaidLine(cue.start_ms, max(cue.start_ms, cue.end_ms), line, words, cue.place))
    return CaptionFile(kind, file, tuple(cues), tuple(said), complaints.findings())


def _cue(part: Part, words: tuple[SaidWord, ...], complaints: Complaints) -> ReadCue:
    block = part.block
    place = complaints.at(block.line, 1, block.width)
    if not part.lines:
        complaints.note("cue-empty", place, "this cue has no words")
    return ReadCue(block.start_ms, block.end_ms, part.text.shown, block.raw, place, words)


def _nothing(text: str, kind: CaptionKind, complaints: Complaints) -> tuple[Finding, ...]:
    """The one finding about a file without a cue; what was complained of before says less."""
    if kind == "vtt" and not has_signature(text):
        message, hint = (
            "this is no WebVTT file: its first line does not begin with WEBVTT",
            "write WEBVTT, then a blank line",
        )
    elif not text.strip():
        message, hint = "the file is empty", ""
    elif kind == "vtt" and "-->" in text:
        message, hint = "no cue can be read: there is none with legal times", "write 00:01:02.500 --> 00:01:04.000"
    else:
        message = "no cue can be read: there is no line of times in it"
        hint = "a caption file has lines like 00:01:02,500 --> 00:01:04,000"
    alone = Complaints(complaints.file)
    alone.add("no-cues", 1, message, hint, severity=Severity.ERROR)
    return alone.findings()


def _check_order(blocks: Sequence[Block], complaints: Complaints) -> None:
    """Cues that last no time, go back in time, or are shown while another one is; in the order of the file."""
    latest: Block | None = None
    longest: Block | None = None
    for block in blocks:
        place = complaints.at(block.line, 1, block.width)
        if block.end_ms <= block.start_ms:
            what = "lasts no time" if block.end_ms == block.start_ms else "ends before it starts"
            complaints.add("cue-lasts-no-time", place, f"this cue {what}", "players never show it")
        if latest is not None and block.start_ms < latest.start_ms:
            message = f"this cue starts before the one on line {latest.line}; the cues are put in order of time"
            related = (complaints.at(latest.line, 1, latest.width),)
            complaints.add("cues-out-of-order", place, message, "is this two files in one?", related=related)
        elif longest is not None and block.start_ms < longest.end_ms:
            message = f"this cue starts while the one on line {longest.line} is still shown"
            complaints.add("cues-overlap", place, message, related=(complaints.at(longest.line, 1, longest.width),))
        if latest is None or block.start_ms >= latest.start_ms:
            latest = block
        if longest is None or block.end_ms > longest.end_ms:
            longest = block
