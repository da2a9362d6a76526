"""What an episode would publish, in the figures that the platform limits."""

from __future__ import annotations

from producer.jobs.dossier import dossier
from producer.jobs.opinions import SecondOpinion
from producer.jobs.own_pace import OwnPace
from producer.model.episode import Episode
from producer.model.library import Library
from producer.model.summary import Summary
from producer.render.kit import Kit


def summary_of(
    library: Library, episode: Episode, kit: Kit, second: SecondOpinion, pace: OwnPace | None = None
) -> Summary | None:
    """The summary of an episode, None where it cannot be put together yet."""
    from producer.outputs.published import summary

    whole = dossier(library.case(episode), second, pace)
    return summary(whole, kit) if whole is not None else None
