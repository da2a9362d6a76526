"""What an episode would publish, in the figures that the platform limits: nothing is written, nothing drawn."""

from __future__ import annotations

from collections.abc import Iterator

from producer.captions.profile import reading_profile
from producer.captions.speed import too_fast
from producer.model.dossier import Dossier
from producer.model.summary import Summary
from producer.outputs.captions import chapters, shown
from producer.outputs.carddata import card_data, episode_digest
from producer.outputs.description import description, published_title
from producer.outputs.tags import joined, tags
from producer.render.kit import Kit


def summary(dossier: Dossier, kit: Kit) -> Summary:
    """The summary of one episode, a few milliseconds; texts are those that `notes` writes."""
    listed = chapters(dossier)
    text = description(dossier, kit, listed)
    return Summary(
        title=published_title(dossier),
        description=text,
        description_bytes=len(text.encode("utf-8")),
        tags_characters=len(joined(tags(dossier))),
        chapters=tuple((one.start_ms, one.title) for one in listed.chapters),
        chapter_problem=listed.reason,
        fast_captions=tuple(_fast(dossier)),
        digest=_digest(dossier),
        length_ms=dossier.told.timeline.total_ms,
    )


def _fast(dossier: Dossier) -> Iterator[tuple[int, str, str]]:
    profile = reading_profile(dossier.channel.captions)
    for cue in shown(dossier):
        why = too_fast(cue, profile)
        if why is not None:
            yield cue.start_ms, cue.text, why


def _digest(dossier: Dossier) -> str:
    """The same as a stamp's for unchanged cards; of what the author wrote, so it holds while nothing is built."""
    garage, track, episode = dossier.garage, dossier.track, dossier.episode
    return episode_digest(card_data(garage, track, episode, one, dossier.conditions) for one in dossier.sheets)
