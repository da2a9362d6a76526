"""How long the narration takes, from the words as they are spoken and a rate of reading.

The rate is the channel's (150 words a minute unless it says otherwise); the band around it is 130 to 180: reading
aloud averages about 183 (Brysbaert 2019, from memory), radio presenters speak at 160 to 180 (Rodero 2012, from
memory), a careful explanation is slower (common practice, no source). Figures count as spoken.

Two pauses are added, common practice, no source: a quarter of a second between passages, a second and a half
between sections, where the picture changes. A rate of reading holds the breaths inside a passage already.
"""

from __future__ import annotations

from decimal import Decimal

from producer.captions.spoken import spoken_words
from producer.model.channel import Channel
from producer.model.script import Narration, Section, Span, Timeline

SLOW_WORDS_PER_MINUTE = Decimal(130)
FAST_WORDS_PER_MINUTE = Decimal(180)
PASSAGE_PAUSE_MS = 250
SECTION_PAUSE_MS = 1500


def timeline(narration: Narration, channel: Channel) -> Timeline:
    """Every passage in time at the channel's rate, in milliseconds from 0; an estimate until there is a take.

    `fast_ms` and `slow_ms` are the whole at the ends of the band; a channel's rate outside the band widens it.
    """
    rate = channel.voice.words_per_minute
    # Counting is what costs; the three rates share one count.
    words = [[spoken_words(one.text) for one in section.passages] for section in narration.sections]
    spans, starts, total = _laid_out(words, rate)
    fast = _laid_out(words, max(rate, FAST_WORDS_PER_MINUTE))[2]
    slow = _laid_out(words, min(rate, SLOW_WORDS_PER_MINUTE))[2]
    return Timeline(spans, starts, total, fast, slow)


def words_of(section: Section) -> int:
    """Words of a section as spoken."""
    return sum(spoken_words(one.text) for one in section.passages)


def speaking_ms(text: str, words_per_minute: Decimal) -> int:
    """How long a text takes at that rate (> 0), without pauses around it."""
    return _length_ms(spoken_words(text), words_per_minute)


def lasts(timeline: Timeline, index: int) -> str:
    """How long section `index` (from 0) lasts as it is shown: from the second it starts in to that of the next, the
    last one to the end; so what is shown adds up."""
    starts = [one // 1000 for one in timeline.section_starts]
    ends = (*starts[1:], _seconds(timeline.total_ms))
    return minutes((ends[index] - starts[index]) * 1000)


def minutes(milliseconds: int) -> str:
    """A length for people, rounded to whole seconds: `0:45`, `14:32`, `1:02:03`."""
    hours, rest = divmod(_seconds(milliseconds), 3600)
    return f"{hours}:{rest // 60:02}:{rest % 60:02}" if hours else f"{rest // 60}:{rest % 60:02}"


def _seconds(milliseconds: int) -> int:
    return (milliseconds + 500) // 1000


def _length_ms(words: int, words_per_minute: Decimal) -> int:
    return round(words * 60_000 / words_per_minute)


def _laid_out(words: list[list[int]], rate: Decimal) -> tuple[tuple[Span, ...], tuple[int, ...], int]:
    """Spans, section starts and the whole, from the spoken words of each passage of each section."""
    spans: list[Span] = []
    starts: list[int] = []
    now = 0
    for number, section in enumerate(words):
        now += SECTION_PAUSE_MS if number else 0
        starts.append(now)
        for index, count in enumerate(section):
            now += PASSAGE_PAUSE_MS if index else 0
            end = now + _length_ms(count, rate)
            spans.append(Span(number, index, now, end))
            now = end
    return tuple(spans), tuple(starts), now
