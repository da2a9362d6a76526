"""Commands that answer viewers."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Annotated

import typer

from producer.basics.errors import ProducerError
from producer.cli import options
from producer.cli.app import ANSWER, Plain

Paste = Annotated[bool, typer.Option("--paste", help="Answer messages that you paste, an empty line between.")]
_APART = f"\n\n{'-' * 40}\n\n"


def add_to(app: typer.Typer) -> None:
    """Put these commands on the program."""
    app.command(rich_help_panel=ANSWER, cls=Plain)(requests)
    app.command(rich_help_panel=ANSWER, cls=Plain)(reply)


def requests(
    add: Annotated[bool, typer.Option("--add", help="Log messages that you paste, an empty line between.")] = False,
    dry_run: options.DryRun = False,
    as_json: options.Json = False,
    library: options.Library = None,
) -> int:
    """Print what viewers ask for most, who waits, what is covered."""
    from producer.jobs.requests import log_json, request_log

    root = options.root(library)
    if add:
        return _add(root, dry_run=dry_run, as_json=as_json)
    found = request_log(root)
    if as_json:
        print(log_json(found))
    else:
        from producer.replies.log_text import log_text

        print(log_text(found))
    return 0


def reply(
    request: Annotated[str | None, typer.Argument(help="The request's id in the log.", metavar="REQUEST")] = None,
    setup: options.ReplySetup = None,
    paste: Paste = False,
    episode: options.Under = None,
    log: Annotated[bool, typer.Option("--log", help="Put the pasted messages into the log.")] = False,
    mark: Annotated[bool, typer.Option("--mark", help="Mark the request as answered today.")] = False,
    dry_run: options.DryRun = False,
    as_json: options.Json = False,
    library: options.Library = None,
    out: options.Out = None,
) -> int:
    """Print a reply to a viewer, with this setup's numbers."""
    root = options.root(library)
    made = options.out(out, root)
    if paste:
        if request is not None or setup is not None or (mark and not log):
            raise ProducerError("--paste answers what you paste: it goes with --episode, --log and, with that, --mark")
        return _pasted(root, made, episode, log=log, mark=mark, dry_run=dry_run, as_json=as_json)
    if request is None or episode is not None or log:
        raise ProducerError("say which request to answer ('producer requests' lists them), or --paste messages")
    return _one(root, made, request, setup, mark=mark, dry_run=dry_run, as_json=as_json)


def _one(root: Path, out: Path, request: str, setup: str | None, *, mark: bool, dry_run: bool, as_json: bool) -> int:
    from producer.jobs.reply import IN_LOG_NOTE, reply_json, reply_to
    from producer.jobs.requests import mark_called

    answer = reply_to(root, request, setup, out)
    print(reply_json(answer) if as_json else answer.text)
    for note in answer.notes:
        if note != IN_LOG_NOTE:
            _told(note)
    if mark:
        _told(mark_called(root, request, dry_run=dry_run) or f"{request} is marked already", dry_run=dry_run)
    return 0


def _pasted(root: Path, out: Path, episode: str | None, *, log: bool, mark: bool, dry_run: bool, as_json: bool) -> int:
    from producer.jobs.reply import IN_LOG_NOTE, replies_json, reply_pasted
    from producer.jobs.requests import add, read_messages

    messages = read_messages(_standard_input())
    answers = reply_pasted(root, messages, episode, out)
    if log:
        logged = add(root, messages, under=episode, answered=mark, dry_run=dry_run)
        answers = tuple(one.called(name) for one, name in zip(answers, logged.ids, strict=True))
    print(replies_json(answers) if as_json else _APART.join(one.text for one in answers))
    for note in dict.fromkeys(note for one in answers for note in one.notes):
        if not (log and note == IN_LOG_NOTE):
            _told(note)
    if log:
        _told(logged.diff or "every message is in the log already", dry_run=dry_run)
    return 0


def _add(root: Path, *, dry_run: bool, as_json: bool) -> int:
    import json

    from producer.jobs.requests import add, read_messages

    logged = add(root, read_messages(_standard_input()), dry_run=dry_run)
    if as_json:
        print(json.dumps({"format": 1, "requests": list(logged.ids), "new": list(logged.fresh)}))
    else:
        print(logged.diff or "every message is in the log already")
        if logged.read:
            print("\n".join(["", "read as", *(f"  {one}" for one in logged.read)]))
        if dry_run:
            _told("nothing was written", dry_run=False)
    return 0


def _told(text: str, *, dry_run: bool = False) -> None:
    """Beside the reply, on the other stream, so that the reply alone can be piped."""
    print(f"\n{text}{chr(10) + 'nothing was written' if dry_run else ''}", file=sys.stderr)


def _standard_input() -> bytes:
    if sys.stdin.isatty():
        _told("paste the messages, an empty line between them; end with Ctrl-D (Windows: Ctrl-Z, then Enter)")
    stream = getattr(sys.stdin, "buffer", None)
    data: bytes = stream.read() if stream is not None else sys.stdin.read().encode()
    return data
