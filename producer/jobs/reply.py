"""Replies to messages: one of the log, or as many as are pasted."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from producer.basics.errors import ProducerError
from producer.basics.finding import Finding
from producer.jobs.changing import today
from producer.jobs.opinions import SecondOpinion
from producer.jobs.reading import Reader
from producer.library.load import load
from producer.model.channel import Channel
from producer.model.episode import Episode
from producer.model.guide import Guide
from producer.model.library import Case, Library
from producer.model.opinion import Opinions
from producer.model.request import Request
from producer.replies.choose import Choice, choose, episode_called, nearest
from producer.replies.pasted import Pasted

if TYPE_CHECKING:
    from producer.replies.reply import Reply

IN_LOG = "in my log"  # what a reply says where it has no numbers to give
IN_LOG_NOTE = "a reply says that the message is in your log: --log puts it there"


def reply_to(root: Path, request_id: str, setup: str | None, out: Path | None = None) -> Reply:
    """The reply to a request, with figures of the setup that fits it best, or of `setup`.

    Raises ProducerError for a request, episode or setup that is not there, naming the nearest, and where the channel
    or the episode has an error: nothing wrong is handed out.
    """
    desk = Desk(root, out)
    return desk.answer(request_called(desk.library, request_id), setup)


def reply_pasted(
    root: Path, messages: Sequence[Pasted], under: str | None = None, out: Path | None = None
) -> tuple[Reply, ...]:
    """A reply to each pasted message, in their order; `under` is the episode they were written below.

    The replies' `request` is None. Raises ProducerError as `reply_to` does.
    """
    desk = Desk(root, out)
    if under is not None:
        episode_called(desk.library, under)
    return tuple(desk.answer(unlogged(one), under=under) for one in messages)


def unlogged(message: Pasted) -> Request:
    """A pasted message as a request without an id."""
    return Request.model_construct(id="", from_=message.handle, text=message.text)


class Desk:
    """Answers messages about one library; what several answers need is made once."""

    def __init__(self, root: Path, out: Path | None = None) -> None:
        from producer.jobs.kit import kit_for

        self.library, self._findings = load(root)
        if self.library.channel is None:
            raise ProducerError("channel.yaml cannot be read; 'producer check' says why")
        self._channel: Channel = self.library.channel
        self._kit, self._second = kit_for(root), SecondOpinion(out)
        self._reader = Reader(self.library)
        self._cases: dict[str, Case] = {}

    def answer(self, request: Request, setup: str | None = None, under: str | None = None) -> Reply:
        """The reply to one message; what the author filled in comes before what is read from its text."""
        from producer.replies.reply import reply

        whole = self._reader.understood(request, under)
        choice = choose(self.library, whole.request, setup, under)
        case = guide = opinions = None
        if choice.episode is not None and choice.setup is not None:
            case = self._told(choice.episode)
            opinions = self._second.of(case).get(choice.setup)
            guide = _guide(case, choice.setup, opinions)
        promised = replace(choice, episode=_ahead(choice.episode), coming=_ahead(choice.coming))
        made = reply(self.library, self._channel, whole, promised, case, guide, self._kit, opinions)
        return replace(made, notes=tuple(_notes(choice, made.text)))

    def _told(self, episode: Episode) -> Case:
        name = episode.episode
        if name not in self._cases:
            self._cases[name] = _told(self.library, episode, self._findings)
        return self._cases[name]


def _ahead(episode: Episode | None) -> Episode | None:
    """The episode without a day that has passed: nobody is promised yesterday."""
    if episode is None or not _passed(episode):
        return episode
    return episode.model_copy(update={"planned": None})


def _passed(episode: Episode) -> bool:
    return episode.status != "published" and episode.planned is not None and episode.planned < today()


def _notes(choice: Choice, text: str) -> Iterator[str]:
    """What the author should know before sending it."""
    if IN_LOG in text:
        yield IN_LOG_NOTE
    episode = choice.episode or choice.coming
    if episode is not None and _passed(episode):
        when = f"{episode.episode} was planned for {episode.planned}, which has passed"
        yield f"{when}, so the reply names no day: correct its 'planned'"


def reply_json(reply: Reply) -> str:
    """The shape that other programs rely on."""
    return json.dumps({"format": 1, **_shape(reply)}, ensure_ascii=False, indent=2)


def replies_json(replies: Sequence[Reply]) -> str:
    """The shape of several, in the order pasted."""
    return json.dumps({"format": 1, "replies": [_shape(one) for one in replies]}, ensure_ascii=False, indent=2)


def request_called(library: Library, request_id: str) -> Request:
    """The request of that id. Raises ProducerError, naming the nearest, where it is not in the log."""
    if request_id in library.requests:
        return library.requests[request_id]
    hint = nearest(request_id, library.requests)
    raise ProducerError(f"there is no request '{request_id[:60]}' in the log; {hint}")


def _shape(reply: Reply) -> dict[str, Any]:
    return {
        "request": reply.request,
        "episode": reply.episode,
        "setup": reply.setup,
        "understood": reply.understood,
        "text": reply.text,
    }


def _told(library: Library, episode: Episode, findings: list[Finding]) -> Case:
    """The episode with its references filled in."""
    from producer.checks.registry import run
    from producer.jobs.check import Checked
    from producer.jobs.prose import filled

    name = episode.episode
    checked = Checked(library, (*findings, *run(library, {}, (name,))))
    if checked.blocked(name):
        raise ProducerError(f"the episode '{name}' has errors, so nothing is told from it; 'producer check {name}'")
    return library.case(filled(library.case(episode)))


def _guide(case: Case, setup: str, opinions: Opinions | None) -> Guide | None:
    from producer.handling.guide import guide

    sheet = case.sheet(setup)
    return guide(case, sheet, opinions) if sheet is not None else None
