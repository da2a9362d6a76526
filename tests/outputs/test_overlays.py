"""Captions as pictures: what is on them, their size and transparency, and that no text is ever cut off."""

from __future__ import annotations

import io
import re
import struct
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image

from producer.basics.errors import ProducerError
from producer.basics.frame_rate import frame_rate
from producer.model.cue import Cue
from producer.model.dossier import Dossier
from producer.outputs.captions import shown
from producer.outputs.overlays import SHAPES, Overlay, Shape, Sheets, Wanted, Word, lower_third, wanted, words_of
from producer.render.kit import Kit
from tests.outputs.dossiers import with_values
from tests.render.test_literal import ATTACKS

PAPER = (0xFA, 0xF8, 0xF3, 255)
SIZES = {"wide": (1920, 1080), "tall": (1080, 1920)}
# Letters of the font, and what a line may be broken at.
LINE = st.text(st.sampled_from("aWgj0,7.\u2212/-: \u00a0éЖ"), min_size=1, max_size=60)
LINES = st.lists(LINE, min_size=1, max_size=3)


@pytest.fixture(scope="module")
def every(dossier: Dossier, kit: Kit) -> tuple[Wanted, ...]:
    return wanted(dossier, kit)


def drawn(kit: Kit, shape: Shape, overlay: Overlay) -> Image.Image:
    data = kit.png(kit.typst("overlay.typ.j2", Sheets("en-US", "A caption", shape, (overlay,))))
    return Image.open(io.BytesIO(data))


def of_lines(*lines: str, setup: str = "", rank: Any = "neither") -> Overlay:
    return Overlay(tuple(words_of(line, whole=False) for line in lines), setup, rank)


def box(picture: Image.Image) -> tuple[int, int, int, int]:
    """The plate: left, top, right, bottom (the last two exclusive)."""
    found = picture.getchannel("A").getbbox()
    assert found is not None
    return found


def has_a_clear_rim(picture: Image.Image) -> bool:
    """Whether nothing but paper stands just inside the plate's top, right and bottom edge: what is cut off, touches
    them."""
    left, top, right, bottom = box(picture)
    rims = ((left + 30, top + 6, right - 6, top + 10), (left + 30, bottom - 10, right - 6, bottom - 6),
            (right - 10, top + 6, right - 6, bottom - 6))  # fmt: skip
    return all(picture.crop(rim).getcolors() == [((rim[2] - rim[0]) * (rim[3] - rim[1]), PAPER)] for rim in rims)


def test_each_caption_in_both_shapes_named_by_its_time_code(dossier: Dossier, every: tuple[Wanted, ...]) -> None:
    names = [one.path for one in every]
    assert names[:2] == ["overlays/wide/00-00-00-00.png", "overlays/tall/00-00-00-00.png"]
    assert len(names) == len(set(names)) == 2 * len(shown(dossier))
    assert names[::2] == sorted(names[::2])
    assert all(re.fullmatch(r"overlays/(wide|tall)/\d\d-\d\d-\d\d-\d\d\.png", name) for name in names)


def test_names_are_the_time_codes_of_the_cue_sheet(dossier: Dossier, kit: Kit) -> None:
    dropping = replace(dossier, channel=dossier.channel.model_copy(update={"frame_rate": frame_rate("29.97")}))
    names = [one.path for one in wanted(dropping, kit)]
    # The long run's title at 84 s: frame 2517, two numbers left out.
    assert "overlays/wide/00-01-23-29.png" in names


def test_two_captions_of_one_frame_have_two_names(dossier: Dossier, kit: Kit) -> None:
    from producer.outputs.overlays import names_of

    cues = tuple(Cue(start, start + 1, ("a",)) for start in (1000, 1001, 1500))
    assert list(names_of(dossier, cues)) == ["00-00-01-00", "00-00-01-00-2", "00-00-01-15"]


@pytest.mark.parametrize("index", [0, 1])
def test_a_picture_has_its_size_and_is_clear_outside_the_plate(every: tuple[Wanted, ...], kit: Kit, index: int) -> None:
    data, shape = every[index].drawn(kit).data, SHAPES[index]
    width, height, depth, colour = struct.unpack(">IIBB", data[16:26])
    # Colour type 6: red, green, blue and alpha (PNG specification, IHDR).
    assert (width, height, depth, colour) == (*SIZES[shape.name], 8, 6)
    picture = Image.open(io.BytesIO(data))
    left, _, right, bottom = box(picture)
    assert left >= shape.left - 2
    assert right <= width - shape.right
    assert bottom <= height - shape.bottom + 2
    assert picture.getpixel((right - 20, bottom - 12)) == PAPER
    assert picture.getpixel((0, 0)) == picture.getpixel((width - 1, height - 1)) == (0, 0, 0, 0)


def test_the_same_bytes_every_time(every: tuple[Wanted, ...], dossier: Dossier, kit: Kit) -> None:
    assert wanted(dossier, Kit()) == every
    assert every[1].drawn(kit) == every[1].drawn(Kit())


@pytest.mark.parametrize(
    ("line", "strong", "quiet"),
    [
        ("RF spring 725\u00a0lb/in, was 700", ["725\u00a0lb/in,"], ["was", "700"]),
        ("Camber LF 4.25, RF \u22123.50\u00a0deg", ["4.25,", "\u22123.50\u00a0deg"], []),
        ("Final drive 4.00:1, was 4.15", ["4.00:1,"], ["was", "4.15"]),
        ("Pressure 50 psi", ["50\u00a0psi"], []),
        ("Tire use: hard (me, field)", ["hard", "(me,", "field)"], []),
        ("Not advice for a real car.", [], []),
        ("The nose was low", [], ["was", "low"]),
    ],
)
def test_figures_stand_out_and_what_was_steps_back(line: str, strong: list[str], quiet: list[str]) -> None:
    found = words_of(line, whole=False)
    assert [one.text for one in found if one.weight == "strong"] == strong
    assert [one.text for one in found if one.weight == "quiet"] == quiet


def test_what_a_caption_is_about(dossier: Dossier) -> None:
    found = {" / ".join(one.lines): lower_third(dossier, one) for one in shown(dossier)}
    assert (found["Short run"].setup, found["Short run"].rank) == ("", "first")
    assert found["Short run"].lines == ((Word("Short", "strong"), Word("run", "strong")),)
    value = found["RF spring 700\u00a0lb/in"]
    assert (value.setup, value.rank) == ("Short run", "first")
    assert [word.weight for word in found["Marrow Creek / Grand Sedan"].lines[1]] == ["plain", "plain"]
    caution = next(one for text, one in found.items() if "real car" in text)
    assert (caution.setup, caution.rank) == ("", "neither")


@pytest.mark.parametrize(("ms", "setup"), [(84_000, ""), (86_900, ""), (87_000, "Long run"), (83_999, "Short run")])
def test_around_the_moment_where_another_setup_begins_none_is_named(dossier: Dossier, ms: int, setup: str) -> None:
    """A caption may come up late, when the next setup's part has begun already."""
    assert lower_third(dossier, Cue(ms, ms + 1000, ("RF spring 700",))).setup == setup


def test_an_untested_setup_says_so(dossier: Dossier) -> None:
    first = dossier.first
    untested = replace(first, setup=first.setup.model_copy(update={"tested": False}))
    odd = replace(dossier, sheets=(untested, *dossier.others))
    assert lower_third(odd, Cue(66_000, 67_000, ("RF spring 700",))).setup == "Short run, untested"
    title = lower_third(odd, Cue(60_000, 61_000, ("Short run, untested",)))
    assert (title.setup, title.rank, title.lines[0][0].weight) == ("", "first", "strong")


def test_a_changed_figure_changes_its_pictures_and_no_other(
    dossier: Dossier, kit: Kit, every: tuple[Wanted, ...]
) -> None:
    other = wanted(with_values(dossier, "short", {"spring.rf": "675"}), kit)
    changed = [one.path for one, before in zip(other, every, strict=True) if one != before]
    assert len(changed) == 4  # the spring of the short run, and what it was of the long run


@pytest.mark.parametrize("shape", SHAPES, ids=lambda shape: shape.name)
@settings(max_examples=15)
@given(lines=LINES, setup=st.sampled_from(["", "Short run", "A name as nobody would give to any setup at all, ever"]))
def test_no_text_is_cut_off(kit: Kit, shape: Shape, lines: list[str], setup: str) -> None:
    told = [line for line in lines if line.strip(" \u00a0")] or ["1"]
    picture = drawn(kit, shape, of_lines(*told, setup=setup, rank="second"))
    left, top, right, bottom = box(picture)
    assert left >= shape.left - 2
    assert top >= 0
    assert right <= shape.width - shape.right + 2
    assert bottom <= shape.height - shape.bottom + 2
    assert has_a_clear_rim(picture)


@pytest.mark.parametrize("shape", SHAPES, ids=lambda shape: shape.name)
@pytest.mark.parametrize("word", ["1234567890\u00a0lb/in", "left-hand-side-end"])
def test_wrapped_lines_break_between_words_alone(kit: Kit, shape: Shape, word: str) -> None:
    """Never inside a figure and its unit or at a hyphen: the plate is as wide as some whole words are side by side."""
    wrapped, rows = (box(drawn(kit, shape, of_lines(*lines))) for lines in ([" ".join([word] * 7)], [word] * 7))
    assert wrapped[3] - wrapped[1] < rows[3] - rows[1]
    side_by_side = [box(drawn(kit, shape, of_lines(" ".join([word] * count)))) for count in range(1, 4)]
    assert any(abs((wrapped[2] - wrapped[0]) - (one[2] - one[0])) < 8 for one in side_by_side)


def test_a_text_too_long_for_any_size_is_one_sentence(kit: Kit) -> None:
    with pytest.raises(ProducerError, match="a caption is too long for a picture: 'word word"):
        drawn(kit, SHAPES[0], of_lines("word " * 3000))


def test_a_letter_without_a_glyph_is_named(dossier: Dossier, kit: Kit) -> None:
    track = dossier.track.model_copy(update={"name": "漢 Creek"})
    with pytest.raises(ProducerError, match="no '漢'"):
        wanted(replace(dossier, track=track), kit)


@pytest.mark.parametrize("attack", ATTACKS)
def test_attacks_as_names_stay_text(dossier: Dossier, kit: Kit, attack: str) -> None:
    track = dossier.track.model_copy(update={"name": attack})
    picture = Image.open(io.BytesIO(wanted(replace(dossier, track=track), kit)[0].drawn(kit).data))
    assert has_a_clear_rim(picture)


def test_no_captions_no_pictures(dossier: Dossier, kit: Kit) -> None:
    none = replace(dossier, timeline=replace(dossier.timeline, spans=()))
    assert wanted(none, kit) == ()
