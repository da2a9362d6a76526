"""A chart as the guide's page and the card show it: what it says, the chart itself, and how to read it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from producer.render.charts.drawing import Drawing

WIDE, NARROW = 820.0, 358.0  # units, about pixels: a page or a sheet of paper, and a phone


@dataclass(frozen=True, slots=True)
class Picture:
    """One chart, for wide and for narrow places.

    `title` says the finding; `notes` are whole sentences about how to read it and whose opinion it is; `rows` say
    everything in it in words.
    """

    id: str
    title: str
    rank: Literal["first", "second"]
    wide: Drawing
    narrow: Drawing
    notes: tuple[str, ...]
    rows: tuple[str, ...]
