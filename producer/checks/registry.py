"""All checks, found by their folder: their manuals, and one run over a library.

A check is a module of this folder with CODES and one or more of `check_library(library)`,
`check_garage(library, garage)`, `check_episode(case)`, `check_summary(case, summary)`, `check_opinions(case, opinions)`
(what the chassis model thinks, by setup id), each an iterator of findings.
A module whose codes are raised elsewhere says so in RAISED_WHILE (`reading`, `waiving`). One that reads long
texts or asks the model, and looks at nothing but its case, says COSTLY: what it finds may be remembered. Nothing else
lists them.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from difflib import get_close_matches
from inspect import cleandoc
from types import ModuleType

from producer.basics.collecting import collecting_paused
from producer.basics.errors import ProducerError
from producer.basics.finding import Finding, Severity, in_order
from producer.checks.waivers import waived
from producer.model.library import Case, Library
from producer.model.opinion import Opinions
from producer.model.summary import Summary

# Runs a costly check (module, episode, what finds it out), or remembers what it found there last time.
Costly = Callable[[ModuleType, Case, Callable[[], Iterable[Finding]]], Iterable[Finding]]
Second = Callable[[Case], Mapping[str, Opinions]]
Step = Callable[[str, int, int], None]  # what is done, its number from 1, how many


def modules() -> tuple[ModuleType, ...]:
    """Every check in the order of its name."""
    folder = importlib.import_module(__package__)
    names = sorted(one.name for one in pkgutil.iter_modules(folder.__path__))
    found = (importlib.import_module(f"{__package__}.{name}") for name in names)
    return tuple(one for one in found if hasattr(one, "CODES"))


def codes() -> dict[str, Severity]:
    """Every finding code with its (first) severity, in alphabetical order."""
    return dict(sorted((code, severity) for one in modules() for code, severity in one.CODES.items()))


def manual(code: str) -> str:
    """The manual of the check that raises `code`. Raises ProducerError, naming the nearest, where none does."""
    for one in modules():
        if code in one.CODES:
            return cleandoc(one.__doc__ or "")
    near = get_close_matches(code, codes(), 1, 0.5)
    hint = f"did you mean '{near[0]}'?" if near else "'producer check' prints the code of each finding"
    raise ProducerError(f"there is no finding with the code '{code[:60]}': {hint}")


def run(
    library: Library,
    summaries: Mapping[str, Summary],
    episodes: Collection[str] | None = None,
    costly: Costly | None = None,
    second: Second | None = None,
    step: Step | None = None,
) -> list[Finding]:
    """What the checks find in a library that has been read, in order, waivers applied.

    `summaries` by episode id: an episode without one is not checked for what it would publish. `episodes` are the
    ids to look at (None: all); what concerns the whole library and its garages is looked at either way. `costly` runs
    the checks that say COSTLY on one episode, or remembers what they found there last time. `second` asks the chassis
    model: without it nothing is held against the model. `step` is called before an episode's turn.
    """
    with collecting_paused():
        return _run(modules(), library, summaries, episodes, costly or _now, second, step)


def _run(
    checks: tuple[ModuleType, ...],
    library: Library,
    summaries: Mapping[str, Summary],
    episodes: Collection[str] | None,
    costly: Costly,
    second: Second | None,
    step: Step | None,
) -> list[Finding]:
    chosen = [one for name, one in library.episodes.items() if episodes is None or name in episodes]
    cases = [library.case(one) for one in chosen]
    found = [finding for one in checks for finding in _whole(one, library)]
    for number, case in enumerate(cases, 1):
        if step is not None:
            step(f"checking {case.episode.episode}", number, len(cases))
        summary = summaries.get(case.episode.episode)
        found += (finding for one in checks for finding in _one(one, case, summary, costly, second))
    for case in cases:
        found = waived(found, case, _ran(checks, case.episode.episode in summaries, second is not None))
    return in_order(found)


def _now(check: ModuleType, case: Case, find: Callable[[], Iterable[Finding]]) -> Iterable[Finding]:  # noqa: ARG001
    """Nothing is remembered. (The signature is that of whoever remembers.)"""
    return find()


def _whole(check: ModuleType, library: Library) -> Iterator[Finding]:
    if hasattr(check, "check_library"):
        yield from check.check_library(library)
    if hasattr(check, "check_garage"):
        for garage in library.garages.values():
            yield from check.check_garage(library, garage)


def _one(
    check: ModuleType, case: Case, summary: Summary | None, costly: Costly, second: Second | None
) -> Iterator[Finding]:
    runs = costly if getattr(check, "COSTLY", False) else _now
    if hasattr(check, "check_episode"):
        yield from runs(check, case, lambda: check.check_episode(case))
    if second is not None and hasattr(check, "check_opinions"):
        yield from runs(check, case, lambda: check.check_opinions(case, second(case)))
    if summary is not None and hasattr(check, "check_summary"):
        yield from check.check_summary(case, summary)


def _ran(checks: tuple[ModuleType, ...], with_summary: bool, with_second: bool) -> dict[str, bool]:
    """Every code, and whether this run would have raised it: a waiver is unused only where its check has run."""
    found: dict[str, bool] = {}
    for one in checks:
        looked = (with_summary or not hasattr(one, "check_summary")) and (
            with_second or not hasattr(one, "check_opinions")
        )
        found.update(dict.fromkeys(one.CODES, looked))
    return found
