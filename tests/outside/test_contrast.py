"""Contrast of everything rendered, by the formula of WCAG 2.2 (W3C Recommendation, 2023).

Relative luminance and contrast ratio as its glossary defines them; success criterion 1.4.3 asks 4.5 : 1 for text,
1.4.11 at least 3 : 1 for signs such as the card's markers. The glossary's definition is worked from memory; its two
end points (1 for equal colours, 21 for black on white) are asserted below.
"""

from __future__ import annotations

import re
from itertools import product

import pytest

from producer.basics.shipped import shipped
from producer.outputs.card import PORTRAIT, SHEETS, WIDE

TEXT = 4.5
# Lines that only part one thing from another carry no meaning of their own (1.4.11 leaves them out).
NO_TEXT = frozenset({"hairline"})
TEMPLATES = sorted(shipped("templates").glob("*.j2"))
COLOUR = re.compile(r"#[0-9A-Fa-f]{6}\b")


def luminance(colour: str) -> float:
    """Relative luminance of an sRGB colour `#RRGGBB`, 0 for black and 1 for white."""
    parts = [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def schemes() -> dict[str, dict[str, str]]:
    """The custom properties of each `:root` of the shared style: light, dark, print."""
    style = (shipped("templates") / "look.css.j2").read_text(encoding="utf-8")
    found = [
        dict(re.findall(r"--([a-z]+):\s*(#[0-9A-Fa-f]{6})", root)) for root in re.findall(r":root \{([^}]*)\}", style)
    ]
    return dict(zip(("light", "dark", "print"), found, strict=True))


def card_colours() -> dict[str, set[str]]:
    """The colours the Typst card draws with, by name; the accents by the setup they stand for."""
    source = (shipped("templates") / "card.typ.j2").read_text(encoding="utf-8")
    named = {name: {value} for name, value in re.findall(r'#let (\w+) = rgb\("(#\w{6})"\)', source)}
    accent = re.search(r"#let accent = .*", source)
    assert accent is not None
    return {**named, "accent": set(COLOUR.findall(accent.group()))}


def test_the_formula_has_its_end_points() -> None:
    assert contrast("#FFFFFF", "#000000") == pytest.approx(21)
    assert contrast("#1F5F8B", "#1F5F8B") == pytest.approx(1)


@pytest.mark.parametrize("scheme", ["light", "dark", "print"])
@pytest.mark.parametrize("name", ["ink", "quiet", "first", "second"])
def test_text_of_the_pages(scheme: str, name: str) -> None:
    colours = schemes()[scheme]
    assert contrast(colours[name], colours["paper"]) >= TEXT


@pytest.mark.parametrize("paper", sorted({PORTRAIT.paper, WIDE.paper, *(one.paper for one in SHEETS.values())}))
@pytest.mark.parametrize("name", ["ink", "quiet", "accent"])
def test_text_of_the_card(paper: str, name: str) -> None:
    colours = card_colours()[name]
    assert colours
    assert min(contrast(colour, paper) for colour in colours) >= TEXT


def test_the_card_has_two_accents_and_they_are_the_pages_own() -> None:
    light = schemes()["light"]
    assert card_colours()["accent"] == {light["first"], light["second"]}
    assert (PORTRAIT.paper, card_colours()["ink"]) == (light["paper"], {light["ink"]})


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.name)
def test_no_template_brings_a_colour_that_is_not_tested_here(path: object) -> None:
    known = {value.upper() for colours in schemes().values() for value in colours.values()}
    text = path.read_text(encoding="utf-8")  # type: ignore[attr-defined]
    assert {colour.upper() for colour in COLOUR.findall(text)} <= known
    # A shade of black over what lies behind a dialog is no colour of text.
    assert not re.search(r"(?:rgba?|hsla?|oklch|color-mix)\(\s*[0-9]", re.sub(r"rgb\(0 0 0 / [\d.%]+\)", "", text))


def test_every_colour_of_the_style_is_judged_or_a_line() -> None:
    for colours in schemes().values():
        assert set(colours) - NO_TEXT - {"paper"} == {"ink", "quiet", "first", "second"}


def test_the_ratios_that_the_look_promises() -> None:
    """Ink 14.4, quiet ink 6.0, blue 6.4, ochre 5.9 on paper; every text above 7 on dark."""
    light, dark = schemes()["light"], schemes()["dark"]
    promised = {"ink": 14.4, "quiet": 6.0, "first": 6.4, "second": 5.9}
    for name, ratio in promised.items():
        assert contrast(light[name], light["paper"]) == pytest.approx(ratio, abs=0.06)
    assert all(contrast(dark[name], dark["paper"]) > 7 for name in promised)
    assert all(contrast(light[a], light[b]) > 1 for a, b in product(("first",), ("second",)))
