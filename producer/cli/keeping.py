"""Commands that keep the library."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from producer.cli.app import KEEP, Grouped, Plain

_HELP = """Start a library: a folder with everything your episodes are made from.

The new files are commented; write over what is in them. 'producer new library my-channel' makes the folder my-channel.
"""

new = typer.Typer(cls=Grouped, rich_markup_mode=None, help=_HELP, invoke_without_command=True, add_completion=False)


def add_to(app: typer.Typer) -> None:
    """Put these commands on the program."""
    app.add_typer(new, name="new", rich_help_panel=KEEP, short_help="Start a library.")


@new.callback()
def _new(context: typer.Context) -> None:
    if context.invoked_subcommand is None:
        print(context.get_help())


@new.command(
    "library", rich_help_panel=KEEP, cls=Plain, short_help="Make a new library: files to fill in, or the demo."
)
def new_library(
    path: Annotated[Path, typer.Argument(help="A folder that does not exist yet, or is empty.", metavar="PATH")],
    demo: Annotated[bool, typer.Option("--demo", help="Fill it with the demo library.")] = False,
) -> int:
    """Make a new library: commented files to start from, or the demo.

    Nothing that is there already is touched.
    """
    from producer.jobs.new_library import new_library as job

    for written in job(path, demo=demo):
        print(written)
    print(_next(path, demo=demo))
    return 0


def _next(path: Path, *, demo: bool) -> str:
    """What to do now; a path with blanks is quoted, as every shell wants it."""
    place = f'"{path}"' if " " in str(path) else str(path)
    first = "look at" if demo else "write over"
    return f"""
next:
  cd {place}
  {first} the channel, the garages, the tracks and the episodes in your editor
  producer check     says what is wrong, where, and what to do about it
  producer build     makes the files of every episode"""
