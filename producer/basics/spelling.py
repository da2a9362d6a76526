"""American or British spelling of the trade's words in whatever is rendered."""

from __future__ import annotations

import re

# British form -> American form. Whole words, the case of the first letter kept.
_PAIRS = (
    ("tyre", "tire"),
    ("tyres", "tires"),
    ("centre", "center"),
    ("centres", "centers"),
    ("colour", "color"),
    ("grey", "gray"),
    ("metre", "meter"),
    ("metres", "meters"),
    ("litre", "liter"),
    ("litres", "liters"),
)
_US = dict(_PAIRS)
_UK = {american: british for british, american in _PAIRS}
_WORD = {
    "us": re.compile(r"\b(" + "|".join(_US) + r")\b", re.IGNORECASE),
    "uk": re.compile(r"\b(" + "|".join(_UK) + r")\b", re.IGNORECASE),
}


def spell(text: str, spelling: str) -> str:
    """`text` with the program's own words in the author's spelling (`us` or `uk`); prose is left alone by callers."""
    table = _US if spelling == "us" else _UK

    def swap(match: re.Match[str]) -> str:
        word = match.group()
        other = table[word.lower()]
        return other.capitalize() if word[0].isupper() else other

    return _WORD[spelling].sub(swap, text)
