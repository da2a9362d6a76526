"""The rate of reading that estimates are made with: the channel's own word, else what the last takes say.

What the author wrote in `channel.yaml` holds. Where the rate is left open there, it is the middle one of those of the
last three episodes that have captions of a take or a cut: the words as they are spoken, pauses of more than a second
and a half left out. Before the first take it is the usual 150 words a minute.
"""

from __future__ import annotations

from decimal import Decimal
from statistics import median

from producer.model.channel import Channel, Voice
from producer.model.episode import Episode
from producer.model.library import Library, TakeCaptions
from producer.model.script import Pace

_LAST = 3
_SLOWEST, _FASTEST = 60, 300  # as in `channel.yaml`: a rate outside was measured on something else


class OwnPace:
    """Who measures the takes of a library, once."""

    def __init__(self) -> None:
        self._told: tuple[Library, Pace] | None = None

    def of(self, library: Library) -> Pace:
        """The rate for a library's estimates, and where it comes from."""
        if self._told is None or self._told[0] is not library:
            self._told = library, _pace(library)
        return self._told[1]


def at_pace(channel: Channel, pace: Pace) -> Channel:
    """The channel speaking at that rate."""
    voice = channel.voice.model_copy(update={"words_per_minute": pace.words_per_minute})
    return channel.model_copy(update={"voice": voice})


def measured_from(library: Library) -> tuple[TakeCaptions, ...]:
    """The captions that the rate is measured on; () where `channel.yaml` gives it."""
    if library.channel is None or _given(library.channel):
        return ()
    episodes = sorted((one for one in library.episodes.values() if library.takes.get(one.episode)), key=_age)
    return tuple(_counts(library.takes[one.episode]) for one in episodes[-_LAST:])


def _given(channel: Channel) -> bool:
    return "words_per_minute" in channel.voice.model_fields_set


def _pace(library: Library) -> Pace:
    usual = Voice.model_validate({}).words_per_minute
    if library.channel is None:
        return Pace(usual, "usual")
    if _given(library.channel):
        return Pace(library.channel.voice.words_per_minute, "channel")
    rates = [rate for one in measured_from(library) if _SLOWEST <= (rate := _rate(one)) <= _FASTEST]
    return Pace(Decimal(round(median(rates))), "takes", len(rates)) if rates else Pace(usual, "usual")


def _rate(captions: TakeCaptions) -> int:
    from producer.captions.reading import read_captions
    from producer.take.speech import speech
    from producer.take.timing import words_per_minute

    return words_per_minute(speech(read_captions(captions.data, captions.file)))


def _counts(captions: tuple[TakeCaptions, ...]) -> TakeCaptions:
    """The cut where there is one, else the take itself."""
    return next((one for one in captions if one.of == "cut"), captions[0])


def _age(episode: Episode) -> tuple[int, str]:
    return episode.number or 0, episode.episode
