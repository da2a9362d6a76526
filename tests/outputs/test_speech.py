"""Spoken captions: made only where something was said, in the channel's profile, with the author's figures."""

from __future__ import annotations

import re
from dataclasses import replace
from decimal import Decimal
from itertools import pairwise
from pathlib import Path

import pytest

from producer.captions.profile import reading_profile
from producer.captions.reading import read_captions
from producer.jobs.dossier import dossier as whole_dossier
from producer.library.load import load
from producer.model.dossier import Dossier
from producer.model.take import SaidFigure, Take, WordCount
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


AUTOMATIC = """WEBVTT

00:00:01.000 --> 00:00:03.500
okay<00:00:01.300><c> the</c><00:00:01.500><c> right</c><00:00:02.300><c> front</c><00:00:03.100><c> spring</c>

00:00:03.500 --> 00:00:06.000
okay the right front spring
is<00:00:03.700><c> at</c><00:00:03.900><c> seven</c><00:00:04.300><c> hundred</c><00:00:04.700><c> pounds</c>

00:00:06.000 --> 00:00:08.000
is at seven hundred pounds
and<00:00:06.300><c> wedge</c><00:00:06.700><c> fifty</c><00:00:07.100><c> two</c><00:00:07.400><c> for three</c>

00:00:08.000 --> 00:00:09.500
and wedge fifty two for three
weeks<00:00:08.300><c> now</c>
"""


def test_automatic_captions_as_they_are_written_for_viewers(dossier: Dossier, kit: Kit) -> None:
    """Each line once, whole sentences, the figures of the sheet; times are those of the words."""
    said = read_captions(AUTOMATIC.encode(), "cut.vtt").said
    figures = (
        SaidFigure(3900, "spring.rf", frozenset({Decimal(700)})),
        SaidFigure(6700, "cross_weight", frozenset({Decimal(52)})),
    )
    narration, timeline = dossier.narration, replace(dossier.timeline, source="cut")
    take = Take("cut", "cut.vtt", (), (), WordCount(0, 0, 0), (), (), 0, 10_500, narration, timeline, said=said,
                figures=figures)  # fmt: skip
    assert files(replace(dossier, take=take), kit)["speech.srt"].replace("\u00a0", "_") == (
        "1\n00:00:01,000 --> 00:00:06,000\nokay the right front spring\nis at 700_lb/in\n\n"
        "2\n00:00:06,000 --> 00:00:09,300\nand wedge 52_% for three weeks now\n\n"
    )
