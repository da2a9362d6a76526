"""Who may import whom: a file imports from the floors below its own and from its own folder."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parent.parent / "producer"
FLOORS = {
    "basics": 0,
    "model": 1,
    "library": 2,
    "captions": 2,
    "language": 2,
    "handling": 3,
    "script": 3,
    "stints": 3,
    "take": 3,
    "render": 3,
    "checks": 4,
    "outputs": 4,
    "replies": 4,
    "jobs": 5,
    "cli": 6,
}
# What a folder may bring in from outside the standard library.
OUTSIDE = {
    "basics": set(),
    "model": {"pydantic"},
    "library": {"pydantic", "yaml"},
    "captions": set(),
    "language": set(),
    "handling": {"numpy"},
    "script": set(),
    "stints": set(),
    "take": {"rapidfuzz"},
    "render": {"jinja2", "markupsafe", "markdown_it", "typst", "fontpkg_fira_sans"},
    "checks": set(),
    "outputs": set(),
    "replies": set(),
    "jobs": set(),
    "cli": {"typer", "rich"},
}
TOP = {"__init__.py", "__main__.py"}


def imports(tree: ast.AST) -> Iterator[str]:
    """Every module imported in a file, also inside functions and under TYPE_CHECKING."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            yield from (one.name for one in node.names)
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "relative imports hide the floor"
            yield node.module or ""
            if node.module == "producer":
                yield from (f"producer.{one.name}" for one in node.names)


def trouble(folder: str, source: str) -> list[str]:
    """What a file of a folder imports that it may not."""
    found = []
    for name in imports(ast.parse(source)):
        first, _, rest = name.partition(".")
        if first != "producer":
            if not _standard(first) and first not in OUTSIDE[folder]:
                found.append(f"{first} is not for {folder}/")
            continue
        target = rest.split(".")[0]
        if target in FLOORS and target != folder and FLOORS[target] >= FLOORS[folder]:
            found.append(f"{name} is on floor {FLOORS[target]}, {folder}/ on floor {FLOORS[folder]}")
    return found


def _standard(name: str) -> bool:
    import sys

    return name in sys.stdlib_module_names


def files() -> list[Path]:
    return sorted(path for path in PACKAGE.rglob("*.py") if path.parent != PACKAGE)


@pytest.mark.parametrize("path", files(), ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_a_file_imports_only_from_below(path: Path) -> None:
    folder = path.relative_to(PACKAGE).parts[0]
    assert folder in FLOORS, f"{folder}/ has no floor: add it to the table"
    assert trouble(folder, path.read_text(encoding="utf-8")) == []


def test_only_the_package_s_face_stands_outside_the_floors() -> None:
    assert {path.name for path in PACKAGE.glob("*.py")} == TOP


@pytest.mark.parametrize(
    ("folder", "planted"),
    [
        ("handling", "from producer.script.pace import timeline"),
        ("model", "def late():\n    from producer.library.load import load"),
        ("outputs", "import producer.checks.registry"),
        ("checks", "from producer import replies"),
        ("basics", "import numpy"),
        ("script", "def late():\n    import jinja2"),
        ("captions", "from typing import TYPE_CHECKING\nif TYPE_CHECKING:\n    from producer.jobs.build import build"),
    ],
)
def test_a_planted_import_is_found(folder: str, planted: str) -> None:
    assert len(trouble(folder, planted)) == 1


@pytest.mark.parametrize(
    ("folder", "allowed"),
    [
        ("handling", "from producer.model.guide import Guide\nimport math"),
        ("outputs", "from producer.script.pace import minutes"),
        ("cli", "import typer\nfrom producer.jobs.build import build"),
        ("model", "import json\nfrom pydantic import Field"),
    ],
)
def test_what_is_allowed_is_not_found(folder: str, allowed: str) -> None:
    assert trouble(folder, allowed) == []


def test_no_file_imports_itself_in_a_circle() -> None:
    graph = {_module(path): _targets(path) for path in files()}
    for start in graph:
        assert start not in _reached(start, graph), f"{start} imports itself in a circle"


def _module(path: Path) -> str:
    parts = path.relative_to(PACKAGE.parent).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


def _targets(path: Path) -> set[str]:
    return {name for name in imports(ast.parse(path.read_text(encoding="utf-8"))) if name.startswith("producer.")}


def _reached(start: str, graph: dict[str, set[str]]) -> set[str]:
    seen: set[str] = set()
    waiting = list(graph.get(start, ()))
    while waiting:
        name = waiting.pop()
        if name not in seen:
            seen.add(name)
            waiting += graph.get(name, ())
    return seen
