"""One reply: the text to paste, and what it was made from."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from producer.basics.errors import ProducerError
from producer.basics.figures import NO_BREAK
from producer.model.channel import Channel
from producer.model.guide import Guide
from producer.model.library import Case, Library
from producer.model.opinion import Opinions
from producer.model.request import Request
from producer.render.kit import Kit
from producer.replies.choose import Choice
from producer.replies.fill import Filler
from producer.replies.shorten import shorter
from producer.replies.understand import kind, understood_json
from producer.replies.view import ReplyView

_BLANK = re.compile(r"\n{3,}")
_TEMPLATES = {
    "help": "reply-help.txt.j2",
    "track request": "reply-track-request.txt.j2",
    "thanks": "reply-thanks.txt.j2",
    "correction": "reply-correction.txt.j2",
    "other": "reply-other.txt.j2",
}


@dataclass(frozen=True, slots=True)
class Reply:
    """`request`, `episode` and `setup` are ids (None where no setup answers); `understood` is its JSON shape."""

    request: str
    episode: str | None
    setup: str | None
    understood: dict[str, Any]
    text: str


def reply(
    library: Library,
    channel: Channel,
    request: Request,
    choice: Choice,
    case: Case | None,
    guide: Guide | None,
    kit: Kit,
    opinions: Opinions | None = None,
) -> Reply:
    """The reply to one message, within the channel's number of characters.

    `case` is the chosen episode with its prose filled in and `guide` and `opinions` are of the chosen setup; None
    where no setup answers. Raises ProducerError where not even greeting and caution fit.
    """
    filler = Filler(library, channel, request, choice, case, guide, opinions)
    text = _fitting(filler.view(), _TEMPLATES[kind(request)], channel.replies.characters, kit)
    episode = choice.episode.episode if choice.episode else None
    return Reply(request.id, episode, choice.setup, understood_json(request, choice, filler.lacking), text)


def _fitting(view: ReplyView, template: str, most: int, kit: Kit) -> str:
    text = ""
    for one in shorter(view):
        text = _cautioned(_tidy(kit.text(template, one)), view)
        if len(text) <= most:
            return text
    raise ProducerError(
        f"a reply may have {most} characters (replies in channel.yaml), and greeting and caution alone have {len(text)}"
    )


def _cautioned(text: str, view: ReplyView) -> str:
    """An author's own template may forget the caution; a reply never goes without."""
    return text if view.caution in text else f"{text}\n\n{view.caution}"


def _tidy(text: str) -> str:
    """As it can be pasted anywhere: plain spaces, no blanks at the ends of lines, at most one empty line."""
    lines = [line.rstrip() for line in text.replace(NO_BREAK, " ").split("\n")]
    return _BLANK.sub("\n\n", "\n".join(lines)).strip()
