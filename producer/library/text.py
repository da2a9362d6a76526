"""Bytes to text, strictly: what cannot be read is a finding, never a guess."""

from __future__ import annotations

import re
from codecs import BOM_UTF8
from pathlib import Path

from producer.basics.finding import Finding, Severity
from producer.basics.place import Place

LARGEST = 1 << 20  # bytes; an episode is a few kilobytes
# What YAML takes for a line end and editors do not, and control characters, which no YAML may hold.
_ODD = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ufffe\uffff]")


def read_text(path: Path, file: str) -> tuple[str | None, list[Finding]]:
    """The text of a library file as UTF-8 (a byte-order mark is dropped, line ends kept), or None with the finding."""
    try:
        if path.stat().st_size > LARGEST:
            return None, [_finding(file, "too-large", f"the file is larger than {LARGEST // 1024} KiB", "split it up")]
        data = path.read_bytes()
    except OSError as error:
        reason = error.strerror or type(error).__name__
        message = f"the file cannot be read: {reason}"
        return None, [_finding(file, "unreadable-file", message, "look at who may read it")]
    return decode(data, file)


def decode(data: bytes, file: str) -> tuple[str | None, list[Finding]]:
    """As `read_text`, for bytes already read."""
    body = data.removeprefix(BOM_UTF8)
    try:
        text = body.decode("utf-8")
    except UnicodeDecodeError as error:
        line, column = _position(body[: error.start].decode("utf-8"))
        hint = "save the file as UTF-8 in your editor"
        if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
            hint = "this looks like UTF-16; " + hint
        return None, [_finding(file, "not-utf8", "the file is not UTF-8 text from here on", hint, line, column)]
    odd = _ODD.search(text)
    if odd is None:
        return text, []
    line, column = _position(text[: odd.start()])
    message = f"the character {_name(odd.group())} stands here"
    return None, [_finding(file, "odd-character", message, "delete it and type the line anew", line, column)]


def _position(before: str) -> tuple[int, int]:
    """Line and column, from 1, of what comes after `before`; lines end with LF, CR or both."""
    rows = before.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return len(rows), len(rows[-1]) + 1


def _name(letter: str) -> str:
    from unicodedata import name

    known = {0: "NUL", 0x85: "next line"}.get(ord(letter)) or name(letter, "a control character").lower()
    return f"U+{ord(letter):04X} ({known})"


def _finding(file: str, code: str, message: str, hint: str = "", line: int = 1, column: int = 1) -> Finding:
    return Finding(code, Severity.ERROR, Place(file, line, column), message, hint)
