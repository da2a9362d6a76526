"""The caption script: three formats of the same cues, and the chapters."""

from __future__ import annotations

import csv
import io
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from producer.captions.profile import reading_profile
from producer.captions.speed import too_fast
from producer.jobs.dossier import dossier as whole_dossier
from producer.library.load import load
from producer.model.cue import Cue
from producer.model.dossier import Dossier
from producer.outputs import captions
from producer.outputs.captions import HEADER, chapters, shown, to_csv
from producer.render.kit import Kit
from producer.script.on_screen import on_screen
from tests.outputs.dossiers import with_values


def files(dossier: Dossier, kit: Kit) -> dict[str, str]:
    return {one.path: one.data.decode("utf-8") for one in captions.documents(dossier, kit)}


def rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text, newline="")))


@pytest.fixture(scope="session")
def real(demo: Path) -> Dossier:
    library, _ = load(demo)
    found = whole_dossier(library.case(library.episodes["marrow-creek-grand-sedan"]))
    assert found is not None
    return found


def test_the_four_files(dossier: Dossier, kit: Kit) -> None:
    assert list(files(dossier, kit)) == ["captions.srt", "captions.vtt", "captions.csv", "chapters.vtt"]


def test_all_formats_show_the_same(dossier: Dossier, kit: Kit) -> None:
    written = files(dossier, kit)
    cues = shown(dossier)
    table = rows(written["captions.csv"])
    assert [row["show"] for row in table] == [" / ".join(one.lines) for one in cues]
    assert written["captions.srt"].count(" --> ") == written["captions.vtt"].count(" --> ") == len(cues)
    for cue, row in zip(cues, table, strict=True):
        assert f"{row['start']} --> {row['end']}\n{cue.text}" in written["captions.vtt"]
        assert Decimal(row["duration"]) * 1000 == cue.duration_ms


def test_a_changed_figure_changes_what_is_shown(dossier: Dossier, kit: Kit) -> None:
    assert "RF spring 700\u00a0lb/in" in files(dossier, kit)["captions.vtt"]
    other = files(with_values(dossier, "short", {"spring.rf": "675"}), kit)
    assert "RF spring 675\u00a0lb/in" in other["captions.srt"]
    assert "was 675" in other["captions.csv"]
    assert "700" not in other["captions.vtt"]


def test_csv_is_rfc_4180(dossier: Dossier) -> None:
    text = to_csv(dossier, (Cue(0, 1000, ('a "b", c', "d")),))
    assert (
        text == 'start,end,duration,section,show\r\n00:00:00.000,00:00:01.000,1.000,Marrow Creek,"a ""b"", c / d"\r\n'
    )
    assert tuple(text.splitlines()[0].split(",")) == HEADER


@pytest.mark.parametrize("cell", ["=1+1", "+cmd", "-2+3", "@SUM(A1)", "\tx"])
def test_a_formula_is_only_text_in_a_spreadsheet(dossier: Dossier, cell: str) -> None:
    assert rows(to_csv(dossier, (Cue(0, 1000, (cell,)),)))[0]["show"] == f"'{cell}"


@pytest.mark.parametrize("cell", ["RF spring 700\u00a0lb/in", "\u22123.50\u00a0deg", "a=b", "50 - 20"])
def test_other_cells_are_left_alone(dossier: Dossier, cell: str) -> None:
    assert rows(to_csv(dossier, (Cue(0, 1000, (cell,)),)))[0]["show"] == cell


def test_each_row_names_its_section(dossier: Dossier) -> None:
    starts, titles = dossier.timeline.section_starts, [one.title for one in dossier.narration.sections]
    cues = tuple(Cue(start, start + 900, (title,)) for start, title in zip(starts, titles, strict=True))
    assert [(row["section"], row["show"]) for row in rows(to_csv(dossier, cues))] == [(one, one) for one in titles]


def test_chapters_follow_the_sections(dossier: Dossier, kit: Kit) -> None:
    listed = chapters(dossier).chapters
    written = files(dossier, kit)["chapters.vtt"]
    assert listed[0].start_ms == 0
    assert written.startswith("WEBVTT\n")
    assert all(one.title in written for one in listed)


def test_without_a_legal_list_every_section_is_a_chapter(dossier: Dossier, kit: Kit) -> None:
    limits = dossier.channel.platform.chapters.model_copy(update={"least": 50})
    platform = dossier.channel.platform.model_copy(update={"chapters": limits})
    few = replace(dossier, channel=dossier.channel.model_copy(update={"platform": platform}))
    assert chapters(few).chapters == ()
    assert files(few, kit)["chapters.vtt"].count(" --> ") == len(few.narration.sections)


def test_the_demo_shows_every_value_once_at_least_and_nothing_too_fast(real: Dossier) -> None:
    cues = shown(real)
    whole = "\n".join(one.text for one in cues)
    for address in real.first.values:
        assert real.first.figure(address) in whole, address
    for other in real.others:
        for address in other.differs(real.first):
            assert f"{other.shown(address)}, was {real.first.figure(address)}" in whole
    assert real.channel.caution.split(". ")[0] in cues[-1].text
    limits = reading_profile(real.channel.captions)
    assert [one for one in cues if too_fast(one, limits)] == []
    assert all(one.end_ms <= real.timeline.total_ms + limits.longest_ms for one in cues)


def test_what_is_wanted_is_in_order(real: Dossier) -> None:
    starts = [one.start_ms for one in on_screen(real)]
    assert starts == sorted(starts)
