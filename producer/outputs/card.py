"""The setup card: PDF (its charts follow on page 2), two pictures, a page, plain text and data for each setup."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from producer.model.dossier import Dossier
from producer.model.sheet import Sheet
from producer.outputs.balance_picture import between_picture, clicks_picture
from producer.outputs.carddata import card_data
from producer.outputs.cardview import Card, card, compared_with
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
_NAME = 40  # letters of a name in a message
SHEETS = {
    "metric": Shape(595.28, 841.89, _UPRIGHT, 595.28 / 1080, "#FFFFFF"),
    "us": Shape(612, 792, _UPRIGHT, 612 / 1080, "#FFFFFF"),
}


@dataclass(frozen=True, slots=True)
class Plate:
    """One picture of the PDF's second page: `svg` is the chart, `alt` everything that it says in words."""

    title: str
    svg: str
    alt: str
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TypesetCard:
    """What the Typst template gets. `misfit` says what is on the card, for the one sentence where it does not fit."""

    card: Card
    shape: Shape
    misfit: str
    pictures: tuple[Plate, ...] = ()


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
    misfit = _misfit(view)
    # The PDF first: it refuses a letter the font lacks, which a picture would draw as a box.
    sheet_of_paper = TypesetCard(view, SHEETS[dossier.channel.units], misfit, tuple(_plates(dossier, kit, sheet)))
    yield Document(f"{name}.pdf", kit.pdf(kit.typst("card.typ.j2", sheet_of_paper)))
    for ending, shape in (("", PORTRAIT), ("-wide", WIDE)):
        yield Document(f"{name}{ending}.png", kit.png(kit.typst("card.typ.j2", TypesetCard(view, shape, misfit))))


def _misfit(view: Card) -> str:
    """`the card of 'short' does not fit: 112 settings, the longest name 'Rear brake duct tape' (20 letters)`."""
    blocks = [block for page in view.pages for block in page.blocks]
    count = sum(cell is not None for block in blocks for row in block.rows for cell in row)
    longest = max((block.name for block in blocks), key=len, default="")
    shown = longest if len(longest) <= _NAME else f"{longest[:_NAME]}\u2026"
    on_it = f"{count} setting{'' if count == 1 else 's'}, the longest name '{shown}' ({len(longest)} letters)"
    return f"the card of '{view.setup_id}' does not fit: {on_it}"


def _plates(dossier: Dossier, kit: Kit, sheet: Sheet) -> Iterator[Plate]:
    """How the setup differs in balance from the one its card is compared with, and what a click does."""
    against = compared_with(dossier, sheet)
    found = (between_picture(dossier, sheet, against) if against else None, clicks_picture(dossier, sheet))
    for one in found:
        if one is not None:
            alt = " ".join((one.wide.alt, *one.rows))
            yield Plate(one.title, kit.svg(one.wide), alt, one.notes)


def _written(dossier: Dossier, kit: Kit, sheet: Sheet) -> Iterator[Document]:
    view, name = card(dossier, sheet), _name(sheet)
    yield Document.of_text(f"{name}.html", kit.html("card.html.j2", view))
    yield Document.of_text(f"{name}.txt", kit.text("card.txt.j2", view))
    data = card_data(dossier.garage, dossier.track, dossier.episode, sheet, dossier.conditions)
    yield Document.of_text(f"{name}.yaml", card_yaml(dossier, sheet, data))


def _name(sheet: Sheet) -> str:
    return f"card-{sheet.id}"
