"""The tags of an episode: the channel's, its track and class, what the setups are for, words of the trade."""

from __future__ import annotations

import re
from collections.abc import Iterator

from producer.model.dossier import Dossier
from producer.script.speaker import small

_TRADE = ("oval setup", "stock car setup", "tight and loose", "setup guide", "simulation at home")
_APART = re.compile(r"[<>,\s]+")


def tags(dossier: Dossier) -> tuple[str, ...]:
    """Each once (small or large), in the order of their weight, without commas and angle brackets.

    Joined by commas they keep the platform's limit as long as the channel's own do: those are never left out, ours
    are, whole and from the first that does not fit.
    """
    limit = dossier.channel.platform.tags_characters
    own = [one for tag in dossier.channel.tags for one in tag.split(",")]
    chosen = _once(own)
    for tag in _once([*own, *_of_episode(dossier)])[len(chosen) :]:
        if len(joined((*chosen, tag))) > limit:
            break
        chosen.append(tag)
    return tuple(chosen)


def joined(found: tuple[str, ...]) -> str:
    """The tags as they are pasted and counted."""
    return ",".join(found)


def _of_episode(dossier: Dossier) -> Iterator[str]:
    track, garage = dossier.track.name, dossier.garage.name
    yield from (track, garage, f"{track} setup", f"{garage} setup")
    for sheet in dossier.sheets:
        yield f"{sheet.setup.purpose or small(sheet.name)} setup"
    yield from _TRADE


def _once(found: list[str]) -> list[str]:
    """Clean and each in its first form and place."""
    kept: dict[str, str] = {}
    for tag in found:
        clean = _APART.sub(" ", tag).strip()
        if clean:
            kept.setdefault(clean.casefold(), clean)
    return list(kept.values())
