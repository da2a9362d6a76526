"""Progress on more than one episode, on a terminal only."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager


@contextmanager
def steps() -> Iterator[Callable[[str, int, int], None] | None]:
    """A function to call with (episode, its number from 1, how many); None where nobody would see it."""
    if not sys.stderr.isatty():
        yield None
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, TextColumn

    columns = (TextColumn("{task.description}"), BarColumn(bar_width=24), MofNCompleteColumn())
    with Progress(*columns, console=Console(stderr=True), transient=True) as progress:
        task = progress.add_task("", total=None, visible=False)

        def step(name: str, number: int, total: int) -> None:
            progress.update(task, description=name, completed=number - 1, total=total, visible=total > 1)

        yield step
