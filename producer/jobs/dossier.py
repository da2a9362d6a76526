"""Everything about one episode, computed once, for whatever is made of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from producer.jobs.evidence import evidence_of
from producer.jobs.heard import heard
from producer.jobs.opinions import SecondOpinion
from producer.jobs.own_pace import OwnPace, at_pace
from producer.model.channel import Channel
from producer.model.dossier import ConditionLine, Dossier, Stamp
from producer.model.episode import Episode
from producer.model.garage import Garage, Option
from producer.model.gearing import Gearing
from producer.model.guide import Guide
from producer.model.library import Case
from producer.model.opinion import Opinions
from producer.model.script import Pace
from producer.model.track import Track


def dossier(case: Case, second: SecondOpinion | None = None, pace: OwnPace | None = None) -> Dossier | None:
    """The dossier of an episode, or None where its channel, garage, track or every setup is missing.

    `second` asks the chassis model, or remembers what it said; `pace` measures how fast the author speaks, or
    remembers it.
    """
    from producer.jobs.prose import filled

    if case.channel is None or case.garage is None or case.track is None or not case.sheets:
        return None
    episode = filled(case)
    told = case.library.case(episode)
    rate = (pace or OwnPace()).of(case.library)
    channel = at_pace(case.channel, rate)
    return _complete(told, channel, case.garage, case.track, (second or SecondOpinion()).of(told), rate)


def _complete(
    case: Case, channel: Channel, garage: Garage, track: Track, opinions: Mapping[str, Opinions], rate: Pace
) -> Dossier:
    from producer.script.narration import narrate
    from producer.script.pace import timeline

    conditions = condition_lines(case.episode, garage)
    guides = _guides(case, opinions)
    gears = _gearing(case, garage, channel)
    named = credited(case)
    laps = evidence_of(case)
    narration = narrate(channel, track, garage, case.episode, case.sheets, guides, gears, conditions, named, laps)
    whole = Dossier(
        channel, track, garage, case.episode, case.sheets, guides, gears, conditions, named,
        stamps(case, garage, track, conditions), narration, timeline(narration, channel), opinions, laps, pace=rate,
    )  # fmt: skip
    return replace(whole, take=heard(case, whole))


def condition_lines(episode: Episode, garage: Garage) -> tuple[ConditionLine, ...]:
    """The options as they were set, in the garage's order: `Tyre use`, `hard (me, field)`."""
    driven = [(option, episode.conditions.get(name)) for name, option in garage.options.items()]
    return tuple(ConditionLine(option.name, _condition(value, option)) for option, value in driven if value is not None)


def _condition(value: Any, option: Option) -> str:
    if not isinstance(value, Mapping):
        return str(value)
    who = [one for one in option.for_ if one in value] + [one for one in value if one not in option.for_]
    choices = {str(value[one]) for one in who}
    if len(choices) == 1 and len(who) > 1:
        return f"{choices.pop()} ({', '.join(who)})"
    return ", ".join(f"{one} {value[one]}" for one in who)


def credited(case: Case) -> tuple[str, ...]:
    """The handles of those whom the episode thanks and who consented to be named, in the order of `thanks`."""
    asked = (case.library.requests.get(one) for one in case.episode.thanks)
    return tuple(dict.fromkeys(one.from_ for one in asked if one is not None and one.credit and one.from_))


def _guides(case: Case, opinions: Mapping[str, Opinions]) -> dict[str, Guide]:
    from producer.handling.guide import guide

    return {sheet.id: guide(case, sheet, opinions.get(sheet.id)) for sheet in case.sheets}


def _gearing(case: Case, garage: Garage, channel: Channel) -> dict[str, Gearing]:
    from producer.handling.gearing import gearing, top_speed

    found = {one.id: gearing(garage, one, top_speed(case, one.id), channel.units) for one in case.sheets}
    return {setup: one for setup, one in found.items() if one is not None}


def stamps(case: Case, garage: Garage, track: Track, conditions: tuple[ConditionLine, ...]) -> dict[str, Stamp]:
    """The stamp of each setup's card: the last published revision while its data is still the same, else a draft."""
    from producer.outputs.carddata import card_data, digest, episode_digest

    data = {one.id: card_data(garage, track, case.episode, one, conditions) for one in case.sheets}
    last = case.episode.published[-1] if case.episode.published else None
    same = last is not None and last.digest == episode_digest(list(data.values()))
    number, day = (last.revision, last.date) if last is not None and same else (0, None)
    return {setup: Stamp(number, day, digest(one)) for setup, one in data.items()}


def cards_digest(case: Case) -> str:
    """The digest of an episode's cards as they are now, "" where they cannot be put together yet."""
    from producer.outputs.carddata import card_data, episode_digest

    garage, track = case.garage, case.track
    if garage is None or track is None or not case.sheets:
        return ""
    lines = condition_lines(case.episode, garage)
    return episode_digest(card_data(garage, track, case.episode, one, lines) for one in case.sheets)
