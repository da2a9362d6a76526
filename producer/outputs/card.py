"""The setup card: PDF, two pictures, a page, plain text and data for each setup of an episode."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from producer.model.dossier import Dossier
from producer.model.sheet import Sheet
from producer.outputs.carddata import card_data
from producer.outputs.cardview import Card, card
from producer.outputs.cardyaml import card_yaml
from producer.render.document import Document
from producer.render.kit import Kit


@dataclass(frozen=True, slots=True)
class Layout:
    """How many columns the pages of the garage run in, and how many columns one page has inside."""

    columns: int
    halves: int


@dataclass(frozen=True, slots=True)
class Shape:
    """What a card is set on: width and height in points (pixels of a picture), the layouts to try (the first is
    kept unless another gives clearly larger figures), and `scale`: points for one of the 1080 that sizes count in."""

    width: float
    height: float
    layouts: tuple[Layout, ...]
    scale: float = 1
    paper: str = "#FAF8F3"


_UPRIGHT = (Layout(1, 2), Layout(2, 1))
PORTRAIT = Shape(1080, 1350, _UPRIGHT)
WIDE = Shape(1920, 1080, (Layout(3, 1), Layout(2, 2)))
# Printed on white: ISO 216 A4 and US letter, in points of 1/72 in.
SHEETS = {
    "metric": Shape(595.28, 841.89, _UPRIGHT, 595.28 / 1080, "#FFFFFF"),
    "us": Shape(612, 792, _UPRIGHT, 612 / 1080, "#FFFFFF"),
}


@dataclass(frozen=True, slots=True)
class TypesetCard:
    """What the Typst template gets."""

    card: Card
    shape: Shape


def documents(dossier: Dossier, kit: Kit) -> Iterator[Document]:
    """Every setup's card, in the author's order."""
    for sheet in dossier.sheets:
        yield from of_setup(dossier, kit, sheet.id)


def of_setup(dossier: Dossier, kit: Kit, setup: str) -> Iterator[Document]:
    """The card of the setup of that id alone; nothing where there is none of that id."""
    for sheet in dossier.sheets:
        if sheet.id == setup:
            yield from _drawn(dossier, kit, sheet)
            yield from _written(dossier, kit, sheet)


def texts_of(dossier: Dossier, kit: Kit, setup: str) -> Iterator[Document]:
    """The card's page, plain text and data, without the PDF and the pictures."""
    for sheet in dossier.sheets:
        if sheet.id == setup:
            yield from _written(dossier, kit, sheet)


def _drawn(dossier: Dossier, kit: Kit, sheet: Sheet) -> Iterator[Document]:
    view, name = card(dossier, sheet), _name(sheet)
    # The PDF first: it refuses a letter the font lacks, which a picture would draw as a box.
    yield Document(f"{name}.pdf", kit.pdf(_source(kit, view, SHEETS[dossier.channel.units])))
    yield Document(f"{name}.png", kit.png(_source(kit, view, PORTRAIT)))
    yield Document(f"{name}-wide.png", kit.png(_source(kit, view, WIDE)))


def _written(dossier: Dossier, kit: Kit, sheet: Sheet) -> Iterator[Document]:
    view, name = card(dossier, sheet), _name(sheet)
    yield Document.of_text(f"{name}.html", kit.html("card.html.j2", view))
    yield Document.of_text(f"{name}.txt", kit.text("card.txt.j2", view))
    data = card_data(dossier.garage, dossier.track, dossier.episode, sheet, dossier.conditions)
    yield Document.of_text(f"{name}.yaml", card_yaml(dossier, sheet, data))


def _name(sheet: Sheet) -> str:
    return f"card-{sheet.id}"


def _source(kit: Kit, view: Card, shape: Shape) -> str:
    return kit.typst("card.typ.j2", TypesetCard(view, shape))
