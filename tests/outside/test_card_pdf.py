"""The card's PDF read back by pypdf, a reader that is not ours.

Wanted: what ISO 14289-1 (PDF/UA-1) asks of a file, as far as a reader can tell: identification, title shown, language,
tagged and structured content, embedded fonts. The standard was not at hand (from memory); the clauses are named beside
the assertions. Reading order is that of the marked content, which pypdf follows.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from itertools import pairwise
from typing import Any

import pytest
from pypdf import PdfReader

from producer.outputs.card import documents
from producer.render.kit import Kit
from tests.outputs.dossiers import sample_dossier

ORDER = (
    "Marrow Creek, Grand Sedan", "Long run", "revision 2, 2026-11-20", "tested with version 2.4", "Tire use: hard",
    "Tires", "Pressure psi", "LF 21.0", "RF 43.0", "LR 21.5", "RR 38.0", "\u22121.0", "262.0 kPa", "Camber deg",
    "LF 4.25", "RF \u22123.50", "Ballast", "Front weight", "50.5 %", "Cross weight", "52.5 %", "+0.5", "Suspension",
    "Spring lb/in", "LF 725", "RF 725", "+25", "LR 225", "RR 300", "Rear split 75 lb/in", "Track bar", "left 9.25",
    "right 9.75", "Dampers", "Compression clicks", "LF 5", "RF 4", "LR 5", "RR 4", "Driveline", "Brake bias", "63 %",
    "Grille tape", "45 %", "Final drive", "3.80:1", "\u22120.10", "Steering lock", "20 deg", "differs from Short run",
    "6541 rpm at 141 mph",
)  # fmt: skip


@pytest.fixture(scope="module")
def cards() -> dict[str, bytes]:
    made = documents(sample_dossier(revision=2), Kit())
    return {one.path: one.data for one in made if one.path.endswith(".pdf")}


@pytest.fixture(params=["card-short.pdf", "card-long.pdf"])
def reader(request: pytest.FixtureRequest, cards: dict[str, bytes]) -> PdfReader:
    return PdfReader(io.BytesIO(cards[request.param]), strict=True)


def text_of(reader: PdfReader) -> str:
    return " ".join(" ".join(page.extract_text() for page in reader.pages).replace("\u00a0", " ").split())


def root(reader: PdfReader) -> Any:
    return reader.trailer["/Root"]


def structure(node: Any) -> Iterator[str]:
    """The structure types of the whole tree in reading order."""
    node = node.get_object() if hasattr(node, "get_object") else node
    if isinstance(node, list):
        for one in node:
            yield from structure(one)
    elif isinstance(node, dict):
        if "/S" in node:
            yield str(node["/S"]).removeprefix("/")
        if "/K" in node:
            yield from structure(node["/K"])


def test_says_that_it_is_pdf_ua_1(reader: PdfReader) -> None:
    """Clause 5: the identifier in the XMP metadata."""
    metadata = root(reader)["/Metadata"].get_data().decode("utf-8")
    assert "<pdfuaid:part>1</pdfuaid:part>" in metadata


def test_has_a_title_that_is_shown(reader: PdfReader) -> None:
    """Clause 7.1: a title, and the viewer shows it instead of the file's name."""
    assert reader.metadata is not None
    assert re.fullmatch(r"Marrow Creek, Grand Sedan: (Short|Long) run", str(reader.metadata.title))
    assert root(reader)["/ViewerPreferences"]["/DisplayDocTitle"] is True or bool(
        root(reader)["/ViewerPreferences"]["/DisplayDocTitle"]
    )


def test_says_its_language(reader: PdfReader) -> None:
    """Clause 7.2."""
    assert root(reader)["/Lang"] == "en-US"


def test_is_tagged_and_structured(reader: PdfReader) -> None:
    """Clauses 7.1 and 7.4.2: marked, headings that descend without a gap, and every figure inside the structure."""
    assert root(reader)["/MarkInfo"]["/Marked"]
    types = list(structure(root(reader)["/StructTreeRoot"]["/K"]))
    headings = [int(one[1]) for one in types if re.fullmatch(r"H\d", one)]
    assert headings[0] == 1
    assert all(after <= before + 1 for before, after in pairwise(headings))
    assert headings.count(2) == 5  # the pages of the garage
    assert headings.count(3) == 11  # their parameters
    assert types.count("P") >= 22  # each figure, conditions, gearing, caution


def test_its_fonts_are_in_it(reader: PdfReader) -> None:
    """Clause 7.21.4.1."""
    fonts = reader.pages[0]["/Resources"]["/Font"]
    found = [one.get_object()["/DescendantFonts"][0].get_object()["/FontDescriptor"] for one in fonts.values()]
    assert len(found) == 2
    for descriptor in found:
        assert "FiraSans" in descriptor["/FontName"]
        assert "/FontFile3" in descriptor or "/FontFile2" in descriptor


def test_the_text_comes_in_the_order_of_the_garage(cards: dict[str, bytes]) -> None:
    text = text_of(PdfReader(io.BytesIO(cards["card-long.pdf"])))
    at = 0
    for piece in ORDER:
        found = text.find(piece, at)
        assert found >= 0, f"'{piece}' is not where it belongs: ...{text[at : at + 80]}"
        at = found + len(piece)
    assert text.endswith("Numbers for a simulation. Not advice for a real car.")


def test_holds_no_date_of_its_making(reader: PdfReader) -> None:
    assert reader.metadata is not None
    assert reader.metadata.creation_date is None
    assert "CreateDate" not in root(reader)["/Metadata"].get_data().decode("utf-8")
