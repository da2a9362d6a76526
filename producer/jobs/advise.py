"""What to change on a setup for what its car does wrong, for the terminal or as JSON."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from textwrap import wrap

from producer.basics.errors import ProducerError
from producer.basics.finding import Finding
from producer.basics.located import Places
from producer.basics.spelling import spell
from producer.handling.advice import advise
from producer.handling.advice_json import advice_json as shape
from producer.handling.measure import agreeing, in_words, measure
from producer.handling.saying import feel, listed
from producer.handling.wording import PLACES
from producer.jobs.one_setup import one_setup
from producer.model.advice import Plan, Step
from producer.model.channel import Channel
from producer.model.guide import Change
from producer.model.library import Case
from producer.model.sheet import Sheet
from producer.model.words import CORNER_NAMES, PHASES, Complaint, Phase, complaint
from producer.render.markdown import to_plain

_COLUMNS = 80
_INDENT = "   "
_PLACE = 15  # columns for a part of the corner
_CARE = "Change one thing at a time, then drive a few laps."

# What the trade calls the parts of a corner (common practice, no source), and what may stand before it.
_PHASES: Mapping[str, Phase] = {
    "entry": "entry", "in": "entry", "into": "entry", "entering": "entry",
    "middle": "middle", "mid": "middle", "center": "middle", "centre": "middle", "apex": "middle",
    "exit": "exit", "off": "exit", "out": "exit", "exiting": "exit",
}  # fmt: skip
_BETWEEN = frozenset({"on", "in", "at", "the", "going", "coming", "getting", "corner"})


@dataclass(frozen=True, slots=True)
class Told:
    """A plan and the setup that it is for."""

    plan: Plan
    case: Case
    sheet: Sheet
    channel: Channel


@dataclass(frozen=True, slots=True)
class Advised:
    """What is advised; `told` is None where errors (among `findings`) hold the episode back."""

    told: Told | None
    findings: tuple[Finding, ...]
    files: Mapping[str, Places]


def read_feels(texts: Sequence[str]) -> tuple[Complaint, ...]:
    """Feels as a person types them, `loose entry`; several may stand in one text, with commas.

    The trade's other words for a part of the corner are understood: `loose off`, `tight in the center`.
    Raises ProducerError with a sentence for one that is no feel.
    """
    try:
        found = tuple(_feel(one) for text in texts for one in text.split(","))
    except ValueError as trouble:
        raise ProducerError(f"{trouble}") from trouble
    return found


def _feel(text: str) -> Complaint:
    """As `complaint`, with the trade's other words for the last one, and little words before it."""
    parts = text.lower().split()
    phase = _PHASES.get(parts[-1]) if len(parts) > 1 else None
    if phase is None:
        return complaint(text)
    words = parts[:-1]
    while words[-1] in _BETWEEN and len(words) > 1:
        words.pop()
    try:
        return complaint(" ".join((*words, phase)))
    except ValueError:
        return complaint(text)  # so that what was typed is what is named


def advised(
    root: Path,
    out: Path,
    episode: str,
    setup: str | None,
    feels: Sequence[Complaint],
    *,
    tyres: str | None = None,
    device: str | None = None,
) -> Advised:
    """The advice for a setup of an episode, the first without one.

    Where errors hold the episode back nothing is advised. Raises ProducerError for an episode or a setup that is not
    there.
    """
    looked = one_setup(root, out, episode, setup)
    if looked.found is None:
        return Advised(None, looked.findings, looked.files)
    case, sheet, channel = looked.found.case, looked.found.sheet, looked.found.channel
    plan = advise(case, sheet, feels, looked.found.opinions, tyres=tyres, device=device)
    return Advised(Told(plan, case, sheet, channel), looked.findings, looked.files)


def advice_json(told: Told) -> str:
    """The shape that other programs rely on."""
    data = shape(told.plan, told.case.episode.episode, told.sheet.id, told.channel.spelling)
    return json.dumps(data, ensure_ascii=False, indent=2)


def advice_text(told: Told) -> str:
    """Within 80 columns: each change with its effects, what they do together, what stays open, and the cautions."""
    plan, lines = told.plan, [told.case.episode.title, told.sheet.name]
    lines += wrap(listed([feel(one) for one in plan.complaints]), _COLUMNS)
    for number, step in enumerate(plan.steps, 1):
        lines += ["", *_step(number, step, told)]
    if len(plan.steps) > 1 and plan.cars != 0:
        lines += ["", "together", *_effects(plan.expected, plan)]
    if plan.unanswered:
        lines += ["", *wrap(f"not answered: {listed([feel(one.complaint) for one in plan.unanswered])}", _COLUMNS)]
    if plan.notes:
        lines += ["", *(row for note in plan.notes for row in _hanging("- ", note))]
    lines += ["", *([_CARE] if plan.steps else []), *wrap(told.channel.caution, _COLUMNS)]
    return spell("\n".join(lines), told.channel.spelling)


def _step(number: int, step: Step, told: Told) -> Iterator[str]:
    change, setting = step.change, told.sheet.setting(step.change.parameter)
    moved = f"{setting.figure(change.start)} -> {setting.shown(change.to)}"
    clicks = f"{change.clicks:+d} click{'' if abs(change.clicks) == 1 else 's'}"
    yield from _hanging(f"{number}. ", f"{setting.name}  {moved}  {clicks}, {change.headroom} left")
    if step.answers and len(told.plan.complaints) > 1:
        yield from _hanging(_INDENT, f"for {listed([feel(one) for one in step.answers])}")
    yield from _effects(change.effects, told.plan)
    for text in (_pays(step), _voice(change), *_words(change)):
        if text:
            yield from _hanging(_INDENT, text)


def _effects(effects: Mapping[Phase, float | None], plan: Plan) -> Iterator[str]:
    if plan.cars == 0:
        yield from _hanging(_INDENT, "how much: no size, as too few plausible cars have such a setup")
        return
    for phase in PHASES:
        said = _size(effects.get(phase), plan.half_percent.get(phase))
        yield from _hanging(f"{_INDENT}{PLACES[phase]:<{_PLACE}}", said)


def _size(effect: float | None, half_percent: float | None) -> str:
    """`looser, about as much as one percent of cross weight`."""
    if effect is None:
        return "nobody knows how much"
    halves = measure(effect, half_percent)
    if not effect:
        return "nothing happens"
    way = "tighter" if effect > 0 else "looser"
    return way if halves is None else f"{way}, {in_words(halves)}"


def _pays(step: Step) -> str:
    """The tyres that work harder for it, each once, in the order of the corner."""
    found = dict.fromkeys(step.pays(phase) for phase in PHASES)
    tyres = [CORNER_NAMES[one] for one in found if one is not None]
    return f"the {listed(tyres)} tyre{'s pay' if len(tyres) > 1 else ' pays'}" if tyres else ""


def _voice(change: Change) -> str:
    who = "your own advice" if change.voice == "author" else "by the tuning rules"
    sure = agreeing(change.agreement)
    return f"{who}; {sure}" if sure else who


def _words(change: Change) -> Iterator[str]:
    """What the author says of it and under which conditions, and what else there is to know."""
    if change.say:
        yield f"\u201c{to_plain(change.say)}\u201d"
    if change.tyres:
        yield f"written for {change.tyres} tyres"
    if change.device:
        yield f"written for a {change.device}"
    yield change.also


def _hanging(mark: str, text: str) -> list[str]:
    """Wrapped within the terminal, further lines under the first one's text."""
    return wrap(text, _COLUMNS, initial_indent=mark, subsequent_indent=" " * len(mark), break_on_hyphens=False)
