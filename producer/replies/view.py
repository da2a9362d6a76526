"""What a reply's template is filled with."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

# How far the answer is: out, driven and to be published, being tested, an idea, nothing at all, not going to happen.
Stage = Literal["out", "preview", "testing", "idea", "none", "declined"]


@dataclass(frozen=True, slots=True)
class Line:
    """One change: `start` and `to` are figures, with the unit once; `words` the author's, `note` what else to know.

    `rule` where the rule table says it and not the author; `when` the condition it was written for that the viewer
    did not state (`on worn tyres`, `if you drive with a pad`).
    """

    setting: str
    start: str
    to: str
    words: str
    note: str
    rule: bool
    when: str


@dataclass(frozen=True, slots=True)
class Answer:
    """A setting that was asked about: its name, its figure with the unit, the author's words on why it is so."""

    setting: str
    figure: str
    words: str


@dataclass(frozen=True, slots=True)
class Group:
    """The changes for one feel; `feel` is "" where the message has only one."""

    feel: str
    lines: tuple[Line, ...]


@dataclass(frozen=True, slots=True)
class ReplyView:
    """A whole reply. Texts are ready to be shown; an empty one means there is nothing to say.

    `about` is the track, with the class where it is known ("" without a track), `setup` the setup's name, `why` how it
    was chosen, `hint` which other one may fit, `setups` the names of all of the episode's, `lacks` a run type that is
    asked for and not there, `thanked` what works for the viewer (`setups for Gannet Bowl work`). `stage` and `when` (a
    date) say what there is about it, `state` is the episode's status, `classes` those the viewer has to choose from.
    `open` are sentences about feels that could not be answered, `values` one line for each page of the garage (`more`
    where some were left out) or for each setting spoken of (`unfound`: the message's figures are not on it), `answers`
    settings asked about (`setting`: one was, whether it can be answered or not), `rules` directions without figures.
    `brief`: only greeting and caution fit.
    """

    handle: str
    presenter: str
    caution: str
    spelling: str
    about: str = ""
    understood: str = ""
    stage: Stage = "none"
    state: str = ""
    when: str = ""
    setup: str = ""
    setups: str = ""
    thanked: str = ""
    lacks: str = ""
    version: str = ""
    why: str = ""
    hint: str = ""
    untested: bool = False
    groups: tuple[Group, ...] = ()
    open: tuple[str, ...] = ()
    rules: str = ""
    values: tuple[str, ...] = ()
    more: bool = False
    unfound: bool = False
    answers: tuple[Answer, ...] = ()
    setting: bool = False
    questions: tuple[str, ...] = ()
    consent: bool = False
    offer: bool = True
    link: str = ""
    classes: str = ""
    brief: bool = False
