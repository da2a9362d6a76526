"""What the program understands from a viewer's message, for the terminal or as JSON."""

from __future__ import annotations

from typing import Any

from producer.basics.errors import ProducerError
from producer.jobs.claims import Shop
from producer.language.messages import MessageReader, message_reader
from producer.model.message import Felt, Message

_ASKS = {
    "help": "asks for help",
    "track request": "asks for a track",
    "thanks": "says thanks",
    "correction": "says that the video and the card differ",
    "other": "asks for nothing",
}
_PLACES = {"entry": "on entry", "middle": "in the middle", "exit": "on exit"}
_PEDALS = {"braking": "under braking", "throttle": "on the throttle"}
_MUCH = {"little": "a little ", "plain": "", "very": "very "}


class Reading:
    """Reads messages for viewers of one class of car, and of one track where it is known."""

    def __init__(self, shop: Shop, track: str | None = None) -> None:
        if track is not None and track not in shop.tracks:
            known = ", ".join(shop.tracks) or "none yet"
            raise ProducerError(f"there is no track '{track[:60]}' in the library that can be read; there is: {known}")
        self._shop = shop
        self._track = track
        self._reader: MessageReader = message_reader(shop.garages, shop.tracks)

    def read(self, text: str) -> Message:
        """What one message says."""
        return self._reader.read(text, self._shop.garage, self._track)

    def shape(self, text: str) -> dict[str, Any]:
        """The same in the shape that other programs rely on."""
        return {"format": 1, "understood": understood(self.read(text))}

    def told(self, text: str) -> str:
        """The same for people, a line for each thing understood."""
        one = self.read(text)
        rows = [_ASKS[one.asks], *(_felt(feel) for feel in one.feels)]
        if one.tyres and not one.feels:
            rows.append(f"{one.tyres} tyres")
        if one.device:
            rows.append(f"plays with a {one.device}")
        garage = self._shop.garages[one.garage or self._shop.garage]
        rows += [f"names {garage.name_of(name)}" for name in one.parameters_named]
        if one.track:
            known = f" ({one.track_id})" if one.track_id else ", which is not in the library"
            rows.append(f"names the track {one.track}{known}")
        if one.garage:
            rows.append(f"names the class {garage.name}")
        return "\n".join(rows)


def understood(one: Message) -> dict[str, Any]:
    """What was understood, in the shape that other programs rely on."""
    feels = [
        {
            "feel": felt.feel,
            "where": felt.where,
            "how_much": felt.how_much,
            "tyres": felt.tyres,
            "pedal": felt.pedal,
            "start": felt.start,
            "end": felt.end,
        }
        for felt in one.feels
    ]
    return {
        "feels": feels,
        "asks": one.asks,
        "device": one.device,
        "tyres": one.tyres,
        "parameters_named": list(one.parameters_named),
        "track": one.track,
        "track_id": one.track_id,
        "garage": one.garage,
        "spans": [{"part": span.part, "start": span.start, "end": span.end} for span in one.spans],
    }


def _felt(one: Felt) -> str:
    parts = [f"{_MUCH[one.how_much]}{one.feel}"]
    parts += [_PLACES[one.where]] if one.where else []
    parts += [_PEDALS[one.pedal]] if one.pedal else []
    parts += [f"on {one.tyres} tyres"] if one.tyres else []
    return " ".join(parts)
