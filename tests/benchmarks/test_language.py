"""How fast prose and messages are read: run by hand with `pytest -m benchmark -s`; figures are printed."""

from __future__ import annotations

import json
import tracemalloc
from collections.abc import Callable
from pathlib import Path
from time import process_time

import pytest
import yaml

from producer.language.claims import claims
from producer.language.messages import message_reader
from producer.language.terms import Vocabulary
from producer.language.tokens import sentences
from producer.model.garage import Garage

pytestmark = pytest.mark.benchmark
DATA = Path(__file__).parents[1] / "data"
NOISE = ("tight ", "off 4 and ", "right front 700 and ", "if it is tight ", "turn in the middle ", "a", "7/8 -")


@pytest.fixture(scope="module")
def garage() -> Garage:
    # BaseLoader: every scalar is text, as our own reader hands it on.
    text = (DATA / "claims" / "garage.yaml").read_text(encoding="utf-8")
    return Garage.model_validate(yaml.load(text, Loader=yaml.BaseLoader))  # noqa: S506


def texts(kind: str) -> list[str]:
    files = (DATA / "claims" / f"{kind}.jsonl", DATA / f"{kind}-own.jsonl")
    return [json.loads(line)["text"] for file in files for line in file.read_text(encoding="utf-8").splitlines()]


def tell(what: str, said: list[str], read: Callable[[str], object]) -> None:
    count = sum(1 for text in said for _ in sentences(text))
    for text in said:
        read(text)
    tracemalloc.start()
    for text in said:
        read(text)
    first = tracemalloc.get_traced_memory()[0]
    for _ in range(3):
        for text in said:
            read(text)
    grown = tracemalloc.get_traced_memory()[0] - first
    tracemalloc.stop()
    begin = process_time()
    for _ in range(5):
        for text in said:
            read(text)
    print(f"\n{what}: {5 * count / (process_time() - begin):.0f} sentences/s, {grown} bytes more after three rounds")
    for piece in NOISE:
        text = (piece * (100_000 // len(piece) + 1))[:100_000]
        begin = process_time()
        read(text)
        print(f"  100 kB of '{piece.strip()}': {process_time() - begin:.2f} s")


def test_claims(garage: Garage) -> None:
    vocabulary = Vocabulary(garage)
    tell("claims", texts("claims"), lambda text: claims(text, vocabulary))


def test_messages(garage: Garage) -> None:
    reader = message_reader({garage.garage: garage}, {})
    tell("messages", texts("messages"), reader.read)
