"""How fast a take is heard: run by hand with `pytest -m benchmark -s`; none of the figures is asserted.

Aims: 30 minutes under 0.3 s after imports, three hours under 3 s.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from time import perf_counter

import pytest

from producer.captions.reading import read_captions
from producer.jobs.dossier import dossier
from producer.library.load import load
from producer.model.dossier import Dossier
from producer.model.script import Narration
from producer.model.take import TakeFile
from producer.take.take import hear
from tests.take.takes import Maker, plain_srt, script_texts

pytestmark = pytest.mark.benchmark
NAMES: tuple[Mapping[str, str], Mapping[str, str]] = ({"marrow-creek": "Marrow Creek"}, {"grand-sedan": "Grand Sedan"})


@pytest.fixture(scope="module")
def sedan(demo: Path) -> Dossier:
    library, _ = load(demo)
    found = dossier(library.case(library.episodes["marrow-creek-grand-sedan"]))
    assert found is not None
    return found


def best_of(files: list[TakeFile], whole: Dossier, times: int = 3) -> float:
    hear(files, whole, *NAMES)
    found = []
    for _ in range(times):
        start = perf_counter()
        hear(files, whole, *NAMES)
        found.append(perf_counter() - start)
    return min(found)


def minutes(text: str, count: int) -> str:
    words = text.split()
    return " ".join((words * (count * 150 // len(words) + 1))[: count * 150])


@pytest.mark.parametrize("count", [30, 180])
def test_a_take_of_so_many_minutes(sedan: Dossier, count: int) -> None:
    """The script over and over, held against a script as long."""
    texts = script_texts(sedan)
    said = minutes(" ".join(texts.values()), count)
    times = count * 150 // len(" ".join(texts.values()).split()) + 1
    long = replace(sedan, narration=Narration(sedan.narration.sections * times))
    file = TakeFile("raw", read_captions(plain_srt(said).encode(), "take.srt"))
    print(f"\n{count} minutes, script as long: {best_of([file], long):.2f} s; ", end="")
    print(f"script of one episode: {best_of([file], sedan):.2f} s")


def test_with_noise(sedan: Dossier) -> None:
    made = Maker(sedan, 3).read()
    print(f"\na noisy take of {len(made.text) // 1000} kB: {best_of(made.files, sedan):.3f} s")
