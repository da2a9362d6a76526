"""What an episode's take was heard as, for whoever needs its times or its findings."""

from __future__ import annotations

from dataclasses import replace

from producer.model.dossier import Dossier
from producer.model.library import Case
from producer.model.take import Take, TakeFinding


def heard(case: Case, dossier: Dossier) -> Take | None:
    """The take of an episode, None without captions. What the author lives with (`allow:`) is left out."""
    captions = case.library.takes.get(case.episode.episode, ())
    if not captions:
        return None
    from producer.captions.reading import read_captions
    from producer.model.take import TakeFile
    from producer.take.take import hear

    files = [TakeFile(one.of, read_captions(one.data, one.file)) for one in captions]
    tracks = {name: one.name for name, one in case.library.tracks.items()}
    garages = {name: one.name for name, one in case.library.garages.items()}
    found = hear(files, dossier, tracks, garages)
    if found is None or not case.episode.allow:
        return found
    return replace(found, findings=tuple(one for one in found.findings if not _allowed(one, case)))


def _allowed(one: TakeFinding, case: Case) -> bool:
    """Whether a waiver hides a finding: its code, and what it is about where the waiver says so."""
    garage = case.garage
    for waiver in case.episode.allow:
        if waiver.code != one.code:
            continue
        covered = garage.covers(waiver.for_) if garage is not None and waiver.for_ else ()
        if waiver.for_ in (None, one.parameter, one.setup) or one.parameter in covered:
            return True
    return False
