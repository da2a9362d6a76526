"""The command that shows what the program reads from a caption file: cues."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Annotated

import typer

from producer.basics.errors import ProducerError
from producer.cli import options
from producer.cli.app import UNDERSTAND, Plain


def add_to(app: typer.Typer) -> None:
    """Put this command on the program."""
    app.command(rich_help_panel=UNDERSTAND, cls=Plain)(cues)


def cues(
    file: Annotated[Path, typer.Argument(help="A SubRip or WebVTT file; - is standard input.", metavar="FILE")],
    as_json: options.Json = False,
) -> int:
    """Print what the program reads from a caption file, line by line."""
    from producer.cli import show
    from producer.jobs import cues as job

    found = job.cues(_data(file), "standard input" if str(file) == "-" else file.as_posix())
    findings = found.read.findings
    if as_json:
        print(json.dumps({**job.shape(found), "findings": show.finding_rows(findings)}, ensure_ascii=False, indent=2))
        return show.exit_code(findings, strict=False)
    if read := job.as_text(found):
        print(read)
    if text := show.findings_text(findings, found.files, every_note=True, colour=False):
        print(f"\n{text}" if read else text, file=sys.stderr)
    return show.exit_code(findings, strict=False)


def _data(file: Path) -> bytes:
    try:
        return sys.stdin.buffer.read() if str(file) == "-" else file.read_bytes()
    except OSError as error:
        raise ProducerError(f"{file} cannot be read: {error.strerror}") from error
