"""The command that hears a recorded take: take."""

from __future__ import annotations

import sys

import typer

from producer.cli import options
from producer.cli.app import MAKE, Plain


def add_to(app: typer.Typer) -> None:
    """Put this command on the program."""
    app.command(rich_help_panel=MAKE, cls=Plain)(take)


def take(
    episode: options.Episode,
    as_json: options.Json = False,
    library: options.Library = None,
) -> int:
    """Hold a take against its script: what was said wrong or not at all."""
    from producer.cli import show
    from producer.jobs import take as job

    found = job.take(options.root(library), episode)
    findings, files = job.complaints(found)
    print(job.as_json(found) if as_json else job.as_text(found))
    text = show.findings_text(findings, files, every_note=False, colour=False)
    if text and not as_json:
        print(f"\n{text}", file=sys.stderr)
    return show.exit_code([*(one.finding for one in found.take.findings), *findings], strict=False)
