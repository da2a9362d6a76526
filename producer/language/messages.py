"""Viewers' messages: what is wrong with the car, what is asked, what is named. Short, misspelt, in a hurry."""

from __future__ import annotations

from collections.abc import Mapping
from typing import cast

from producer.language.asking import asks, thanks
from producer.language.complaints import complaints
from producer.language.devices import device
from producer.language.items import Item, items, mention_of, number_of
from producer.language.message_row import Piece, Turns, row, without_clitics
from producer.language.message_words import phrases
from producer.language.misspelt import mended
from producer.language.reading import reader
from producer.language.settling import fitting
from producer.language.terms import Mention, Vocabulary
from producer.language.tokens import Words, words
from producer.language.track_names import Named, TrackNames
from producer.model.garage import Garage
from producer.model.message import Felt, Message, Span, Tyres
from producer.model.track import Track

_USUAL = Turns.of(None)
LONGEST = 2_000  # characters: the rest of a longer message is not read


class MessageReader:
    """Reads messages about the garages and tracks of one library. Build it once and keep it."""

    __slots__ = ("_garage_names", "_garages", "_names", "_phrases", "_tracks", "_turns")

    def __init__(self, garages: Mapping[str, Garage], tracks: Mapping[str, Track]) -> None:
        self._garages = dict(garages)
        self._tracks = dict(tracks)
        self._phrases = phrases()
        self._names = TrackNames(tracks)
        self._turns = {name: Turns.of(track) for name, track in tracks.items()}
        self._garage_names = [
            (form, name)
            for name, garage in garages.items()
            for form in dict.fromkeys([tuple(words(garage.name).text), tuple(words(name.replace("-", " ")).text)])
        ]

    def read(self, text: str, garage: str | None = None, track: str | None = None) -> Message:
        """What a message says. `garage`, `track`: ids that are known besides; what the message names wins.

        Parameters are read with the words of the message's class, else of `garage`, else of the library's first.
        """
        written = words(text[:LONGEST])
        plain = mended(written)
        said = without_clitics(plain)
        raw = without_clitics(written) if len(written) == len(said) else _like(written, said)
        named_garage = self._garage(said)
        thankful = thanks(said.text)
        pieces = row(said, self._phrases, _USUAL)
        rough = complaints(pieces, thankful)
        named = self._names.find(raw.text, said.text, bool(rough))
        where = named.track if named and named.track else track
        turns = self._turns.get(where or "", _USUAL)
        felt = rough if turns == _USUAL else complaints(row(said, self._phrases, turns), thankful)
        settings = self._settings(plain, (named_garage[0] if named_garage else None) or garage)
        asked = asks(said.text, bool(felt), bool(named and named.wanted), bool(settings))
        if asked == "correction":
            felt = []
        played = device(said.text)
        return Message(
            tuple(felt),
            asked,
            played[0] if played else None,
            _tyres(felt, pieces),
            tuple(dict.fromkeys(address for address, _ in settings)),
            text[said.start[named.first] : said.end[named.last - 1]] if named else None,
            named.track if named else None,
            named_garage[0] if named_garage else None,
            _spans(said, felt, settings, played, named, named_garage),
        )

    def _garage(self, said: Words) -> tuple[str, int, int] | None:
        for form, name in self._garage_names:
            for at in range(len(said) - len(form) + 1):
                if tuple(said.text[at : at + len(form)]) == form:
                    return name, at, at + len(form)
        return None

    def _settings(self, plain: Words, name: str | None) -> list[tuple[str, Span]]:
        garage = self._garages.get(name or "") or next(iter(self._garages.values()), None)
        return _named_settings(plain, reader(garage).vocabulary) if garage is not None else []


def message_reader(garages: Mapping[str, Garage], tracks: Mapping[str, Track]) -> MessageReader:
    """A reader for the messages of one library."""
    return MessageReader(garages, tracks)


def _like(written: Words, said: Words) -> Words:
    """The words as written at the places of `said`."""
    at = {start: word for word, start in zip(written.text, written.start, strict=True)}
    return Words([at[start] for start in said.start], said.start, said.end)


def _named_settings(plain: Words, vocabulary: Vocabulary) -> list[tuple[str, Span]]:
    """The settings that are named, in order of mention: with their corner, else the parameter alone."""
    if vocabulary.anchors.isdisjoint(plain.text):
        return []
    line = items(plain, vocabulary)
    found: list[tuple[str, Span]] = []
    for at, one in enumerate(line):
        if one.kind != "set":
            continue
        mention = mention_of(one)
        span = Span("parameter", one.start, one.end)
        named = _addresses(mention, at, line, vocabulary)
        if named == (mention.parameter,):
            named = _with_corner_after(mention, at, line, vocabulary) or named
        found += [(address, span) for address in named]
    return found


def _with_corner_after(mention: Mention, at: int, line: list[Item], vocabulary: Vocabulary) -> tuple[str, ...]:
    """As in "what spring do you run in the right rear": the corner stands later, alone."""
    for one in line[at + 1 : at + 9]:
        if one.kind == "set":
            later = mention_of(one)
            alone = later.parts and not later.parameter
            return vocabulary.resolve(mention.parameter, later.parts) if alone else ()
        if one.word[0] in ".,?!":
            break
    return ()


def _addresses(mention: Mention, at: int, line: list[Item], vocabulary: Vocabulary) -> tuple[str, ...]:
    if mention.addresses:
        return mention.addresses
    if mention.split:
        return fitting(mention, [], line, vocabulary, (), "", "")
    if mention.parameter:
        return (mention.parameter,)
    beside = [one for one in line[max(0, at - 3) : at + 4] if one.kind == "number" and not number_of(one).foreign]
    if not (mention.parts and beside):
        return ()
    nearest = min(beside, key=lambda one: min(abs(one.end - mention.start), abs(one.start - mention.end)))
    return fitting(mention, [number_of(nearest)], line, vocabulary, (), "", "")


def _tyres(felt: list[Felt], pieces: list[Piece]) -> Tyres | None:
    said = [one.tyres for one in felt if one.tyres]
    others = [cast("Tyres", one.data) for one in pieces if one.kind == "tyres"]
    return next(iter([*said, *others]), None)


def _spans(
    said: Words,
    felt: list[Felt],
    settings: list[tuple[str, Span]],
    played: tuple[str, int] | None,
    named: Named | None,
    garage: tuple[str, int, int] | None,
) -> tuple[Span, ...]:
    found = [Span("feel", one.start, one.end) for one in felt]
    found += [span for _, span in settings]
    if played:
        found.append(Span("device", said.start[played[1]], said.end[played[1]]))
    if named:
        found.append(Span("track", said.start[named.first], said.end[named.last - 1]))
    if garage:
        found.append(Span("garage", said.start[garage[1]], said.end[garage[2] - 1]))
    return tuple(sorted(dict.fromkeys(found), key=lambda one: (one.start, one.end, one.part)))
