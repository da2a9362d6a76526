"""Commands that answer viewers."""

from __future__ import annotations

from typing import Annotated

import typer

from producer.cli import options
from producer.cli.app import ANSWER, Plain


def add_to(app: typer.Typer) -> None:
    """Put these commands on the program."""
    app.command(rich_help_panel=ANSWER, cls=Plain)(reply)


def reply(
    request: Annotated[str, typer.Argument(help="The request's id in the log.", metavar="REQUEST")],
    setup: options.ReplySetup = None,
    as_json: options.Json = False,
    library: options.Library = None,
    out: options.Out = None,
) -> int:
    """Print a reply to a viewer, with this setup's numbers."""
    from producer.jobs.reply import reply_json, reply_to

    root = options.root(library)
    answer = reply_to(root, request, setup, options.out(out, root))
    print(reply_json(answer) if as_json else answer.text)
    return 0
