"""Whatever is in a file: a finding, never a traceback; the other episodes build; nothing of the author's is touched."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from producer.jobs.build import build

Run = Callable[..., Any]
SPOILT = "marrow-creek-grand-sedan"
FILE = f"{SPOILT}/episode.yaml"
FINE = "gannet-bowl-grand-sedan"


def swap(old: str, new: str) -> Callable[[bytes], bytes]:
    def change(data: bytes) -> bytes:
        assert old.encode() in data
        return data.replace(old.encode(), new.encode(), 1)

    return change


def whole(data: bytes) -> Callable[[bytes], bytes]:
    return lambda _: data


def ended(data: bytes) -> Callable[[bytes], bytes]:
    return lambda before: before + data


LAUGHS = b"a: &a [x,x,x,x,x,x,x,x]\n" + b"".join(
    b"%c: &%c [*%c,*%c,*%c,*%c,*%c,*%c,*%c,*%c]\n" % ((i + 1, i + 1) + (i,) * 8) for i in range(97, 110)
)

CASES = {
    "empty": (whole(b""), "empty-file"),
    "only a comment": (whole(b"# nothing yet\n"), "empty-file"),
    "not YAML": (whole(b"a: [1, 2\nb: {"), "not-yaml"),
    "a list": (whole(b"- one\n- two\n"), "wrong-kind"),
    "a word": (whole(b"hello\n"), "wrong-kind"),
    "a picture": (whole(b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR"), "not-utf8"),
    "UTF-16": (whole("format: 1\n".encode("utf-16")), "not-utf8"),
    "bad UTF-8": (ended(b"# caf\xe9\n"), "not-utf8"),
    "NUL": (ended(b"# \x00\n"), "odd-character"),
    "tabs": (swap("  - setup: short\n    name", "  - setup: short\n\tname"), "not-yaml"),
    "key twice": (swap("status: recorded", "status: recorded\nstatus: idea"), "duplicate-key"),
    "unknown key": (swap("status: recorded", "status: recorded\nstaus: idea"), "unknown-key"),
    "wrong kind": (swap("setups:\n", "setups: none\nspare:\n"), "wrong-kind"),
    "text for a number": (swap("front_weight: 50.5", "front_weight: heavy"), "wrong-kind"),
    "NaN": (swap("front_weight: 50.5", "front_weight: .nan"), "wrong-kind"),
    "infinity": (swap("front_weight: 50.5", "front_weight: .inf"), "wrong-kind"),
    "a huge number": (swap("front_weight: 50.5", f"front_weight: {'9' * 5000}"), "wrong-kind"),
    "a huge exponent": (swap("front_weight: 50.5", "front_weight: 1e999999999"), "wrong-kind"),
    "brackets": (whole(b"a: " + b"[" * 10_000), "too-deep"),
    "closed brackets": (whole(b"a: " + b"[" * 10_000 + b"]" * 10_000), "too-deep"),
    "an alias bomb": (whole(LAUGHS), "yaml-feature"),
    "a tag": (swap("front_weight: 50.5", "front_weight: !!python/name:os.system 50.5"), "yaml-feature"),
    "too large": (ended(b"#" * (1 << 20)), "too-large"),
    "a circle": (swap("    purpose: short run\n    values:", "    based_on: long\n    values:"), "based-on-circle"),
    "lacks parameter": (swap("front_weight: 50.5", "rear_wing: 4"), "unknown-parameter"),
    "no such track": (swap("track: marrow-creek", "track: ../marrow-creek"), "unknown-reference"),
    "no such garage": (swap("garage: grand-sedan", "garage: nowhere"), "unknown-reference"),
    "a path as id": (swap(f"episode: {SPOILT}", "episode: ../../evil"), "wrong-value"),
    "a bad reference": (swap("{{ spring.rf }}", "{{ spring.fr }}"), "unknown-reference"),
    "a reference that runs code": (swap("{{ spring.rf }}", "{{ spring.__class__ }}"), "unknown-reference"),
    "a loop in prose": (swap("{{ spring.rf }}", "{% for x in range(10**9) %}a{% endfor %}"), "reference-malformed"),
}


@pytest.fixture(scope="module")
def made_once(tmp_path_factory: pytest.TempPathFactory, demo: Path) -> Path:
    out = tmp_path_factory.mktemp("made") / "build"
    build(demo, out)
    return out


@pytest.fixture
def out(made_once: Path, tmp_path: Path) -> Path:
    """The demo's files as they were before anything was spoilt, with what the program remembers of them."""
    return shutil.copytree(made_once, tmp_path / "build")


@pytest.mark.parametrize("name", CASES)
def test_a_spoilt_episode_is_told_and_the_others_build(name: str, producer: Run, library: Path, out: Path) -> None:
    change, code = CASES[name]
    path = library / FILE
    path.write_bytes(change(path.read_bytes()))
    shutil.rmtree(out / SPOILT)
    shutil.rmtree(out / FINE)
    before = {one: one.read_bytes() for one in library.rglob("*") if one.is_file()}

    checked = producer("check", "-l", library)
    assert checked.code == 1
    assert f"error[{code}]" in checked.out
    assert "Traceback" not in checked.out + checked.err

    built = producer("build", SPOILT, FINE, "-l", library)
    assert built.code == 1
    assert f"{SPOILT}: held back by errors" in built.out
    assert not (out / SPOILT).exists()
    assert (out / FINE / "notes.txt").is_file()
    assert {one: one.read_bytes() for one in library.rglob("*") if one.is_file()} == before


@pytest.mark.parametrize("file", ["channel.yaml", "garages/grand-sedan.yaml", "tracks/marrow-creek.yaml", "requests"])
@pytest.mark.parametrize("data", [b"", b"[", b"- 1\n", b"\xff\xfe", b"format: 2\n", b"a: " + b"[" * 10_000])
def test_a_spoilt_shared_file_is_told(file: str, data: bytes, producer: Run, library: Path, out: Path) -> None:
    path = library / file
    if path.is_dir():
        path = sorted(path.glob("*.yaml"))[0]
    path.write_bytes(data)
    checked = producer("check", "-l", library)
    assert checked.code == 1
    assert path.relative_to(library).as_posix() in checked.out
    built = producer("build", "-l", library)
    assert built.code in (0, 1)
    assert "Traceback" not in checked.err + built.err


def test_a_missing_shared_file_is_told(producer: Run, library: Path) -> None:
    (library / "garages" / "grand-sedan.yaml").unlink()
    ran = producer("check", "-l", library)
    assert ran.code == 1
    assert "error[unknown-reference]" in ran.out


def test_a_library_without_requests_says_nothing_of_thanks(producer: Run, library: Path) -> None:
    for path in (library / "requests").glob("*"):
        path.unlink()
    (library / "requests").rmdir()
    assert producer("check", "--strict", "-l", library).code == 0
