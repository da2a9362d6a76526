"""Conditions as they are written: `use_speed: double`, `tyre_use: { me: hard, field: hard }`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from producer.model.episode import Episode, StintEntry
from producer.model.garage import Option


@dataclass(frozen=True, slots=True)
class Given:
    """One choice: of an option, for someone (`who` "" where it holds for everybody)."""

    record: Episode | StintEntry
    option: str
    who: str
    choice: Any

    @property
    def path(self) -> tuple[str, ...]:
        """Where it stands below its record."""
        return ("conditions", self.option, self.who) if self.who else ("conditions", self.option)


def driven(episode: Episode) -> tuple[Episode | StintEntry, ...]:
    """What has conditions: the episode, then each stint."""
    return (episode, *episode.stints)


def given(record: Episode | StintEntry) -> Iterator[Given]:
    """Every choice of an episode or a stint in the order written."""
    for option, value in record.conditions.items():
        if isinstance(value, Mapping):
            for who, choice in value.items():
                yield Given(record, option, str(who), choice)
        else:
            yield Given(record, option, "", value)


def by_person(value: Any, option: Option) -> dict[str, str]:
    """Who has which choice; one for everybody counts for each the option is set for (under "" where it names nobody).

    Anything but text is left out: that is found elsewhere.
    """
    if isinstance(value, Mapping):
        return {str(who): choice for who, choice in value.items() if isinstance(choice, str)}
    return dict.fromkeys(option.for_ or ("",), value) if isinstance(value, str) else {}
