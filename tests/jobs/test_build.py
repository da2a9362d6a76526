"""Build: what lands where, what is skipped, what is taken away."""

from __future__ import annotations

from pathlib import Path

import pytest

from producer.jobs import build as jobs
from producer.jobs.build import build, made

EPISODE = "gannet-bowl-grand-sedan"
SHARED = {
    *("outline.md", "script.md", "script.html", "guide.md", "guide.html", "guide.json"),
    *("captions.srt", "captions.vtt", "captions.csv", "chapters.vtt"),
    *("cues.csv", "cues.otio", "cues.edl", "chapters.ffmeta", "chapters.json"),
    *("notes.txt", "notes.md", "tags.txt", "pinned-comment.txt"),
}
LAPS = {"stints.html", "laps.svg", "laps.png"}
CARD = (".png", "-wide.png", ".pdf", ".html", ".txt", ".yaml")


def names(folder: Path) -> set[str]:
    return {path.name for path in folder.iterdir()}


@pytest.fixture(scope="module")
def once(tmp_path_factory: pytest.TempPathFactory, demo: Path) -> Path:
    out = tmp_path_factory.mktemp("build")
    report = build(demo, out)
    assert report.held_back == {}
    return out


def test_every_episode_has_everything(once: Path, demo: Path) -> None:
    from producer.library.load import load

    library, _ = load(demo)
    episodes = library.episodes
    assert len(episodes) >= 4
    for name, episode in episodes.items():
        cards = {f"card-{one.setup}{rest}" for one in episode.setups for rest in CARD}
        guides = {f"guide-{one.setup}.json" for one in episode.setups}
        laps = LAPS if episode.stints else set()
        spoken = {"speech.srt", "speech.vtt"} if library.takes.get(name) else set()
        assert names(once / name) == SHARED | cards | guides | laps | spoken, name


def test_two_builds_are_the_same_to_the_byte(once: Path, demo: Path, tmp_path: Path) -> None:
    build(demo, tmp_path, (EPISODE,))
    for path in (once / EPISODE).iterdir():
        assert (tmp_path / EPISODE / path.name).read_bytes() == path.read_bytes(), path.name


def test_fonts_come_with_their_licence(once: Path) -> None:
    assert any(path.suffix == ".ttf" for path in (once / "fonts").iterdir())
    assert any("OFL" in path.name.upper() for path in (once / "fonts").iterdir())


def test_an_unchanged_episode_is_skipped_and_a_changed_one_is_not(library: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    assert set(build(library, out, (EPISODE,)).built) == {EPISODE}
    assert build(library, out, (EPISODE,)).unchanged == (EPISODE,)
    path = library / EPISODE / "episode.yaml"
    path.write_text(path.read_text(encoding="utf-8") + "# a comment\n", encoding="utf-8", newline="\n")
    assert set(build(library, out, (EPISODE,)).built) == {EPISODE}
    assert set(build(library, out, (EPISODE,), anew=True).built) == {EPISODE}


@pytest.mark.parametrize("damage", ["removed", "changed", "record"])
def test_a_file_that_is_gone_or_changed_is_made_again(library: Path, tmp_path: Path, damage: str) -> None:
    out = tmp_path / "out"
    build(library, out, (EPISODE,))
    before = (out / EPISODE / "notes.txt").read_bytes()
    if damage == "removed":
        (out / EPISODE / "notes.txt").unlink()
    elif damage == "changed":
        (out / EPISODE / "notes.txt").write_bytes(b"mine")
    else:
        (out / ".cache" / f"{EPISODE}.json").write_bytes(b'{"made_from": 1, "files": [')
    build(library, out, (EPISODE,))
    assert (out / EPISODE / "notes.txt").read_bytes() == before


def test_files_of_a_setup_that_is_gone_are_taken_away_and_the_author_s_own_stay(library: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    build(library, out, (EPISODE,))
    (out / EPISODE / "mine.txt").write_text("kept", encoding="utf-8")
    path = library / EPISODE / "episode.yaml"
    text = path.read_text(encoding="utf-8").replace("setup: long", "setup: distance")
    path.write_text(text, encoding="utf-8", newline="\n")
    report = build(library, out, (EPISODE,))
    assert report.held_back == {}, report.findings
    assert "card-distance.png" in names(out / EPISODE)
    assert "card-long.png" not in names(out / EPISODE)
    assert "mine.txt" in names(out / EPISODE)


def test_the_record_of_a_build_holds_no_handle(once: Path, demo: Path) -> None:
    from producer.library.load import load

    handles = {one.from_ for one in load(demo)[0].requests.values()}
    kept = [path for path in (once / ".cache").rglob("*") if path.is_file()]
    written = "".join(path.read_text(encoding="utf-8") for path in kept)
    assert handles
    assert not any(handle in written for handle in handles)


def test_only_consenting_viewers_are_named_anywhere(once: Path, demo: Path) -> None:
    from producer.library.load import load

    requests = load(demo)[0].requests.values()
    silent = [one.from_.lstrip("@") for one in requests if not one.credit]
    texts = [path.read_bytes().decode("utf-8", "replace") for path in once.rglob("*") if path.is_file()]
    assert silent
    assert not [handle for handle in silent for text in texts if handle in text]


def test_a_library_s_own_template_wins(library: Path, tmp_path: Path) -> None:
    (library / "templates").mkdir()
    (library / "templates" / "notes.txt.j2").write_text("MY OWN NOTES\n", encoding="utf-8")
    whole = made(library, tmp_path / "out", EPISODE, ("notes",))
    assert whole.dossier is not None
    assert (tmp_path / "out" / EPISODE / "notes.txt").read_text(encoding="utf-8") == "MY OWN NOTES\n"


def test_nothing_is_written_into_the_library(library: Path, tmp_path: Path) -> None:
    before = {path: path.stat().st_mtime_ns for path in library.rglob("*")}
    build(library, tmp_path / "out", (EPISODE,))
    assert {path: path.stat().st_mtime_ns for path in library.rglob("*")} == before


def test_an_episode_named_otherwise_than_its_folder_is_held_back(library: Path, tmp_path: Path) -> None:
    path = library / EPISODE / "episode.yaml"
    text = path.read_text(encoding="utf-8").replace(f"episode: {EPISODE}", "episode: another-name", 1)
    path.write_text(text, encoding="utf-8", newline="\n")
    report = build(library, tmp_path / "out", ("another-name",))
    assert set(report.held_back) == {"another-name"}
    assert "id-differs" in {one.code for one in report.findings}
    assert not (tmp_path / "out" / "another-name").exists()


def test_a_card_that_cannot_be_drawn_is_held_back_alone(library: Path, tmp_path: Path) -> None:
    out = tmp_path / "out"
    before = {path.name for path in build(library, out, (EPISODE,)).built[EPISODE]}
    cards = {name for name in before if name.startswith("card-")}
    path = library / "garages" / "grand-sedan.yaml"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("name: Front weight", "name: Front \u5b57 weight", 1), encoding="utf-8")
    for _ in range(2):  # no second build takes it for unchanged
        report = build(library, out, (EPISODE,))
        assert (report.built, report.unchanged, set(report.held_back)) == ({}, (), {EPISODE})
        said = report.held_back[EPISODE]
        assert said.startswith("held back: card, as the card's font has no '\u5b57'")
        assert f"; {len(before - cards)} other files in " in said
        assert names(out / EPISODE) == before - cards  # no card of yesterday beside the guide of today
    path.write_text(text, encoding="utf-8")
    report = build(library, out, (EPISODE,))
    assert report.held_back == {}
    assert {path.name for path in report.built[EPISODE]} == before


def test_without_any_output_the_episode_is_held_back_whole(
    library: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    out = tmp_path / "out"
    build(library, out, (EPISODE,))
    before = names(out / EPISODE)
    path = library / "templates" / "card.typ.j2"
    path.parent.mkdir(exist_ok=True)
    path.write_text("{{ nonsense", encoding="utf-8")
    real = jobs.output_modules
    monkeypatch.setattr(jobs, "output_modules", lambda: real(("card",)))
    report = build(library, out, (EPISODE,))
    assert report.held_back[EPISODE].startswith("held back: card, as ")
    assert "other files" not in report.held_back[EPISODE]
    assert names(out / EPISODE) == before


def test_a_folder_among_the_templates_is_no_trouble(library: Path, tmp_path: Path) -> None:
    (library / "templates" / "old").mkdir(parents=True)
    assert set(build(library, tmp_path / "out", (EPISODE,)).built) == {EPISODE}


def test_a_change_in_a_garage_file_of_the_other_ending_is_seen(library: Path, tmp_path: Path) -> None:
    path = library / "garages" / "grand-sedan.yaml"
    path = path.rename(path.with_suffix(".yml"))
    out = tmp_path / "out"
    assert set(build(library, out, (EPISODE,)).built) == {EPISODE}
    text = path.read_text(encoding="utf-8").replace("name: Front weight", "name: Nose weight", 1)
    path.write_text(text, encoding="utf-8", newline="\n")
    assert set(build(library, out, (EPISODE,)).built) == {EPISODE}
    assert "Nose weight" in (out / EPISODE / "card-short.txt").read_text(encoding="utf-8")
    path.write_text(text + "extra: 1\n", encoding="utf-8", newline="\n")
    assert set(build(library, out, (EPISODE,)).held_back) == {EPISODE}
