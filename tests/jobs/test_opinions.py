"""What the model said is kept by what it was asked."""

from __future__ import annotations

import json
from collections.abc import Callable
from math import isfinite
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from producer.handling import answering
from producer.jobs import opinions
from producer.jobs.opinions import SecondOpinion
from producer.library.load import load
from producer.model.library import Case
from producer.model.opinion import Opinion, PhaseOpinion
from producer.model.words import CORNERS

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


def test_an_episode_of_another_reading_is_looked_at_anew(library: Path, asked: list[object]) -> None:
    second = SecondOpinion()
    first = second.of(case(library))
    file = library / EPISODE / "episode.yaml"
    text = file.read_text(encoding="utf-8").replace("cross_weight: 52", "cross_weight: 53", 1)
    file.write_text(text, encoding="utf-8")
    assert second.of(case(library)) != first
    assert len(asked) == 4


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
    file.write_text(file.read_text(encoding="utf-8").replace('title: "', 'title: "Again, ', 1), encoding="utf-8")
    SecondOpinion(out).of(case(library))
    assert len(asked) == 2


@pytest.mark.parametrize("damage", [b"", b"{", b"[]", b"null", b"\xff\xfe", b'{"x": 1}', b"3", b"[" * 99_999])
def test_a_damaged_file_only_costs_time(demo: Path, tmp_path: Path, damage: bytes, asked: list[object]) -> None:
    first = SecondOpinion(tmp_path).of(case(demo))
    kept(tmp_path).write_bytes(damage)
    assert SecondOpinion(tmp_path).of(case(demo)) == first
    assert len(asked) == 4


Entry = list[Any]  # how many cars; of each move and phase: tighter, looser, size, pays


def phase(place: int, value: object) -> Callable[[Entry], object]:
    """The last move's entry phase with one of its parts changed."""

    def damaged(entry: Entry) -> object:
        entry[1][-1][0][place] = value
        return entry

    return damaged


@pytest.mark.parametrize(
    "damaged",
    [
        lambda _: None,
        lambda _: "no",
        lambda _: [],
        lambda entry: entry[:1],
        lambda entry: [*entry, 1],
        lambda entry: [entry[0], entry[1][1:]],
        lambda entry: [entry[0], [*entry[1], entry[1][0]]],
        lambda entry: [entry[0], []],
        lambda entry: [0, entry[1]],
        lambda entry: [-1, entry[1]],
        lambda entry: [True, entry[1]],
        lambda entry: ["1000", entry[1]],
        lambda entry: [entry[0], [[1]]],
        lambda entry: [entry[0], dict.fromkeys("abc", 1)],
        lambda entry: [entry[0], [three[:2] for three in entry[1]]],
        lambda entry: [entry[0], [[one[:3] for one in three] for three in entry[1]]],
        phase(0, 1.5),
        phase(0, -0.1),
        phase(1, float("nan")),
        phase(1, None),
        phase(2, "0.1"),
        phase(2, float("inf")),
        phase(2, 10**400),
        phase(3, "xx"),
        phase(3, ["rf"]),
        phase(3, 1),
    ],
)
def test_what_no_model_could_have_said_is_no_answer(damaged: Callable[[Entry], object]) -> None:
    entry: Entry = [1000, [[[0.9, 0.1, 0.25, "rf"], [0.0, 0.0, 0.0, None], [0.1, 0.9, -1.5, "rr"]] for _ in range(3)]]
    assert opinions._unpacked(entry, 3) is not None
    assert opinions._unpacked(damaged(entry), 3) is None


def test_a_damaged_entry_only_costs_time_and_not_that_of_others(
    demo: Path, tmp_path: Path, asked: list[object]
) -> None:
    first = SecondOpinion(tmp_path).of(case(demo))
    data = json.loads(kept(tmp_path).read_text(encoding="utf-8"))
    data[min(data)][1].pop()  # one opinion is gone
    kept(tmp_path).write_text(json.dumps(data), encoding="utf-8")
    assert SecondOpinion(tmp_path).of(case(demo)) == first
    assert len(asked) == 3


_LEAVES = st.none() | st.booleans() | st.integers() | st.floats() | st.sampled_from(["rf", "lf", "", "1"])
JSON = st.recursive(
    _LEAVES, lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(), inner), max_leaves=9
)


@settings(max_examples=200)
@given(JSON, st.integers(0, 3))
def test_whatever_stands_in_the_file_is_an_answer_or_none(entry: object, moves: int) -> None:
    found = opinions._unpacked(json.loads(json.dumps(entry)), moves)
    if found is not None:
        cars, told = found
        assert len(told) == (moves if cars else 0)
        assert all(0 <= one.entry.tighter <= 1 and isfinite(one.entry.size) for one in told)


@settings(max_examples=60)
@given(st.integers(1, 999), st.lists(st.lists(st.floats(0, 1), min_size=9, max_size=9), max_size=4), st.data())
def test_what_is_kept_reads_back_the_same(cars: int, moves: list[list[float]], data: st.DataObject) -> None:
    pays = st.sampled_from([*CORNERS, None])
    told = tuple(
        Opinion(*(PhaseOpinion(one[at], one[at + 1], one[at + 2], data.draw(pays)) for at in (0, 3, 6)))
        for one in moves
    )
    packed = json.loads(json.dumps(opinions._packed(cars, told)))
    assert opinions._unpacked(packed, len(told)) == (cars, told)


def test_a_place_that_cannot_be_written_to_is_no_trouble(demo: Path, tmp_path: Path) -> None:
    (tmp_path / "out").write_text("a file where a folder is wanted", encoding="utf-8")
    assert SecondOpinion(tmp_path / "out").of(case(demo))["short"].cars == 1000
