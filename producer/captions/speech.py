"""What was said as captions a viewer can follow: the words of a take broken anew, on their own times."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import accumulate

from producer.captions.breaking import split_text
from producer.captions.payload import clean_line
from producer.captions.settling import settle
from producer.captions.spoken import spoken_words
from producer.model.cue import Cue, ReadingProfile
from producer.model.said import SaidLine

PAUSE_MS = 1000
"""Silence that ends a caption: what is said after it is not shown before (common practice, no source)."""
_STOPLESS_PAUSE_MS = 400
"""The same where captions have no stops, as automatic ones: then nothing else tells where a sentence ends."""
_STOP_IN_WORDS = 60  # captions with fewer stops than one in so many words are taken to have none
_SLOWEST_MS = 600  # a spoken word lasts no longer; beyond that the speaker pauses (100 words a minute)


@dataclass(frozen=True, slots=True)
class _Heard:
    """A word and from when until when it is heard, ms."""

    text: str
    start_ms: int
    end_ms: int


def speech_captions(said: Iterable[SaidLine], profile: ReadingProfile) -> tuple[Cue, ...]:
    """Captions of what was said: lines broken by sense, never inside a figure and its unit, never two at once.

    A caption starts with its first word and lasts until its last one is said, longer where reading takes longer and
    there is room (`settle`). Where the speaker is too fast to be read, `speed.too_fast` says so of the caption.
    """
    words = [word for line in said for word in _heard(line)]
    stops = sum(word.text.endswith((".", "?", "!")) for word in words)
    runs = _runs(words, PAUSE_MS if stops * _STOP_IN_WORDS >= len(words) else _STOPLESS_PAUSE_MS)
    return settle([cue for run in runs for cue in _broken(run, profile)], profile)


def _heard(line: SaidLine) -> Iterator[_Heard]:
    """The words of a line with their ends: where the next one starts, and not long after what saying it takes."""
    ends = [*(word.start_ms for word in line.words[1:]), line.end_ms]
    for word, end in zip(line.words, ends, strict=False):
        if text := clean_line(word.text):
            longest = word.start_ms + _SLOWEST_MS * max(1, spoken_words(text))
            yield _Heard(text, word.start_ms, max(word.start_ms, min(end, longest)))


def _runs(words: Sequence[_Heard], pause_ms: int) -> Iterator[list[_Heard]]:
    """Words without a long silence between them, and without a step back in time."""
    run: list[_Heard] = []
    for word in words:
        if run and not run[-1].start_ms <= word.start_ms < run[-1].end_ms + pause_ms:
            yield run
            run = []
        run.append(word)
    if run:
        yield run


def _broken(run: Sequence[_Heard], profile: ReadingProfile) -> Iterator[Cue]:
    """One run as captions, each from its first word to its last. Words are found again by counting letters, as
    breaking joins and parts them but keeps every letter.
    """
    # A figure and its unit are one word with a no-break space inside.
    ends = list(accumulate(len("".join(word.text.split())) for word in run))
    index = letters = 0
    for lines in split_text(" ".join(word.text for word in run), profile):
        first = index
        letters += sum(len(part) for line in lines for part in line.split())
        while index < len(run) - 1 and ends[index] < letters:
            index += 1
        yield Cue(run[first].start_ms, run[index].end_ms, lines)
        index = min(index + 1, len(run) - 1)
