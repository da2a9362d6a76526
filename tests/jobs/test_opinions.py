"""What the model said is kept by what it was asked."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from producer.handling import answering
from producer.jobs.opinions import SecondOpinion
from producer.library.load import load
from producer.model.library import Case

EPISODE = "marrow-creek-grand-sedan"


def case(root: Path) -> Case:
    library, _ = load(root)
    return library.case(library.episodes[EPISODE])


def kept(out: Path) -> Path:
    return out / ".cache" / "opinions" / f"{EPISODE}.json"


@pytest.fixture
def asked(monkeypatch: pytest.MonkeyPatch) -> list[object]:
    """Every question that reaches the model."""
    questions: list[object] = []
    real = answering.answer

    def counted(question: answering.Question) -> answering.Answer:
        questions.append(question)
        return real(question)

    monkeypatch.setattr(answering, "answer", counted)
    return questions


def test_an_answer_is_kept_and_read_back_the_same(demo: Path, tmp_path: Path, asked: list[object]) -> None:
    first = SecondOpinion(tmp_path).of(case(demo))
    assert len(asked) == 2
    again = SecondOpinion(tmp_path).of(case(demo))
    assert len(asked) == 2
    assert again == first
    assert list(first) == ["short", "long"]
    assert first["short"].cars == 1000


def test_in_one_run_nothing_is_asked_twice(demo: Path, asked: list[object]) -> None:
    second = SecondOpinion()
    assert second.of(case(demo)) == second.of(case(demo))
    assert len(asked) == 2


def test_another_value_is_another_question(library: Path, tmp_path: Path, asked: list[object]) -> None:
    out = tmp_path / "out"
    SecondOpinion(out).of(case(library))
    file = library / EPISODE / "episode.yaml"
    file.write_text(
        file.read_text(encoding="utf-8").replace("cross_weight: 52", "cross_weight: 53", 1), encoding="utf-8"
    )
    SecondOpinion(out).of(case(library))
    assert len(asked) == 4


def test_prose_is_no_question(library: Path, tmp_path: Path, asked: list[object]) -> None:
    out = tmp_path / "out"
    SecondOpinion(out).of(case(library))
    file = library / EPISODE / "episode.yaml"
    file.write_text(file.read_text(encoding="utf-8").replace("title: \"", "title: \"Again, ", 1), encoding="utf-8")
    SecondOpinion(out).of(case(library))
    assert len(asked) == 2


@pytest.mark.parametrize("damage", [b"", b"{", b"[]", b"null", b"\xff\xfe", b'{"x": 1}', b"3"])
def test_a_damaged_file_only_costs_time(demo: Path, tmp_path: Path, damage: bytes, asked: list[object]) -> None:
    first = SecondOpinion(tmp_path).of(case(demo))
    kept(tmp_path).write_bytes(damage)
    assert SecondOpinion(tmp_path).of(case(demo)) == first
    assert len(asked) == 4


@pytest.mark.parametrize("entry", [[], [1000], [1000, [[1]]], "no", [1000, [[[1, 2, 3], [4], [5]]]], None])
def test_a_damaged_entry_only_costs_time(demo: Path, tmp_path: Path, entry: object) -> None:
    first = SecondOpinion(tmp_path).of(case(demo))
    data = json.loads(kept(tmp_path).read_text(encoding="utf-8"))
    kept(tmp_path).write_text(json.dumps(dict.fromkeys(data, entry)), encoding="utf-8")
    assert SecondOpinion(tmp_path).of(case(demo)) == first


def test_a_place_that_cannot_be_written_to_is_no_trouble(demo: Path, tmp_path: Path) -> None:
    (tmp_path / "out").write_text("a file where a folder is wanted", encoding="utf-8")
    assert SecondOpinion(tmp_path / "out").of(case(demo))["short"].cars == 1000
