"""Neither title nor description holds an angle bracket: the platform refuses `<` and `>`.

It takes them for markup. An arrow is better written with words ("from 750 to 725") or as a real arrow. A description
is put together from the author's texts and the channel's; until the episode is scripted it is a note there.

Found (title-markup):

    # marrow-creek-grand-sedan/episode.yaml
    title: "Marrow Creek: 750 -> 725"
                               ^

Found (description-markup):

    # marrow-creek-grand-sedan/episode.yaml
    approach: |
      Brake early, and wait.
      Speed in < speed out.
               ^
    # summary
    description: "Brake early, and wait. Speed in < speed out."

Found (description-markup):

    # marrow-creek-grand-sedan/episode.yaml
    status: idea
    title: "Marrow Creek: two setups"
    ^^^^^
    # summary
    description: "Cards -> https://example.org"

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    title: "Marrow Creek: 750 → 725 & more"
    approach: |
      Speed in < speed out, which the description leaves away.
    # summary
    description: "From 750 to 725 & more"
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.checks.texts import names
from producer.model.episode import Episode
from producer.model.library import Case
from producer.model.prose import Prose, prose
from producer.model.summary import Summary

CODES = {"title-markup": Severity.ERROR, "description-markup": Severity.ERROR}
_REFUSED = "<>"


def check_episode(case: Case) -> Iterator[Finding]:
    """The title."""
    title = Prose(case.episode, ("title",), case.episode.title)
    for at in _at(title.text)[:1]:
        message = f"the platform refuses '{title.text[at]}' in a title"
        hint = "say it in words"
        yield Finding("title-markup", Severity.ERROR, title.place(at, at + 1), message, hint, title.where)


def check_summary(case: Case, summary: Summary) -> Iterator[Finding]:
    """The description, at the author's text where it comes from one of this episode's."""
    found = _at(summary.description)
    if not found:
        return
    severity = Severity.ERROR if case.episode.at_least("scripted") else Severity.NOTE
    message = f"the platform refuses '{summary.description[found[0]]}' in a description"
    text = _source(case.episode, summary.description)
    if text is None:
        place, where = case.episode.key_place("title"), case.episode.where("title")
        hint = "look at channel.yaml (links, caution), the garage's names and the template of the notes"
    else:
        at = _at(text.text)[0]
        place, where, hint = text.place(at, at + 1), text.where, "say it in words"
    yield Finding("description-markup", severity, place, message, hint, where)


def _source(episode: Episode, description: str) -> Prose | None:
    squeezed = " ".join(description.split())
    for text in (*prose(episode), *names(episode)):
        for at in _at(text.text):
            # The words around it tell whether this text went into the description.
            if " ".join(text.text[max(0, at - 12) : at + 12].split()) in squeezed:
                return text
    return None


def _at(text: str) -> list[int]:
    return [index for index, letter in enumerate(text) if letter in _REFUSED]
