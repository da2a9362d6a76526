"""One reply: the text to paste, and what it was made from."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Any

from producer.basics.errors import ProducerError
from producer.basics.figures import NO_BREAK
from producer.model.channel import Channel
from producer.model.guide import Guide
from producer.model.library import Case, Library
from producer.model.opinion import Opinions
from producer.render.kit import Kit
from producer.replies.choose import Choice
from producer.replies.fill import Filler
from producer.replies.shorten import shorter
from producer.replies.understand import Understood, kind, understood_json
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
    """`request`, `episode` and `setup` are ids: None for a message that is not in the log, and where no setup answers.

    `understood` is its JSON shape; `notes` are for the author alone.
    """

    request: str | None
    episode: str | None
    setup: str | None
    understood: dict[str, Any]
    text: str
    notes: tuple[str, ...] = ()

    def called(self, name: str) -> Reply:
        """The same for a message that has come into the log as `name`."""
        return replace(self, request=name)


def reply(
    library: Library,
    channel: Channel,
    whole: Understood,
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
    filler = Filler(library, channel, whole, choice, case, guide, opinions)
    template = _TEMPLATES["other" if whole.elsewhere else kind(whole.request)]
    text = _fitting(filler.view(), template, channel.replies.characters, kit)
    episode = choice.episode.episode if choice.episode else None
    told = understood_json(whole, choice, filler.lacking)
    return Reply(whole.request.id or None, episode, choice.setup, told, text)


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
