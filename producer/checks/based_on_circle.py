"""The setups of an episode are not based on one another in a circle.

Each setup has values of its own or takes them from another; in a circle nobody has any, so these setups have no
figures at all and are left out.

Found:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: short
        name: Short run
        based_on: long
                  ^^^^
      - setup: long
        name: Long run
        based_on: short
      - setup: quick
        name: Qualifying
        based_on: quick
                  ^^^^^

Silent:

    # marrow-creek-grand-sedan/episode.yaml
    setups:
      - setup: quick
        name: Qualifying
        based_on: long
      - setup: long
        name: Long run
        based_on: short
      - setup: short
        name: Short run
        values: { front_weight: 50.5 }
"""

from __future__ import annotations

from collections.abc import Iterator

from producer.basics.finding import Finding, Severity
from producer.model.library import Case
from producer.model.resolve import circle

CODES = {"based-on-circle": Severity.ERROR}


def check_episode(case: Case) -> Iterator[Finding]:
    """Each circle once, at the first of its setups in the file."""
    told: set[str] = set()
    for setup in case.episode.setups:
        found = circle(setup, case.episode)
        # A chain that only leads into a circle is right again once the circle is.
        if not found or found[-1] != setup.setup or setup.setup in told:
            continue
        told.update(found)
        others = (case.episode.setup(name) for name in found[1:-1])
        related = tuple(one.place("based_on") for one in others if one is not None)
        message = f"these setups are based on one another in a circle: {' on '.join(found)}"
        hint = "give one of them values of its own, or the name of a setup that has some"
        place, where = setup.place("based_on"), setup.where("based_on")
        yield Finding("based-on-circle", Severity.ERROR, place, message, hint, where, related)
