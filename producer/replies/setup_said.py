"""Which of an episode's setups a message speaks of: "your long run one", "the short run card"."""

from __future__ import annotations

import re

from producer.language.tokens import listed
from producer.model.episode import Episode, Setup

_PURPOSES = {
    "short run": r"short[ -]?run",
    "long run": r"long[ -]?run",
    "qualifying": r"(?:quali(?:fying|fier|fy)?|qualy)",
}
_NOUN = r"(?:set[ -]?ups?|one|card|sheet|version|file|set|baseline|numbers|settings)"
# "in the long run" says nothing of a setup, "the long run one" does.
_NAMED = (
    r"(?:\b{name}\s+{noun}\b|\b(?:your|ur|yr|this|that)\s+{name}\b"
    r"|(?<!\bin )(?<!\bon )(?<!ver )(?<!or )\bthe\s+{name}\b|\bthe\s+{name}\s+(?:at|for|from)\b)"
)
# Said by itself: "Gannet long run: it pushes", "loose when I lift, short run". "On a long run" is a drive.
_ALONE = r"(?:^|(?P<before>[\w'\u2019]+)\W+){name}(?=$|\s*[^\w\s'\u2019]|\s+(?:is|was|has|feels|keeps|gets)\b)"
_OF_A_DRIVE = listed(
    "a an the my our his their in on over during after for of with to into through every each any next one "
    "good great nice bad real lap proper decent"
)


def setup_said(text: str, episode: Episode) -> str | None:
    """The id of the one setup that a message names, None where it names none or several."""
    plain = " ".join(text.casefold().split())
    found = [one.setup for one in episode.setups if _is_named(one, plain)]
    return found[0] if len(found) == 1 else None


def purpose_lacking(text: str, episode: Episode) -> str | None:
    """The run type of a setup that a message speaks of and the episode has not: `qualifying`."""
    plain = " ".join(text.casefold().split())
    there = {one.purpose for one in episode.setups}
    named = [purpose for purpose, name in _PURPOSES.items() if re.search(rf"\b{name}\s+{_NOUN}\b", plain)]
    return next((one for one in named if one not in there), None)


def _is_named(setup: Setup, text: str) -> bool:
    names = [re.escape(" ".join(setup.name.casefold().split()))]
    purpose = [_PURPOSES[setup.purpose]] if setup.purpose else []
    named = (re.search(_NAMED.format(name=name, noun=_NOUN), text) for name in (*names, *purpose))
    # Only of a run type: a name of the author's own may be any word.
    return any(named) or any(_alone(name, text) for name in purpose)


def _alone(purpose: str, text: str) -> bool:
    found = re.finditer(_ALONE.format(name=purpose), text)
    return any(one["before"] not in _OF_A_DRIVE for one in found)
