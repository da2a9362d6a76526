"""The outline: sections with minutes, what differs, shots, a list to tick off."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from producer.captions.chapters import stamp
from producer.model.dossier import Dossier
from producer.outputs import outline, script
from producer.outputs.captions import chapters
from producer.outputs.outline import view
from producer.render.kit import Kit
from producer.script.pace import minutes
from tests.outputs.dossiers import sample_dossier


def text(dossier: Dossier, kit: Kit) -> str:
    (document,) = outline.documents(dossier, kit)
    assert document.path == "outline.md"
    return document.data.decode("utf-8")


def test_the_head_says_what_it_is_and_how_long(dossier: Dossier, kit: Kit) -> None:
    lines = text(dossier, kit).splitlines()
    total = dossier.timeline
    assert lines[0] == f"# {dossier.episode.title}"
    assert lines[2].endswith("Marrow Creek, Grand Sedan. Draft.")
    assert lines[4].startswith(f"**About {minutes(total.total_ms)}** (minutes:seconds) at 150 words a minute")
    assert f"{minutes(total.fast_ms)} at 180, {minutes(total.slow_ms)} at 130" in lines[4]


def test_sections_stand_in_order_and_their_minutes_make_the_whole(dossier: Dossier) -> None:
    shown = view(dossier).sections
    assert [one.number for one in shown] == list(range(1, len(shown) + 1))
    assert [one.title for one in shown] == [one.title for one in dossier.narration.sections]
    assert shown[0].start == "0:00"

    def seconds(length: str) -> int:
        whole, part = length.split(":")
        return int(whole) * 60 + int(part)

    assert sum(seconds(one.minutes) for one in shown) == seconds(minutes(dossier.timeline.total_ms))
    for one, after in pairwise(shown):
        assert seconds(one.start) + seconds(one.minutes) == seconds(after.start)


def test_a_section_starts_where_its_chapter_does(dossier: Dossier) -> None:
    starts = tuple(number * 12_700 for number in range(len(dossier.narration.sections)))
    later = replace(dossier, timeline=replace(dossier.timeline, section_starts=starts, total_ms=200_000))
    listed = [one.start_ms for one in chapters(later).chapters]
    assert len(listed) == len(starts)
    assert [one.start for one in view(later).sections] == [stamp(one) for one in listed]
    assert [one.start for one in script.view(later).sections] == [stamp(one) for one in listed]


def test_a_section_names_its_settings(dossier: Dossier) -> None:
    about = {one.title: one.about for one in view(dossier).sections}
    assert about["Short run: ballast"] == "cross weight"
    assert about["Conditions"] == ""


def test_what_differs_is_listed_with_both_figures(dossier: Dossier, kit: Kit) -> None:
    (other,) = view(dossier).others
    changed = dossier.others[0].differs(dossier.first)
    assert len(other.changes) == len(changed) > 1
    for address, line in zip(changed, other.changes, strict=True):
        assert dossier.others[0].shown(address) in line
        assert line.endswith(f"was {dossier.first.figure(address)}")
    assert "## Long run: what differs from" in text(dossier, kit)


def test_a_setup_without_a_difference_says_so(dossier: Dossier, kit: Kit) -> None:
    same = replace(dossier.others[0], values=dossier.first.values)
    assert "Nothing: it has the same numbers." in text(replace(dossier, sheets=(dossier.first, same)), kit)


def test_each_shot_is_a_box_with_its_sections(dossier: Dossier, kit: Kit) -> None:
    sections = tuple(
        replace(one, shots=("Driving: a lap", "Corner: the car loose going in") if number in {1, 3} else ("odd one",))
        for number, one in enumerate(dossier.narration.sections, 1)
    )
    written = text(replace(dossier, narration=replace(dossier.narration, sections=sections)), kit)
    assert "- [ ] A lap (1, 3)" in written
    assert "- [ ] The car loose going in (1, 3)" in written
    assert "- [ ] Odd one (2, 4, 5, 6, 7)" in written
    assert written.index("### Screens") < written.index("### Driving") < written.index("### Corners")


def test_a_kind_without_shots_has_no_heading(dossier: Dossier, kit: Kit) -> None:
    sections = tuple(replace(one, shots=()) for one in dossier.narration.sections)
    assert "###" not in text(replace(dossier, narration=replace(dossier.narration, sections=sections)), kit)


def test_the_list_to_tick_off(dossier: Dossier) -> None:
    checks = view(dossier).checks
    assert any(one.startswith("Tire use is set:") for one in checks)
    assert any(f"version {dossier.episode.tested_with}" in one for one in checks)
    assert checks[-1] == f"The caution was said: {dossier.channel.caution}"
    assert any(one.startswith("Thanks said to ") for one in checks) is bool(dossier.credits)


def test_an_untested_setup_is_on_the_list(dossier: Dossier) -> None:
    setup = dossier.first.setup.model_copy(update={"tested": False})
    untested = replace(dossier, sheets=(replace(dossier.first, setup=setup), *dossier.others))
    assert any("untested, say so" in one for one in view(untested).checks)
    assert not any("untested" in one for one in view(dossier).checks)


def test_a_published_revision_is_named(kit: Kit) -> None:
    assert "Revision 2, 2026-11-20." in text(sample_dossier(revision=2), kit)


def test_times_of_a_take_are_not_called_an_estimate(dossier: Dossier, kit: Kit) -> None:
    taken = replace(dossier, timeline=replace(dossier.timeline, source="cut"))
    assert "as recorded" in text(taken, kit)
    assert "About" not in text(taken, kit)
