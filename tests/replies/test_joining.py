"""One name for one track, however it is written."""

from __future__ import annotations

import pytest

from producer.model.library import Library
from producer.replies.joining import Names


@pytest.mark.parametrize(
    "written", ["gannet-bowl", "Gannet Bowl", "gannet bowl speedway", "GannetBowl", "ganet bowl", "gannet  bowl"]
)
def test_a_track_of_the_library(log: Library, written: str) -> None:
    names = Names(log)
    assert names.track(written) == "gannet-bowl"
    assert names.shown("gannet-bowl") == "Gannet Bowl"


def test_another_track_keeps_the_first_spelling(log: Library) -> None:
    names = Names(log)
    first = names.track("oak hollow")
    assert {names.track(one) for one in ("Oak Hollow", "oakhollow raceway", "oak holow", "oak-hollow")} == {first}
    assert names.shown(first) == "Oak Hollow"
    assert names.place(first, None) == "Oak Hollow, class not said"
    assert names.place(first, "grand-sedan") == "Oak Hollow, Grand Sedan"


@pytest.mark.parametrize(
    ("one", "other"),
    [("lantern flats", "lantern falls"), ("oak hollow", "elk hollow"), ("mill", "hill"), ("speedway", "raceway")],
)
def test_other_names_are_other_tracks(log: Library, one: str, other: str) -> None:
    names = Names(log)
    assert names.track(one) != names.track(other)
