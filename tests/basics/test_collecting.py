"""Garbage collection is paused inside, and as before afterwards."""

from __future__ import annotations

import gc

import pytest

from producer.basics.collecting import collecting_paused


@pytest.mark.parametrize("on", [True, False])
def test_paused_and_as_before(on: bool) -> None:
    was = gc.isenabled()
    try:
        gc.enable() if on else gc.disable()
        with pytest.raises(ValueError, match="x"), collecting_paused():  # noqa: PT012 - both halves are the point
            assert not gc.isenabled()
            raise ValueError("x")
        assert gc.isenabled() is on
    finally:
        gc.enable() if was else gc.disable()
