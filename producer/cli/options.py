"""Options that several commands share."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

Library = Annotated[
    Path | None,
    typer.Option("--library", "-l", help="The library's folder (default: the nearest one upward, else ./episodes)."),
]
Out = Annotated[Path, typer.Option("--out", "-o", help="Where files are made.")]
Json = Annotated[bool, typer.Option("--json", help="Print JSON for other programs.")]
Episode = Annotated[str, typer.Argument(help="The episode's id.", metavar="EPISODE")]
Episodes = Annotated[list[str] | None, typer.Argument(help="Episodes by id; none means all.", metavar="[EPISODE]...")]
Setup = Annotated[str | None, typer.Option("--setup", "-s", help="One setup by id (default: the first, or all).")]

BUILD = Path("build")


def root(given: Path | None) -> Path:
    """The library's folder. Raises ProducerError where there is none."""
    from producer.library.load import find_library

    return find_library(given, Path.cwd())
