"""The command that reads test laps: stints."""

from __future__ import annotations

import sys

import typer

from producer.cli import options
from producer.cli.app import MAKE, Plain


def add_to(app: typer.Typer) -> None:
    """Put this command on the program."""
    app.command(rich_help_panel=MAKE, cls=Plain)(stints)


def stints(
    episode: options.Episode,
    as_json: options.Json = False,
    library: options.Library = None,
) -> int:
    """Print what the test laps say: pace, falloff, crossover, tyres.

    `build` makes the page and the chart of it.
    """
    from producer.cli import show
    from producer.jobs import stints as job

    found = job.stints(options.root(library), episode)
    print(job.as_json(found) if as_json else job.as_text(found))
    text = show.findings_text(found.findings, found.library.files, every_note=True, colour=False)
    if text:
        print(f"\n{text}", file=sys.stderr)
    return show.exit_code(found.findings, strict=False)
