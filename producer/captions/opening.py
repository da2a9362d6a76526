"""Bytes to text, and which kind of caption file it is."""

from __future__ import annotations

import re
from codecs import BOM_UTF8, BOM_UTF16_BE, BOM_UTF16_LE

from producer.captions.complaints import Complaints
from producer.model.said import CaptionKind

LARGEST = 16 << 20
"""Bytes; a day of rolling captions is a tenth of it."""
_LINE_ENDS = {
    "vtt": re.compile(r"\r\n|\r|\n"),
    "srt": re.compile(r"\r\r\n|\r\n|\r|\n"),  # CR CR LF is what a careless conversion makes of CR LF
}
_SIGNATURE = re.compile(r"WEBVTT(?:[ \t\r\n]|\Z)")


def caption_text(data: bytes, complaints: Complaints) -> str:
    """The text, its byte order mark gone; never fails.

    UTF-8, or UTF-16 where its mark says so. Anything else is read as Windows-1252, the usual other encoding of
    English captions, and told. NUL becomes U+FFFD as in W3C WebVTT.
    """
    if data.startswith((BOM_UTF16_LE, BOM_UTF16_BE)):
        complaints.note("not-utf8", 1, "the file is UTF-16; it is read as that", "save it as UTF-8")
        text = data.decode("utf-16", errors="replace")
    else:
        text = _eight_bits(data.removeprefix(BOM_UTF8), complaints)
    return text.replace("\0", "\ufffd")


def _eight_bits(body: bytes, complaints: Complaints) -> str:
    try:
        return body.decode("utf-8")
    except UnicodeDecodeError as error:
        line = len(re.split(b"\r\n|\r|\n", body[: error.start]))
        message = "the file is not UTF-8 from here on; its letters are guessed"
        complaints.add(
            "not-utf8", line, message, "look whether quotes, dashes and fractions are right; save it as UTF-8"
        )
        return body.decode("cp1252", errors="replace")


def caption_kind(text: str, file: str) -> CaptionKind:
    """`vtt` where the text has WebVTT's first line or the file its ending, else `srt`."""
    return "vtt" if _SIGNATURE.match(text) or file.lower().endswith(".vtt") else "srt"


def has_signature(text: str) -> bool:
    """Whether the text begins as a WebVTT file must."""
    return _SIGNATURE.match(text) is not None


def lines_of(text: str, kind: CaptionKind) -> list[str]:
    """The lines of a caption file without their ends, as the reader of its kind and an editor count them."""
    return _LINE_ENDS[kind].split(text)
