"""A cue sheet as a table for a spreadsheet or for an editing program that imports markers."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable

from producer.basics.frame_rate import FrameRate
from producer.captions.marks import frames_of, ordered
from producer.captions.payload import time_stamp
from producer.captions.timecode import to_timecode
from producer.model.cue import Mark

HEADER = ("number", "timecode_in", "timecode_out", "start", "end", "kind", "name", "note")
# Spreadsheets run a cell that begins with one of these (OWASP, CSV injection, from memory).
_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n")


def marks_csv(marks: Iterable[Mark], rate: FrameRate | None) -> str:
    """RFC 4180: a header, CRLF, quotes where needed. Times as hh:mm:ss.ttt; timecodes count from zero and are empty
    without a rate, `timecode_out` is the frame after the last.

    A cell that a spreadsheet would run as a formula gets an apostrophe before it. Raises CaptionError as `ordered`.
    """
    file = io.StringIO(newline="")
    rows = csv.writer(file, lineterminator="\r\n")
    rows.writerow(HEADER)
    for number, mark in enumerate(ordered(marks), 1):
        codes = ("", "")
        if rate is not None:
            first, after = frames_of(mark, rate)
            codes = (to_timecode(first, rate), to_timecode(after, rate))
        times = (time_stamp(mark.start_ms, "."), time_stamp(mark.end_ms, "."))
        rows.writerow((number, *codes, *times, mark.kind, safe_cell(mark.name), safe_cell(mark.note)))
    return file.getvalue()


def safe_cell(cell: str) -> str:
    """A cell that no spreadsheet takes for a formula."""
    return f"'{cell}" if cell.startswith(_FORMULA) else cell
