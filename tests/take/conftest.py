"""The demo's episodes, and takes of them whose words a test writes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from producer.captions.reading import read_captions
from producer.jobs.dossier import dossier
from producer.library.load import load
from producer.model.dossier import Dossier
from producer.model.take import Take, TakeFile
from producer.take.take import hear
from tests.take.takes import plain_srt, script_texts

EPISODE = "marrow-creek-grand-sedan"
TRACKS = {"marrow-creek": "Marrow Creek", "lantern-flats": "Lantern Flats", "gannet-bowl": "Gannet Bowl"}
GARAGES = {"grand-sedan": "Grand Sedan", "club-coupe": "Club Coupe"}

Heard = Callable[..., Take]


@pytest.fixture(scope="session")
def shelf(demo: Path) -> Mapping[str, Dossier]:
    """The demo's dossiers by episode, those with something to say."""
    library, _ = load(demo)
    made = {name: dossier(library.case(one)) for name, one in library.episodes.items()}
    return {name: one for name, one in made.items() if one is not None and len(one.narration.sections) > 5}


@pytest.fixture(scope="session")
def sedan(shelf: Mapping[str, Dossier]) -> Dossier:
    return shelf[EPISODE]


@pytest.fixture(scope="session")
def told(sedan: Dossier) -> Heard:
    """Hear the sedan's script read aloud, some sections with other words; `more` are pick-ups, `order` the sections."""

    def run(*more: str, order: tuple[str, ...] = (), cut: str = "", **sections: str) -> Take:
        texts = script_texts(sedan)
        for name, text in sections.items():
            texts[name.replace("__", ".")] = text
        names = order or tuple(texts)
        files = [read("take.srt", *(texts[name] for name in names))]
        files += [read(f"take-{number}.srt", text) for number, text in enumerate(more, 2)]
        if cut:
            files.append(TakeFile("cut", read_captions(plain_srt(cut).encode(), "cut.srt")))
        found = hear(files, sedan, TRACKS, GARAGES)
        assert found is not None
        return found

    return run


def read(name: str, *texts: str) -> TakeFile:
    return TakeFile("raw", read_captions(plain_srt(" ".join(texts)).encode(), name))
