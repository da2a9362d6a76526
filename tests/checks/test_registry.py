"""The checks as a whole: each code once, at its severity, with a manual; waivers; and one run."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections import Counter
from importlib import import_module
from pathlib import Path
from pkgutil import iter_modules
from types import ModuleType

import pytest

import producer.checks
from producer.basics.errors import ProducerError
from producer.basics.finding import Severity
from producer.checks.registry import codes, manual, modules, run
from producer.checks.waivers import ELSEWHERE
from producer.library.load import load

BASE = Path(__file__).parent / "base"
NAME = "marrow-creek-grand-sedan"
CHECKS = ("check_library", "check_garage", "check_episode", "check_summary", "check_opinions")
AGREED = {
    Severity.ERROR: """
        unknown-key unknown-parameter unknown-reference missing-value out-of-range off-step unit-mismatch
        direction-against-sign stated-figure-differs advice-past-limit advice-off-step advice-wrong-way number-differs
        title-too-long description-too-long chapter-too-close credit-without-consent duplicate-key not-yaml""",
    Severity.WARNING: """
        change-without-difference effect-against-rule effects-contradict advice-makes-it-worse direction-word-differs
        conditions-missing conditions-differ options-not-equal over-rev caption-too-fast changed-since-published
        waiver-unused tags-too-long effect-against-model""",
    Severity.NOTE: "unexplained-change",
}


def test_codes_have_the_agreed_severity() -> None:
    known = codes()
    for severity, names in AGREED.items():
        assert {name: known.get(name) for name in names.split()} == dict.fromkeys(names.split(), severity)


def test_a_code_belongs_to_one_check() -> None:
    found = Counter(code for one in modules() for code in one.CODES)
    assert [code for code, count in found.items() if count > 1] == []
    assert list(codes()) == sorted(found)


def test_what_others_raise_is_not_raised_here() -> None:
    assert ELSEWHERE.isdisjoint(codes())


@pytest.mark.parametrize("module", modules(), ids=lambda one: one.__name__)
def test_a_check_checks_or_says_who_does(module: ModuleType) -> None:
    assert any(hasattr(module, name) for name in CHECKS) or module.RAISED_WHILE in {"reading", "waiving"}
    first = (module.__doc__ or "").strip().splitlines()[0]
    assert first.endswith(".")
    for code in module.CODES:
        assert manual(code).startswith(first)


def test_every_file_that_checks_is_found() -> None:
    for one in iter_modules(producer.checks.__path__):
        module = import_module(f"producer.checks.{one.name}")
        if any(hasattr(module, name) for name in CHECKS):
            assert module in modules()


def test_an_unknown_code_names_the_nearest() -> None:
    with pytest.raises(ProducerError, match="did you mean 'off-step'"):
        manual("of-step")
    with pytest.raises(ProducerError, match="prints the code"):
        manual("zzzzzz")


def test_nothing_heavy_is_loaded() -> None:
    heavy = ("numpy", "scipy", "jinja2", "markdown_it", "typst", "text_to_num", "rapidfuzz", "rich", "ruamel")
    script = f"""
import sys
from producer.checks.registry import modules
modules()
print([name for name in {heavy!r} if name in sys.modules])
"""
    ran = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "[]"


@pytest.fixture
def root(tmp_path: Path) -> Path:
    shutil.copytree(BASE, tmp_path / "library")
    return tmp_path / "library"


def said(root: Path, *changes: tuple[str, str], episodes: tuple[str, ...] | None = None) -> list[tuple[str, str]]:
    path = root / NAME / "episode.yaml"
    text = path.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text
        text = text.replace(old, new, 1)
    path.write_text(text, encoding="utf-8", newline="\n")
    library, found = load(root)
    assert found == []
    return [(one.code, one.where) for one in run(library, {}, episodes)]


WRONG = ("rf: 725", "rf: 730")


def allow(waiver: str) -> tuple[str, str]:
    return ("talking_points:", f"allow:\n  - {{ {waiver}, why: I live with it }}\ntalking_points:")


@pytest.mark.parametrize(
    "waiver",
    [
        "code: off-step",
        "code: off-step, for: spring.rf",
        "code: off-step, for: spring",
        "code: off-step, for: suspension",
        "code: off-step, for: short",
        "code: off-step, for: spring.front_split",
    ],
)
def test_a_waiver_hides_what_it_names(root: Path, waiver: str) -> None:
    found = said(root, WRONG, allow(waiver))
    assert "off-step" not in dict(found)
    assert "waiver-unused" not in dict(found)


@pytest.mark.parametrize(
    "waiver",
    [
        "code: off-step, for: spring.lf",
        "code: off-step, for: spring.rear_split",
        "code: off-step, for: ballast",
        "code: off-step, for: long",
        "code: off-step, for: spring.r",
        "code: out-of-range, for: spring.rf",
    ],
)
def test_a_waiver_hides_nothing_else_and_says_so(root: Path, waiver: str) -> None:
    found = said(root, WRONG, allow(waiver))
    assert ("off-step", "setups.short.values.spring.rf") in found
    assert ("waiver-unused", "allow[0].code") in found


@pytest.mark.parametrize(
    ("code", "expected"),
    [
        ("title-too-long", []),  # not looked at: without a summary this run cannot tell
        ("description-too-long", []),
        ("effect-against-model", []),
        ("said-differs", []),
        ("off-step", ["waiver-unused"]),
        ("of-step", ["unknown-reference"]),
    ],
)
def test_a_waiver_for_a_check_that_did_not_run(root: Path, code: str, expected: list[str]) -> None:
    assert [one for one, _ in said(root, allow(f"code: {code}"))] == expected


def test_a_waiver_holds_in_its_own_episode(root: Path) -> None:
    shutil.copytree(root / NAME, root / "another")
    path = root / "another" / "episode.yaml"
    text = path.read_text(encoding="utf-8").replace(f"episode: {NAME}", "episode: another").replace(*WRONG)
    path.write_text(text, encoding="utf-8", newline="\n")
    found = said(root, WRONG, allow("code: off-step"))
    assert [one for one in found if one[0] == "off-step"] == [("off-step", "setups.short.values.spring.rf")]


def test_only_the_episodes_asked_for(root: Path) -> None:
    assert ("off-step", "setups.short.values.spring.rf") in said(root, WRONG)
    assert said(root, episodes=()) == []
    assert ("off-step", "setups.short.values.spring.rf") in said(root, episodes=(NAME,))


@pytest.mark.parametrize("file", ["channel.yaml", "garages/grand-sedan.yaml", "tracks/marrow-creek.yaml"])
def test_later_checks_run_without_what_could_not_be_built(root: Path, file: str) -> None:
    (root / file).write_text("a: [\n", encoding="utf-8")
    library, found = load(root)
    assert [one.code for one in found] == ["not-yaml"]
    assert run(library, {}) == []  # a file that is there but broken is no unknown reference


def test_the_order_is_the_same_whatever_the_hash_seed(root: Path) -> None:
    path = root / NAME / "episode.yaml"
    text = path.read_text(encoding="utf-8")
    changed = text.replace("725", "731").replace("52\n", "99\n").replace("req-014", "req-99").replace("double", "two")
    path.write_text(changed, encoding="utf-8", newline="\n")
    script = f"""
from pathlib import Path
from producer.checks.registry import run
from producer.library.load import load
for one in run(load(Path({str(root)!r}))[0], {{}}):
    print(one)
"""
    outputs = {
        subprocess.run(
            [sys.executable, "-c", script],
            capture_output=True,
            text=True,
            check=True,
            env={**os.environ, "PYTHONHASHSEED": seed},
        ).stdout
        for seed in ("1", "2", "3")
    }
    assert len(outputs) == 1
    assert outputs.pop().count("\n") >= 4
