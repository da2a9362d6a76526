"""What has a size is larger than 0."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from producer.model.garage import Car
from producer.model.track import Track

TRACK = {"format": "1", "track": "a", "name": "A"}


@pytest.mark.parametrize("length", ["0 mi", "-1 mi", "0.0 km"])
def test_a_track_has_a_length(length: str) -> None:
    with pytest.raises(ValidationError, match="more than 0 is wanted here"):
        Track.model_validate({**TRACK, "length": length})


@pytest.mark.parametrize("key", ["rev_limit", "top_gear"])
@pytest.mark.parametrize("value", ["0", "-8200"])
def test_a_car_s_figures_are_larger_than_nothing(key: str, value: str) -> None:
    with pytest.raises(ValidationError, match="more than 0 is wanted here"):
        Car.model_validate({key: value})


def test_small_ones_are_fine() -> None:
    assert Track.model_validate({**TRACK, "length": "0.1 mi"}).length is not None
    assert Car.model_validate({"rev_limit": "1", "top_gear": "0.01"}).top_gear is not None
