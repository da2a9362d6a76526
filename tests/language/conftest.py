"""The garage that the labelled sentences speak about."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from producer.language.terms import Vocabulary
from producer.model.garage import Garage

DATA = Path(__file__).parents[1] / "data" / "claims"


@pytest.fixture(scope="session")
def garage() -> Garage:
    # BaseLoader: every scalar is text, as our own reader hands it on.
    read: Any = yaml.load((DATA / "garage.yaml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader)  # noqa: S506
    return Garage.model_validate(read)


@pytest.fixture(scope="session")
def vocabulary(garage: Garage) -> Vocabulary:
    return Vocabulary(garage)
