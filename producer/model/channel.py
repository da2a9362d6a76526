"""The channel: name, voice, units, limits of the platform, links, caution."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from producer.model.record import Count, Id, Number, Record, Text

CAUTION = "Numbers for a simulation. Not advice for a real car."


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


class Link(Record):
    """A link of the channel, shown in the notes."""

    name: Text
    url: Text


class Channel(Record):
    """`channel.yaml`."""

    format: Literal["1"]
    channel: Id
    name: Text
    presenter: Text
    units: Literal["us", "metric"] = "us"
    spelling: Literal["us", "uk"] = "us"
    voice: Voice = Field(default_factory=lambda: Voice.model_validate({}))
    captions: CaptionLimits = Field(default_factory=lambda: CaptionLimits.model_validate({}))
    platform: Platform = Field(default_factory=lambda: Platform.model_validate({}))
    replies: Replies = Field(default_factory=lambda: Replies.model_validate({}))
    site: str = ""
    frame_rate: str = ""
    links: tuple[Link, ...] = ()
    tags: tuple[Text, ...] = ()
    caution: Text = CAUTION
