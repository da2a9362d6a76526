"""An option that is set for several is set alike for all of them.

Where the garage says `for: [me, field]`, the presenter's car and the others' can be set apart. Laps against a field
with other settings cannot be compared, and a viewer's race is not like that.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    conditions: { tyre_use: { me: hard, field: usual }, use_speed: double }
                  ^^^^^^^^

Found:

    # marrow-creek-grand-sedan/episode.yaml
    stints:
      - setup: short
        file: stints/short-1.csv
        conditions:
          tyre_use: { me: usual, field: hard }
          ^^^^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    conditions: { tyre_use: { me: usual, field: usual }, use_speed: double }
    stints:
      - { setup: short, file: stints/short-1.csv, conditions: { tyre_use: usual } }
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.checks.conditions import by_person, driven
from producer.checks.written import listed
from producer.model.library import Case

CODES = {"options-not-equal": Severity.WARNING}


def check_episode(case: Case) -> Iterator[Finding]:
    """The episode's conditions and those of its stints."""
    if case.garage is None:
        return
    for record in driven(case.episode):
        for name, option in case.garage.options.items():
            had = by_person(record.conditions.get(name), option)
            if len(set(had.values())) > 1:
                told = listed([f"{choice} for {who}" for who, choice in had.items()])
                message = f"{option.name} is {told}: laps like these cannot be compared"
                place, where = record.key_place("conditions", name), record.where("conditions", name)
                hint = "drive with both set alike, or waive it and say why"
                yield Finding("options-not-equal", Severity.WARNING, place, message, hint, where)
