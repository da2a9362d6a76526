"""Progress is for people: on a terminal, where there is more than one thing to do and it takes a while."""

from __future__ import annotations

import io
import sys

import pytest

from producer.cli import progress


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.fixture
def clock(monkeypatch: pytest.MonkeyPatch) -> list[float]:
    """The time, in its only item."""
    now = [0.0]
    monkeypatch.setattr(progress, "monotonic", lambda: now[0])
    monkeypatch.setenv("TERM", "xterm")
    return now


def run(monkeypatch: pytest.MonkeyPatch, stream: io.StringIO, clock: list[float], total: int, each: float) -> str:
    monkeypatch.setattr(sys, "stderr", stream)
    with progress.steps() as step:
        for number in range(1, total + 1):
            clock[0] += each
            if step is not None:
                step(f"checking oval-{number}", number, total)
    return stream.getvalue()


def test_a_terminal_sees_what_is_being_done(monkeypatch: pytest.MonkeyPatch, clock: list[float]) -> None:
    seen = run(monkeypatch, Terminal(), clock, 40, 0.2)
    assert "checking oval-" in seen
    assert "/40" in seen


@pytest.mark.parametrize(
    ("stream", "total", "each"),
    [
        (io.StringIO, 40, 0.2),  # a pipe or a file
        (Terminal, 40, 0.001),  # done before anybody would look
        (Terminal, 1, 9.0),  # one episode is no row to count in
        (Terminal, 0, 1.0),
    ],
)
def test_nobody_is_told_of_little(
    monkeypatch: pytest.MonkeyPatch, clock: list[float], stream: type[io.StringIO], total: int, each: float
) -> None:
    assert run(monkeypatch, stream(), clock, total, each) == ""


def test_an_error_passes_and_the_terminal_is_left_clean(monkeypatch: pytest.MonkeyPatch, clock: list[float]) -> None:
    stream = Terminal()
    monkeypatch.setattr(sys, "stderr", stream)

    def failing() -> None:
        with progress.steps() as step:
            clock[0] = 5.0
            assert step is not None
            step("checking oval-1", 1, 2)
            raise ValueError("no")

    with pytest.raises(ValueError, match="no"):
        failing()
    assert stream.getvalue().endswith("\x1b[2K")  # the last line is cleared
