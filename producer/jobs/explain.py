"""What one setting does in one setup, explained for the terminal or as JSON."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from textwrap import wrap

from producer.basics.finding import Finding
from producer.basics.located import Places
from producer.basics.spelling import spell
from producer.handling import explained as words
from producer.handling.asking import ask
from producer.handling.explaining import Explanation, explain, flat_opinion, without_banking
from producer.handling.explaining_json import explanation_json as shape
from producer.jobs.naming import which
from producer.jobs.one_setup import OneSetup, one_setup
from producer.model.opinion import Opinion

_COLUMNS = 80
_VOICE = "        "  # as wide as `author  `


@dataclass(frozen=True, slots=True)
class Told:
    """An explanation and the setup that it is for."""

    one: OneSetup
    explanation: Explanation


@dataclass(frozen=True, slots=True)
class Explained:
    """`told` is None where errors (among `findings`) hold the episode back."""

    told: Told | None
    findings: tuple[Finding, ...]
    files: Mapping[str, Places]


def explained(root: Path, out: Path, episode: str, setup: str | None, wanted: str) -> Explained:
    """Explain a setting or split, by address (`spring.rf`) or by name (`right front spring`), in a setup, the first
    without one.

    Raises ProducerError for an episode, a setup or a setting that is not there, naming the nearest.
    """
    looked = one_setup(root, out, episode, setup)
    if looked.found is None:
        return Explained(None, looked.findings, looked.files)
    one = looked.found
    address = which(one.sheet.garage, wanted)
    explanation = explain(one.case, one.sheet, address, one.opinions, _flat(one, address))
    return Explained(Told(one, explanation), looked.findings, looked.files)


def explanation_json(told: Told) -> str:
    """The three voices as data."""
    one = told.one
    data = shape(told.explanation, one.case.track, one.case.episode.episode, one.sheet, one.channel.spelling)
    return json.dumps({**data, "caution": one.channel.caution}, ensure_ascii=False, indent=2)


def explanation_text(told: Told) -> str:
    """Within 80 columns: what raising does by each voice, where they part, what banking does, and what it rests on."""
    one, explanation = told.one, told.explanation
    lines = [one.case.episode.title, one.sheet.name, "", *_wrapped(_what(told)), ""]
    lines += _block("author", words.by_author(one.sheet, explanation))
    lines += _block("rule", words.by_rule(explanation))
    lines += _block("model", [*words.by_model(explanation), *filter(None, [words.by_left(explanation)])])
    for text in _sentences(told):
        lines += ["", *_wrapped(text)]
    lines += ["", *_wrapped(one.channel.caution)]
    return spell("\n".join(lines), one.channel.spelling)


def _what(told: Told) -> str:
    """`Right front spring, 950 lb/in. What raising it does, by one click: 950 to 975 lb/in.`"""
    sheet, explanation = told.one.sheet, told.explanation
    title = f"{sheet.garage.name_of(explanation.address)}, {sheet.shown(explanation.address)}."
    click = explanation.click
    if click is None:
        return title
    setting = explanation.setting
    figures = f"{setting.figure(click.start)} to {setting.shown(click.to)}"
    by = "" if click.moves == explanation.address else f" of the {setting.name[0].lower()}{setting.name[1:]}"
    limit = " (it is at its limit: a click down, turned round)" if click.start != sheet.values[click.moves] else ""
    return f"{title} What raising it does, by one click{by}: {figures}{limit}."


def _sentences(told: Told) -> Iterator[str]:
    explanation = told.explanation
    parting = words.parting(explanation)
    if parting:
        yield f"Where they part: {' '.join(parting)}"
    yield from words.banking(told.one.case.track, explanation)
    statics = words.statics(explanation)
    if statics:
        yield statics
    if explanation.opinion is not None:
        yield (
            f"The model is a second opinion: {explanation.cars:,} plausible cars that fit this garage, setup and "
            "track. What they may be is an assumption, none is the simulation's own car. Your word comes first."
        )


def _block(voice: str, lines: Sequence[str]) -> list[str]:
    """One voice: its name beside the first line, further text below it."""
    found: list[str] = []
    for number, text in enumerate(lines):
        mark = f"{voice:<{len(_VOICE)}}" if number == 0 else _VOICE
        found += wrap(
            text, _COLUMNS, initial_indent=mark, subsequent_indent=f"{_VOICE}  ", break_on_hyphens=False
        )  # fmt: skip
    return found


def _wrapped(text: str) -> list[str]:
    return wrap(text, _COLUMNS, break_on_hyphens=False)


def _flat(one: OneSetup, address: str) -> Opinion | None:
    """The same click on a flat track. It is asked here and not kept: nothing else wants it."""
    if one.opinions is None or not one.opinions.cars:
        return None
    asked = ask(one.case, one.sheet)
    question = without_banking(asked, one.sheet, address)
    if question is None:
        return None
    from producer.handling.answering import answer

    return flat_opinion(asked, one.sheet, address, answer(question).opinions)
