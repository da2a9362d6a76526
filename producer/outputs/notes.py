"""The show notes: notes.txt, tags.txt and pinned-comment.txt to paste, notes.md to read beforehand."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from producer.model.dossier import Dossier
from producer.outputs.captions import chapters
from producer.outputs.description import description, published_title, without_angles
from producer.outputs.outline import episode_line, stamp_line
from producer.outputs.pinned import pinned_comment
from producer.outputs.tags import joined, tags
from producer.render.document import Document
from producer.render.kit import Kit


@dataclass(frozen=True, slots=True)
class Counted:
    """A length against the platform's limit: `66 of at most 100 characters`; `over` says by how much ("" within)."""

    count: str
    over: str


@dataclass(frozen=True, slots=True)
class Notes:
    """What `notes.md.j2` shows. `chapters` says what they are timed from, or why there are none; `fence` is longer
    than any row of backticks in the texts."""

    title: str
    episode: str
    stamp: str
    title_count: Counted
    description: str
    description_count: Counted
    chapters: str
    tags: str
    tags_count: Counted
    comment: str
    fence: str
    caution: str


def documents(dossier: Dossier, kit: Kit) -> Iterator[Document]:
    """The three texts to paste and the page with all of them."""
    view = _view(dossier, kit)
    yield Document.of_text("notes.txt", view.description)
    yield Document.of_text("tags.txt", f"{view.tags}\n")
    yield Document.of_text("pinned-comment.txt", view.comment)
    yield Document.of_text("notes.md", without_angles(kit.text("notes.md.j2", view)))


def _view(dossier: Dossier, kit: Kit) -> Notes:
    title, limits = published_title(dossier), dossier.channel.platform
    text, comment, listed = description(dossier, kit), pinned_comment(dossier, kit), joined(tags(dossier))
    size = len(text.encode("utf-8"))
    return Notes(
        title=title,
        episode=episode_line(dossier),
        stamp=stamp_line(dossier),
        title_count=_counted(len(title), limits.title_characters, "characters"),
        description=text,
        description_count=_counted(size, limits.description_bytes, "bytes"),
        chapters=_chapters(dossier),
        tags=listed,
        tags_count=_counted(len(listed), limits.tags_characters, "characters"),
        comment=comment,
        fence=_fence(f"{title}\n{text}\n{listed}\n{comment}"),
        caution=dossier.channel.caution,
    )


def _counted(count: int, limit: int, unit: str) -> Counted:
    over = count - limit
    return Counted(f"{count} of at most {limit} {unit}", f"{over} too many" if over > 0 else "")


def _chapters(dossier: Dossier) -> str:
    found = chapters(dossier)
    if found.reason:
        return f"No chapters: {found.reason}."
    times = {
        "estimate": "estimated from the script; they are timed anew once there is a cut",
        "raw": "those of the take as recorded; they are timed anew once there is a cut",
        "cut": "those of the cut",
    }
    return f"{len(found.chapters)} chapters, times {times[dossier.told.timeline.source]}."


def _fence(text: str) -> str:
    longest = max((len(row) for row in re.findall("`+", text)), default=0)
    return "`" * max(3, longest + 1)
