"""The base of everything the author writes: immutable, strict about keys, aware of its place."""

from __future__ import annotations

import re
from datetime import date
from decimal import Decimal
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, model_validator

from producer.basics.located import Located, Path, Places
from producer.basics.place import Place
from producer.basics.units import Quantity, quantity

_NUMBER = re.compile(r"[-+]?(?:\d{1,9}(?:\.\d{0,6})?|\.\d{1,6})")
_YES = {"yes": True, "true": True, "no": False, "false": False}
_HIDDEN = "(source)"


class Source:
    """Where a record stands. Equal to every other: records are compared by what the author wrote."""

    __slots__ = ("path", "places")

    def __init__(self, places: Places, path: Path) -> None:
        self.places = places
        self.path = path

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Source)

    def __hash__(self) -> int:
        return 0


class Record(BaseModel):
    """One mapping of the author's files.

    Unknown keys are refused; the reader turns pydantic's errors into findings with places.
    """

    model_config = ConfigDict(
        frozen=True, extra="forbid", defer_build=True, arbitrary_types_allowed=True, populate_by_name=False
    )
    source: Annotated[Source | None, Field(alias=_HIDDEN, exclude=True, repr=False)] = None

    @model_validator(mode="before")
    @classmethod
    def _carry_place(cls, data: Any) -> Any:
        if isinstance(data, Located):
            return {**data, _HIDDEN: Source(data.places, data.path)}
        return data

    def place(self, *path: str | int) -> Place:
        """The place of the value at `path` below this record (of the record itself without one)."""
        source = self._source()
        return source.places.value((*source.path, *path))

    def key_place(self, *path: str | int) -> Place:
        """The place of the key that holds `path`; where the key is missing, of the nearest key around it."""
        source = self._source()
        whole = (*source.path, *path)
        while len(whole) > len(source.path) and whole not in source.places.values:
            whole = whole[:-1]
        return source.places.key(whole)

    def inside(self, path: Path, start: int, end: int) -> Place:
        """The place of characters `start` to `end` (exclusive) of the text held at `path`."""
        source = self._source()
        return source.places.inside((*source.path, *path), start, end)

    def where(self, *path: str | int) -> str:
        """The path in the file in the author's words: `setups.short.reasons[2].direction`."""
        source = self._source()
        return source.places.where((*source.path, *path))

    def written(self, *path: str | int) -> bool:
        """Whether the author wrote something at `path` below this record."""
        source = self._source()
        return (*source.path, *path) in source.places.values

    def _source(self) -> Source:
        if self.source is None:
            raise ValueError("this record was not read from a file")
        return self.source


def as_number(value: object) -> object:
    """A Decimal of what was written. Raises ValueError with a sentence for the author."""
    if isinstance(value, (Decimal, int)) and not isinstance(value, bool):
        return value
    if not isinstance(value, str) or not _NUMBER.fullmatch(value.strip()):
        raise ValueError(f"a number is wanted here, not {_shown(value)}")
    return Decimal(value.strip())


def _yes_no(value: object) -> object:
    if isinstance(value, bool):
        return value
    if isinstance(value, str) and value.lower() in _YES:
        return _YES[value.lower()]
    raise ValueError(f"yes or no is wanted here, not {_shown(value)}")


def _text(value: object) -> object:
    if isinstance(value, str) and value.strip():
        return value
    raise ValueError(f"text is wanted here, not {_shown(value)}")


def _date(value: object) -> object:
    if isinstance(value, date):
        return value
    try:
        return date.fromisoformat(str(value))
    except ValueError:
        raise ValueError(f"a date like 2026-11-20 is wanted here, not {_shown(value)}") from None


def _quantity(value: object) -> object:
    if isinstance(value, Quantity):
        return value
    if isinstance(value, str):
        return quantity(value)
    raise ValueError(f"a number with its unit is wanted here, not {_shown(value)}")


def _amount(value: object) -> object:
    """A quantity of something that is there: larger than 0."""
    found = _quantity(value)
    if isinstance(found, Quantity) and found.value <= 0:
        raise ValueError(f"more than 0 is wanted here, not {_shown(value)}")
    return found


def _size(value: object) -> object:
    """A number larger than 0."""
    found = as_number(value)
    if isinstance(found, (Decimal, int)) and found <= 0:
        raise ValueError(f"more than 0 is wanted here, not {_shown(value)}")
    return found


def _shown(value: object) -> str:
    if value is None or value == "":
        return "nothing"
    if isinstance(value, str):
        return f"'{value[:40]}'"
    return "a list" if isinstance(value, (list, tuple)) else "a mapping" if isinstance(value, dict) else repr(value)


def as_list(value: object) -> object:
    """One thing or a list of things."""
    return value if isinstance(value, (list, tuple)) else [value]


Number = Annotated[Decimal, BeforeValidator(as_number), Field(allow_inf_nan=False)]
Count = Annotated[int, BeforeValidator(as_number), Field(ge=0)]
YesNo = Annotated[bool, BeforeValidator(_yes_no)]
Text = Annotated[str, BeforeValidator(_text)]
Date = Annotated[date, BeforeValidator(_date)]
Amount = Annotated[Quantity, BeforeValidator(_amount)]
Size = Annotated[Decimal, BeforeValidator(_size), Field(allow_inf_nan=False)]
Id = Annotated[str, BeforeValidator(_text), Field(pattern=r"^[A-Za-z0-9][A-Za-z0-9_.-]{0,79}$")]
Texts = Annotated[tuple[Text, ...], BeforeValidator(as_list)]
Numbers = Annotated[tuple[Number, ...], BeforeValidator(as_list)]
