"""Bytes to text, strictly: what cannot be read is a finding, never a guess."""

from __future__ import annotations

from pathlib import Path

from producer.basics.finding import Finding, Severity
from producer.basics.place import Place

LARGEST = 1 << 20  # bytes; an episode is a few kilobytes
_ODD = {"\u0085": "U+0085 (next line)", "\u2028": "U+2028 (line separator)", "\u2029": "U+2029 (paragraph separator)"}


def read_text(path: Path, file: str) -> tuple[str | None, list[Finding]]:
    """The text of a library file as UTF-8 (a byte-order mark is dropped, line ends kept), or None with the finding."""
    try:
        if path.stat().st_size > LARGEST:
            return None, [_finding(file, "too-large", f"the file is larger than {LARGEST // 1024} KiB")]
        data = path.read_bytes()
    except OSError as error:
        reason = error.strerror or type(error).__name__
        return None, [_finding(file, "unreadable-file", f"the file cannot be read: {reason}")]
    return decode(data, file)


def decode(data: bytes, file: str) -> tuple[str | None, list[Finding]]:
    """As `read_text`, for bytes already read."""
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8-sig", "replace")
        line = before.count("\n") + 1
        column = len(before) - (before.rfind("\n") + 1) + 1
        hint = "save the file as UTF-8 in your editor"
        if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
            hint = "this looks like UTF-16; " + hint
        return None, [_finding(file, "not-utf8", "the file is not UTF-8 text from here on", hint, line, column)]
    odd = next(((i, c) for i, c in enumerate(text) if c in _ODD or c == "\0"), None)
    if odd is None:
        return text, []
    index, letter = odd
    line = text.count("\n", 0, index) + 1
    column = index - (text.rfind("\n", 0, index) + 1) + 1
    name = _ODD.get(letter, "U+0000 (NUL)")
    return None, [
        _finding(
            file, "odd-character", f"the character {name} stands here", "delete it and type the line anew", line, column
        )
    ]


def _finding(file: str, code: str, message: str, hint: str = "", line: int = 1, column: int = 1) -> Finding:
    return Finding(code, Severity.ERROR, Place(file, line, column), message, hint)
