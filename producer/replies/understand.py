"""What a message asks for and what it leaves out; what the author filled in comes before what is read from its text."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from producer.model.garage import Garage
from producer.model.library import Library
from producer.model.message import Felt, Message, Tyres
from producer.model.request import Asks, Request
from producer.model.track import Track
from producer.replies.choose import Choice
from producer.replies.short_names import short_class, short_track
from producer.replies.wording import listed

_LAPS_IN = re.compile(
    r"\b(?:after|past)\s+(?:(?:about|around|like|maybe|the|first|some)\s+)*(\d{1,3})\s*(?:-|or so|plus|\+)?"
    r"\s*laps?\b"
    r"|\b(\d{1,3})\s*(?:or so\s+)?laps?\s+(?:in|into)\b(?!\s+(?:a|the)\s+(?:race|lead))"
    r"|\b(?:after|past|by|from|around|about)\s+(?:about\s+)?lap\s+(\d{1,3})\b"
)
_MANY_LAPS = 10  # tyres are no longer new: common practice, no source


@dataclass(frozen=True, slots=True)
class Understood:
    """A message as it is answered.

    `request` has every field filled that the author wrote or the text says; `felt` are the feels as they were read, ()
    where the author wrote his own; `named` the settings the message speaks of (a corner's address, or a parameter
    where no corner is said). `elsewhere`: something is asked, and nothing in it is about a car or a track.
    """

    request: Request
    felt: tuple[Felt, ...] = ()
    named: tuple[str, ...] = ()
    elsewhere: bool = False


def understood(request: Request, message: Message, library: Library) -> Understood:
    """The author's fields, and the message's where he left them out. An episode he names settles track and class."""
    own = request.episode is not None
    found: dict[str, Any] = {
        "asks": _asks(request, message),
        "feels": request.feels or tuple(dict.fromkeys(one.complaint for one in message.feels)),
        "tyres": request.tyres or message.tyres or _late(request.text),
        "device": request.device or message.device,
        "track": _id(request.track, library.tracks) or (None if own else _track(request.text, message, library)),
        "garage": _id(request.garage, library.garages) or (None if own else _class(request.text, message, library)),
    }
    felt = () if request.feels else message.feels
    whole = request.model_copy(update=found)
    about_car = (whole.feels, whole.tyres, whole.track, whole.garage, message.parameters_named)
    elsewhere = request.asks is None and whole.asks == "help" and not any(about_car)
    return Understood(whole, felt, message.parameters_named, elsewhere)


def kind(request: Request) -> Asks:
    """What a message asks for: as stated, else help where it says anything of a car or a track."""
    if request.asks is not None:
        return request.asks
    named = (request.track, request.garage, request.episode, request.setup, request.tyres, request.device)
    return "help" if request.feels or any(named) else "other"


def missing(request: Request, choice: Choice, tyres_matter: bool, answered: bool = False) -> tuple[str, ...]:
    """What is missing and matters, the most important first: `feel`, `where`, `track`, `garage`, `tyres`.

    `answered`: what is asked is a setting's figure, so no feel is needed for it.
    """
    asks = kind(request)
    found: list[str] = []
    if asks == "help" and not request.feels and not answered:
        found.append("feel")
    if asks in ("help", "track request") and any(one.where is None for one in request.feels):
        found.append("where")
    if asks in ("help", "track request", "correction"):
        found += ["track"] if choice.track is None else []
        found += ["garage"] if choice.garage is None else []
    if tyres_matter and request.tyres is None:
        found.append("tyres")
    return tuple(found)


def questions(lacking: tuple[str, ...], request: Request, classes: tuple[str, ...]) -> tuple[str, ...]:
    """At most two questions for what is missing; track and class are asked in one breath. British forms."""
    asked: list[str] = []
    if "feel" in lacking:
        asked.append("Is the car tight or loose, and is it on entry, in the middle or on exit?")
    if "where" in lacking:
        open_feels = dict.fromkeys(one.feel for one in request.feels if one.where is None)
        asked.append(f"Where in the corner is it {listed(list(open_feels))}: on entry, in the middle or on exit?")
    if "track" in lacking and "garage" in lacking:
        asked.append("Which track is it, and which car class?")
    elif "track" in lacking:
        asked.append("Which track is it?")
    elif "garage" in lacking:
        choice = f": {listed([f'the {one}' for one in classes], 'or')}" if classes else ""
        asked.append(f"Which car class are you in{choice}?")
    if "tyres" in lacking:
        asked.append("Are the tyres new or worn when it does that?")
    return tuple(asked[:2])


def understood_json(whole: Understood, choice: Choice, lacking: tuple[str, ...]) -> dict[str, Any]:
    """The `understood` block that other programs rely on."""
    request, pedals = whole.request, {one.complaint: one.pedal for one in whole.felt}
    tyres = {one.complaint: one.tyres for one in whole.felt}
    feels = [
        {
            "feel": one.feel,
            "where": one.where,
            "how_much": one.how_much,
            "tyres": tyres.get(one) or request.tyres,
            "pedal": pedals.get(one),
        }
        for one in request.feels
    ]
    return {
        "feels": feels,
        "asks": kind(request),
        "device": request.device,
        "parameters_named": list(whole.named),
        "track": choice.track,
        "garage": choice.garage,
        "missing": list(lacking),
    }


def _late(text: str) -> Tyres | None:
    """ "After 20 laps", "20 laps in", "from lap 20 on": nobody who tells that has to be asked about the tyres."""
    laps = [int(one[1] or one[2] or one[3]) for one in _LAPS_IN.finditer(text.casefold())]
    return "worn" if laps and min(laps) >= _MANY_LAPS else None


def _asks(request: Request, message: Message) -> Asks | None:
    """What the author wrote; of the text, that a complaint is a cry for help even where nothing is asked."""
    if request.asks is not None:
        return request.asks
    if request.feels or message.feels:
        return message.asks if message.asks in ("help", "track request", "correction") else "help"
    return message.asks


def _id(written: str | None, known: Mapping[str, Track] | Mapping[str, Garage]) -> str | None:
    """What the author wrote, by its id where he wrote its name."""
    if written is None or written in known:
        return written
    plain = " ".join(written.casefold().split())
    return next((name for name, one in known.items() if one.name.casefold() == plain), written)


def _track(text: str, message: Message, library: Library) -> str | None:
    if message.track_id is not None:
        return message.track_id
    said = message.track or text
    if message.track is not None and " " in message.track.strip():
        return message.track  # a whole name that the library lacks
    return short_track(said, library.tracks, library.garages) or message.track


def _class(text: str, message: Message, library: Library) -> str | None:
    return message.garage or short_class(text, library.garages, library.tracks)
