"""What is said before the first page of the garage and after the last one."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from producer.model.channel import Channel
from producer.model.dossier import ConditionLine
from producer.model.episode import Episode
from producer.model.garage import Garage
from producer.model.script import Passage, PassageKind, Section
from producer.model.sheet import Sheet
from producer.model.track import Track
from producer.script.flatten import flat, paragraphs
from producer.script.shots import closing_shots, conditions_shots, opening_shots
from producer.script.speaker import Speaker, counted, listed, setup_name

# An author who says it needs no second voice for it.
_ONE_CHANGE = re.compile(r"\b(?:one|single) (?:thing|change|setting|step) at a time\b", re.IGNORECASE)
_WHO = {"me": "for me", "field": "for the field"}


def opening(
    speaker: Speaker,
    channel: Channel,
    track: Track,
    garage: Garage,
    episode: Episode,
    sheets: Sequence[Sheet],
    handles: Sequence[str],
) -> Section:
    """Greeting, what this is, the author's opening, thanks."""
    kind = "episode-unnumbered" if episode.number is None else "episode"
    about = speaker.say(kind, number=str(episode.number), track=track.name, garage=garage.name)
    passages = (
        *_talk(channel.voice.greeting),
        Passage("talk", about),
        *_talk(episode.talking_points.opening),
        Passage("talk", _plan(speaker, sheets)),
        *((Passage("talk", speaker.say("thanks", names=listed(handles))),) if handles else ()),
    )
    return Section("opening", "Opening", None, None, passages, opening_shots(track, sheets))


def conditions_and_approach(
    speaker: Speaker, garage: Garage, episode: Episode, conditions: Sequence[ConditionLine]
) -> Section:
    """How it was tested, and how the author drives it; no passages where nothing is known."""
    options = [_option(speaker, one, episode, garage) for one in conditions]
    said: list[Passage] = []
    if options and episode.tested_with:
        text = speaker.say("conditions-and-version", options="; ".join(options), version=episode.tested_with)
        said.append(Passage("conditions", text))
    elif options:
        said.append(Passage("conditions", speaker.say("conditions", options="; ".join(options))))
    elif episode.tested_with:
        said.append(Passage("conditions", speaker.say("version", version=episode.tested_with)))
    said += _talk(episode.approach)
    title = "How I drive it" if episode.approach.strip() else "Conditions"
    shots = conditions_shots(bool(options), bool(episode.approach.strip()))
    return Section("conditions", title, None, None, tuple(said), shots)


def closing(speaker: Speaker, channel: Channel, episode: Episode, sheets: Sequence[Sheet]) -> Section:
    """The author's closing, one change at a time, the caution, the sign-off."""
    points = episode.talking_points.closing
    again = _ONE_CHANGE.search(flat(points))
    caution = speaker.say("caution", caution=flat(channel.caution))
    passages = (
        *_talk(points),
        *(() if again else (Passage("talk", speaker.say("one-change")),)),
        Passage("caution", caution),
        *_talk(channel.voice.sign_off),
    )
    return Section("closing", "Closing", None, None, passages, closing_shots(sheets))


def _plan(speaker: Speaker, sheets: Sequence[Sheet]) -> str:
    kind = {1: "one-setup", 2: "two-setups"}.get(len(sheets), "more-setups")
    return speaker.say(kind, count=counted(len(sheets)), names=listed([setup_name(one) for one in sheets]))


def _talk(prose: str, kind: PassageKind = "talk") -> Iterator[Passage]:
    for paragraph in paragraphs(prose):
        yield Passage(kind, paragraph)


def _option(speaker: Speaker, line: ConditionLine, episode: Episode, garage: Garage) -> str:
    """`tire wear fast for me and for the field`: from what the author wrote, else as the card has it."""
    option = next((name for name, one in garage.options.items() if one.name == line.name), "")
    written: Any = episode.conditions.get(option, line.value)
    name = speaker.own(line.name[:1].lower() + line.name[1:])
    if not isinstance(written, Mapping):
        return f"{name} {written}"
    by_choice: dict[str, list[str]] = {}
    for who, choice in written.items():
        by_choice.setdefault(str(choice), []).append(_WHO.get(str(who), f"for {who}"))
    return f"{name} " + ", ".join(f"{choice} {listed(some)}" for choice, some in by_choice.items())
