"""The card's page in a browser: phone and desktop, light and dark, its own fonts, nothing from elsewhere."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from producer.outputs.card import texts_of
from producer.render.fonts import font_documents
from producer.render.kit import Kit
from tests.outputs.dossiers import sample_dossier

pytestmark = pytest.mark.browser
FLAGS = [
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]  # fmt: skip
PAPER = {"light": "rgb(250, 248, 243)", "dark": "rgb(23, 27, 32)"}


@pytest.fixture(scope="module")
def page_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    build = tmp_path_factory.mktemp("build")
    for one in font_documents():
        (build / "fonts").mkdir(exist_ok=True)
        (build / one.path).write_bytes(one.data)
    (build / "episode").mkdir()
    page = next(texts_of(sample_dossier(), Kit(), "long"))
    path = build / "episode" / page.path
    path.write_bytes(page.data)
    return path


@pytest.fixture(scope="module")
def browser(chromium: str) -> Iterator[Any]:
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=chromium, args=FLAGS)
        yield started
        started.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [320, 390, 1280])
def test_fits_and_needs_nothing_from_elsewhere(browser: Any, page_file: Path, width: int, scheme: str) -> None:
    page = browser.new_page(viewport={"width": width, "height": 900}, color_scheme=scheme)
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(page_file.as_uri())
    page.evaluate("document.fonts.ready")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == PAPER[scheme]
    fonts = page.evaluate("[...document.fonts].filter(one => one.status === 'loaded').map(one => one.weight)")
    assert sorted(fonts) == ["400", "600"]
    assert all(url.startswith("file:") for url in asked)
    cut = "[...document.querySelectorAll('.figure, .change, .other')].filter(one => one.getClientRects().length > 1)"
    assert page.evaluate(f"{cut}.length") == 0
    page.close()


def test_figures_are_the_largest_text(browser: Any, page_file: Path) -> None:
    page = browser.new_page(viewport={"width": 390, "height": 900})
    page.goto(page_file.as_uri())
    size = "Number.parseFloat(getComputedStyle(one).fontSize)"
    sizes = page.evaluate(f"[...new Set([...document.querySelectorAll('main *')].map(one => {size}))].sort()")
    figures = page.evaluate(f"[...document.querySelectorAll('.figure')].map(one => {size})")
    assert len(sizes) == 2
    assert set(figures) == {max(sizes)}
    page.close()
