"""The author's prose with its references filled in: `{{ spring.rf }}` becomes the figure on the sheet."""

from __future__ import annotations

from producer.model.episode import Episode, Setup
from producer.model.library import Case
from producer.model.prose import with_prose
from producer.model.sheet import Sheet


def filled(case: Case) -> Episode:
    """The episode with every reference rendered; a reference that cannot be filled stays as written.

    A setup's prose is filled from its own values, the episode's from the first setup's. Broken references are
    findings of the check `unknown-reference`, which runs before anything is built.
    """
    if not case.sheets:
        return case.episode

    def put(text: str, setup: Setup | None) -> str:
        sheet = case.sheets[0] if setup is None else case.sheet(setup.setup)
        return text if sheet is None else _fill(text, sheet, case)

    return with_prose(case.episode, put)


def _fill(text: str, sheet: Sheet, case: Case) -> str:
    if "{{" not in text:
        return text
    from producer.render.prose import ProseTrouble, Scope, fill

    try:
        return fill(text, Scope.of(sheet, case.sheets))
    except ProseTrouble:
        return text
