"""What a setup is meant for: as the author says it, else as it is called."""

from __future__ import annotations

from producer.model.episode import Setup

_CALLED = ("short run", "long run", "qualifying")


def purpose_of(setup: Setup) -> str:
    """`short run`, `long run` or `qualifying`; "" for a setup that neither says it nor is called it."""
    if setup.purpose is not None:
        return setup.purpose
    name = setup.name.lower().replace("-", " ")
    return next((one for one in _CALLED if one in name), "")
