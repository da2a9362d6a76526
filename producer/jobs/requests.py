"""The request log: read and ranked, and new messages put into it."""

from __future__ import annotations

import json
import re
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path
from typing import Any

from producer.basics.errors import ProducerError
from producer.basics.spelling import spell
from producer.jobs.changing import draft_of, save, today
from producer.jobs.deliver import deliver
from producer.jobs.reading import Reader
from producer.jobs.reply import request_called, unlogged
from producer.library.edit import Draft, difference, new_file
from producer.library.load import load
from producer.library.text import LARGEST
from producer.library.writing import Given
from producer.model.library import Library
from producer.model.request import Request
from producer.render.document import Document
from producer.replies.choose import episode_called, placed_under
from producer.replies.joining import Names
from producer.replies.log import Log, log
from producer.replies.pasted import Pasted, pasted, same
from producer.replies.understand import kind
from producer.replies.wording import understood

FOLDER = "requests"
_HEAD = "# Viewers' messages. Handles stay on this machine; a name is read out only where credit says yes.\n"
_MONTHLY = re.compile(r"\d{4}-\d{2}\.ya?ml")
_NUMBERED = re.compile(r"(.*?)(\d{1,9})")
_SETTLED = frozenset({"answered", "planned", "published", "declined"})


@dataclass(frozen=True, slots=True)
class Logged:
    """Messages put into the log: the id of each in the order pasted, those that were there already among them.

    `fresh` are the ids that are new, `read` a line for each of them on what is read from it, `diff` what is written,
    "" for nothing.
    """

    ids: tuple[str, ...]
    fresh: tuple[str, ...]
    read: tuple[str, ...]
    diff: str


def request_log(root: Path, day: date | None = None) -> Log:
    """The log as it stands on a day, the author's own where none is given."""
    library, _ = load(root)
    reader = Reader(library)
    return log(library, [reader.understood(one) for one in library.requests.values()], day or today())


def read_messages(data: bytes) -> tuple[Pasted, ...]:
    """Pasted bytes as messages. Raises ProducerError for what is no text, too much, or nothing at all."""
    if len(data) > LARGEST:
        raise ProducerError(f"more than {LARGEST // 1024} KiB was pasted; paste it in parts")
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        data = data.decode("utf-16", errors="replace").encode()
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("cp1252", errors="replace")  # what Windows consoles still send
    found = pasted(text)
    if not found:
        raise ProducerError("no message was pasted; paste one or more, an empty line between them")
    return found


def add(
    root: Path,
    messages: Sequence[Pasted],
    *,
    under: str | None = None,
    answered: bool = False,
    dry_run: bool = False,
    day: date | None = None,
) -> Logged:
    """Log messages, each once, behind the others; `under` is the episode they were written below.

    Only what was written is logged: what a message means is read from it whenever it is needed. `answered` marks
    them so. With `dry_run` nothing is written. Raises ProducerError where the log cannot be changed.
    """
    library, _ = load(root)
    if under is not None:
        episode_called(library, under)
    reader, when = Reader(library), day or today()
    numbers = _Numbers(library.requests)
    ids: list[str] = []
    items: dict[str, tuple[Pasted, dict[str, Given]]] = {}
    for message in messages:
        known = _known(message, library, items)
        if known is None:
            known = numbers.next()
            items[known] = (message, _item(known, message, _below(reader, message, under, library), when, answered))
        ids.append(known)
    diff = _write(root, _file(library, when), [item for _, item in items.values()], dry_run=dry_run) if items else ""
    read = tuple(f"{name}: {_read(reader, message, under, library)}" for name, (message, _) in items.items())
    return Logged(tuple(ids), tuple(items), read, diff)


def mark(root: Path, request: Request, *, dry_run: bool = False, day: date | None = None) -> str:
    """Mark a request as answered today; the diff, "" where it was marked already.

    A request that is planned, published or declined keeps that status and gets the day.
    """
    if request.answered is not None and request.status in _SETTLED:
        return ""
    source = request.place().file
    draft, path = draft_of(root, source), _path(request)
    if request.status == "new":
        _put(draft, path, "status", "answered", request.written("status"), None)
    _put(draft, path, "answered", (day or today()).isoformat(), request.written("answered"), "status")
    if not dry_run:
        save(root, draft)
    return draft.diff()


def mark_called(root: Path, request_id: str, *, dry_run: bool = False) -> str:
    """As `mark`, for the request of that id."""
    library, _ = load(root)
    return mark(root, request_called(library, request_id), dry_run=dry_run)


def log_json(found: Log) -> str:
    """The shape that other programs rely on."""
    from producer.replies.log_text import log_json as shape

    return json.dumps(shape(found), ensure_ascii=False, indent=2)


class _Numbers:
    """Ids for new requests: the highest number of the latest kind, and one more each time."""

    def __init__(self, requests: Collection[str]) -> None:
        found = [match for one in requests if (match := _NUMBERED.fullmatch(one))]
        self._lead, digits = found[-1].groups() if found else ("req-", "000")
        self._wide = len(digits)
        self._last = max((int(one[2]) for one in found if one[1] == self._lead), default=0)

    def next(self) -> str:
        self._last += 1
        return f"{self._lead}{self._last:0{self._wide}d}"


def _known(message: Pasted, library: Library, items: dict[str, tuple[Pasted, Any]]) -> str | None:
    """The id of a request that is this very message from this viewer."""
    logged = [(one.id, one.from_, one.text) for one in library.requests.values()]
    logged += [(name, one.handle, one.text) for name, (one, _) in items.items()]
    own = (message.handle or "").casefold()
    return next(
        (name for name, who, text in logged if (who or "").casefold() == own and same(text, message.text)), None
    )


def _read(reader: Reader, message: Pasted, under: str | None, library: Library) -> str:
    """`help; loose on exit, on worn tires; Gannet Bowl, Grand Sedan`, so that a slip of the reader is seen at once."""
    whole = reader.understood(unlogged(message), under)
    placed = placed_under(library, whole.request, under)
    about = library.episodes.get(placed.episode or "")
    track, garage = (about.track, about.garage) if about else (placed.track, placed.garage)
    spelling = library.channel.spelling if library.channel else "us"
    felt = spell(understood(whole.request), spelling)
    named = Names(library).place(track, garage) if track else ""
    return "; ".join(one for one in (kind(whole.request), felt, named) if one)


def _below(reader: Reader, message: Pasted, under: str | None, library: Library) -> dict[str, Given]:
    """What the episode a message was written below says of it: the episode, or the class where the track is another."""
    if under is None:
        return {}
    said = reader.understood(unlogged(message), under).request
    placed = placed_under(library, said, under)
    if placed.episode is not None:
        return {"episode": placed.episode}
    return {"garage": placed.garage} if placed.garage and not said.garage else {}


def _item(name: str, message: Pasted, about: dict[str, Given], when: date, answered: bool) -> dict[str, Given]:
    found: dict[str, Given] = {"id": name, "received": when.isoformat()}
    if message.handle:
        found["from"] = message.handle
    found["text"] = f"{message.text}\n"
    found |= {**about, "status": "answered" if answered else "new"}
    return {**found, "answered": when.isoformat()} if answered else found


def _file(library: Library, when: date) -> str:
    """The file to log in: this month's where files are monthly, else the last one."""
    names = sorted(one.removeprefix(f"{FOLDER}/") for one in library.files if one.startswith(f"{FOLDER}/"))
    if not names or all(_MONTHLY.fullmatch(one) for one in names):
        return f"{FOLDER}/{when:%Y-%m}.yaml"
    return f"{FOLDER}/{names[-1]}"


def _write(root: Path, file: str, items: Sequence[Given], *, dry_run: bool) -> str:
    if not (root / file).exists():
        data = new_file({"format": "1"}, {"requests": items}, _HEAD)
        if not dry_run:
            deliver([Document(file, data)], root)
        return difference(file, "", data.decode("utf-8"))
    draft = draft_of(root, file)
    draft.add_items(("requests",), items)
    if not dry_run:
        save(root, draft)
    return draft.diff()


def _path(request: Request) -> tuple[str | int, ...]:
    assert request.source is not None  # noqa: S101 - it was read from the log
    return request.source.path


def _put(draft: Draft, path: tuple[str | int, ...], key: str, value: str, written: bool, after: str | None) -> None:
    if written:
        draft.set_value((*path, key), value)
    else:
        draft.add_key(path, key, value, after)
