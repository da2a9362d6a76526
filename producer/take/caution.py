"""Whether the caution was spoken: the numbers are for a simulation, not for a real car."""

from __future__ import annotations

from producer.take.speech import Speech

REACH = 12  # words between "simulation" and "real", whichever comes first
_SIMULATION = ("simulation", "simulations", "simulator", "sim")


def caution_at(heard: Speech) -> int | None:
    """The word where the caution is said for the last time, None where it is not."""
    real = [at for at, word in enumerate(heard.plain) if word == "real"]
    found = [
        min(at, near)
        for at, word in enumerate(heard.plain)
        if word in _SIMULATION
        for near in real
        if abs(at - near) <= REACH
    ]
    return found[-1] if found else None
