"""What a setup is meant for, said or only called so."""

from __future__ import annotations

import pytest

from producer.model.episode import Setup
from producer.stints.meant import purpose_of


@pytest.mark.parametrize(
    ("name", "purpose", "expected"),
    [
        ("Tuesday", "long run", "long run"),
        ("Short run", "long run", "long run"),
        ("Long run", None, "long run"),
        ("The long-run car", None, "long run"),
        ("Qualifying", None, "qualifying"),
        ("Tuesday", None, ""),
        ("Runs long", None, ""),
    ],
)
def test_the_author_s_word_first_then_the_name(name: str, purpose: str | None, expected: str) -> None:
    assert (
        purpose_of(Setup.model_validate({"setup": "a", "name": name, "purpose": purpose, "values": {"x": 1}}))
        == expected
    )
