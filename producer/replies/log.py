"""The request log: what is asked most, what to make next, who waits, and what is covered already."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from datetime import date

from producer.model.episode import STATUSES, Episode, Status
from producer.model.library import Library
from producer.model.request import Asks
from producer.replies.joining import Names
from producer.replies.understand import Understood, kind
from producer.replies.wording import counted

PURPOSES = ("short run", "long run", "qualifying")
_DONE = frozenset({"published", "declined"})


@dataclass(frozen=True, slots=True)
class Waiting:
    """A message that is not settled: `new` waits for an answer, `planned` for its episode. `days` None without a date.

    `out` is the published episode that settles it, None while there is none.
    """

    request: str
    handle: str | None
    asks: Asks
    status: str
    track: str | None
    garage: str | None
    days: int | None
    out: str | None


@dataclass(frozen=True, slots=True)
class Wanted:
    """One track and class (None where nobody said which) that is asked for and not published.

    `asked` counts viewers, each once; `days` is how long the first of them has waited; `requests` in the order
    received. `because` are the reasons for its rank, as sentences; `status` how far an episode about it has come.
    """

    track: str
    garage: str | None
    asked: int
    days: int
    requests: tuple[str, ...]
    because: tuple[str, ...]
    episode: str | None = None
    status: Status | None = None

    @property
    def underway(self) -> bool:
        """Whether its laps are driven and its script is written: it is not the next to begin."""
        return self.status in ("scripted", "recorded")


@dataclass(frozen=True, slots=True)
class Covered:
    """A track, a class and a run type, and the episode with the furthest setup for it, None where there is none."""

    track: str
    garage: str
    purpose: str
    episode: str | None
    status: Status | None


@dataclass(frozen=True, slots=True)
class Log:
    """The whole log as it stands on one day: `wanted` by how many ask, `waiting` the longest first."""

    wanted: tuple[Wanted, ...]
    waiting: tuple[Waiting, ...]
    coverage: tuple[Covered, ...]
    names: Names = field(compare=False)


def log(library: Library, messages: Iterable[Understood], today: date) -> Log:
    """The log of these messages, in the order of the files; waiting is counted in days up to `today`."""
    names = Names(library)
    every = [_Entry(one, *_place(library, names, one)) for one in messages]
    wanted = tuple(sorted(_wanted(library, names, every, today), key=_rank))
    waiting = sorted(_waiting(library, every, today), key=lambda one: -(one.days or 0))
    return Log(wanted, tuple(waiting), tuple(_coverage(library)), names)


@dataclass(frozen=True, slots=True)
class _Entry:
    whole: Understood
    track: str | None
    garage: str | None

    @property
    def viewer(self) -> str:
        """Who asks; a message without a name is somebody of its own."""
        handle = self.whole.request.from_
        return handle.casefold().lstrip("@") if handle else f" {self.whole.request.id}"


def _place(library: Library, names: Names, whole: Understood) -> tuple[str | None, str | None]:
    """The track and class that a message is about; one class with an episode there stands for a class not said."""
    request = whole.request
    episode = library.episodes.get(request.episode or "")
    if episode is not None:
        return episode.track, episode.garage
    track = names.track(request.track) if request.track else None
    if request.garage or track is None:
        return track, request.garage
    classes = dict.fromkeys(one.garage for one in library.episodes.values() if one.track == track)
    if len(library.garages) == 1:
        classes = dict.fromkeys(library.garages)
    return track, next(iter(classes)) if len(classes) == 1 else None


def _wanted(library: Library, names: Names, every: Sequence[_Entry], today: date) -> Iterator[Wanted]:
    rows: dict[tuple[str, str | None], list[_Entry]] = {}
    for one in every:
        if one.track is not None and _wants(library, one):
            rows.setdefault((one.track, one.garage), []).append(one)
    for (track, garage), found in rows.items():
        found.sort(key=lambda one: one.whole.request.received or date.max)
        episode = _furthest(_about(library, track, garage))
        days = max((_days(one, today) or 0 for one in found), default=0)
        yield Wanted(
            track,
            garage,
            len({one.viewer for one in found}),
            days,
            tuple(one.whole.request.id for one in found),
            tuple(_because(library, names, track, garage, found, days, today)),
            episode.episode if episode else None,
            episode.status if episode else None,
        )


def _wants(library: Library, entry: _Entry) -> bool:
    """Whether a message asks for an episode, or for help that only an episode to come can give."""
    request = entry.whole.request
    if request.status in _DONE or kind(request) not in ("track request", "help"):
        return False
    there = _about(library, entry.track, entry.garage)
    if any(one.status == "published" for one in there):
        return False
    return kind(request) == "track request" or not any(one.at_least("scripted") for one in there)


def _because(
    library: Library, names: Names, track: str, garage: str | None, found: Sequence[_Entry], days: int, today: date
) -> Iterator[str]:
    viewers = len({one.viewer for one in found})
    often = f", in {len(found)} messages" if len(found) > viewers else ""
    yield f"asked by {counted(viewers, 'viewer')}{often}"
    if days:
        yield f"waiting for {counted(days, 'day')}"
    helped = sum(kind(one.whole.request) == "help" for one in found)
    if helped:
        yield f"{counted(helped, 'message')} {'asks' if helped == 1 else 'ask'} for help there"
    yield from _state(library, track, garage, today)
    if garage is None:
        yield "the class is not said: ask, or write 'garage:' into the request"
    if track not in library.tracks:
        yield f"there is no file for {names.shown(track)} in tracks yet"


def _state(library: Library, track: str, garage: str | None, today: date) -> Iterator[str]:
    """How far it has come, else what there is to start from."""
    episode = _furthest(_about(library, track, garage))
    if episode is not None:
        planned = f", planned for {episode.planned.isoformat()}" if episode.planned else ""
        planned += ", which has passed" if episode.planned and episode.planned < today else ""
        yield f"{_STATES[episode.status]}{planned}"
    if episode is not None and episode.at_least("scripted"):
        return
    driven = [one for one in library.episodes.values() if one.at_least("scripted")]
    same_track = [one for one in driven if one.track == track and one.garage != garage]
    same_class = [one for one in driven if one.garage == garage and one.track != track]
    for one in (*same_track, *same_class)[:1]:
        yield f"a setup to start from: {one.episode}"


_STATES: dict[Status, str] = {
    "idea": "an idea so far", "testing": "being tested", "scripted": "the script is written", "recorded": "recorded",
    "published": "published",
}  # fmt: skip


def _waiting(library: Library, every: Sequence[_Entry], today: date) -> Iterator[Waiting]:
    for one in every:
        request = one.whole.request
        if request.status not in ("new", "planned"):
            continue
        out = _furthest(x for x in _about(library, one.track, one.garage) if x.status == "published")
        settles = out.episode if out and kind(request) == "track request" else None
        days = _days(one, today)
        yield Waiting(request.id, request.from_, kind(request), request.status, one.track, one.garage, days, settles)


def _coverage(library: Library) -> Iterator[Covered]:
    garages = {**dict.fromkeys(library.garages), **dict.fromkeys(one.garage for one in library.episodes.values())}
    tracks = {**dict.fromkeys(library.tracks), **dict.fromkeys(one.track for one in library.episodes.values())}
    for track in tracks:
        for garage in garages:
            there = _about(library, track, garage)
            for purpose in PURPOSES:
                found = _furthest(one for one in there if any(x.purpose == purpose for x in one.setups))
                yield Covered(track, garage, purpose, found.episode if found else None, found.status if found else None)


def _about(library: Library, track: str | None, garage: str | None) -> list[Episode]:
    """The episodes about a track and class; of every class where none is said."""
    return [one for one in library.episodes.values() if one.track == track and garage in (None, one.garage)]


def _furthest(episodes: Iterable[Episode]) -> Episode | None:
    return max(episodes, key=lambda one: (STATUSES.index(one.status), one.number or 0), default=None)


def _days(entry: _Entry, today: date) -> int | None:
    received = entry.whole.request.received
    return max(0, (today - received).days) if received is not None else None


def _rank(one: Wanted) -> tuple[int, int, str, str]:
    return -one.asked, -one.days, one.track, one.garage or ""
