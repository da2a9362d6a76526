"""The channel: name, voice, units, limits of the platform, links, caution."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field, model_validator

from producer.basics.frame_rate import FrameRate, frame_rate
from producer.model.cue import ReadingProfile, named_profile
from producer.model.record import Count, Id, Number, Record, Text, YesNo

CAUTION = "Numbers for a simulation. Not advice for a real car."


def _rate(value: object) -> object:
    if isinstance(value, FrameRate):
        return value
    if isinstance(value, str) and value.strip():
        return frame_rate(value)
    given = "nothing" if not value else "a mapping" if isinstance(value, dict) else "a list"
    raise ValueError(f"frames a second are wanted here, not {given}")


Rate = Annotated[FrameRate, BeforeValidator(_rate)]


class Voice(Record):
    """How the presenter speaks; words a minute while reading."""

    words_per_minute: Number = Field(default=150, ge=60, le=300, validate_default=True)
    greeting: str = ""
    sign_off: str = ""


class CaptionLimits(Record):
    """The reading profile: a named one, or own numbers over it (characters, lines, seconds)."""

    profile: Literal["web", "broadcast"] = "web"
    characters: Count | None = None
    lines: Count | None = None
    characters_per_second: Number | None = None
    words_per_minute: Number | None = None
    shortest: Number | None = None
    longest: Number | None = None
    gap: Number | None = None
    per_figure: Number | None = None

    @model_validator(mode="after")
    def _possible(self) -> CaptionLimits:
        self.reading()
        return self

    def reading(self) -> ReadingProfile:
        """The named profile with the author's own numbers over it, seconds made milliseconds.

        Raises ValueError, with a sentence for the author, for limits that no caption can meet: while a file is
        read that becomes a finding.
        """
        own: dict[str, Any] = {
            "characters_per_line": self.characters,
            "lines": self.lines,
            "characters_per_second": _number(self.characters_per_second),
            "words_per_minute": _number(self.words_per_minute),
            "shortest_ms": _ms(self.shortest),
            "longest_ms": _ms(self.longest),
            "gap_ms": _ms(self.gap),
            "figure_ms": _ms(self.per_figure),
        }
        return replace(named_profile(self.profile), **{name: value for name, value in own.items() if value is not None})


class ChapterLimits(Record):
    """A description's chapters: at least `least` of them, each at least `seconds` long."""

    least: Count = 3
    seconds: Count = 10


class Platform(Record):
    """Limits of the place where episodes are published."""

    title_characters: Count = 100
    description_bytes: Count = 5000
    tags_characters: Count = 500
    chapters: ChapterLimits = Field(default_factory=lambda: ChapterLimits.model_validate({}))


class Replies(Record):
    """Limits of a reply to a viewer, in characters."""

    characters: Count = 1500


class CardOptions(Record):
    """What else stands on a card. `test_laps`: what the test laps say; None where it is left open."""

    test_laps: YesNo | None = None


class Link(Record):
    """A link of the channel, shown in the notes."""

    name: Text
    url: Text


class Channel(Record):
    """`channel.yaml`."""

    format: Literal["1"]
    channel: Id
    name: Text
    presenter_: Text | None = Field(default=None, alias="presenter")
    units: Literal["us", "metric"] = "us"
    spelling: Literal["us", "uk"] = "us"
    voice: Voice = Field(default_factory=lambda: Voice.model_validate({}))
    captions: CaptionLimits = Field(default_factory=lambda: CaptionLimits.model_validate({}))
    platform: Platform = Field(default_factory=lambda: Platform.model_validate({}))
    replies: Replies = Field(default_factory=lambda: Replies.model_validate({}))
    card: CardOptions = Field(default_factory=lambda: CardOptions.model_validate({}))
    site: str = ""
    frame_rate: Rate | None = None
    links: tuple[Link, ...] = ()
    tags: tuple[Text, ...] = ()
    caution: Text = CAUTION

    @property
    def presenter(self) -> str:
        """Who speaks; the channel itself where nobody is named."""
        return self.presenter_ or self.name


def _number(value: Decimal | None) -> float | None:
    return None if value is None else float(value)


def _ms(seconds: Decimal | None) -> int | None:
    return None if seconds is None else int((seconds * 1000).to_integral_value())
