"""What a viewer's message says: what is felt, what is asked, and what is named."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from producer.model.request import Asks
from producer.model.words import Complaint, Feel, HowMuch, Phase

Tyres = Literal["new", "worn"]
Pedal = Literal["braking", "throttle"]
Device = Literal["wheel", "pad", "keyboard"]
Part = Literal["feel", "asks", "device", "parameter", "track", "garage"]


@dataclass(frozen=True, slots=True)
class Felt:
    """One thing that is wrong with the car now. None where the message says nothing of it.

    `start` and `end` (exclusive) are the characters of the message that say it.
    """

    feel: Feel
    where: Phase | None
    how_much: HowMuch
    tyres: Tyres | None
    pedal: Pedal | None
    start: int
    end: int

    @property
    def complaint(self) -> Complaint:
        """The same as the author writes it in a request: `very loose exit`."""
        return Complaint(self.feel, self.where, self.how_much)


@dataclass(frozen=True, slots=True)
class Span:
    """Characters `start` to `end` (exclusive) of the message that were read as `part`."""

    part: Part
    start: int
    end: int


@dataclass(frozen=True, slots=True)
class Message:
    """What was understood of one message.

    `parameters_named` in order of mention, each once: `spring.rf`, or `spring` where no corner is said. `track` is
    the name as written, also of a track that the library has not; `track_id` the library's track it means, misspelt
    or not, else None. `garage` is the id of a car class of the library. `tyres` and `pedal` are those of the feels,
    `tyres` also where it is said of the car and no feel was. `spans` in the order of the text.
    """

    feels: tuple[Felt, ...] = ()
    asks: Asks = "other"
    device: Device | None = None
    tyres: Tyres | None = None
    parameters_named: tuple[str, ...] = ()
    track: str | None = None
    track_id: str | None = None
    garage: str | None = None
    spans: tuple[Span, ...] = ()
