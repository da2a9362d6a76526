"""Options that several commands share."""

from __future__ import annotations

import os
import re
from collections.abc import Callable
from pathlib import Path
from typing import Annotated

import typer

from producer.basics.errors import ProducerError

# What Tab makes of an episode's name in a shell: `first-episode/`, `.\\first-episode\\`, `first-episode/episode.yaml`.
_AROUND = re.compile(r"^\.[\\/]+|[\\/]+(episode\.yaml)?$")


def _name(given: str) -> str:
    return _AROUND.sub("", given)


def _names(given: list[str] | None) -> list[str] | None:
    return None if given is None else [_name(one) for one in given]


_SETUP = ("--setup", "-s")
Library = Annotated[
    Path | None,
    typer.Option("--library", "-l", help="The library's folder (default: the nearest one upward, else ./episodes)."),
]
Out = Annotated[
    Path | None, typer.Option("--out", "-o", help="Where files are made (default: build, in the library you are in).")
]
Json = Annotated[bool, typer.Option("--json", help="Print JSON for other programs.")]
Episode = Annotated[str, typer.Argument(help="The episode's id: its folder's name.", metavar="EPISODE", callback=_name)]
Episodes = Annotated[
    list[str] | None,
    typer.Argument(help="Episodes by id; none means all.", metavar="EPISODE", callback=_names),
]
Setup = Annotated[str | None, typer.Option(*_SETUP, help="One setup by id (default: every setup).", metavar="SETUP")]
GuideSetup = Annotated[
    str | None,
    typer.Option(
        *_SETUP, help="One setup by id (default: every setup; with --json or --explain the first).", metavar="SETUP"
    ),
]
ReplySetup = Annotated[
    str | None, typer.Option(*_SETUP, help="One setup by id (default: the one that fits).", metavar="SETUP")
]
AdviceSetup = Annotated[
    str | None, typer.Option(*_SETUP, help="One setup by id (default: the first).", metavar="SETUP")
]
Under = Annotated[
    str | None,
    typer.Option(
        "--episode",
        "-e",
        help="The episode the messages stand below; a track or class they name wins.",
        metavar="EPISODE",
        callback=lambda given: None if given is None else _name(given),
    ),
]
DryRun = Annotated[bool, typer.Option("--dry-run", help="Show what would be written, and write nothing.")]
Feels = Annotated[
    list[str],
    typer.Option("--feels", "-f", help="'loose entry', 'very tight exit'; may be given again.", metavar="FEELS"),
]


def _one_of(*known: str) -> Callable[[str | None], str | None]:
    def chosen(given: str | None) -> str | None:
        if given is not None and given not in known:
            raise typer.BadParameter(f"'{given[:40]}' is not one of {', '.join(known)}")
        return given

    return chosen


Tyres = Annotated[
    str | None, typer.Option("--tyres", help="new or worn.", metavar="TYRES", callback=_one_of("new", "worn"))
]
Device = Annotated[
    str | None,
    typer.Option(
        "--device", help="wheel, pad or keyboard.", metavar="DEVICE", callback=_one_of("wheel", "pad", "keyboard")
    ),
]

BUILD = "build"


def root(given: Path | None) -> Path:
    """The library's folder. Raises ProducerError where there is none."""
    from producer.library.load import find_library

    try:
        here = Path.cwd()
    except OSError as error:
        raise ProducerError(f"the folder you are in cannot be read: {error.strerror}; change to another") from error
    return find_library(given, here)


def out(given: Path | None, library: Path) -> Path:
    """Where files are made: as given, else `build` in the library we stand in, else `build` here.

    Relative to where we are, so that what is printed can be opened as it stands.
    """
    if given is not None:
        return given
    here, home = Path.cwd().resolve(), library.resolve()
    return Path(os.path.relpath(home, here)) / BUILD if home in here.parents else Path(BUILD)
