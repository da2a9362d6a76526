"""One whole episode for the tests of outputs and replies, read from the small library beside this file.

`sample_dossier()` is what a job would hand on: two setups that differ in four settings, conditions, a credit, gearing,
a guide, a short narration with its times. Everything but the narration is computed by the engines.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from pathlib import Path

from producer.handling.gearing import gearing, top_speed
from producer.handling.guide import guide
from producer.library.load import load
from producer.model.dossier import ConditionLine, Dossier, Stamp
from producer.model.library import Case
from producer.model.script import Narration, Passage, Section, Span, Timeline
from producer.outputs.carddata import card_data, digest

LIBRARY = Path(__file__).parent / "data"
EPISODE = "marrow-creek-grand-sedan"
CONDITIONS = (ConditionLine("Tyre use", "hard (me, field)"), ConditionLine("Use speed", "double"))


def sample_case(root: Path = LIBRARY, episode: str = EPISODE) -> Case:
    """The episode with what it refers to; the library is read without a finding."""
    library, findings = load(root)
    assert findings == []
    return library.case(library.episodes[episode])


def sample_dossier(case: Case | None = None, *, revision: int = 0) -> Dossier:
    """The dossier of the sample episode (or of `case`), as a draft or as the revision of that number."""
    case = case or sample_case()
    channel, garage, track, episode = case.channel, case.garage, case.track, case.episode
    assert channel is not None
    assert garage is not None
    assert track is not None
    gears = {one.id: gearing(garage, one, top_speed(case, one.id), channel.units) for one in case.sheets}
    narration = sample_narration()
    return Dossier(
        channel=channel,
        track=track,
        garage=garage,
        episode=episode,
        sheets=case.sheets,
        guides={one.id: guide(case, one) for one in case.sheets},
        gearing={setup: one for setup, one in gears.items() if one is not None},
        conditions=CONDITIONS,
        credits=tuple(one.from_ for one in case.library.requests.values() if one.credit),
        stamps=_stamps(case, revision),
        narration=narration,
        timeline=sample_timeline(narration),
    )


def with_values(dossier: Dossier, setup: str, values: Mapping[str, str]) -> Dossier:
    """The dossier with some figures of one setup written anew (as text, like in the file)."""
    from decimal import Decimal

    new = {address: Decimal(value) for address, value in values.items()}
    sheets = tuple(replace(one, values={**one.values, **new}) if one.id == setup else one for one in dossier.sheets)
    return replace(dossier, sheets=sheets)


def _stamps(case: Case, revision: int) -> dict[str, Stamp]:
    day = date(2026, 11, 20) if revision else None
    garage, track = case.garage, case.track
    assert garage is not None
    assert track is not None
    data = {one.id: card_data(garage, track, case.episode, one, CONDITIONS) for one in case.sheets}
    return {setup: Stamp(revision, day, digest(one)) for setup, one in data.items()}


def sample_narration() -> Narration:
    """Seven sections: opening, conditions, three pages of the first setup, what differs, closing."""
    return Narration(
        (
            Section(
                "opening", "Marrow Creek", None, None, (Passage("talk", "Hello again. Two ends that do not match."),),
            ),
            Section("conditions", "Conditions", None, None, (Passage("conditions", "Tires hard, use speed double."),)),
            Section(
                "short.tyres", "Short run: tires", "short", "tyres",
                (Passage("value", "Right front pressure 43 psi.", ("pressure.rf",)),), ("tires page",),
            ),
            Section(
                "short.ballast", "Short run: ballast", "short", "ballast",
                (
                    Passage("value", "Cross weight 52 percent.", ("cross_weight",)),
                    Passage("reason", "A bit of wedge keeps the tail under me.", ()),
                ), ("ballast page",),
            ),
            Section(
                "short.suspension", "Short run: suspension", "short", "suspension",
                (
                    Passage("value", "Right front spring 700.", ("spring.rf",)),
                    Passage("advice", "Go back up a step.", ()),
                ), ("suspension page",),
            ),
            Section(
                "long.changes", "Long run: what differs", "long", None,
                (Passage("value", "Right front spring 725 instead of 700.", ("spring.rf",)),), ("suspension page",),
            ),
            Section(
                "closing", "Before you go", None, None,
                (Passage("talk", "Change a single thing at a time."),
                 Passage("caution", "Numbers for a simulation. Not advice for a real car."),),
            ),
        )
    )  # fmt: skip


def sample_timeline(narration: Narration, each_ms: int = 12_000) -> Timeline:
    """Every passage lasts `each_ms`, one after another from 0."""
    spans: list[Span] = []
    starts: list[int] = []
    for number, section in enumerate(narration.sections):
        starts.append(len(spans) * each_ms)
        for passage in range(len(section.passages)):
            at = len(spans) * each_ms
            spans.append(Span(number, passage, at, at + each_ms))
    total = len(spans) * each_ms
    return Timeline(tuple(spans), tuple(starts), total, total * 9 // 10, total * 11 // 10)
