"""What the tests of outputs share."""

from __future__ import annotations

import pytest

from producer.model.dossier import Dossier
from producer.render.kit import Kit
from tests.outputs.dossiers import sample_dossier


@pytest.fixture(scope="session")
def kit() -> Kit:
    return Kit()


@pytest.fixture(scope="session")
def dossier() -> Dossier:
    return sample_dossier()
