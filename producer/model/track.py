"""A track: its length and its corners."""

from __future__ import annotations

from typing import Literal

from producer.model.record import Amount, Id, Number, Numbers, Record, Text


class TurnGroup(Record):
    """One corner of the track: the turns it is made of, radius (with unit), banking in degrees; what is known."""

    turns: Numbers = ()
    radius: Amount | None = None
    banking: Number | None = None


class Track(Record):
    """One track. `length` with its unit; corners in the order they are driven."""

    format: Literal["1"]
    track: Id
    name: Text
    length: Amount | None = None
    corners: tuple[TurnGroup, ...] = ()
    notes: str = ""
