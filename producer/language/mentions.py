"""Where a text names settings, parameters or corners."""

from __future__ import annotations

from producer.language.items import items
from producer.language.terms import Mention, Vocabulary
from producer.language.tokens import sentences


def mentions(text: str, vocabulary: Vocabulary) -> tuple[Mention, ...]:
    """Every mention in a text, in order. A bare corner or parameter is one, too, with no addresses."""
    found = (items(sentence, vocabulary) for sentence in sentences(text))
    return tuple(one.data for run in found for one in run if isinstance(one.data, Mention))
