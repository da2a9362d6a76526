"""The setup card as files: golden text, sizes of the pictures, pages of the PDF."""

from __future__ import annotations

import io
import os
import shutil
import struct
from collections.abc import Callable
from html import escape
from pathlib import Path

import pytest
from pypdf import PdfReader

from producer.basics.errors import ProducerError
from producer.model.dossier import Dossier
from producer.outputs.card import documents, of_setup, texts_of
from producer.render.kit import Kit
from tests.outputs.dossiers import LIBRARY, sample_case, sample_dossier
from tests.render.test_literal import ATTACKS

GOLDEN = Path(__file__).parent / "golden"
GARAGE = "garages/grand-sedan.yaml"
EPISODE = "marrow-creek-grand-sedan/episode.yaml"
ENDINGS = (".pdf", ".png", "-wide.png", ".html", ".txt", ".yaml")


@pytest.fixture(scope="module")
def made(dossier: Dossier, kit: Kit) -> dict[str, bytes]:
    return {one.path: one.data for one in documents(dossier, kit)}


def size(data: bytes) -> tuple[int, int]:
    """Width and height as the header of a PNG says (PNG specification, IHDR)."""
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    width, height = struct.unpack(">II", data[16:24])
    return int(width), int(height)


def words(data: bytes) -> str:
    """The text of a PDF, spaces and line ends alike."""
    return " ".join(" ".join(page.extract_text() for page in PdfReader(io.BytesIO(data)).pages).split())


def test_six_files_for_each_setup(made: dict[str, bytes]) -> None:
    assert list(made) == [f"card-{setup}{ending}" for setup in ("short", "long") for ending in ENDINGS]


@pytest.mark.parametrize(
    "name", [f"card-{setup}{e}" for setup in ("short", "long") for e in (".html", ".txt", ".yaml")]
)
def test_texts_are_as_they_were_agreed(made: dict[str, bytes], name: str) -> None:
    """`UPDATE_GOLDEN=1` writes them anew; read the difference before it is committed."""
    path = GOLDEN / name
    if os.environ.get("UPDATE_GOLDEN"):
        path.write_bytes(made[name])
    assert made[name].decode("utf-8") == path.read_text(encoding="utf-8")


def test_pictures_have_their_size_and_the_pdf_one_page(made: dict[str, bytes]) -> None:
    for setup in ("short", "long"):
        assert size(made[f"card-{setup}.png"]) == (1080, 1350)
        assert size(made[f"card-{setup}-wide.png"]) == (1920, 1080)
        assert len(PdfReader(io.BytesIO(made[f"card-{setup}.pdf"])).pages) == 1


def test_the_same_bytes_every_time(made: dict[str, bytes], dossier: Dossier) -> None:
    assert {one.path: one.data for one in documents(dossier, Kit())} == made


def test_one_setup_alone_and_its_texts_alone(made: dict[str, bytes], dossier: Dossier, kit: Kit) -> None:
    assert {one.path: one.data for one in of_setup(dossier, kit, "long")} == {
        path: data for path, data in made.items() if path.startswith("card-long")
    }
    assert [one.path for one in texts_of(dossier, kit, "long")] == ["card-long.html", "card-long.txt", "card-long.yaml"]
    assert list(of_setup(dossier, kit, "none")) == []


def test_metric_channels_print_on_a4(dossier: Dossier, kit: Kit, tmp_path: Path) -> None:
    metric = changed(
        tmp_path, lambda text: text.replace("presenter: Jo", "presenter: Jo\nunits: metric"), "channel.yaml"
    )
    pdf = next(one for one in documents(metric, kit) if one.path == "card-short.pdf")
    box = PdfReader(io.BytesIO(pdf.data)).pages[0].mediabox
    assert (round(float(box.width)), round(float(box.height))) == (595, 842)


def changed(folder: Path, edit: Callable[[str], str], *files: str) -> Dossier:
    """The sample's dossier with some of its files rewritten."""
    root = folder / "library"
    if not root.exists():
        shutil.copytree(LIBRARY, root)
    for file in files:
        path = root / file
        before = path.read_text(encoding="utf-8")
        assert edit(before) != before
        path.write_text(edit(before), encoding="utf-8")
    return sample_dossier(sample_case(root))


def quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


@pytest.mark.parametrize("attack", ATTACKS)
def test_attacks_as_names_stay_text(tmp_path: Path, kit: Kit, attack: str) -> None:
    odd = changed(
        tmp_path,
        lambda text: text.replace("name: Front weight", f"name: {quoted(attack)}").replace(
            "name: Long run", f"name: {quoted(attack)}"
        ),
        GARAGE,
        EPISODE,
    )
    pdf = next(of_setup(odd, kit, "long"))
    page, plain, _ = (one.data.decode("utf-8") for one in texts_of(odd, kit, "long"))
    # A name begins with a capital on the card; a PDF keeps no spaces of its own.
    assert words(pdf.data).replace(" ", "").lower().count(attack.replace(" ", "").lower()) == 2
    assert plain.lower().count(attack.lower()) == 2
    assert page.lower().count(escaped(attack).lower()) == 3
    assert "<script" not in page
    assert "#panic" not in page or attack == "#panic()"


def more_settings(count: int) -> Callable[[str], str]:
    """Further settings on a page of their own, in the garage and in the first setup."""
    limits = "{ page: more, name: Extra thing %d, unit: in, min: 0, max: 10, step: 0.25, default: 5 }"
    rows = "".join(f"  extra_{index}: {limits % index}\n" for index in range(count))
    values = "".join(f"      extra_{index}: 5.25\n" for index in range(count))

    def edit(text: str) -> str:
        text = text.replace("dampers, driveline]", "dampers, driveline, more]").replace(
            "options:\n", f"{rows}options:\n"
        )
        return text.replace("      lock: 20\n", f"      lock: 20\n{values}")

    return edit


def test_a_garage_of_45_settings_fits(tmp_path: Path, kit: Kit) -> None:
    many = changed(tmp_path, more_settings(45 - len(sample_case().sheets[0].values)), GARAGE, EPISODE)
    assert len(many.garage.settings) == 45
    files = {one.path: one.data for one in of_setup(many, kit, "short")}
    assert size(files["card-short.png"]) == (1080, 1350)
    assert words(files["card-short.pdf"]).count("5.25") == 45 - len(sample_case().sheets[0].values)


def test_what_cannot_fit_is_one_sentence(tmp_path: Path, kit: Kit) -> None:
    many = changed(tmp_path, more_settings(90), GARAGE, EPISODE)
    count = len(sample_case().sheets[0].values) + 90
    with pytest.raises(ProducerError) as found:
        list(of_setup(many, kit, "short"))
    assert str(found.value) == (
        f"the card of 'short' does not fit: {count} settings, the longest name 'Extra thing 10' (14 letters)"
    )


def test_what_cannot_fit_names_the_name_that_is_too_long(tmp_path: Path, kit: Kit) -> None:
    long = changed(tmp_path, lambda text: text.replace("name: Grille tape", f"name: {'Tape' * 400}"), GARAGE)
    with pytest.raises(ProducerError, match=rf"the longest name '{'Tape' * 10}…' \(1600 letters\)"):
        list(of_setup(long, kit, "short"))


def test_long_names_stay_inside(tmp_path: Path, kit: Kit) -> None:
    def edit(text: str) -> str:
        text = text.replace("name: Grille tape", f"name: {'Tape' * 15}").replace(
            "name: Marrow Creek\n", f"name: {'Creek ' * 14}\n"
        )
        return text.replace("name: Long run", f"name: {'Longrunsetup' * 8}")

    long = changed(tmp_path, edit, GARAGE, EPISODE, "tracks/marrow-creek.yaml")
    for setup in ("short", "long"):
        files = {one.path: one.data for one in of_setup(long, kit, setup)}
        assert size(files[f"card-{setup}.png"]) == (1080, 1350)
        assert edge_is_clean(files[f"card-{setup}.png"])
        assert edge_is_clean(files[f"card-{setup}-wide.png"])


def edge_is_clean(data: bytes) -> bool:
    """Whether nothing is drawn in the outer 40 pixels."""
    from PIL import Image

    picture = Image.open(io.BytesIO(data)).convert("RGB")
    width, height = picture.size
    strips = ((0, 0, 40, height), (width - 40, 0, width, height), (0, 0, width, 40), (0, height - 40, width, height))
    return all(len(picture.crop(strip).getcolors() or (0, 0)) == 1 for strip in strips)


def test_a_missing_letter_is_told_before_a_picture_is_drawn(tmp_path: Path, kit: Kit) -> None:
    odd = changed(tmp_path, lambda text: text.replace("name: Front weight", "name: 前 weight"), GARAGE)
    with pytest.raises(ProducerError, match="the card's font has no '前'"):
        next(of_setup(odd, kit, "short"))


def escaped(text: str) -> str:
    """As the templates escape: quotes by number."""
    return escape(text).replace("&quot;", "&#34;").replace("&#x27;", "&#39;")


def test_untested_is_on_every_form(tmp_path: Path, kit: Kit) -> None:
    fresh = changed(
        tmp_path, lambda text: text.replace("based_on: short\n", "based_on: short\n    tested: no\n"), EPISODE
    )
    files = {one.path: one.data for one in of_setup(fresh, kit, "long")}
    said = "Untested: nobody has driven these numbers yet."
    assert said in words(files["card-long.pdf"])
    assert said in files["card-long.txt"].decode("utf-8")
    assert said in files["card-long.html"].decode("utf-8")
    assert "tested: false" in files["card-long.yaml"].decode("utf-8")
