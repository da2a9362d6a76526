"""Lines of times: those of WebVTT by the letter, those of SubRip as real files write them."""

from __future__ import annotations

import re
from dataclasses import dataclass

_STRICT = r"(?:([0-9]+):)?([0-5][0-9]):([0-5][0-9])\.([0-9]{3})(?![0-9])"
_BLANK = r"[ \t\f]*"
_VTT = re.compile(rf"{_BLANK}{_STRICT}{_BLANK}-->{_BLANK}{_STRICT}(.*)", re.DOTALL)
_STAMP = re.compile(_STRICT)
_LOOSE = r"(-?)(?:([0-9]{1,12}):)?([0-9]{1,4}):([0-9]{1,2})(?:([.,:])([0-9]+))?(?![0-9])"
_SRT = re.compile(rf"\s*{_LOOSE}\s*--+>\s*{_LOOSE}(.*)", re.DOTALL)
_ANY = re.compile(_LOOSE)
_SETTINGS = re.compile(r"\s*(?:[A-Za-z]+[0-9]?:\S++\s*+)*+")
_LONGEST = 9  # digits of hours or of a fraction; beyond that it is no time of a video


@dataclass(frozen=True, slots=True)
class Times:
    """A line of times, ms. `odd` says what was doubtful in reading it, `short` that milliseconds had too few digits;
    `rest` is what stands after the times and is no setting of the cue.
    """

    start_ms: int
    end_ms: int
    odd: str = ""
    short: str = ""
    rest: str = ""


def vtt_times(line: str) -> Times | None:
    """A line of times by the parsing steps of W3C WebVTT ("collect WebVTT cue timings"); None where they fail.

    Hours may be left out, have one digit or many; minutes, seconds and the three digits of milliseconds may not.
    """
    found = _VTT.match(line)
    if found is None:
        return None
    parts = found.groups()
    start, end = _strict_ms(parts[:4]), _strict_ms(parts[4:8])
    return None if start is None or end is None else Times(start, end, rest=_no_setting(parts[8]))


def vtt_stamp(text: str) -> int | None:
    """The time inside `<...>` in a payload, ms; None for anything else."""
    found = _STAMP.fullmatch(text)
    return None if found is None else _strict_ms(found.groups())


def vtt_trouble(line: str) -> str:
    """Why `vtt_times` does not read a line, for people."""
    stamps = [found.groups() for found in _ANY.finditer(line)]
    marks = {mark for _, _, _, _, mark, _ in stamps}
    if len(stamps) < 2:
        return "a line of times is written hh:mm:ss.ttt --> hh:mm:ss.ttt"
    if "," in marks:
        return "a full stop belongs before the milliseconds, not a comma"
    if any(int(minutes) > 59 or int(seconds) > 59 for _, _, minutes, seconds, _, _ in stamps):
        return "minutes and seconds end at 59"
    if any(mark != "." or len(digits or "") != 3 for _, _, _, _, mark, digits in stamps):
        return "milliseconds have three digits after a full stop"
    if any(len(minutes) != 2 or len(seconds) != 2 for _, _, minutes, seconds, _, _ in stamps):
        return "minutes and seconds have two digits each"
    return "a line of times is written hh:mm:ss.ttt --> hh:mm:ss.ttt"


def srt_times(line: str) -> Times | None:
    """A line of times as SubRip files have them (no standard; what readers agree on). None for any other line.

    Comma, full stop or colon before the milliseconds, hours left out or of any length, no milliseconds at all.
    One and two digits of milliseconds are that many milliseconds, more than three are cut: `odd` or `short` say so.
    A time before zero is zero.
    """
    found = _SRT.match(line)
    if found is None:
        return None
    parts = found.groups()
    start, end = _loose(parts[:6]), _loose(parts[6:12])
    if start is None or end is None:
        return None
    return Times(start[0], end[0], start[1] or end[1], start[2] or end[2], _no_setting(parts[12]))


def looks_like_times(line: str) -> bool:
    """Whether a line with an arrow was meant as times: it begins with one, or has no letter or digit at all."""
    return "-->" in line and (_ANY.match(line.lstrip()) is not None or not any(map(str.isalnum, line)))


def _strict_ms(parts: tuple[str | None, ...]) -> int | None:
    hours, minutes, seconds, thousandths = (part or "0" for part in parts)
    if len(hours) > _LONGEST:
        return None
    return ((int(hours) * 60 + int(minutes)) * 60 + int(seconds)) * 1000 + int(thousandths)


def _loose(parts: tuple[str | None, ...]) -> tuple[int, str, str] | None:
    """Milliseconds, what is odd, and what is short; None for what is no time."""
    sign, hours, minutes, seconds, mark, digits = parts
    written = digits or ""
    if max(len(hours or ""), len(written)) > _LONGEST or (mark == ":" and len(written) != 3):
        return None
    whole = (int(hours or 0) * 60 + int(minutes or 0)) * 60 + int(seconds or 0)
    ms = whole * 1000 + int(written[:3] or 0)
    short = f"'{mark}{written}' is taken as {int(written)} ms" if written and len(written) < 3 else ""
    if sign and ms:
        return 0, "a time before zero is taken as zero", short
    if int(seconds or 0) > 59 or (hours is not None and int(minutes or 0) > 59):
        return ms, "minutes or seconds above 59 are carried over", short
    return ms, "digits after the third are left out" if len(written) > 3 else "", short


def _no_setting(rest: str) -> str:
    """What stands after the times and is no list of settings such as `align:start` or `X1:40`."""
    return "" if _SETTINGS.fullmatch(rest) else rest.strip()
