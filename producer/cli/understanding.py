"""Commands that show what the program understands: claims, message."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from producer.basics.errors import ProducerError
from producer.cli import options
from producer.cli.app import UNDERSTAND, Plain

if TYPE_CHECKING:
    from producer.jobs.claims import Shop

_File = Annotated[
    Path | None, typer.Argument(help="A text file (default: standard input).", metavar="FILE", show_default=False)
]
_Garage = Annotated[
    str, typer.Option("--garage", "-g", help="The class: a garage of the library, or its YAML file.", metavar="GARAGE")
]
_Track = Annotated[
    str | None, typer.Option("--track", "-t", help="The track that the message is about, by id.", metavar="TRACK")
]
_Lines = Annotated[bool, typer.Option("--lines", help="One text a line; prints one JSON object a line.")]


def add_to(app: typer.Typer) -> None:
    """Put these commands on the program."""
    for one in (claims, message):
        app.command(rich_help_panel=UNDERSTAND, cls=Plain)(one)


def claims(
    file: _File = None,
    *,
    garage: _Garage,
    lines: _Lines = False,
    as_json: options.Json = False,
    library: options.Library = None,
) -> int:
    """Print what the program understands from a prose text."""
    from producer.jobs import claims as job

    about, text = _given(file, garage, library)
    chosen = about.garages[about.garage]
    if lines:
        _print(job.by_line(text, lambda one: job.shape(one, chosen)))
    elif as_json:
        print(json.dumps(job.shape(text, chosen), ensure_ascii=False, indent=2))
    else:
        print(job.told(text, chosen))
    return 0


def message(
    file: _File = None,
    *,
    garage: _Garage,
    track: _Track = None,
    lines: _Lines = False,
    as_json: options.Json = False,
    library: options.Library = None,
) -> int:
    """Print what the program understands from a viewer's message."""
    from producer.jobs.claims import by_line
    from producer.jobs.message import Reading

    about, text = _given(file, garage, library)
    reading = Reading(about, track)
    if lines:
        _print(by_line(text, reading.shape))
    elif as_json:
        print(json.dumps(reading.shape(text), ensure_ascii=False, indent=2))
    else:
        print(reading.told(text))
    return 0


def _print(text: str) -> None:
    if text:
        print(text)


def _given(file: Path | None, garage: str, library: Path | None) -> tuple[Shop, str]:
    """The garage, and the text of the file or of standard input. Raises ProducerError where either cannot be read."""
    from producer.jobs.claims import prose, shop

    about = shop(library, garage)
    try:
        data = sys.stdin.buffer.read() if file is None or str(file) == "-" else file.read_bytes()
    except OSError as error:
        raise ProducerError(f"{file} cannot be read: {error.strerror}") from error
    return about, prose(data, "standard input" if file is None else str(file))
