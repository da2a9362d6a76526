"""How stints were driven, and whether two of them may be held against each other."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from producer.model.episode import Episode, StintEntry
from producer.model.garage import Garage
from producer.model.stints import Stint

STYLE = "driving style alone is worth three to four tenths a lap (common practice, no source)"


@dataclass(frozen=True, slots=True)
class Driven:
    """Conditions (option id, who or "", choice) and driving style ("": not said)."""

    conditions: tuple[tuple[str, str, str], ...]
    driving: str

    def like(self, other: Driven) -> bool:
        """Whether both were driven alike; a style that was not said is like any."""
        same = not self.driving or not other.driving or self.driving == other.driving
        return same and self.conditions == other.conditions


def as_driven(episode: Episode, stint: StintEntry | None, garage: Garage | None) -> tuple[tuple[str, str, str], ...]:
    """The episode's conditions, a stint's own over them, in the garage's order."""
    options = garage.options if garage else {}
    own = stint.conditions if stint is not None else {}
    names = [*options, *(one for one in (*episode.conditions, *own) if one not in options)]
    found: list[tuple[str, str, str]] = []
    for name in dict.fromkeys(names):
        people = options[name].for_ if name in options else ()
        given = {**_by_person(episode.conditions.get(name), people), **_by_person(own.get(name), people)}
        found += ((name, who, choice) for who, choice in given.items())
    return tuple(found)


def _by_person(value: Any, people: Sequence[str]) -> dict[str, str]:
    """Who has which choice; one for everybody counts for each the option is set for."""
    if isinstance(value, Mapping):
        given = {str(who): str(choice) for who, choice in value.items()}
        return {who: given[who] for who in (*people, *given) if who in given}
    return dict.fromkeys(people or ("",), str(value)) if value is not None else {}


def of(stint: Stint) -> Driven:
    """How a stint was driven."""
    return Driven(stint.conditions, " ".join(stint.driving.lower().split()))


def most_common(stints: Sequence[Stint], usual: tuple[tuple[str, str, str], ...]) -> Driven | None:
    """The way of driving under which most setups can be compared.

    Of several the episode's own conditions, then the most laps kept, then the first written; None without stints.
    """
    best: tuple[tuple[int, bool, int], Driven] | None = None
    for stint in stints:
        way = of(stint)
        alike = [one for one in stints if way.like(of(one))]
        rank = (len({one.setup for one in alike}), way.conditions == usual, sum(len(one.kept) for one in alike))
        if best is None or rank > best[0]:
            best = (rank, way)
    return best[1] if best else None


def apart(first: Driven, second: Driven, garage: Garage | None) -> tuple[str, ...]:
    """What was different, in sentences; nothing where they are alike."""
    one, other = ({(name, who): choice for name, who, choice in way.conditions} for way in (first, second))
    found = []
    for key in dict.fromkeys((*one, *other)):
        if one.get(key) != other.get(key):
            name, who = key
            option = garage.options.get(name) if garage else None
            about = f"{option.name if option else name}{f' for {who}' if who else ''}"
            found.append(
                f"{about} was {one.get(key, 'not said')} in one and {other.get(key, 'not said')} in the other."
            )
    if first.driving and second.driving and first.driving != second.driving:
        found.append(f"One was driven {first.driving}, the other {second.driving}: {STYLE}.")
    return tuple(found)
