"""Claims beside words about the car that were not understood: silent as claims, their figures still statements."""

from __future__ import annotations

import pytest

from producer.language.claims import claims
from producer.language.statements import statements
from producer.language.terms import Vocabulary


@pytest.mark.parametrize(
    "text",
    [
        "the wedge is at 52 and it feels like a barge in the middle",
        "at 775 in the right front spring it just will not take a set on entry",
        "if it does that funny thing on entry, drop the right front to 725",
    ],
)
def test_a_claim_that_may_lack_its_effect_is_not_made(vocabulary: Vocabulary, text: str) -> None:
    assert claims(text, vocabulary) == []
    (found,) = statements(text, vocabulary)
    assert not found.whole


@pytest.mark.parametrize(
    "text",
    [
        "the wedge is at 52 and it pushes in the middle",
        "i'm at 300 on the right rear spring because the left front was lifting through the middle",
        "the left rear spring is 250 and that frees up the right rear to do its job",
        "in the middle of the season i went to 52 on the wedge",
        "if you have a long run coming, drop the right front to 725",
    ],
)
def test_what_needs_no_more_is_whole(vocabulary: Vocabulary, text: str) -> None:
    assert len(claims(text, vocabulary)) == 1
