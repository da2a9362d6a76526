"""Damage of every kind to the demo's files: a check never raises, and points inside the files it read."""

from __future__ import annotations

import os
import random
import shutil
from pathlib import Path

import pytest

from producer.basics.errors import ProducerError
from producer.jobs.check import check

pytestmark = pytest.mark.long
ROUNDS = int(os.environ.get("FUZZ_ROUNDS", "60"))  # a file; a night's worth is a few thousand
FILES = (
    "channel.yaml",
    "garages/club-coupe.yaml",
    "tracks/lantern-flats.yaml",
    "requests/2026-09.yaml",
    "lantern-flats-club-coupe/episode.yaml",
)
PIECES = (
    *("[", "{", "}", ":", "- ", "\t", "&a ", "*a", "!x ", "'", '"', "|", ">", "{{", "}}", "{%", "~", "#", "-"),
    *(".nan", "1e9", "9" * 400, "\u2028", "\x00", "é", "\ud7ff", "  ", "\n", "\r\n", "null", "yes", "2026-13-45"),
)


def damaged(text: str, dice: random.Random) -> bytes:
    """One to four damages: a piece put in, a stretch taken out, doubled or moved, a byte spoilt."""
    for _ in range(dice.randint(1, 4)):
        start = dice.randrange(len(text) + 1)
        end = min(len(text), start + dice.randint(1, 40))
        kind = dice.randrange(4)
        if kind == 0:
            text = text[:start] + dice.choice(PIECES) + text[start:]
        elif kind == 1:
            text = text[:start] + text[end:]
        elif kind == 2:
            text = text[:end] + text[start:end] + text[end:]
        else:
            other = dice.randrange(len(text) + 1)
            text = text[:other] + text[start:end] + text[other:]
    data = text.encode("utf-8", "replace")
    if dice.random() < 0.1:
        at = dice.randrange(len(data) + 1)
        data = data[:at] + bytes([dice.randrange(256)]) + data[at:]
    return data


@pytest.mark.parametrize("file", FILES)
def test_damage_is_told_and_never_raises(file: str, demo: Path, tmp_path: Path) -> None:
    root = tmp_path / "library"
    shutil.copytree(demo, root)
    text = (demo / file).read_text(encoding="utf-8")
    dice = random.Random(f"damage to {file}")  # the same damages in every run
    for round_ in range(ROUNDS):
        data = damaged(text, dice)
        (root / file).write_bytes(data)
        try:
            checked = check(root)
        except ProducerError:
            continue
        except Exception as error:
            (tmp_path / "culprit").write_bytes(data)
            raise AssertionError(f"round {round_} of {file} raises; see {tmp_path / 'culprit'}") from error
        for one in checked.findings:
            source = checked.library.files.get(one.place.file)
            if source is not None:
                assert one.place.line <= source.text.count("\n") + 2, one
