"""Overlays: made when asked for, what has not changed is kept, what is no longer shown goes."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from producer.basics.errors import ProducerError
from producer.jobs import overlays as job
from producer.jobs.build import build, output_modules
from producer.jobs.overlays import Drawn, overlays
from producer.model.dossier import Dossier
from producer.outputs.overlays import Wanted, wanted
from producer.render.kit import Kit
from tests.outputs.dossiers import EPISODE, LIBRARY, sample_dossier, with_values


@pytest.fixture
def whole() -> Dossier:
    """The sample with its first two sections' captions alone: few pictures."""
    full = sample_dossier()
    return replace(full, timeline=replace(full.timeline, spans=full.timeline.spans[4:8]))


def pictures(out: Path) -> dict[str, bytes]:
    folder = out / EPISODE
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*.png")}


def draw(out: Path, whole: Dossier) -> tuple[int, int]:
    found = overlays(LIBRARY, out, whole)
    return found.drawn, found.unchanged


def test_pictures_land_in_a_folder_for_each_shape(tmp_path: Path, whole: Dossier) -> None:
    found = overlays(LIBRARY, tmp_path, whole)
    assert found == Drawn((tmp_path / EPISODE / "overlays/wide", tmp_path / EPISODE / "overlays/tall"), found.drawn, 0)
    names = set(pictures(tmp_path))
    assert len(names) == found.drawn > 0
    assert {name.split("/")[1] for name in names} == {"wide", "tall"}
    assert not list(tmp_path.rglob("*.part"))


def test_what_has_not_changed_is_kept(tmp_path: Path, whole: Dossier) -> None:
    drawn, _ = draw(tmp_path, whole)
    before = pictures(tmp_path)
    assert draw(tmp_path, whole) == (0, drawn)
    assert draw(tmp_path, with_values(whole, "short", {"spring.rf": "675"})) == (4, drawn - 4)
    changed = {name for name, data in pictures(tmp_path).items() if data != before.get(name)}
    assert len(changed) == 4


@pytest.mark.parametrize("damage", ["removed", "changed", "record"])
def test_what_is_gone_or_damaged_is_drawn_again(tmp_path: Path, whole: Dossier, damage: str) -> None:
    drawn, _ = draw(tmp_path, whole)
    before = pictures(tmp_path)
    path = tmp_path / EPISODE / next(iter(before))
    if damage == "removed":
        path.unlink()
    elif damage == "changed":
        path.write_bytes(b"mine")
    else:
        (tmp_path / ".cache" / "overlays" / f"{EPISODE}.json").write_bytes(b"{")
    again = drawn if damage == "record" else 1
    assert draw(tmp_path, whole) == (again, drawn - again)
    assert pictures(tmp_path) == before


def test_what_is_no_longer_shown_goes_and_the_author_s_own_stays(tmp_path: Path, whole: Dossier) -> None:
    draw(tmp_path, whole)
    own = tmp_path / EPISODE / "overlays" / "wide" / "mine.png"
    own.write_bytes(b"kept")
    fewer = replace(whole, timeline=replace(whole.timeline, spans=whole.timeline.spans[:1]))
    drawn, unchanged = draw(tmp_path, fewer)
    names = set(pictures(tmp_path))
    assert len(names) == drawn + unchanged + 1
    assert own.read_bytes() == b"kept"


def test_progress_counts_only_what_is_drawn(tmp_path: Path, whole: Dossier) -> None:
    told: list[tuple[str, int, int]] = []
    first = overlays(LIBRARY, tmp_path, whole, lambda *step: told.append(step))
    assert [number for _, number, _ in told] == list(range(1, first.drawn + 1))
    assert {total for _, _, total in told} == {first.drawn}
    overlays(LIBRARY, tmp_path, whole, lambda *step: told.append(step))
    assert len(told) == first.drawn


def test_where_one_cannot_be_drawn_nothing_is_written(
    tmp_path: Path, whole: Dossier, monkeypatch: pytest.MonkeyPatch
) -> None:
    draw(tmp_path, whole)
    before = pictures(tmp_path)
    other = with_values(whole, "short", {"spring.rf": "675"})

    def last_is_too_long(dossier: Dossier, kit: Kit) -> tuple[Wanted, ...]:
        found = wanted(dossier, kit)
        return (*found[:-1], replace(found[-1], source='#panic("too long")'))

    monkeypatch.setattr(job, "wanted", last_is_too_long)
    with pytest.raises(ProducerError, match="too long"):
        draw(tmp_path, other)
    assert pictures(tmp_path) == before


def test_a_build_draws_none_and_leaves_them_alone(library: Path, tmp_path: Path, whole: Dossier) -> None:
    assert "overlays" not in {module.__name__.rpartition(".")[2] for module in output_modules()}
    out = tmp_path / "out"
    draw(out, whole)
    before = set(pictures(out))
    build(library, out, (EPISODE,))
    assert {name for name in pictures(out) if name.startswith("overlays/")} == before
