"""The reply to one message of the log."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

from producer.basics.errors import ProducerError
from producer.basics.finding import Finding
from producer.jobs.opinions import SecondOpinion
from producer.library.load import load
from producer.model.episode import Episode
from producer.model.guide import Guide
from producer.model.library import Case, Library
from producer.model.opinion import Opinions
from producer.model.request import Request
from producer.replies.choose import choose, nearest

if TYPE_CHECKING:
    from producer.replies.reply import Reply


def reply_to(root: Path, request_id: str, setup: str | None, out: Path | None = None) -> Reply:
    """The reply to a request, with figures of the setup that fits it best, or of `setup`.

    Raises ProducerError for a request, episode or setup that is not there, naming the nearest, and where the channel
    or the episode has an error: nothing wrong is handed out.
    """
    from producer.jobs.kit import kit_for
    from producer.replies.reply import reply

    library, findings = load(root)
    if library.channel is None:
        raise ProducerError("channel.yaml cannot be read; 'producer check' says why")
    request = _request(library, request_id)
    choice = choose(library, request, setup)
    case = guide = opinions = None
    if choice.episode is not None and choice.setup is not None:
        case = _told(library, choice.episode, findings)
        opinions = SecondOpinion(out).of(case).get(choice.setup)
        guide = _guide(case, choice.setup, opinions)
    return reply(library, library.channel, request, choice, case, guide, kit_for(root), opinions)


def reply_json(reply: Reply) -> str:
    """The shape that other programs rely on."""
    shape = {
        "format": 1,
        "request": reply.request,
        "episode": reply.episode,
        "setup": reply.setup,
        "understood": reply.understood,
        "text": reply.text,
    }
    return json.dumps(shape, ensure_ascii=False, indent=2)


def _request(library: Library, request_id: str) -> Request:
    if request_id in library.requests:
        return library.requests[request_id]
    hint = nearest(request_id, library.requests)
    raise ProducerError(f"there is no request '{request_id[:60]}' in the log; {hint}")


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
