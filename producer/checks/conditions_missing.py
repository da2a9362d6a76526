"""Every option of the garage has a condition: two tests under unlike conditions say nothing about two setups.

The garage lists what must be equal (tyre use, say). A viewer who does not know how it was set cannot tell whether
the setup will do the same for them. An option that is set for several (`for: [me, field]`) wants a choice for each,
or one for all. While an episode is only an idea nothing has been driven, so nothing is said.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    conditions: { use_speed: double }
    ^^^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    conditions:
      tyre_use: { me: hard }
      ^^^^^^^^
      use_speed: double

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    conditions: { tyre_use: hard, use_speed: double }

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    status: idea
    conditions: { use_speed: double }
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.checks.conditions import by_person
from producer.checks.written import listed
from producer.model.episode import Episode
from producer.model.garage import Option
from producer.model.library import Case

CODES = {"conditions-missing": Severity.WARNING}


def check_episode(case: Case) -> Iterator[Finding]:
    """The garage's options against the episode's conditions."""
    if case.garage is None or not case.episode.at_least("testing"):
        return
    for name, option in case.garage.options.items():
        yield from _option(case.episode, name, option)


def _option(episode: Episode, name: str, option: Option) -> Iterator[Finding]:
    value = episode.conditions.get(name)
    if value is None or value == {}:
        message = f"nothing says how {option.name} ({name}) was set"
        example = option.choices[0] if option.choices else "..."
        hint = f"add '{name}: {example}', or how it was: {', '.join(option.choices)}"
        place, where = episode.key_place("conditions"), episode.where("conditions", name)
        yield Finding("conditions-missing", Severity.WARNING, place, message, hint, where)
        return
    had = by_person(value, option)
    lacking = [who for who in option.for_ if had and who not in had]
    if lacking:
        message = f"nothing says how {option.name} was set for {listed(lacking)}"
        place, where = episode.key_place("conditions", name), episode.where("conditions", name)
        hint = f"add '{lacking[0]}: ...', or one choice for all: '{name}: {next(iter(had.values()))}'"
        yield Finding("conditions-missing", Severity.WARNING, place, message, hint, where)
