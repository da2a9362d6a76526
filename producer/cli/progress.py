"""Progress on more than one episode, on a terminal only, and only where it takes a while."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from time import monotonic

Step = Callable[[str, int, int], None]
_A_WHILE = 0.7  # seconds; what is done before that needs no bar


@contextmanager
def steps() -> Iterator[Step | None]:
    """A function to call with (what is done, its number from 1, how many); None where nobody would see it."""
    if not sys.stderr.isatty():
        yield None
        return
    began = monotonic()
    with ExitStack() as stack:
        shown: list[Step] = []

        def step(name: str, number: int, total: int) -> None:
            if not shown and total > 1 and monotonic() - began >= _A_WHILE:
                shown.append(stack.enter_context(_bar()))
            if shown:
                shown[0](name, number, total)

        yield step


@contextmanager
def _bar() -> Iterator[Step]:
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

    columns = (TextColumn("{task.description}"), BarColumn(bar_width=24), MofNCompleteColumn())
    with Progress(*columns, console=Console(stderr=True), transient=True) as progress:
        task = progress.add_task("", total=None, visible=False)

        def step(name: str, number: int, total: int) -> None:
            progress.update(task, description=name, completed=number - 1, total=total, visible=total > 1)

        yield step
