"""Every sample of every check's docstring: found where it is marked, or silent."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path
from types import ModuleType

import pytest

from producer.checks.registry import modules, run
from producer.jobs.opinions import SecondOpinion
from producer.library.load import load


def _harness() -> ModuleType:
    """samples.py beside this file: test folders are no packages."""
    name = "samples_of_checks"
    if name not in sys.modules:
        spec = importlib.util.spec_from_file_location(name, Path(__file__).with_name("samples.py"))
        assert spec is not None
        assert spec.loader is not None
        sys.modules[name] = importlib.util.module_from_spec(spec)
        spec.loader.exec_module(sys.modules[name])
    return sys.modules[name]


HARNESS = _harness()
CASES = [
    pytest.param(module, sample, id=f"{module.__name__.rsplit('.', 1)[-1]}-{index}-{sample.code or 'silent'}")
    for module in modules()
    for index, sample in enumerate(HARNESS.samples(module))
]


def test_the_base_library_raises_nothing() -> None:
    library, found = load(HARNESS.BASE)
    sample = HARNESS.Sample("", True, ())
    summaries = {name: HARNESS.summary(sample, one.title) for name, one in library.episodes.items()}
    assert found + run(library, summaries, second=SecondOpinion().of) == []
    assert list(library.episodes) == [HARNESS.EPISODE]


@pytest.mark.parametrize(("module", "sample"), CASES)
def test_sample(module: ModuleType, sample: object, tmp_path: Path) -> None:
    found, marks = HARNESS.findings(sample, tmp_path / "library", module)
    own = [one for one in found if one.code in module.CODES]
    if sample.silent:
        assert own == []
        return
    assert sample.code in module.CODES
    assert marks, "a sample that must be found shows where"
    stood = {
        (one.place.file, one.place.line, one.place.column, one.place.width) for one in own if one.code == sample.code
    }
    for mark in marks:
        assert (mark.file, mark.line, mark.column, mark.width) in stood, found
    for one in own:
        assert one.message
        assert one.where or one.place.line == 1 or getattr(module, "RAISED_WHILE", "") == "reading", one


@pytest.mark.parametrize("module", modules(), ids=lambda one: one.__name__)
def test_every_code_is_found_and_kept_silent_by_a_sample(module: ModuleType) -> None:
    shown = HARNESS.samples(module)
    assert {one.code for one in shown if not one.silent} == set(module.CODES) - set(getattr(module, "NOT_SHOWN", ()))
    assert any(one.silent for one in shown)
