"""Which episode and which of its setups answer a message, and why."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from producer.basics.errors import ProducerError
from producer.model.episode import STATUSES, Episode
from producer.model.library import Library
from producer.model.request import Request
from producer.replies.setup_said import setup_said

Because = Literal["asked", "worn", "first"]


@dataclass(frozen=True, slots=True)
class Choice:
    """Where the figures of a reply come from.

    `episode` and `setup` (its id) are None where nothing fits; `because` says how the setup was found: it was asked
    for, the tyres are worn, or it is the first. `coming` is an episode about the same thing that has no figures to
    give out yet. `track` and `garage` are ids as far as they are known; `garages` the classes among which the
    viewer has to choose, () where there is no doubt; `guessed` where the class is the only one with figures there.
    """

    track: str | None
    garage: str | None
    episode: Episode | None = None
    setup: str | None = None
    because: Because = "first"
    coming: Episode | None = None
    garages: tuple[str, ...] = ()
    guessed: bool = False


def choose(library: Library, request: Request, setup: str | None = None, under: str | None = None) -> Choice:
    """The episode a message names, else the furthest along about its track and class; `setup` wins over the message.

    `under` is the episode the message was written below: it holds unless the message names another track or class.
    Figures come from an episode of status scripted or later. A class is never guessed where a track has setups for
    several, and a track never. Raises ProducerError, naming the nearest, for an episode or a setup that is not there.
    """
    found = _about(library, placed_under(library, request, under))
    if found.episode is None:
        if setup is not None:
            raise ProducerError(f"no episode with setups answers the request '{request.id}', so leave --setup out")
        return found
    chosen, because = _setup(found.episode, request, setup)
    return replace(found, setup=chosen, because=because)


def nearest(name: str, known: Iterable[str]) -> str:
    """What to say after a name that is not there: the nearest one, else what there is."""
    from difflib import get_close_matches

    every = list(known)
    near = get_close_matches(name, every, 1, 0.5)
    if near:
        return f"did you mean '{near[0]}'?"
    shown = ", ".join(every[:8]) + (" ..." if len(every) > 8 else "")
    return f"there is: {shown}" if every else "there is none yet"


def placed_under(library: Library, request: Request, under: str | None) -> Request:
    """The request with what the episode above it says, as far as the message says nothing else."""
    if under is None or request.episode is not None:
        return request
    above = episode_called(library, under)
    if request.track in (None, above.track) and request.garage in (None, above.garage):
        return request.model_copy(update={"episode": above.episode})
    track, garage = request.track or above.track, request.garage
    if garage is None and any((one.track, one.garage) == (track, above.garage) for one in library.episodes.values()):
        garage = above.garage
    return request.model_copy(update={"track": track, "garage": garage})


def episode_called(library: Library, name: str, said_by: str = "") -> Episode:
    """The episode of that id. Raises ProducerError, naming the nearest, where it is not there or cannot be read."""
    if name in library.episodes:
        return library.episodes[name]
    if name in library.broken:
        raise ProducerError(f"the episode '{name}' cannot be read; 'producer check {name}' says why")
    hint = nearest(name, library.episodes)
    if said_by:
        raise ProducerError(f"{said_by} names the episode '{name[:60]}', which is not there; {hint}")
    raise ProducerError(f"there is no episode '{name[:60]}'; {hint}")


def _about(library: Library, request: Request) -> Choice:
    if request.episode is not None:
        named = episode_called(library, request.episode, f"the request '{request.id}'")
        return _placed(library, named.track, named.garage, [named])
    if request.garage is None and len(library.garages) == 1:
        request = request.model_copy(update={"garage": next(iter(library.garages))})
    if request.track is None:
        return Choice(None, request.garage)
    fitting = [one for one in library.episodes.values() if one.track == request.track]
    if request.garage is not None:
        same = [one for one in fitting if one.garage == request.garage]
        return _placed(library, request.track, request.garage, same)
    garages = tuple(one for one in library.garages if any(one == x.garage and _gives(library, x) for x in fitting))
    if len(garages) > 1:
        return Choice(request.track, None, garages=garages)
    garage = garages[0] if garages else None
    one_class = [one for one in fitting if garage in (None, one.garage)]
    return replace(_placed(library, request.track, garage, one_class), guessed=garage is not None)


def _placed(library: Library, track: str, garage: str | None, fitting: list[Episode]) -> Choice:
    """The furthest along that has figures to give, and the furthest along that has not."""
    giving = [one for one in fitting if _gives(library, one)]
    waiting = [one for one in fitting if not _gives(library, one)]
    episode = max(giving, key=_along, default=None)
    coming = max(waiting, key=_along, default=None) if episode is None else None
    return Choice(track, garage, episode, coming=coming)


def _gives(library: Library, episode: Episode) -> bool:
    return episode.at_least("scripted") and bool(library.case(episode).sheets)


def _along(episode: Episode) -> tuple[int, str, int, str]:
    last = episode.published[-1].date.isoformat() if episode.published else ""
    return STATUSES.index(episode.status), last, episode.number or 0, episode.episode


def _setup(episode: Episode, request: Request, asked: str | None) -> tuple[str, Because]:
    ids = [one.setup for one in episode.setups]
    wanted = asked if asked is not None else request.setup
    if wanted is None:
        wanted = setup_said(request.text, episode)
    if wanted is not None:
        if wanted not in ids:
            by = "" if asked is not None else f" (the request '{request.id}' names it)"
            hint = nearest(wanted, ids)
            raise ProducerError(f"the episode '{episode.episode}' has no setup '{wanted[:60]}'{by}; {hint}")
        return wanted, "asked"
    if request.tyres == "worn":
        long = next((one.setup for one in episode.setups if one.purpose == "long run"), None)
        if long is not None:
            return long, "worn"
    return ids[0], "first"
