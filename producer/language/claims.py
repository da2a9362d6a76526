"""Claims of a prose text: which setting, and the number, movement or effect that is said of it."""

from __future__ import annotations

from producer.language.statements import statements
from producer.language.terms import Vocabulary
from producer.model.claim import Claim


def claims(text: str, vocabulary: Vocabulary, subject: tuple[str, ...] = ()) -> list[Claim]:
    """The claims of a text in order, silent where a reading is doubtful or lacks a part.

    `subject`: the addresses that a reason is for. In a sentence that names no other setting a movement, a number with
    a unit and a count of clicks, steps or points are the subject's; a bare number is nobody's.
    """
    return [one.claim for one in statements(text, vocabulary, subject) if one.whole]
