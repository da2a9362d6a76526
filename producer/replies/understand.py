"""What a message asks for and what it leaves out."""

from __future__ import annotations

from typing import Any

from producer.model.request import Asks, Request
from producer.replies.choose import Choice
from producer.replies.wording import listed


def kind(request: Request) -> Asks:
    """What a message asks for: as stated, else help where it says anything of a car or a track."""
    if request.asks is not None:
        return request.asks
    named = (request.track, request.garage, request.episode, request.setup, request.tyres, request.device)
    return "help" if request.feels or any(named) else "other"


def missing(request: Request, choice: Choice, tyres_matter: bool) -> tuple[str, ...]:
    """What is missing and matters, the most important first: `feel`, `where`, `track`, `garage`, `tyres`."""
    asks = kind(request)
    found: list[str] = []
    if asks == "help" and not request.feels:
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


def understood_json(request: Request, choice: Choice, lacking: tuple[str, ...]) -> dict[str, Any]:
    """The `understood` block that other programs rely on."""
    feels = [
        {"feel": one.feel, "where": one.where, "how_much": one.how_much, "tyres": request.tyres, "pedal": None}
        for one in request.feels
    ]
    return {"feels": feels, "track": choice.track, "garage": choice.garage, "missing": list(lacking)}
