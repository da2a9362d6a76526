"""The request log on disk: what is added, what is marked, and that nothing else changes."""

from __future__ import annotations

import io
import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest

from producer.basics.errors import ProducerError
from producer.jobs import changing
from producer.jobs.changing import draft_of, save
from producer.jobs.requests import add, mark, read_messages, request_log
from producer.library.load import load
from producer.model.request import Request
from producer.replies.pasted import Pasted

Run = Callable[..., Any]
DAY = date(2026, 11, 25)
GANNET = "gannet-bowl-grand-sedan"
LARRY = Pasted("@league_larry", "way 2 loose off 4: any ideas?\n  - wheel")


@pytest.fixture
def paste(monkeypatch: pytest.MonkeyPatch) -> Callable[[str | bytes], None]:
    """Put text on the standard input."""

    def put(text: str | bytes) -> None:
        data = text if isinstance(text, bytes) else text.encode()
        monkeypatch.setattr("sys.stdin", io.TextIOWrapper(io.BytesIO(data), encoding="utf-8"))

    return put


def requests(root: Path) -> dict[str, Request]:
    library, findings = load(root)
    assert findings == []
    return dict(library.requests)


def states(root: Path) -> dict[str, bytes]:
    return {path.relative_to(root).as_posix(): path.read_bytes() for path in root.rglob("*") if path.is_file()}


def test_a_month_s_first_message_begins_its_file(library: Path) -> None:
    before = states(library)
    logged = add(library, [LARRY, Pasted(None, "thanks")], day=DAY)
    assert logged.ids == logged.fresh == ("req-111", "req-112")
    assert set(states(library)) - set(before) == {"requests/2026-11.yaml"}
    assert {name: data for name, data in states(library).items() if name in before} == before
    found = requests(library)
    assert found["req-111"].text == LARRY.text + "\n"
    assert (found["req-111"].from_, found["req-111"].status, found["req-111"].received) == (LARRY.handle, "new", DAY)
    assert (found["req-112"].from_, found["req-112"].credit, found["req-112"].feels) == (None, None, ())
    assert "+  - id: req-111" in logged.diff.splitlines()


def test_the_next_go_behind_it_byte_for_byte(library: Path) -> None:
    file = library / "requests" / "2026-11.yaml"
    file.write_bytes(b"format: 1\r\nrequests:\r\n  - id:   'a-009'   # mine\r\n    text: hi\r\n    # end\r\n")
    before = file.read_bytes()
    logged = add(library, [LARRY], day=DAY)
    assert logged.ids == ("a-010",)
    assert file.read_bytes().startswith(before)
    assert file.read_bytes().count(b"\n") == file.read_bytes().count(b"\r\n")
    assert requests(library)["a-010"].text == LARRY.text + "\n"


def test_where_files_are_not_monthly_the_last_one_is_used(library: Path) -> None:
    (library / "requests" / "2026-10.yaml").rename(library / "requests" / "viewers.yaml")
    assert add(library, [LARRY], day=DAY).ids == ("req-111",)
    assert "req-111" in (library / "requests" / "viewers.yaml").read_text(encoding="utf-8")


def test_a_library_without_a_log_gets_one(library: Path) -> None:
    for path in (library / "requests").iterdir():
        path.unlink()
    (library / "requests").rmdir()
    assert add(library, [LARRY], day=DAY).ids == ("req-001",)
    assert "req-001" in {one.id for one in load(library)[0].requests.values()}


def test_what_is_logged_already_is_not_logged_again(library: Path) -> None:
    first = add(library, [LARRY, LARRY], day=DAY)
    assert (first.ids, first.fresh) == (("req-111", "req-111"), ("req-111",))
    before = states(library)
    again = add(library, [Pasted("@LEAGUE_larry", "Way 2 loose  off 4: any ideas? - wheel")], day=DAY)
    assert (again.ids, again.fresh, again.diff) == (("req-111",), (), "")
    assert states(library) == before
    assert add(library, [Pasted("@another", LARRY.text)], day=DAY, dry_run=True).fresh == ("req-112",)


@pytest.mark.parametrize(
    ("text", "key", "value"),
    [
        ("loose off 4", "episode", GANNET),
        ("gannet is loose off 4", "episode", GANNET),
        ("marrow creek is loose off 4", "garage", "grand-sedan"),
        ("lantern flats in the club coupe is loose off 4", "garage", None),
        ("can you do oak hollow next", "garage", None),
    ],
)
def test_the_episode_above_is_kept_unless_it_is_about_another(
    library: Path, text: str, key: str, value: str | None
) -> None:
    add(library, [Pasted("@x", text)], under=GANNET, day=DAY)
    found = requests(library)["req-111"]
    assert getattr(found, key) == value
    assert (found.episode is None) == (key != "episode")


def test_a_dry_run_shows_and_writes_nothing(library: Path) -> None:
    before = states(library)
    logged = add(library, [LARRY], day=DAY, dry_run=True)
    assert "req-111" in logged.diff
    assert mark(library, requests(library)["req-107"], day=DAY, dry_run=True)
    assert states(library) == before


@pytest.mark.parametrize(
    ("text", "handle"),
    [
        ("null", "@null"),
        ("- a\n- b", "@a.b"),
        ("# no comment", "@x"),
        ('\'"{{ }}": [', "@-"),
        ("\U0001f600 \u00e9", "@\u00e9"),
    ],
)
def test_any_message_comes_back_as_it_was(library: Path, text: str, handle: str) -> None:
    add(library, [Pasted(handle, text)], day=DAY)
    assert requests(library)["req-111"].text.strip() == text
    assert requests(library)["req-111"].from_ == handle


@pytest.mark.parametrize(
    ("name", "status", "gone", "come"),
    [
        ("req-107", "answered", ["    status: new"], ["    status: answered", "    answered: 2026-11-25"]),
        ("req-102", "planned", [], ["    answered: 2026-11-25"]),
        ("req-103", "answered", [], []),
    ],
)
def test_mark(library: Path, name: str, status: str, gone: list[str], come: list[str]) -> None:
    before = states(library)
    diff = mark(library, requests(library)[name], day=DAY).splitlines()[2:]
    assert [one[1:] for one in diff if one.startswith("-")] == gone
    assert [one[1:] for one in diff if one.startswith("+")] == come
    assert requests(library)[name].status == status
    assert len([file for file, data in states(library).items() if data != before[file]]) == bool(come)
    assert mark(library, requests(library)[name], day=DAY) == ""


def test_mark_where_no_status_is_written(library: Path) -> None:
    file = library / "requests" / "2026-11.yaml"
    file.write_text("format: 1\nrequests:\n  - { id: a, text: hi }\n  - id: b\n    text: ho  # x\n", encoding="utf-8")
    for name in ("a", "b"):
        mark(library, requests(library)[name], day=DAY)
    assert file.read_text(encoding="utf-8") == (
        "format: 1\nrequests:\n  - { id: a, text: hi, status: answered, answered: 2026-11-25 }\n"
        "  - id: b\n    text: ho  # x\n    status: answered\n    answered: 2026-11-25\n"
    )


def test_a_file_that_changed_meanwhile_is_left_alone(library: Path) -> None:
    draft = draft_of(library, "requests/2026-10.yaml")
    draft.set_value(("requests", 0, "status"), "declined")
    (library / draft.file).write_text("format: 1\n", encoding="utf-8")
    with pytest.raises(ProducerError, match="changed while this ran"):
        save(library, draft)
    assert (library / draft.file).read_text(encoding="utf-8") == "format: 1\n"


def test_a_link_stays_a_link(library: Path, tmp_path: Path) -> None:
    file, real = library / "requests" / "2026-10.yaml", tmp_path / "elsewhere.yaml"
    file.rename(real)
    try:
        file.symlink_to(real)
    except OSError:
        pytest.skip("this system makes no links")
    mark(library, requests(library)["req-107"], day=DAY)
    assert file.is_symlink()
    assert "answered: 2026-11-25" in real.read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("data", "words"),
    [(b"", "no message"), (b" \n\n", "no message"), (b"@gus", "no message"), (b"x" * (1 << 21), "in parts")],
)
def test_what_is_no_message(data: bytes, words: str) -> None:
    with pytest.raises(ProducerError, match=words):
        read_messages(data)


@pytest.mark.parametrize(
    ("data", "text"),
    [
        ("caf\u00e9".encode(), "caf\u00e9"),
        ("\ufeffcaf\u00e9".encode(), "caf\u00e9"),
        ("caf\u00e9".encode("utf-16"), "caf\u00e9"),
        ("caf\u00e9".encode("cp1252"), "caf\u00e9"),
    ],
)
def test_whatever_a_console_sends(data: bytes, text: str) -> None:
    assert read_messages(data) == (Pasted(None, text),)


def test_the_log_is_read_from_the_text(library: Path) -> None:
    add(library, [Pasted("@a", "can you do oak hollow next please"), Pasted("@b", "oakhollow pls")], day=DAY)
    found = request_log(library, DAY)
    assert any((one.track, one.garage) == ("oak hollow", None) for one in found.wanted)


def test_the_author_s_own_day_is_the_default(library: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert changing.today().year >= 2024
    monkeypatch.setattr("producer.jobs.requests.today", lambda: date(2031, 2, 3))
    add(library, [LARRY])
    assert (library / "requests" / "2031-02.yaml").exists()


def test_the_command_prints_the_log(producer: Run, library: Path) -> None:
    ran = producer("requests", "-l", library)
    assert (ran.code, ran.err) == (0, "")
    assert "next to begin\n  1. Lantern Flats, Grand Sedan\n" in ran.out
    shape = json.loads(producer("requests", "--json", "-l", library).out)
    assert {"format", "wanted", "coverage"} <= set(shape)
    assert "@the_other_wall" in ran.out
    assert "@" not in str(shape)


def test_the_command_adds(producer: Run, library: Path, paste: Callable[[str], None]) -> None:
    paste("@gus: loose off 4\n\nthanks jo")
    before = states(library)
    ran = producer("requests", "--add", "--dry-run", "-l", library)
    assert ran.code == 0
    assert '+    from: "@gus"' in ran.out
    assert "read as\n  req-111: help; loose on exit\n  req-112: thanks\n" in ran.out
    assert "nothing was written" in ran.err
    assert states(library) == before
    paste("@gus: loose off 4\n\nthanks jo")
    assert json.loads(producer("requests", "--add", "--json", "-l", library).out)["new"] == ["req-111", "req-112"]
    paste("@gus: loose off 4")
    assert "already" in producer("requests", "--add", "-l", library).out


def test_a_log_that_cannot_be_read_is_left_alone(producer: Run, library: Path, paste: Callable[[str], None]) -> None:
    file = library / "requests" / "2026-10.yaml"
    file.rename(library / "requests" / "zz.yaml")
    (library / "requests" / "zz.yaml").write_text("requests: [\n", encoding="utf-8")
    before = states(library)
    paste("loose off 4")
    ran = producer("requests", "--add", "-l", library)
    assert ran.code == 2
    assert "nothing was changed" in ran.err
    assert states(library) == before


def test_reply_marks(producer: Run, library: Path) -> None:
    ran = producer("reply", "req-107", "--mark", "--dry-run", "-l", library)
    assert ran.out.startswith("Hi @keys_and_prayers,")
    assert "+    status: answered" in ran.err
    assert requests(library)["req-107"].status == "new"
    producer("reply", "req-107", "--mark", "-l", library)
    assert requests(library)["req-107"].status == "answered"
    assert "marked already" in producer("reply", "req-107", "--mark", "-l", library).err


PASTED = "@gus\nway 2 loose off 4 on old tires, wheel user\n\ncan you do kettle flats next please\n"


def test_reply_answers_what_is_pasted(producer: Run, library: Path, paste: Callable[[str], None]) -> None:
    before = states(library)
    paste(PASTED)
    ran = producer("reply", "--paste", "--episode", GANNET, "-l", library)
    assert ran.code == 0
    first, second = ran.out.split("\n----------------------------------------\n")
    assert first.startswith("Hi @gus,\n")
    assert "very loose on exit, on worn tires, with a wheel" in first
    assert second.strip().startswith("Hi there,\n")
    assert "nothing on Kettle Flats yet" in second
    assert "--log puts it there" in ran.err
    assert states(library) == before


def test_reply_logs_what_is_pasted(producer: Run, library: Path, paste: Callable[[str], None]) -> None:
    paste(PASTED)
    ran = producer("reply", "--paste", "-e", f"{GANNET}/", "--log", "--mark", "--json", "-l", library)
    shape = json.loads(ran.out)
    assert [one["request"] for one in shape["replies"]] == ["req-111", "req-112"]
    assert list(shape["replies"][0]) == ["request", "episode", "setup", "understood", "text"]
    assert shape["replies"][0]["setup"] == "long"
    assert shape["replies"][0]["understood"]["device"] == "wheel"
    found = requests(library)
    assert (found["req-111"].status, found["req-111"].episode) == ("answered", GANNET)
    assert (found["req-112"].status, found["req-112"].episode) == ("answered", None)


@pytest.mark.parametrize(
    "arguments",
    [
        ("reply",),
        ("reply", "req-103", "--paste"),
        ("reply", "--paste", "--mark"),
        ("reply", "--paste", "--setup", "long"),
        ("reply", "req-103", "--log"),
        ("reply", "req-103", "--episode", GANNET),
        ("reply", "--paste", "--episode", "gannet"),
    ],
)
def test_what_does_not_go_together(
    producer: Run, library: Path, paste: Callable[[str], None], arguments: tuple[str, ...]
) -> None:
    paste("loose off 4")
    ran = producer(*arguments, "-l", library)
    assert (ran.code, ran.out) == (2, "")
    assert "Traceback" not in ran.err
