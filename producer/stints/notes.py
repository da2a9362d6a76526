"""What an author's note on a lap means: whether the lap counts."""

from __future__ import annotations

import re

# "no traffic" and "clear of the slower car" say that the lap is good.
_NEGATED = re.compile(
    r"\b(?:no|not|never|without|clear of|free of|ahead of|after|before|almost|nearly)\s+"
    r"(?:(?:a|an|any|the|another|in|much)\s+)*[\w'-]+(?:\s+(?:cars?|laps?|flag|stop))?",
    re.IGNORECASE,
)
# Why a lap does not count -> the words that say so. The first that is found gives the reason.
_REASONS: tuple[tuple[str, str], ...] = (
    ("out lap", r"out[ -]?laps?|^out$|ol"),
    ("in lap", r"in[ -]?laps?|^in$"),
    ("pit stop", r"pit(?:s|ted|ting)?|pit[ -]?(?:stop|lane|road)s?|boxed|refuel(?:l?ed|l?ing)?|new tyres?|new tires?"),
    ("warm-up or cool-down", r"warm[ -]?up|warming(?: up)?|cool[ -]?down|formation|pace (?:car|lap)s?"),
    ("caution", r"cautions?|yellows?(?: flag)?|safety car|restart(?:ed)?|red flag"),
    ("traffic", r"traffic|lapp(?:ed|ing)(?: \w+)? cars?|slow(?:er)? cars?|back ?markers?|blocked|held up|passed|"
                r"passing|overt(?:ook|ak\w+)|side by side|two wide|let \w+ (?:by|past|through)"),
    ("draft", r"draft(?:ed|ing)?|slipstream(?:ed|ing)?|in (?:a|the) tow|got a tow|tow"),
    ("spin", r"spun|spin|half[ -]spin"),
    ("contact", r"contact|hit|crash(?:ed)?|(?:the )?wall|fence|scraped?|brushed|bumped|damage[d]?"),
    ("slide", r"slid|big slide|big moment|sideways|caught it"),
    ("lift", r"lifted|big lift"),
    ("mistake", r"mistakes?|errors?|missed|my fault|bad laps?|messed up|botched|off track|ran wide|stalled"),
    ("interrupted", r"paused?|froze|frozen|lag(?:ged)?|disconnect(?:ed)?|stutter(?:ed)?"),
    ("marked by the author", r"excluded?|skip(?:ped)?|ignored?|leave out|left out|discard(?:ed)?|scratch|invalid|x"),
)  # fmt: skip
_WORDS = tuple((why, re.compile(rf"(?<![\w-])(?:{words})(?![\w-])", re.IGNORECASE)) for why, words in _REASONS)


def why_left_out(note: str) -> str:
    """Why a lap with this note does not count: `out lap`, `traffic` ...; "" where nothing in it says so."""
    said = _NEGATED.sub(" ", note).strip()
    return next((why for why, words in _WORDS if words.search(said)), "")
