"""Short names of tracks and classes."""

from __future__ import annotations

import pytest

from producer.model.library import Library
from producer.replies.short_names import short_class, short_track


@pytest.mark.parametrize(
    ("text", "track"),
    [
        ("gannet is way 2 tight", "gannet-bowl"),
        ("Marrow or Lantern next?", None),
        ("what bowl is this", None),
        ("the creek", None),
        ("gannets everywhere", None),
        ("loose off 4", None),
    ],
)
def test_short_track(log: Library, text: str, track: str | None) -> None:
    assert short_track(text, log.tracks, log.garages) == track


@pytest.mark.parametrize(
    ("text", "garage"),
    [
        ("could you look at the little coupe", "club-coupe"),
        ("the flat half mile in the SEDAN?", "grand-sedan"),
        ("coupe or sedan", None),
        ("a grand idea", None),
        ("the big car", None),
    ],
)
def test_short_class(log: Library, text: str, garage: str | None) -> None:
    assert short_class(text, log.garages, log.tracks) == garage


def test_a_name_that_means_two_things_means_nothing(log: Library) -> None:
    tracks = {**log.tracks, "sedan-hill": log.tracks["gannet-bowl"].model_copy(update={"name": "Sedan Hill"})}
    assert short_class("in the sedan", log.garages, tracks) is None
    assert short_track("at sedan", tracks, log.garages) is None
