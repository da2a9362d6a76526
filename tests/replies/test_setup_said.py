"""Which setup a message speaks of."""

from __future__ import annotations

import pytest

from producer.model.library import Library
from producer.replies.setup_said import purpose_lacking, setup_said


@pytest.mark.parametrize(
    ("text", "setup"),
    [
        ("gannet short run one is way 2 tight", "short"),
        ("the Long Run setup pushes", "long"),
        ("your long run is loose off 2", "long"),
        ("the long-run card says 60", "long"),
        ("ur short run set up", "short"),
        ("the long run is good but", "long"),
        ("gannet bowl long run: it pushes", "long"),
        ("long run is tight", "long"),
        ("super loose when i lift, short run", "short"),
        ("gannet, short run. loose in", "short"),
        ("short-run, gannet", "short"),
        ("is it 52 in the long run at gannet", "long"),
        # Laps, not a setup.
        ("it was a good long run, tight at the end", None),
        ("loose during a long run", None),
        ("after the 40 lap long run it is loose", None),
        ("long running cars are loose", None),
        ("long run, short run, all the same", None),
        ("over the long run it gets tight", None),
        ("in the long run i lose grip", None),
        ("on a long run it pushes", None),
        ("loose on long runs", None),
        ("is the short run one or the long run one better", None),
        ("is the qualifying setup coming", None),
        ("loose off 4", None),
    ],
)
def test_setup_said(log: Library, text: str, setup: str | None) -> None:
    assert setup_said(text, log.episodes["gannet-bowl-grand-sedan"]) == setup


@pytest.mark.parametrize(
    ("text", "lacking"),
    [
        ("can we have a qualifying setup for gannet", "qualifying"),
        ("is there a quali one", "qualifying"),
        ("is there a long run setup", None),
        ("qualifying was rained out", None),
    ],
)
def test_purpose_lacking(log: Library, text: str, lacking: str | None) -> None:
    assert purpose_lacking(text, log.episodes["gannet-bowl-grand-sedan"]) == lacking


def test_a_setup_may_have_a_name_of_its_own(log: Library) -> None:
    episode = log.episodes["gannet-bowl-grand-sedan"]
    named = episode.setups[1].model_copy(update={"name": "Night (warm)", "purpose": None})
    changed = episode.model_copy(update={"setups": (episode.setups[0], named)})
    assert setup_said("the night (warm) one is loose", changed) == "long"
    assert setup_said("saturday night was loose", changed) is None
