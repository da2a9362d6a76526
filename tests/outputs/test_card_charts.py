"""The charts of the card's PDF: a page of their own behind an unchanged first one; pictures stay without."""

from __future__ import annotations

import io
import shutil
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from producer.model.dossier import Dossier
from producer.outputs.card import documents, of_setup
from producer.render.kit import Kit
from tests.outputs.dossiers import LIBRARY, sample_case, sample_dossier
from tests.outputs.thinking import opinion, thinking


def files(dossier: Dossier, kit: Kit) -> dict[str, bytes]:
    return {one.path: one.data for one in documents(dossier, kit)}


def pages(data: bytes) -> list[str]:
    return [" ".join(page.extract_text().replace("\u00a0", " ").split()) for page in PdfReader(io.BytesIO(data)).pages]


def figures(node: Any) -> Iterator[Any]:
    """The figures of the structure tree in reading order."""
    node = node.get_object() if hasattr(node, "get_object") else node
    if isinstance(node, list):
        for one in node:
            yield from figures(one)
    elif isinstance(node, dict):
        if node.get("/S") == "/Figure":
            yield node
        if "/K" in node:
            yield from figures(node["/K"])


def alts(data: bytes) -> list[str]:
    """The alternative text of every figure (ISO 14289-1, clause 7.3; from memory)."""
    return [str(one["/Alt"]) for one in figures(PdfReader(io.BytesIO(data)).trailer["/Root"]["/StructTreeRoot"]["/K"])]


def test_only_the_pdf_gets_a_page_and_its_first_stays_as_it_was(dossier: Dossier, kit: Kit) -> None:
    plain, told = files(replace(dossier, opinions={}), kit), files(thinking(dossier), kit)
    assert {path for path in plain if plain[path] != told[path]} == {"card-short.pdf", "card-long.pdf"}
    for name in ("card-short.pdf", "card-long.pdf"):
        (only,), (first, second) = pages(plain[name]), pages(told[name])
        assert first == only
        assert content(told[name]) == content(plain[name])
        assert second.endswith(dossier.channel.caution)


def content(data: bytes) -> bytes:
    """The drawing of the first page, word for word."""
    found = PdfReader(io.BytesIO(data)).pages[0].get_contents()
    assert found is not None
    return found.get_data()


def test_each_chart_has_its_finding_as_heading_and_everything_as_alt_text(dossier: Dossier, kit: Kit) -> None:
    made = files(thinking(dossier), kit)
    _, second = pages(made["card-long.pdf"])
    finding = "Long run is tighter than Short run in all three phases, most on exit"
    assert finding in second
    assert "Short run is looser than Long run in all three phases" in pages(made["card-short.pdf"])[1]
    between, clicks = alts(made["card-long.pdf"])
    assert between.startswith(finding)
    assert "; tighter on exit, about as much as two percent of cross weight." in " ".join(between.split())
    assert clicks.startswith("What one click up does at Marrow Creek")
    assert "Brake bias" in clicks
    assert "depends" in clicks


def test_the_letters_of_the_charts_are_in_the_file(dossier: Dossier, kit: Kit) -> None:
    page = PdfReader(io.BytesIO(files(thinking(dossier), kit)["card-long.pdf"])).pages[1]
    assert page["/Resources"]["/XObject" if "/XObject" in page["/Resources"] else "/Font"]
    text = page.extract_text()
    assert "Right rear spring" in text
    assert "depends" in text


def test_metric_and_many_long_names_stay_on_one_page(tmp_path: Path, kit: Kit) -> None:
    root = tmp_path / "library"
    shutil.copytree(LIBRARY, root)
    garage = root / "garages" / "grand-sedan.yaml"
    text = garage.read_text(encoding="utf-8").replace("name: spring", "name: spring of the long and winding kind")
    garage.write_text(text, encoding="utf-8")
    long = sample_dossier(sample_case(root))
    long = replace(long, channel=long.channel.model_copy(update={"units": "metric"}))
    every = {address: opinion(1, -2, 1, agreement=0.7) for address in long.garage.settings}
    pdf = next(of_setup(thinking(long, every), kit, "long"))
    reader = PdfReader(io.BytesIO(pdf.data))
    assert [round(float(page.mediabox.height)) for page in reader.pages] == [842, 842]


@pytest.mark.parametrize("setup", ["short", "long"])
def test_a_setup_alone_on_its_card(dossier: Dossier, kit: Kit, setup: str) -> None:
    alone = thinking(replace(dossier, sheets=tuple(one for one in dossier.sheets if one.id == setup)))
    (clicks,) = alts(next(of_setup(alone, kit, setup)).data)
    assert clicks.startswith("What one click up does")
