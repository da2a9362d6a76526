"""What an episode would publish: the same texts as the notes, the same digest as a stamp."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path
from time import process_time

from producer.captions.profile import reading_profile
from producer.captions.speed import too_fast
from producer.jobs.dossier import dossier as dossier_of
from producer.library.load import load
from producer.model.dossier import Dossier
from producer.outputs import notes
from producer.outputs.captions import shown
from producer.outputs.carddata import card_data, episode_digest
from producer.outputs.published import summary
from producer.render.kit import Kit
from tests.outputs.dossiers import sample_timeline, with_values


def test_the_texts_are_those_that_are_pasted(dossier: Dossier, kit: Kit) -> None:
    made = {one.path: one.data for one in notes.documents(dossier, kit)}
    found = summary(dossier, kit)
    assert found.title == dossier.episode.title
    assert found.description.encode("utf-8") == made["notes.txt"]
    assert found.description_bytes == len(made["notes.txt"])
    assert found.tags_characters == len(made["tags.txt"].decode("utf-8").rstrip("\n"))


def test_chapters_and_length_are_those_of_the_timeline(dossier: Dossier, kit: Kit) -> None:
    found = summary(dossier, kit)
    assert found.chapters[0] == (0, "Marrow Creek")
    assert len(found.chapters) == 7
    assert found.chapter_problem == ""
    assert found.length_ms == dossier.timeline.total_ms


def test_why_there_are_no_chapters(dossier: Dossier, kit: Kit) -> None:
    found = summary(replace(dossier, timeline=sample_timeline(dossier.narration, each_ms=1000)), kit)
    assert found.chapters == ()
    assert "a list needs at least 3" in found.chapter_problem


def test_the_channels_limits_count(dossier: Dossier, kit: Kit) -> None:
    platform = dossier.channel.platform
    chapters = platform.chapters.model_copy(update={"least": 8})
    strict = dossier.channel.model_copy(update={"platform": platform.model_copy(update={"chapters": chapters})})
    assert summary(replace(dossier, channel=strict), kit).chapter_problem


def test_captions_in_their_time_are_silent(dossier: Dossier, kit: Kit) -> None:
    assert summary(dossier, kit).fast_captions == ()


def test_captions_pressed_together_are_named_with_their_reason(dossier: Dossier, kit: Kit) -> None:
    rushed = replace(dossier, timeline=sample_timeline(dossier.narration, each_ms=900))
    profile = reading_profile(dossier.channel.captions)
    expected = {cue.start_ms: cue.text for cue in shown(rushed) if too_fast(cue, profile)}
    found = summary(rushed, kit).fast_captions
    assert expected
    assert {start: text for start, text, _ in found} == expected
    assert all("at most" in why for _, _, why in found)


def test_the_digest_is_that_of_the_cards_and_follows_a_figure(dossier: Dossier, kit: Kit) -> None:
    garage, track, episode = dossier.garage, dossier.track, dossier.episode
    cards = [card_data(garage, track, episode, one, dossier.conditions) for one in dossier.sheets]
    found = summary(dossier, kit).digest
    assert found == episode_digest(cards)
    assert summary(with_values(dossier, "long", {"spring.rf": "750"}), kit).digest != found


def test_a_title_with_brackets_is_counted_as_it_is_pasted(dossier: Dossier, kit: Kit) -> None:
    odd = replace(dossier, episode=dossier.episode.model_copy(update={"title": "A <b>title</b>"}))
    assert summary(odd, kit).title == "A b title /b"


def test_every_demo_episode_has_one_in_a_few_milliseconds(demo: Path, kit: Kit) -> None:
    library, _ = load(demo)
    wholes = [dossier_of(library.case(one)) for one in library.episodes.values()]
    known = [one for one in wholes if one is not None]
    assert len(known) == len(library.episodes)
    for one in known:
        summary(one, kit)
    start = process_time()
    for one in known:
        summary(one, kit)
    assert (process_time() - start) / len(known) < 0.05
