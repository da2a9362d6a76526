"""Stints were driven under the episode's conditions, and in the version that the garage was read from.

A stint may state conditions of its own, and then its laps say nothing about the episode's. `tested_with` is the
version of the simulation on the day it was driven; the garage's limits belong to a version, too. When the two part,
the values may not fit any more: drive it again, or read the garage again. Two setups are held against each other only
where they were driven in the same style: driving style alone is worth three to four tenths a lap (common practice, no
source). A style that is not written down is taken for any.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    stints:
      - setup: short
        file: stints/short-1.csv
        conditions: { use_speed: single }
                                 ^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    tested_with: "2.3"
                 ^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    stints:
      - { setup: short, file: stints/short-1.csv, driving: smooth }
      - { setup: long, file: stints/short-1.csv, driving: flat out }
                                                          ^^^^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    tested_with: 2.4
    conditions: { tyre_use: { me: hard, field: hard }, use_speed: double }
    stints:
      - { setup: short, file: stints/short-1.csv, conditions: { use_speed: double, tyre_use: hard } }

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    stints:
      - { setup: short, file: stints/short-1.csv, driving: smooth }
      - { setup: short, file: stints/short-1.csv, driving: flat out }
      - { setup: long, file: stints/short-1.csv, driving: " Smooth" }
      - { setup: long, file: stints/short-1.csv }

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    conditions: { use_speed: double }
    stints:
      - { setup: short, file: stints/short-1.csv, conditions: { tyre_use: hard } }
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.checks.conditions import by_person
from producer.model.episode import Episode, StintEntry
from producer.model.garage import Garage, Option
from producer.model.library import Case

CODES = {"conditions-differ": Severity.WARNING}


def check_episode(case: Case) -> Iterator[Finding]:
    """The version, then each stint's conditions, then how it was driven."""
    yield from _styles(case.episode)
    if case.garage is None:
        return
    yield from _version(case.episode, case.garage)
    for stint in case.episode.stints:
        for name, option in case.garage.options.items():
            yield from _stint(stint, case.episode, name, option)


def _version(episode: Episode, garage: Garage) -> Iterator[Finding]:
    tested, limits = episode.tested_with, garage.simulation.version
    if tested is not None and limits and tested.strip() != limits.strip():
        message = f"driven with version {tested}, the limits of '{garage.garage}' are read from {limits}"
        place, where = episode.place("tested_with"), episode.where("tested_with")
        hint = f"drive it again with {limits}, or read the garage again"
        yield Finding("conditions-differ", Severity.WARNING, place, message, hint, where)


def _stint(stint: StintEntry, episode: Episode, name: str, option: Option) -> Iterator[Finding]:
    own = by_person(stint.conditions.get(name), option)
    usual = by_person(episode.conditions.get(name), option)
    for who, choice in own.items():
        if who not in usual or usual[who] == choice:
            continue
        path = ("conditions", name, who) if stint.written("conditions", name, who) else ("conditions", name)
        about = f"{option.name} for {who}" if who else option.name
        message = f"{about} was {choice} in this stint, the episode says {usual[who]}"
        place, where = stint.place(*path), stint.where(*path)
        hint = "drive it again like the episode, or take the stint out"
        yield Finding("conditions-differ", Severity.WARNING, place, message, hint, where)
        return


def _styles(episode: Episode) -> Iterator[Finding]:
    """A stint in a style in which no stint of another setup was driven, told at the later one."""
    for index, stint in enumerate(episode.stints):
        others = [one for one in episode.stints if one.setup != stint.setup]
        earlier = next((one for one in episode.stints[:index] if one.setup != stint.setup and one.driving), None)
        alike = any(not one.driving or _style(one) == _style(stint) for one in others)
        if stint.driving and earlier is not None and not alike:
            message = f"driven '{stint.driving}', the stint it is held against '{earlier.driving}'"
            hint = "drive both alike; driving style alone is worth three to four tenths a lap"
            place, where = stint.place("driving"), stint.where("driving")
            yield Finding("conditions-differ", Severity.WARNING, place, message, hint, where)


def _style(stint: StintEntry) -> str:
    return " ".join(stint.driving.lower().split())
