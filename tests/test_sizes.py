"""The sizes agreed in DEVELOPERS.md: small files, small functions."""

from __future__ import annotations

import ast
from pathlib import Path
from statistics import median

import pytest

PACKAGE = Path(__file__).resolve().parent.parent / "producer"
FILES = sorted(PACKAGE.rglob("*.py"))


def functions(path: Path) -> list[tuple[str, int]]:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    kinds = (ast.FunctionDef, ast.AsyncFunctionDef)
    return [
        (f"{path.name}:{one.name}", (one.end_lineno or 0) - one.lineno + 1)
        for one in ast.walk(tree)
        if isinstance(one, kinds)
    ]


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(PACKAGE).as_posix())
def test_a_file_is_under_400_lines_and_its_functions_under_60(path: Path) -> None:
    assert len(path.read_text(encoding="utf-8").splitlines()) < 400
    assert [one for one in functions(path) if one[1] >= 60] == []


def test_most_are_much_smaller() -> None:
    lines = [len(path.read_text(encoding="utf-8").splitlines()) for path in FILES]
    assert median(one for one in lines if one > 5) <= 130
    assert median(length for path in FILES for _, length in functions(path)) <= 12
