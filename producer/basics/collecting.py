"""Keep Python's search for circular garbage out of work that only builds and keeps things."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def collecting_paused() -> Iterator[None]:
    """No garbage collection inside; as it was before afterwards.

    A thousand files become a million small objects that all stay: looking through them again and again takes longer
    than making them (measured: reading is twice as fast without). What is not circular is freed as ever.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
