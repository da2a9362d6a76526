"""Show notes: what is pasted, what it leaves out, and the limits that it counts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from producer.basics.figures import MINUS, NO_BREAK
from producer.jobs.dossier import dossier as dossier_of
from producer.library.load import load
from producer.model.dossier import ConditionLine, Dossier
from producer.model.guide import Guide, GuideRow
from producer.outputs import notes
from producer.outputs.description import without_angles
from producer.outputs.pinned import view as pinned_view
from producer.outputs.tags import joined, tags
from producer.render.kit import Kit
from tests.outputs.dossiers import sample_dossier, sample_timeline, with_values

GOLDEN = Path(__file__).parent / "golden"
PASTED = ("notes.txt", "tags.txt", "pinned-comment.txt")


def texts(dossier: Dossier, kit: Kit) -> dict[str, str]:
    return {one.path: one.data.decode("utf-8") for one in notes.documents(dossier, kit)}


def channel_with(dossier: Dossier, **changes: object) -> Dossier:
    return replace(dossier, channel=dossier.channel.model_copy(update=changes))


def platform_with(dossier: Dossier, **limits: object) -> Dossier:
    return channel_with(dossier, platform=dossier.channel.platform.model_copy(update=limits))


def without(dossier: Dossier, setup: str, *addresses: str) -> Dossier:
    def less(values: dict[str, Decimal]) -> dict[str, Decimal]:
        return {address: value for address, value in values.items() if address not in addresses}

    sheets = (replace(one, values=less(dict(one.values))) if one.id == setup else one for one in dossier.sheets)
    return replace(dossier, sheets=tuple(sheets))


def untested(dossier: Dossier) -> Dossier:
    sheets = (replace(one, setup=one.setup.model_copy(update={"tested": False})) for one in dossier.sheets)
    episode = dossier.episode.model_copy(update={"tested_with": None})
    return replace(dossier, sheets=tuple(sheets), episode=episode)


@pytest.mark.parametrize("name", [*PASTED, "notes.md"])
def test_the_sample_reads_as_agreed(name: str, kit: Kit) -> None:
    made = texts(sample_dossier(revision=2), kit)[name]
    # The golden files hold plain blanks, so that they can be read and edited.
    assert made.replace(NO_BREAK, " ") == (GOLDEN / name).read_text(encoding="utf-8")


def test_four_files_and_the_caution_last(dossier: Dossier, kit: Kit) -> None:
    made = texts(dossier, kit)
    assert list(made) == ["notes.txt", "tags.txt", "pinned-comment.txt", "notes.md"]
    for name in ("notes.txt", "pinned-comment.txt", "notes.md"):
        assert made[name].rstrip("\n").split("\n")[-1] == dossier.channel.caution
        assert made[name].endswith("\n")
        assert "\n\n\n" not in made[name]


def test_figures_and_units_never_break_apart(dossier: Dossier, kit: Kit) -> None:
    text = texts(dossier, kit)["notes.txt"]
    assert f"- Front weight: 50.5{NO_BREAK}%" in text
    assert f"RF {MINUS}3.50" in text
    assert "- Final drive: 3.90:1" in text


def test_a_later_setup_is_told_where_it_differs(dossier: Dossier, kit: Kit) -> None:
    text = texts(with_values(dossier, "long", {"spring.rf": "775"}), kit)["notes.txt"]
    later = text.partition("Long run: only what differs from the short run")[2]
    assert "- Spring (lb/in): RF 775 (was 700)\n" in later
    assert f"- Cross weight: 52.5{NO_BREAK}% (was 52.0)\n" in later
    assert "Front weight" not in later


def test_the_same_numbers_are_said_to_be_the_same(dossier: Dossier, kit: Kit) -> None:
    twin = replace(dossier.sheets[1], values=dossier.first.values)
    alike = replace(dossier, sheets=(dossier.first, twin), gearing={"short": dossier.gearing["short"]})
    assert "\nLong run: the same numbers as the short run\n\n" in texts(alike, kit)["notes.txt"]


def test_the_engine_is_not_said_twice(dossier: Dossier, kit: Kit) -> None:
    same = replace(dossier, gearing=dict.fromkeys(("short", "long"), dossier.gearing["short"]))
    assert texts(dossier, kit)["notes.txt"].count("Engine: ") == 2
    assert texts(same, kit)["notes.txt"].count("Engine: ") == 1


@pytest.mark.parametrize(
    ("margin", "said"),
    [
        (410, ", 410 below the limiter."),
        (0, ", at the limiter."),
        (-90, ", 90 past the limiter."),
        (None, f"142{NO_BREAK}mph."),
    ],
)
def test_the_margin_to_the_limiter(dossier: Dossier, kit: Kit, margin: int | None, said: str) -> None:
    gears = {"short": replace(dossier.gearing["short"], margin=margin)}
    line = next(one for one in texts(replace(dossier, gearing=gears), kit)["notes.txt"].split("\n") if "rpm" in one)
    assert line.endswith(said)


def test_without_a_top_speed_the_engine_is_told_for_every_ten(dossier: Dossier, kit: Kit) -> None:
    gears = {"short": replace(dossier.gearing["short"], rpm=None, top_speed=None)}
    text = texts(replace(dossier, gearing=gears), kit)["notes.txt"]
    assert f"Engine: {gears['short'].per_ten}{NO_BREAK}rpm for every 10{NO_BREAK}mph." in text


def test_values_that_are_missing_are_counted_and_not_shown(dossier: Dossier, kit: Kit) -> None:
    text = texts(without(dossier, "short", "spring.rf", "tape"), kit)["notes.txt"]
    first, _, later = text.partition("Long run: only")
    assert "- Spring (lb/in): LF 725, RF not set" not in first
    assert "- Spring (lb/in): LF 725, LR 225, RR 300" in first
    assert "Not set yet: 2 settings." in first
    assert "RF 725 (was not set)" in later
    assert "every number below" not in text


def test_nothing_set_in_a_later_setup(dossier: Dossier, kit: Kit) -> None:
    assert "- Grille tape: not set (was 45)" in texts(without(dossier, "long", "tape"), kit)["notes.txt"]


def test_untested_numbers_say_so_everywhere(dossier: Dossier, kit: Kit) -> None:
    made = texts(untested(dossier), kit)
    assert made["notes.txt"].split("\n")[1].startswith("A starting point that nobody has driven yet")
    assert "Short run, untested: every setting" in made["notes.txt"]
    assert "Not driven yet; limits of version" in made["notes.txt"]
    assert "Untested, nobody has driven it yet: short run, long run." in made["pinned-comment.txt"]


def test_tested_numbers_do_not(dossier: Dossier, kit: Kit) -> None:
    assert "ntested" not in "".join(texts(dossier, kit).values())


def test_no_legal_list_of_chapters_is_left_out_and_said(dossier: Dossier, kit: Kit) -> None:
    short = replace(dossier, timeline=sample_timeline(dossier.narration, each_ms=1000))
    made = texts(short, kit)
    assert "Chapters" not in made["notes.txt"]
    assert "0:00" not in made["notes.txt"]
    assert "No chapters: only " in made["notes.md"]


@pytest.mark.parametrize(
    ("source", "said"), [("estimate", "estimated"), ("raw", "as recorded"), ("cut", "of the cut.")]
)
def test_where_the_times_come_from(dossier: Dossier, kit: Kit, source: str, said: str) -> None:
    timeline = replace(dossier.timeline, source=source)  # type: ignore[arg-type]  # one of the three words
    assert said in texts(replace(dossier, timeline=timeline), kit)["notes.md"]


def test_only_those_who_consented_are_named(dossier: Dossier, kit: Kit) -> None:
    assert "Thanks for asking: @oval-otter." in texts(dossier, kit)["notes.txt"]
    silent = "".join(texts(replace(dossier, credits=()), kit).values())
    assert "Thanks" not in silent
    assert "oval-otter" not in silent


def test_the_demo_names_nobody_who_did_not_say_yes(demo: Path, kit: Kit) -> None:
    library, _ = load(demo)
    quiet = {one.from_ for one in library.requests.values() if not one.credit}
    agreed = {one.from_ for one in library.requests.values() if one.credit}
    assert quiet
    for episode in library.episodes.values():
        whole = dossier_of(library.case(episode))
        assert whole is not None
        written = "".join(texts(whole, kit).values())
        assert not [one for one in quiet - agreed if one in written]


def test_every_demo_episode_fits_with_room_to_spare(demo: Path, kit: Kit) -> None:
    library, _ = load(demo)
    for episode in library.episodes.values():
        whole = dossier_of(library.case(episode))
        assert whole is not None
        made = texts(whole, kit)
        assert len(made["notes.txt"].encode("utf-8")) < 3000
        assert len(made["tags.txt"].strip()) <= whole.channel.platform.tags_characters
        assert not [name for name in PASTED if "<" in made[name] or ">" in made[name]]


def _odd_title(dossier: Dossier) -> Dossier:
    return replace(dossier, episode=dossier.episode.model_copy(update={"title": "Two <ends> -> one car"}))


def _odd_condition(dossier: Dossier) -> Dossier:
    return replace(dossier, conditions=(ConditionLine("Wind <east>", "> 5"),))


def _odd_caution(dossier: Dossier) -> Dossier:
    return channel_with(dossier, caution="Numbers for <a> simulation.")


def _odd_tags(dossier: Dossier) -> Dossier:
    return channel_with(dossier, tags=("a<b", "c>"))


def _odd_name(dossier: Dossier) -> Dossier:
    return replace(dossier, track=dossier.track.model_copy(update={"name": "Marrow <i>Creek</i>"}))


@pytest.mark.parametrize("odd", [_odd_title, _odd_condition, _odd_caution, _odd_tags, _odd_name])
def test_no_angle_brackets_anywhere(dossier: Dossier, kit: Kit, odd: Callable[[Dossier], Dossier]) -> None:
    for text in texts(odd(dossier), kit).values():
        assert "<" not in text
        assert ">" not in text


@pytest.mark.parametrize(
    ("text", "clean"),
    [
        ("a <b> c", "a b c"),
        ("from 5->6", "from 5- 6"),
        ("<<>>", ""),
        ("a\n<b>\nc", "a\nb\nc"),
        ("  kept as it is ", "  kept as it is "),
        ("", ""),
    ],
)
def test_brackets_go_and_words_stay_apart(text: str, clean: str) -> None:
    assert without_angles(text) == clean


def test_lengths_are_counted_in_their_units_and_nothing_is_cut(dossier: Dossier, kit: Kit) -> None:
    whole = texts(dossier, kit)["notes.txt"]
    size = len(whole.encode("utf-8"))
    assert size > len(whole)
    tight = platform_with(dossier, description_bytes=size - 7, title_characters=50, tags_characters=20)
    made = texts(tight, kit)
    assert made["notes.txt"] == whole
    assert f"{size} of at most {size - 7} bytes: **7 too many**" in made["notes.md"]
    assert f"{len(dossier.episode.title)} of at most 50 characters: **3 too many**" in made["notes.md"]


def test_at_the_limit_nothing_is_too_many(dossier: Dossier, kit: Kit) -> None:
    size = len(texts(dossier, kit)["notes.txt"].encode("utf-8"))
    assert "too many" not in texts(platform_with(dossier, description_bytes=size), kit)["notes.md"]


def test_fences_hold_whatever_stands_between_them(dossier: Dossier, kit: Kit) -> None:
    odd = channel_with(dossier, caution="Three ``` of them.")
    assert texts(odd, kit)["notes.md"].count("\n````text\n") == 4


@pytest.mark.parametrize(("spelling", "word", "other"), [("us", "Tires", "Tyres"), ("uk", "Tyres", "Tires")])
def test_our_words_follow_the_channel(dossier: Dossier, kit: Kit, spelling: str, word: str, other: str) -> None:
    text = texts(channel_with(dossier, spelling=spelling), kit)["notes.txt"]
    assert f"\n{word}\n" in text
    assert f"\n{other}\n" not in text


def test_without_links_the_site_stands_in(dossier: Dossier, kit: Kit) -> None:
    only_site = channel_with(dossier, links=(), site="https://example.org/ninth")
    assert "\nSecond Groove Notebook: https://example.org/ninth\n" in texts(only_site, kit)["notes.txt"]
    nothing = texts(channel_with(dossier, links=(), site=""), kit)["notes.txt"]
    assert "http" not in nothing
    assert "\n\n\n" not in nothing


def test_tags_are_told_once_and_in_order(dossier: Dossier) -> None:
    twice = channel_with(dossier, tags=("Oval", "marrow creek", "oval", "a, b"))
    found = tags(twice)
    assert found[:5] == ("Oval", "marrow creek", "a", "b", "Grand Sedan")
    assert len({one.casefold() for one in found}) == len(found)
    assert found == tags(twice)


@pytest.mark.parametrize("limit", range(10, 200, 7))
def test_tags_keep_the_limit_and_are_never_cut(dossier: Dossier, limit: int) -> None:
    found = tags(platform_with(dossier, tags_characters=limit))
    assert len(joined(found)) <= limit
    assert set(found) <= set(tags(dossier))
    assert found[:2] == dossier.channel.tags


def test_the_channels_own_tags_stay_even_where_they_are_too_many(dossier: Dossier) -> None:
    own = tuple(f"tag number {number}" for number in range(60))
    assert tags(channel_with(dossier, tags=own)) == own


def test_the_comment_names_one_change_for_a_tight_car_and_one_for_a_loose_one(dossier: Dossier) -> None:
    first, second = pinned_view(dossier).tries
    assert first.startswith("Tight in the middle: lower the cross weight from 52.0 to 51.5")
    assert second.startswith("Loose on exit: raise the cross weight from 52.0 to 52.5")
    assert second.endswith("Put half a percent in.")


def test_advice_for_everybody_comes_before_advice_for_worn_tyres(dossier: Dossier) -> None:
    def only(where: str, tyres: str | None) -> GuideRow:
        rows = [one for one in dossier.guides["short"].rows if one.feels == "loose" and one.where == where]
        return replace(rows[0], changes=tuple(replace(one, tyres=tyres) for one in rows[0].changes[:1]))

    worn = only("exit", "worn")
    both = Guide("e", "short", (worn, only("entry", None)))
    alone = Guide("e", "short", (worn,))
    assert pinned_view(replace(dossier, guides={"short": both})).tries[0].startswith("Loose on entry: ")
    assert pinned_view(replace(dossier, guides={"short": alone})).tries[0].startswith("Loose on exit, worn tires: ")


def test_an_empty_guide_leaves_the_lines_out(dossier: Dossier, kit: Kit) -> None:
    bare = replace(dossier, guides={one.id: Guide("e", one.id, ()) for one in dossier.sheets})
    text = texts(bare, kit)["pinned-comment.txt"]
    assert "try this first" not in text
    assert text.endswith(f"\n\n{dossier.channel.caution}\n")
