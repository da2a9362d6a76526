"""One episode as the author writes it: conditions, setups, reasons, advice, talking points."""

from __future__ import annotations

import re
from collections.abc import Mapping
from decimal import Decimal
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Discriminator, Field, Tag, model_validator

from producer.basics.units import quantity
from producer.model.channel import CardOptions
from producer.model.record import (
    Amount,
    Count,
    Date,
    Id,
    Number,
    Numbers,
    Record,
    Text,
    Texts,
    YesNo,
    as_list,
    as_number,
)
from producer.model.request import as_complaint
from producer.model.words import Complaint, Corner, Direction, Effect

_WITH_UNIT = re.compile(r"\s*[-+]?(?:\d[\d.]*|\.\d+)\s*(?![eE][-+]?\d)[A-Za-z%°:\"]")


def _figure(value: object) -> object:
    """A bare number, or one with a unit: the number counts, a check holds its unit against the garage's."""
    if isinstance(value, str) and _WITH_UNIT.match(value):
        return quantity(value).value
    return as_number(value)


def _shape(value: object) -> str:
    return "parts" if isinstance(value, Mapping) else "whole"


Status = Literal["idea", "testing", "scripted", "recorded", "published"]
STATUSES: tuple[Status, ...] = ("idea", "testing", "scripted", "recorded", "published")
Figure = Annotated[Decimal, BeforeValidator(_figure), Field(allow_inf_nan=False)]
# One figure, or one for each corner or end; told apart by shape, so that an error stands at its own corner.
Value = Annotated[Annotated[dict[str, Figure], Tag("parts")] | Annotated[Figure, Tag("whole")], Discriminator(_shape)]
Conditions = dict[str, Any]  # option -> choice, or -> {who: choice}


def _compared(value: object) -> object:
    """A figure, `default`, or a setup's id."""
    try:
        return _figure(value)
    except ValueError:
        if isinstance(value, str) and value.strip():
            return value.strip()
        raise


class Advice(Record):
    """What to change when the car feels wrong. `to`: successive stops, one way, each on the grid.

    Little and plain complaints take the first stop, very the last. `corner` is the corner that moves when
    the reason is about a split.
    """

    feels: Annotated[Complaint, BeforeValidator(as_complaint)]
    direction: Direction | None = None
    to: Annotated[tuple[Figure, ...], BeforeValidator(as_list)] = ()
    tyres: Literal["new", "worn"] | None = None
    device: Literal["wheel", "pad", "keyboard"] | None = None
    corner: Corner | None = None
    say: str = ""


class Effects(Record):
    """What the movement does, part of the corner by part; left out: not claimed."""

    entry: Effect | None = None
    middle: Effect | None = None
    exit: Effect | None = None

    def stated(self) -> dict[str, Effect]:
        """The phases that the author speaks of, in order."""
        found = {"entry": self.entry, "middle": self.middle, "exit": self.exit}
        return {phase: effect for phase, effect in found.items() if effect is not None}


class Reason(Record):
    """Why a setting has its value. `for`: an address, a split, a parameter, a page, or a list of them."""

    for_: Texts = Field(alias="for")
    compared_with: Annotated[Decimal | str | None, BeforeValidator(_compared)] = None
    direction: Direction | None = None
    is_: Figure | None = Field(default=None, alias="is")
    effect: Effects = Field(default_factory=lambda: Effects.model_validate({}))
    because: str = ""
    if_: tuple[Advice, ...] = Field(default=(), alias="if")


class Setup(Record):
    """One setup: its own `values`, or `based_on` another with `changes`."""

    setup: Id
    name: Text
    purpose: Literal["short run", "long run", "qualifying"] | None = None
    based_on: Id | None = None
    values: dict[str, Value] = Field(default_factory=dict)
    changes: dict[str, Value] = Field(default_factory=dict)
    reasons: tuple[Reason, ...] = ()
    tested: YesNo = True

    @model_validator(mode="after")
    def _one_shape(self) -> Setup:
        if self.changes and not self.based_on:
            raise ValueError("changes need the setup they are based_on")
        if not self.values and not self.based_on:
            raise ValueError("a setup has values, or is based_on another setup with changes")
        return self


class StintEntry(Record):
    """Test laps of one setup and what was read off the car afterwards.

    Temperatures per corner: outside, middle, inside, in the channel's unit; wear: percent used at the end.
    `lap_of_fuel`: seconds that a lap gets quicker by one lap's fuel being gone, where the author knows it.
    """

    setup: Id
    file: Text
    driving: str = ""
    top_speed: Amount | None = None
    fuel: Amount | None = None
    temperatures: dict[Corner, Numbers] = Field(default_factory=dict)
    wear: dict[Corner, Number] = Field(default_factory=dict)
    conditions: Conditions = Field(default_factory=dict)
    lap_of_fuel: Number | None = None


class TalkingPoints(Record):
    """What is said around the settings."""

    opening: str = ""
    closing: str = ""


class TakeEntry(Record):
    """A caption file of the take: `raw` as recorded, `cut` as published."""

    file: Text
    of: Literal["raw", "cut"]


class Video(Record):
    """The published video; `length` as 14:32."""

    url: Text
    length: str = Field(default="", pattern=r"^(\d{1,2}:)?\d{1,2}:\d{2}$|^$")

    @property
    def length_ms(self) -> int:
        """The length in milliseconds; 0 where it is not written."""
        seconds = 0
        for part in self.length.split(":") if self.length else ():
            seconds = seconds * 60 + int(part)
        return seconds * 1000


class Waiver(Record):
    """A finding the author lives with, and why."""

    code: Text
    for_: Text | None = Field(default=None, alias="for")
    why: Text


class Revision(Record):
    """What was published when; `digest` is SHA-256 (hexadecimal) of the cards' data, keys sorted."""

    revision: Count
    date: Date
    digest: Annotated[str, Field(pattern=r"^[0-9a-f]{64}$")]
    garage_version: Text


class Episode(Record):
    """`<episode>/episode.yaml`."""

    format: Literal["1"]
    episode: Id
    number: Count | None = None
    title: Text
    status: Status = "idea"
    track: Text
    garage: Text
    thanks: Texts = ()
    conditions: Conditions = Field(default_factory=dict)
    tested_with: Text | None = None
    planned: Date | None = None
    approach: str = ""
    setups: Annotated[tuple[Setup, ...], Field(min_length=1, max_length=100)]
    stints: tuple[StintEntry, ...] = ()
    talking_points: TalkingPoints = Field(default_factory=lambda: TalkingPoints.model_validate({}))
    card: CardOptions = Field(default_factory=lambda: CardOptions.model_validate({}))
    takes: tuple[TakeEntry, ...] = ()
    video: Video | None = None
    allow: tuple[Waiver, ...] = ()
    published: tuple[Revision, ...] = ()

    def setup(self, name: str) -> Setup | None:
        """The setup of that id."""
        return next((one for one in self.setups if one.setup == name), None)

    def at_least(self, status: Status) -> bool:
        """Whether the episode has come as far as `status`."""
        return STATUSES.index(self.status) >= STATUSES.index(status)


def flattened(values: Mapping[str, Any]) -> dict[str, Decimal]:
    """`{spring: {rf: 700}, front_weight: 50}` -> `{spring.rf: 700, front_weight: 50}`."""
    found: dict[str, Decimal] = {}
    for name, value in values.items():
        if isinstance(value, Mapping):
            found.update({f"{name}.{part}": number for part, number in value.items()})
        else:
            found[name] = value
    return found
