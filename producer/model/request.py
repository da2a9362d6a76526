"""Viewers' messages. Handles are personal: shown only in the log and the reply, elsewhere with `credit: yes`."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from producer.model.record import Date, Id, Record, Text, YesNo, as_list
from producer.model.words import Complaint, complaint

Asks = Literal["help", "track request", "thanks", "correction", "other"]


def as_complaint(value: object) -> object:
    """A complaint of its written form. Raises ValueError with a sentence for the author."""
    return value if isinstance(value, Complaint) else complaint(str(value))


Feels = Annotated[tuple[Annotated[Complaint, BeforeValidator(as_complaint)], ...], BeforeValidator(as_list)]


class Request(Record):
    """One message. `from_` None: it came without a name. `credit` None: never asked, so no credit; the reply asks."""

    id: Id
    received: Date | None = None
    from_: Text | None = Field(default=None, alias="from")
    credit: YesNo | None = None
    text: Text
    track: Text | None = None
    garage: Text | None = None
    episode: Text | None = None
    setup: Text | None = None
    asks: Asks | None = None
    feels: Feels = ()
    tyres: Literal["new", "worn"] | None = None
    device: Literal["wheel", "pad", "keyboard"] | None = None
    status: Literal["new", "answered", "planned", "published", "declined"] = "new"
    answered: Date | None = None


class RequestFile(Record):
    """`requests/<any>.yaml`."""

    format: Literal["1"]
    requests: tuple[Request, ...] = ()
