"""Tables of phrases: phrase -> data, written close together."""

from __future__ import annotations

from itertools import product


def each(text: str, data: object = None) -> dict[str, object]:
    """Phrases divided by `|`, all with the same data."""
    return {phrase.strip(): data for phrase in text.replace("\n", " ").split("|") if phrase.strip()}


def ways(*parts: str, data: object = None) -> dict[str, object]:
    """Every way through several tables of `|`; an empty part may be left out."""
    found = product(*(part.split("|") for part in parts))
    return {" ".join(one for one in way if one): data for way in found}
