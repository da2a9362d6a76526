"""Widths from the font files, against another reader of fonts."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import ImageFont

from producer.render.charts.measuring import shortened, width, wrapped
from producer.render.fonts import REGULAR, STRONG, folder

WORDS = st.text("abc deföß\u00a0xyzW\u2212", max_size=60)


@pytest.mark.parametrize("strong", [False, True])
@pytest.mark.parametrize(
    "text",
    [
        "Right rear spring",
        "depends on the car",
        "lb/in",
        "middle",
        "\u201cquoted\u201d \u2013 \u00b7",
        "Ünïcödé Ж Ω",
        "",
    ],
)
def test_is_what_the_font_says(text: str, strong: bool) -> None:
    """Pillow's basic layout adds advance widths and kerning of the old kind, each rounded to a pixel."""
    face = ImageFont.truetype(
        str(folder() / (STRONG if strong else REGULAR)), 1000, layout_engine=ImageFont.Layout.BASIC
    )
    assert width(text, 1000, strong=strong) == pytest.approx(face.getlength(text), rel=0.012, abs=1)


def test_figures_are_tabular_and_a_missing_letter_is_wide() -> None:
    assert len({round(width(one, 10), 6) for one in "0123456789\u2212\u00d7+"}) == 1
    assert width("漢", 10) == 10
    assert width("\U0001f600", 10) == 10


def test_size_is_a_factor() -> None:
    assert width("entry", 30) == pytest.approx(2 * width("entry", 15))


@given(WORDS, st.floats(20, 200))
def test_lines_fit_and_lose_nothing(text: str, room: float) -> None:
    lines = wrapped(text, 10, room)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
    assert all(width(line, 10) <= room for line in lines)


@given(WORDS, st.floats(20, 200))
def test_what_is_shortened_fits(text: str, room: float) -> None:
    short = shortened(text, 10, room)
    assert width(short, 10) <= room
    assert short == text or short.endswith("\u2026")


def test_a_tie_is_not_broken() -> None:
    assert wrapped("750\u00a0lb/in more", 10, 55) == ("750\u00a0lb/in", "more")
