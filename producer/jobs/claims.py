"""What the program understands from a prose text, for the terminal or as JSON."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any

from producer.basics.errors import ProducerError
from producer.basics.figures import figure, with_unit
from producer.language.claims import claims
from producer.language.reading import reader
from producer.library.load import find_library, load
from producer.library.records import build
from producer.library.text import read_text
from producer.model.claim import Claim
from producer.model.garage import Garage
from producer.model.track import Track

_NOTHING = "nothing is claimed about a setting"
_PLACES = {"entry": "on entry", "middle": "in the middle", "exit": "on exit"}


@dataclass(frozen=True, slots=True)
class Shop:
    """The garage that a text is about, and the library's garages and tracks, () of either where no library is read."""

    garage: str
    garages: Mapping[str, Garage]
    tracks: Mapping[str, Track]


def shop(library: Path | None, garage: str) -> Shop:
    """The garage by its id in the library, or by its file (`.yaml`), which needs no library.

    Raises ProducerError where it is not there or cannot be read.
    """
    if garage.endswith((".yaml", ".yml")):
        found = _from_file(Path(garage))
        return Shop(found.garage, {found.garage: found}, {})
    shelf, _ = load(find_library(library, Path.cwd()))
    if garage in shelf.garages:
        return Shop(garage, shelf.garages, shelf.tracks)
    known = ", ".join(shelf.garages) or "none yet"
    raise ProducerError(f"there is no garage '{garage[:60]}' in the library that can be read; there is: {known}")


def _from_file(path: Path) -> Garage:
    text, findings = read_text(path, path.name)
    record = None
    if text is not None:
        record, _, findings = build(Garage, path.name, text)
    if record is None:
        raise ProducerError(f"{path} cannot be read as a garage: {findings[0].message}")
    return record


def prose(data: bytes, name: str) -> str:
    """A text as it came, bytes to characters, line ends as LF. Raises ProducerError where it is no UTF-8 text."""
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        raise ProducerError(f"{name} is not UTF-8 text from line {line} on: save it as UTF-8") from error
    return text.replace("\r\n", "\n").replace("\r", "\n")


def told(text: str, garage: Garage) -> str:
    """The claims of a text for people: the words, and below them what they say."""
    found = claims(text, reader(garage).vocabulary)
    return "\n".join(_claim_told(one, garage) for one in found) or _NOTHING


def shape(text: str, garage: Garage) -> dict[str, Any]:
    """The claims of a text in the shape that other programs rely on."""
    return {"format": 1, "claims": [_claim(one) for one in claims(text, reader(garage).vocabulary)]}


def by_line(text: str, read: Callable[[str], dict[str, Any]]) -> str:
    """One JSON object a line, for every line of the text; "" for no text."""
    rows = text.removesuffix("\n").split("\n") if text else []
    return "\n".join(json.dumps(read(one), ensure_ascii=False) for one in rows)


def _claim(one: Claim) -> dict[str, Any]:
    return {
        "text": one.text,
        "start": one.start,
        "end": one.end,
        "parameter": one.parameter,
        "direction": one.direction,
        "from": _number(one.frm),
        "to": _number(one.to),
        "amount": _number(one.amount),
        "value": _number(one.value),
        "feel": one.feel,
        "where": list(one.where),
        "if_feels": one.if_feels,
    }


def _number(value: Decimal | None) -> int | float | None:
    if value is None:
        return None
    return int(value) if value == value.to_integral_value() else float(value)


def _claim_told(one: Claim, garage: Garage) -> str:
    unit = garage.unit_of(one.parameter)
    figures = (("", one.value), ("from", one.frm), ("to", one.to), ("by", one.amount))
    parts: list[str] = [one.direction or ""]
    parts += [f"{word} {_shown(value, unit)}".strip() for word, value in figures if value is not None]
    said = [" ".join(part for part in parts if part)]
    if one.feel:
        said.append(" and ".join([one.feel, *(_PLACES[place] for place in one.where)]).replace(" and ", " ", 1))
    if one.if_feels:
        said.append(f"if it is {one.if_feels}")
    meant = "; ".join(part for part in said if part)
    return f'"{" ".join(one.text.split())}"\n  {garage.name_of(one.parameter)}: {meant}'


def _shown(value: Decimal, unit: str) -> str:
    written = figure(value.normalize() if value != value.to_integral_value() else value.quantize(Decimal(1)))
    return with_unit(written, "" if unit == "clicks" else unit)
