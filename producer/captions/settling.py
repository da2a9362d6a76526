"""From wanted times and texts to cues a viewer can follow: never two at once, none too short or too long."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import accumulate

from producer.captions.breaking import split_text
from producer.captions.payload import clean_lines
from producer.captions.speed import needed_ms
from producer.model.cue import Cue, ReadingProfile


@dataclass(frozen=True, slots=True)
class _Wanted:
    """One text as asked for: from when, until when at least, and its captions with the time each needs."""

    start_ms: int
    until_ms: int
    pieces: tuple[tuple[str, ...], ...]
    needed: tuple[int, ...]


def settle(cues: Iterable[Cue], profile: ReadingProfile) -> tuple[Cue, ...]:
    """Legal cues, in order of start, from wanted starts and texts.

    A cue's `end_ms` is a wish to be shown until then; at or before its start it means "as long as it takes to
    read". Lines that keep the profile stay as they are, others are broken anew; a text too long for one cue
    becomes several, one straight after the other; a text without words is left out.

    Every cue lasts `shortest_ms` to `longest_ms`; cues never overlap; between two is no gap, or at least `gap_ms`.
    Starts are kept: a cue makes room for the next even where that leaves less time than reading takes (see
    `speed.too_fast`), but never under `shortest_ms`; only then does the next one start later than wanted.
    """
    wanted = [found for cue in sorted(cues, key=lambda cue: cue.start_ms) if (found := _wanted(cue, profile))]
    settled: list[Cue] = []
    for number, want in enumerate(wanted):
        start = max(want.start_ms, settled[-1].end_ms if settled else 0)
        if settled:
            settled[-1] = _without_flicker(settled[-1], start, profile)
        following = wanted[number + 1].start_ms if number + 1 < len(wanted) else None
        durations = _durations(want, start, following, profile)
        ends = accumulate(durations, initial=start)
        for lines, begin, lasts in zip(want.pieces, ends, durations, strict=False):
            settled.append(Cue(begin, begin + lasts, lines))
    return tuple(settled)


def _wanted(cue: Cue, profile: ReadingProfile) -> _Wanted | None:
    lines = clean_lines(cue.lines)
    if not lines:
        return None
    pieces = (lines,) if _keeps(lines, profile) else split_text("\n".join(lines), profile)
    needed = tuple(min(needed_ms("\n".join(piece), profile), profile.longest_ms) for piece in pieces)
    return _Wanted(cue.start_ms, cue.end_ms, pieces, needed)


def _keeps(lines: tuple[str, ...], profile: ReadingProfile) -> bool:
    return (
        len(lines) <= profile.lines
        and all(len(line) <= profile.characters_per_line for line in lines)
        and needed_ms("\n".join(lines), profile) <= profile.longest_ms
    )


def _durations(want: _Wanted, start: int, following: int | None, profile: ReadingProfile) -> list[int]:
    """How long each caption of a text is shown, in all from `start` to `following` at most where that is possible."""
    total = max(sum(want.needed), want.until_ms - start)
    if following is not None:
        total = min(total, following - start)
    if total < sum(want.needed):
        return _shrunk(want.needed, total, profile.shortest_ms)
    return _stretched(want.needed, total, profile.longest_ms)


def _shrunk(needed: Sequence[int], total: int, shortest: int) -> list[int]:
    """The needed times cut down to `total`, each by its share of what it has above the shortest, none below that."""
    above = [time - shortest for time in needed]
    spare = max(0, total - shortest * len(needed))
    whole = sum(above)
    return [shortest + (part * spare // whole if whole else 0) for part in above]


def _stretched(needed: Sequence[int], total: int, longest: int) -> list[int]:
    """The needed times drawn out to `total`, each by its share, none beyond the longest."""
    whole = sum(needed)
    return [min(longest, time * total // whole) for time in needed]


def _without_flicker(cue: Cue, following: int, profile: ReadingProfile) -> Cue:
    """The cue with a gap too short to see before `following` closed, or opened where closing makes it too long."""
    if not 0 < following - cue.end_ms < profile.gap_ms:
        return cue
    end = following if following - cue.start_ms <= profile.longest_ms else following - profile.gap_ms
    return Cue(cue.start_ms, end, cue.lines)
