"""Commands that keep the library."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from producer.cli.app import KEEP, Grouped

new = typer.Typer(
    cls=Grouped, rich_markup_mode=None, no_args_is_help=True, help="Start a library.", add_completion=False
)


def add_to(app: typer.Typer) -> None:
    """Put these commands on the program."""
    app.add_typer(new, name="new", rich_help_panel=KEEP)


@new.callback()
def _new() -> None:
    """Start a library."""


@new.command("library", rich_help_panel=KEEP)
def new_library(
    path: Annotated[Path, typer.Argument(help="A folder that does not exist yet, or is empty.", metavar="PATH")],
    demo: Annotated[bool, typer.Option("--demo", help="Fill it with the demo library.")] = False,
) -> int:
    """Make a new library: commented files to start from, or the demo."""
    from producer.jobs.new_library import new_library as job

    for written in job(path, demo=demo):
        print(written)
    return 0
