"""What to record again as marks: at its words, or where it has to be put in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest

from producer.basics.finding import Severity
from producer.basics.place import Place
from producer.model.cue import Mark
from producer.model.dossier import Dossier
from producer.model.script import Narration
from producer.model.take import Mended, Take, TakeFinding, WordCount
from producer.outputs.cues import documents, marks
from producer.outputs.pick_ups import pick_ups
from producer.render.kit import Kit

MAIN, OTHER = Place("x/take.srt", 9, 1), Place("x/take-2.srt", 2, 1)
Taken = Callable[..., Dossier]


def finding(about: Any = "parameter", at: int | None = None, **more: Any) -> TakeFinding:
    parts = {"code": "said-differs" if at is not None else "not-said", "said": None, "expected": None,
             "parameter": None, "setup": None, "message": "it", "again": "Say it.", "place": MAIN}  # fmt: skip
    return TakeFinding(about=about, at_ms=at, **{**parts, **more})


@pytest.fixture
def taken(dossier: Dossier) -> Taken:
    """The sample episode with a take of it in which some sections (by number) are left out."""

    def make(*findings: TakeFinding, without: tuple[int, ...] = (), mended: tuple[Mended, ...] = ()) -> Dossier:
        sections, starts = dossier.narration.sections, dossier.timeline.section_starts
        there = [at for at in range(len(sections)) if at not in without]
        narration = Narration(tuple(sections[at] for at in there))
        spans = tuple(replace(x, section=there.index(x.section)) for x in dossier.timeline.spans if x.section in there)
        begins = tuple(starts[at] for at in there)
        timeline = replace(dossier.timeline, source="raw", section_starts=begins, spans=spans)
        take = Take("raw", "x/take.srt", (), (), WordCount(0, 0, 0), (), findings, 0, timeline.total_ms, narration,
                    timeline, mended=mended)  # fmt: skip
        return replace(dossier, take=take)

    return make


def section(dossier: Dossier, setup: str, address: str) -> int:
    return next(
        at
        for at, one in enumerate(dossier.narration.sections)
        if one.setup == setup and any(address in passage.settings for passage in one.passages)
    )


def test_a_slip_stands_where_it_is_said(taken: Taken) -> None:
    made = taken(finding(at=4321, message="said 50, the sheet has 50.5"))
    assert [*pick_ups(made)] == [
        Mark(4321, 4321, "pick-up", "Record again: said 50, the sheet has 50.5", 'say "Say it."')
    ]


def test_a_setting_that_is_missing_stands_at_the_end_of_its_section(taken: Taken, dossier: Dossier) -> None:
    at = section(dossier, "short", "spring.rf")
    made = taken(finding(parameter="spring.rf", setup="short", expected=Decimal(700)))
    (mark,) = pick_ups(made)
    assert (mark.start_ms, mark.name) == (dossier.timeline.section_starts[at + 1], "Record: it")


def test_a_section_that_was_left_out_stands_where_the_next_begins_and_speaks_for_its_settings(
    taken: Taken, dossier: Dossier
) -> None:
    at = section(dossier, "short", "spring.rf")
    gone = dossier.narration.sections[at]
    made = taken(
        finding("section", expected=gone.title, setup="short", again=""),
        finding(parameter="spring.rf", setup="short"),
        without=(at,),
    )
    (mark,) = pick_ups(made)
    assert mark.start_ms == dossier.timeline.section_starts[at + 1]
    assert (mark.name, mark.note) == (f"Record: {gone.title}", "Left out; it goes in here")


def test_what_belongs_after_the_last_section_lengthens_no_cut(taken: Taken, dossier: Dossier, kit: Kit) -> None:
    last = len(dossier.narration.sections) - 1
    title = dossier.narration.sections[last].title
    made = taken(finding("section", expected=title, again=""), without=(last,))
    (mark,) = pick_ups(made)
    assert dossier.timeline.total_ms - 100 < mark.start_ms < dossier.timeline.total_ms

    def lasts(one: Dossier) -> str:
        text = next(x.data.decode() for x in documents(one, kit) if x.path == "cues.edl")
        return text.splitlines()[2]

    assert lasts(made) == lasts(taken(without=(last,)))


@pytest.mark.parametrize("about", ["caution", "condition", "name"])
def test_what_has_no_section_of_its_own_has_a_place_all_the_same(taken: Taken, dossier: Dossier, about: str) -> None:
    (mark,) = pick_ups(taken(finding(about)))
    assert 0 < mark.start_ms < dossier.timeline.total_ms


def test_a_slip_in_a_pick_up_names_its_file(taken: Taken, dossier: Dossier) -> None:
    at = section(dossier, "short", "spring.rf")
    made = taken(finding(at=700, parameter="spring.rf", setup="short", place=OTHER))
    (mark,) = pick_ups(made)
    assert (mark.start_ms, mark.name) == (dossier.timeline.section_starts[at + 1], "Record again: it, in take-2.srt")


def test_what_a_pick_up_mends_says_what_to_put_in(taken: Taken, dossier: Dossier) -> None:
    at = section(dossier, "short", "spring.rf")
    mended = (
        Mended(finding(at=4000, message="slip"), "x/take-2.srt", 61_000),
        Mended(finding(parameter="spring.rf", setup="short", message="front"), "x/take-3.srt", 9000),
        Mended(finding(parameter="spring.rf", setup="short", message="left"), "x/take-3.srt", 8000),
    )
    end = dossier.timeline.section_starts[at + 1]
    assert [*pick_ups(taken(mended=mended))] == [
        Mark(4000, 4000, "pick-up", "Put in take-2.srt from 1:01", "slip"),
        Mark(end, end, "pick-up", "Put in take-3.srt from 0:08", "left; front"),
    ]


def test_marks_are_in_order_of_time_with_the_rest(taken: Taken) -> None:
    made = marks(taken(finding(at=20_000), finding(at=10_000)))
    assert [one.start_ms for one in made] == sorted(one.start_ms for one in made)
    assert sum(one.kind == "pick-up" for one in made) == 2
    assert made[0].kind == "section"


@pytest.mark.parametrize("code", ["said-twice", "told-out-of-order", "start-doubtful"])
def test_notes_are_no_marks(taken: Taken, code: str) -> None:
    assert [*pick_ups(taken(finding("section", at=1000, code=code, severity=Severity.NOTE)))] == []


def test_without_a_take_there_are_none(dossier: Dossier) -> None:
    assert [*pick_ups(dossier)] == []


def test_captions_of_another_episode_make_none(taken: Taken) -> None:
    made = taken(finding(at=1000))
    assert made.take is not None
    assert [*pick_ups(replace(made, take=replace(made.take, timeline=None, stranger="other")))] == []
