"""Typst sources into PDF and PNG."""

from __future__ import annotations

import struct

import pytest

from producer.basics.errors import ProducerError
from producer.render.kit import Kit
from producer.render.typesetting import fonts

START = '#set document(title: "A card", date: none)\n#set text(font: "Fira Sans", lang: "en")\n'
PAGE = START + "#set page(width: 90pt, height: 60pt, margin: 5pt)\n"


@pytest.fixture(scope="module")
def kit() -> Kit:
    return Kit()


def test_a_picture_has_one_pixel_a_point(kit: Kit) -> None:
    data = kit.png(PAGE + "text")
    # The first chunk of a PNG holds width and height (PNG specification, IHDR).
    assert struct.unpack(">II", data[16:24]) == (90, 60)


def test_the_same_source_gives_the_same_bytes(kit: Kit) -> None:
    assert kit.pdf(PAGE + "= A") == Kit().pdf(PAGE + "= A")
    assert kit.png(PAGE + "= A") == Kit().png(PAGE + "= A")


@pytest.mark.parametrize(
    ("body", "sentence"),
    [
        ('= A\n#"at 漢"', "the card's font has no '漢': write what holds it in other letters"),
        ('= A\n#panic("too long")', "too long"),
        ("= A\n#nope", "the picture cannot be set: unknown variable: nope"),
    ],
)  # fmt: skip
def test_what_cannot_be_set_is_one_sentence(kit: Kit, body: str, sentence: str) -> None:
    with pytest.raises(ProducerError) as caught:
        kit.pdf(PAGE + body)
    assert str(caught.value) == sentence


def test_a_picture_of_two_pages_is_refused(kit: Kit) -> None:
    with pytest.raises(ProducerError, match="this one came to 2"):
        kit.png(PAGE + "a\n#pagebreak()\nb")


def test_what_can_be_set_is_a_pdf(kit: Kit) -> None:
    assert kit.pdf(PAGE + '= A\n#"Ünïcödé Ж Ω \u2212 \u00a0"').startswith(b"%PDF-1.7")


def test_no_other_font_is_there_to_fall_back_on() -> None:
    assert fonts().families() == ["Fira Sans"]


def test_a_source_reads_nothing_of_this_machine(kit: Kit) -> None:
    for path in ("/etc/hostname", "../../../../../../etc/hostname"):
        with pytest.raises(ProducerError):
            kit.pdf(PAGE + f'= A\n#read("{path}")')
