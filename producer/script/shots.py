"""What to record or to have on screen for each section; the corner shots follow from the advice."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from producer.model.sheet import Sheet
from producer.model.track import Track
from producer.model.words import FEELS, PHASES, Complaint
from producer.script.speaker import setup_name

_CORNER = {
    "entry": "the car {feel} going in",
    "middle": "the car {feel} in the middle",
    "exit": "the car {feel} coming off",
}


def opening_shots(track: Track, sheets: Sequence[Sheet]) -> tuple[str, ...]:
    """A lap to begin with."""
    return (f"Driving: a clean lap of {track.name} with {setup_name(sheets[0])}",)


def conditions_shots(options: bool, approach: bool) -> tuple[str, ...]:
    """The options as they were set, and a lap driven as it is told."""
    screen = ("Screen: the options as they were set",) if options else ()
    return (*screen, "Driving: one lap from outside, driven as you describe it") if approach else screen


def page_shots(sheet: Sheet, page: str | None, addresses: Sequence[str]) -> tuple[str, ...]:
    """The page of the garage with this setup loaded, then a corner for each feel that gets advice here."""
    if page is None:
        return (f"Screen: the card of {setup_name(sheet)}",)
    screen = f"Screen: the garage's {page.replace('_', ' ')} page, {setup_name(sheet)} loaded"
    return (screen, *_corner_shots(sheet, addresses))


def laps_shots() -> tuple[str, ...]:
    """The chart of the laps while it is told what they say."""
    return ("Screen: the chart of the test laps, long enough to follow both lines",)


def closing_shots(sheets: Sequence[Sheet]) -> tuple[str, ...]:
    """The cards, long enough to stop the video on."""
    cards = "the card" if len(sheets) == 1 else "both cards" if len(sheets) == 2 else "the cards, one after another"
    return (f"Screen: {cards}, long enough to pause on", "Driving: the last lap of a long stint")


def _corner_shots(sheet: Sheet, addresses: Sequence[str]) -> Iterator[str]:
    feels = {
        _plain(one.feels) for reason in sheet.reasons if set(reason.covers) & set(addresses) for one in reason.advice
    }
    for phase in PHASES:
        for feel in FEELS:
            if (feel, phase) in feels:
                yield "Corner: " + _CORNER[phase].format(feel=feel)


def _plain(complaint: Complaint) -> tuple[str, str | None]:
    return complaint.feel, complaint.where
