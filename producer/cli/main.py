"""Start, exit codes, and what a person sees when something goes wrong.

0 done and nothing wrong, 1 findings, 2 the command could not be done, 3 a bug of ours, 130 interrupted.
"""

from __future__ import annotations

import os
import sys
import traceback
from collections.abc import Sequence
from pathlib import Path
from typing import Annotated, Any

import typer

from producer import __version__
from producer.basics.errors import ProducerError
from producer.cli import answering, captions_read, evidence, keeping, making, take, understanding
from producer.cli.app import new_app

app = new_app()
for _commands in (making, evidence, take, answering, keeping, understanding, captions_read):
    _commands.add_to(app)


@app.callback()
def _alone(
    context: typer.Context,
    version: Annotated[bool, typer.Option("--version", help="Print the program's version and leave.")] = False,
) -> None:
    if version:
        print(f"producer {__version__}")
        raise typer.Exit(0)
    if context.invoked_subcommand is None:
        print(context.get_help())


# The base of everything that is wrong with a command line, whichever copy of click typer uses.
_ClickException: Any = typer.BadParameter.__mro__[2]


def main(arguments: Sequence[str] | None = None) -> None:
    """Run one command and leave with its exit code."""
    _utf8()
    sys.exit(run(arguments))


def run(arguments: Sequence[str] | None = None) -> int:
    """Run one command; its exit code. Never raises but for SystemExit of the interpreter itself."""
    try:
        code = app(args=None if arguments is None else list(arguments), prog_name="producer", standalone_mode=False)
    except ProducerError as trouble:
        print(f"producer: {trouble}", file=sys.stderr)
        return 2
    except _ClickException as trouble:
        trouble.show()
        return 2
    except (KeyboardInterrupt, typer.Abort):
        print("producer: interrupted", file=sys.stderr)
        return 130
    except BrokenPipeError:
        # The reader of our output has seen enough; nothing is wrong.
        sys.stdout = Path(os.devnull).open("w", encoding="utf-8")  # noqa: SIM115 - lives until the process ends
        return 0
    except Exception:  # noqa: BLE001 - the one place where a bug of ours may show itself
        traceback.print_exc()
        print("producer: this is a bug of ours, not of your files; please report the lines above", file=sys.stderr)
        return 3
    return code if isinstance(code, int) else 0


def _utf8() -> None:
    """Windows consoles and pipes still default to old code pages; everything we print is UTF-8."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(encoding="utf-8", errors="replace")
