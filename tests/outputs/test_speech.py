"""Spoken captions: made only where something was said, in the channel's profile, with the author's figures."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest

from producer.captions.profile import reading_profile
from producer.jobs.dossier import dossier as whole_dossier
from producer.library.load import load
from producer.model.dossier import Dossier
from producer.outputs.speech import documents, spoken
from producer.render.kit import Kit

EPISODE = "marrow-creek-grand-sedan"


@pytest.fixture(scope="module")
def real(demo: Path) -> Dossier:
    library, _ = load(demo)
    found = whole_dossier(library.case(library.episodes[EPISODE]))
    assert found is not None
    return found


def files(dossier: Dossier, kit: Kit) -> dict[str, str]:
    return {one.path: one.data.decode("utf-8") for one in documents(dossier, kit)}


def test_without_a_take_there_are_none(dossier: Dossier, kit: Kit) -> None:
    assert files(dossier, kit) == {}


def test_captions_of_another_episode_make_none(real: Dossier, kit: Kit) -> None:
    assert real.take is not None
    assert files(replace(real, take=replace(real.take, stranger="other")), kit) == {}


def test_two_files_of_the_same_words(real: Dossier, kit: Kit) -> None:
    made = files(real, kit)
    assert list(made) == ["speech.srt", "speech.vtt"]
    assert made["speech.srt"].count("-->") == made["speech.vtt"].count("-->") == len(spoken(real))


@pytest.mark.parametrize(("source", "note"), [("raw", "NOTE Times are those of the take as recorded.\n"), ("cut", "")])
def test_the_file_says_whose_times_they_are(real: Dossier, kit: Kit, source: str, note: str) -> None:
    assert real.take is not None
    assert real.take.timeline is not None
    timeline = replace(real.take.timeline, source=source)  # type: ignore[arg-type]  # one of the two
    made = files(replace(real, take=replace(real.take, timeline=timeline)), kit)["speech.vtt"]
    assert made.startswith(f"WEBVTT\n\n{note}")
    assert made.count("NOTE") == bool(note)


def test_inside_the_reading_profile(real: Dossier) -> None:
    profile, cues = reading_profile(real.channel.captions), spoken(real)
    assert all(len(one.lines) <= profile.lines for one in cues)
    assert all(len(line) <= profile.characters_per_line for one in cues for line in one.lines)
    assert all(profile.shortest_ms <= one.duration_ms <= profile.longest_ms for one in cues)
    gaps = [after.start_ms - before.end_ms for before, after in pairwise(cues)]
    assert all(gap == 0 or gap >= profile.gap_ms for gap in gaps)


def test_the_broadcast_profile_has_shorter_lines(real: Dossier) -> None:
    limits = real.channel.captions.model_copy(update={"profile": "broadcast"})
    other = replace(real, channel=real.channel.model_copy(update={"captions": limits}))
    assert max(len(line) for one in spoken(other) for line in one.lines) <= 37


def test_every_word_is_there_and_figures_keep_their_units(real: Dossier) -> None:
    assert real.take is not None
    whole = " ".join(line for one in spoken(real) for line in one.lines)
    said = " ".join(one.text for one in real.take.said)
    letters = re.compile(r"[^\W\d_]+")
    counted = [letters.findall(text) for text in (whole, said)]
    assert abs(len(counted[0]) - len(counted[1])) < 0.03 * len(counted[1])  # "pounds per inch" is one unit
    assert "725\u00a0lb/in" in whole
    assert re.search(r"\d (?:lb/in|psi|%|in\b)", whole) is None, "a figure and its unit are joined"


def test_the_slip_is_shown_as_it_was_said(real: Dossier) -> None:
    whole = " ".join(line for one in spoken(real) for line in one.lines)
    assert "Front weight, 50\u00a0%." in whole
    assert "50.5\u00a0%" not in whole


def test_captions_begin_with_their_words(real: Dossier) -> None:
    """The first word of each caption starts no earlier than in the take, wherever figures were joined."""
    assert real.take is not None
    starts = {word.start_ms for line in real.take.said for word in line.words}
    assert sum(one.start_ms in starts for one in spoken(real)) >= 0.97 * len(spoken(real))
