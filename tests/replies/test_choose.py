"""Which setup answers a message."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from producer.basics.errors import ProducerError
from producer.model.episode import Episode, Revision
from producer.model.library import Library
from producer.model.request import Request
from producer.replies.choose import choose, nearest


def asked(**parts: Any) -> Request:
    return Request.model_validate({"id": "req-x", "received": "2026-10-01", "from": "@x", "text": "hi", **parts})


GANNET = {"track": "gannet-bowl", "garage": "grand-sedan"}
MARROW = {"track": "marrow-creek", "garage": "grand-sedan"}


@pytest.mark.parametrize(
    ("parts", "setup", "episode", "chosen", "because"),
    [
        (GANNET, None, "gannet-bowl-grand-sedan", "short", "first"),
        ({**GANNET, "setup": "long"}, None, "gannet-bowl-grand-sedan", "long", "asked"),
        ({**GANNET, "tyres": "worn"}, None, "gannet-bowl-grand-sedan", "long", "worn"),
        ({**GANNET, "tyres": "new"}, None, "gannet-bowl-grand-sedan", "short", "first"),
        ({**GANNET, "tyres": "worn", "setup": "short"}, None, "gannet-bowl-grand-sedan", "short", "asked"),
        ({**GANNET, "setup": "short"}, "long", "gannet-bowl-grand-sedan", "long", "asked"),
        (MARROW, None, "marrow-creek-grand-sedan", "short", "first"),
        ({"episode": "lantern-flats-club-coupe"}, None, "lantern-flats-club-coupe", "short", "first"),
        # One class has figures for this track, the other is still being tested.
        ({"track": "marrow-creek"}, None, "marrow-creek-grand-sedan", "short", "first"),
        ({"track": "lantern-flats"}, None, "lantern-flats-club-coupe", "short", "first"),
        # The episode is named directly, whatever else the message says.
        ({"episode": "gannet-bowl-grand-sedan", **MARROW}, None, "gannet-bowl-grand-sedan", "short", "first"),
    ],
)
def test_figures_come_from(
    log: Library, parts: dict[str, str], setup: str | None, episode: str, chosen: str, because: str
) -> None:
    found = choose(log, asked(**parts), setup)
    assert found.episode is not None
    assert (found.episode.episode, found.setup, found.because) == (episode, chosen, because)
    assert (found.track, found.garage) == (found.episode.track, found.episode.garage)


@pytest.mark.parametrize(
    ("parts", "track", "garage", "coming"),
    [
        ({}, None, None, None),
        ({"garage": "grand-sedan"}, None, "grand-sedan", None),
        ({"track": "oak-hollow"}, "oak-hollow", None, None),
        ({"track": "gannet-bowl", "garage": "club-coupe"}, "gannet-bowl", "club-coupe", None),
        ({"track": "lantern-flats", "garage": "grand-sedan"}, "lantern-flats", "grand-sedan", "idea"),
        ({"track": "marrow-creek", "garage": "club-coupe"}, "marrow-creek", "club-coupe", "testing"),
        ({"episode": "marrow-creek-club-coupe"}, "marrow-creek", "club-coupe", "testing"),
    ],
)
def test_no_figures_where_none_fit(
    log: Library, parts: dict[str, str], track: str | None, garage: str | None, coming: str | None
) -> None:
    found = choose(log, asked(**parts))
    assert (found.episode, found.setup) == (None, None)
    assert (found.track, found.garage) == (track, garage)
    assert (found.coming.status if found.coming else None) == coming


@pytest.mark.parametrize(
    ("parts", "track", "garage", "episode", "guessed"),
    [
        ({}, "gannet-bowl", "grand-sedan", "gannet-bowl-grand-sedan", False),
        ({"track": "gannet-bowl"}, "gannet-bowl", "grand-sedan", "gannet-bowl-grand-sedan", False),
        ({"garage": "grand-sedan"}, "gannet-bowl", "grand-sedan", "gannet-bowl-grand-sedan", False),
        # What the message names wins; the class above holds where there is such an episode.
        ({"track": "marrow-creek"}, "marrow-creek", "grand-sedan", "marrow-creek-grand-sedan", False),
        ({"track": "lantern-flats"}, "lantern-flats", "grand-sedan", None, False),
        ({"track": "oak-hollow"}, "oak-hollow", None, None, False),
        ({"garage": "club-coupe"}, "gannet-bowl", "club-coupe", None, False),
        ({"episode": "lantern-flats-club-coupe"}, "lantern-flats", "club-coupe", "lantern-flats-club-coupe", False),
    ],
)
def test_below_an_episode(
    log: Library, parts: dict[str, str], track: str, garage: str | None, episode: str | None, guessed: bool
) -> None:
    found = choose(log, asked(**parts), None, "gannet-bowl-grand-sedan")
    assert (found.track, found.garage) == (track, garage)
    assert (found.episode.episode if found.episode else None) == episode
    assert found.guessed is guessed


def test_a_class_is_taken_as_understood_only_where_one_has_figures(log: Library) -> None:
    assert choose(log, asked(track="gannet-bowl")).guessed
    assert not choose(log, asked(track="gannet-bowl", garage="grand-sedan")).guessed


def test_the_setup_that_the_text_names(log: Library) -> None:
    found = choose(log, asked(track="gannet-bowl", tyres="new", text="the long run one is loose"))
    assert (found.setup, found.because) == ("long", "asked")


def test_a_library_of_one_class_needs_no_class(log: Library) -> None:
    one = Library(log.channel, {"grand-sedan": log.garages["grand-sedan"]}, log.tracks, {}, {}, {})
    assert choose(one, asked(track="oak-hollow")).garage == "grand-sedan"
    assert choose(one, asked()).garage == "grand-sedan"


def test_an_episode_to_stand_below_that_is_not_there(log: Library) -> None:
    with pytest.raises(ProducerError, match="no episode 'gannet'"):
        choose(log, asked(), None, "gannet")


def with_episodes(log: Library, *changed: Episode) -> Library:
    episodes = {**log.episodes, **{one.episode: one for one in changed}}
    return Library(log.channel, log.garages, log.tracks, episodes, log.requests, log.files)


def test_a_class_is_asked_for_where_two_have_figures(log: Library) -> None:
    coupe = log.episodes["marrow-creek-club-coupe"].model_copy(update={"status": "scripted"})
    found = choose(with_episodes(log, coupe), asked(track="marrow-creek"))
    assert found.episode is None
    assert found.garages == ("club-coupe", "grand-sedan")


def test_the_furthest_along_answers_and_of_two_the_later_revision(log: Library) -> None:
    first = log.episodes["gannet-bowl-grand-sedan"]
    later = Revision.model_construct(revision=1, date=date(2027, 1, 2), digest="0" * 64, garage_version="3.2")
    again = first.model_copy(update={"episode": "gannet-again", "published": (later,), "number": 1})
    earlier = again.model_copy(update={"status": "recorded"})
    for library, episode in [(with_episodes(log, again), again), (with_episodes(log, earlier), first)]:
        assert choose(library, asked(**GANNET)).episode is episode


@pytest.mark.parametrize(
    ("parts", "setup", "words"),
    [
        ({"episode": "gannet-bowl-grand-sedn"}, None, "did you mean 'gannet-bowl-grand-sedan'"),
        ({**GANNET, "setup": "lng"}, None, r"'req-x' names it.*did you mean 'long'"),
        (GANNET, "shrt", "did you mean 'short'"),
        (GANNET, "qualifying", "there is: short, long"),
        ({"track": "oak-hollow"}, "short", "leave --setup out"),
    ],
)
def test_what_is_not_there_is_named_with_the_nearest(
    log: Library, parts: dict[str, str], setup: str | None, words: str
) -> None:
    with pytest.raises(ProducerError, match=words):
        choose(log, asked(**parts), setup)


def test_an_episode_that_cannot_be_read(log: Library) -> None:
    broken = Library(log.channel, log.garages, log.tracks, {}, log.requests, log.files, broken=("torn",))
    with pytest.raises(ProducerError, match="producer check torn"):
        choose(broken, asked(episode="torn"))


def test_nearest() -> None:
    assert nearest("x", []) == "there is none yet"
    assert nearest("zzz", [str(n) for n in range(20)]).endswith("...")
