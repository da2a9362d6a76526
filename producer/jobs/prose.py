"""The author's prose with its references filled in: `{{ spring.rf }}` becomes the figure on the sheet."""

from __future__ import annotations

from producer.model.episode import Episode, Reason, Setup
from producer.model.library import Case
from producer.model.sheet import Sheet


def filled(case: Case) -> Episode:
    """The episode with every reference rendered; a reference that cannot be filled stays as written.

    A setup's prose is filled from its own values, the episode's from the first setup's. Broken references are
    findings of the check `unknown-reference`, which runs before anything is built.
    """
    if not case.sheets:
        return case.episode
    setups = tuple(_setup(one, case.sheet(one.setup), case) for one in case.episode.setups)
    first = case.sheets[0]
    points = case.episode.talking_points
    talk = {"opening": _fill(points.opening, first, case), "closing": _fill(points.closing, first, case)}
    changed = {
        "setups": setups,
        "title": _fill(case.episode.title, first, case),
        "approach": _fill(case.episode.approach, first, case),
        "talking_points": points.model_copy(update=talk),
    }
    return case.episode.model_copy(update=changed)


def _setup(setup: Setup, sheet: Sheet | None, case: Case) -> Setup:
    if sheet is None:
        return setup
    reasons = tuple(_reason(one, sheet, case) for one in setup.reasons)
    return setup.model_copy(update={"reasons": reasons})


def _reason(reason: Reason, sheet: Sheet, case: Case) -> Reason:
    advice = tuple(one.model_copy(update={"say": _fill(one.say, sheet, case)}) for one in reason.if_)
    return reason.model_copy(update={"because": _fill(reason.because, sheet, case), "if_": advice})


def _fill(text: str, sheet: Sheet, case: Case) -> str:
    if "{{" not in text:
        return text
    from producer.render.prose import ProseTrouble, Scope, fill

    try:
        return fill(text, Scope.of(sheet, case.sheets))
    except ProseTrouble:
        return text
