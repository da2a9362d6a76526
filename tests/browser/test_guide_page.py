"""The guide's page in a browser: phone and desktop, light and dark, a feel a touch away, a table for every reader."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from producer.outputs.guide import documents
from producer.render.fonts import font_documents
from producer.render.kit import Kit
from tests.outputs.modelled import modelled_dossier

pytestmark = pytest.mark.browser
FLAGS = [
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
]  # fmt: skip
PAPER = {"light": "rgb(250, 248, 243)", "dark": "rgb(23, 27, 32)"}
# What stands past the right edge; the headings are out of sight on a narrow page.
WIDE = """[...document.querySelectorAll('body *')].filter((one) => !one.closest('thead')
  && one.getBoundingClientRect().right > innerWidth + 1).map((one) => one.className || one.tagName)"""
# WCAG 2.2, relative luminance and contrast ratio, of each text against the paper.
CONTRAST = """() => {
  const channel = (v) => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  const light = (colour) => {
    const [r, g, b] = colour.match(/[\\d.]+/g).map((v) => channel(Number(v) / 255));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const paper = light(getComputedStyle(document.body).backgroundColor);
  return Math.min(...[...document.querySelectorAll('main *')].map((one) => {
    const ink = light(getComputedStyle(one).color);
    return (Math.max(ink, paper) + 0.05) / (Math.min(ink, paper) + 0.05);
  }));
}"""


@pytest.fixture(scope="module")
def page_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    build = tmp_path_factory.mktemp("build")
    for one in font_documents():
        (build / one.path).parent.mkdir(exist_ok=True)
        (build / one.path).write_bytes(one.data)
    (build / "episode").mkdir()
    (page,) = (one for one in documents(modelled_dossier(), Kit()) if one.path == "guide.html")
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
@pytest.mark.parametrize("width", [320, 390, 900, 1280])
def test_fits_can_be_read_and_needs_nothing_from_elsewhere(
    browser: Any, page_file: Path, width: int, scheme: str
) -> None:
    page = browser.new_page(viewport={"width": width, "height": 900}, color_scheme=scheme)
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(page_file.as_uri())
    page.evaluate("document.fonts.ready")
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert page.evaluate(WIDE) == []
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == PAPER[scheme]
    assert page.evaluate(CONTRAST) >= 4.5
    assert asked
    assert all(url.startswith("file:") for url in asked)
    page.close()


@pytest.mark.parametrize("width", [390, 1280])
def test_a_figure_and_its_unit_stay_on_one_line(browser: Any, page_file: Path, width: int) -> None:
    page = browser.new_page(viewport={"width": width, "height": 900})
    page.goto(page_file.as_uri())
    broken = "[...document.querySelectorAll('.to, .start')].filter((one) => one.getClientRects().length > 1)"
    assert page.evaluate("document.querySelectorAll('.to').length") > 20
    assert page.evaluate(f"{broken}.length") == 0
    page.close()


@pytest.mark.parametrize("width", [390, 1280])
def test_a_touch_on_a_feel_shows_it(browser: Any, page_file: Path, width: int) -> None:
    page = browser.new_page(viewport={"width": width, "height": 900})
    page.goto(page_file.as_uri())
    links = page.locator("nav a")
    # Six feels and the picture of what a click does, for each of two setups.
    assert links.count() == 14
    # WCAG 2.2, 2.5.8: a target of at least 24 by 24 pixels.
    sizes = [links.nth(index).bounding_box() for index in range(14)]
    assert min(min(one["width"], one["height"]) for one in sizes) >= 24
    links.nth(10).click()
    box = page.locator("#long-loose-entry").bounding_box()
    assert 0 <= box["y"] < 200
    page.close()


@pytest.mark.parametrize("width", [390, 1280])
def test_it_stays_a_table_for_a_screen_reader(browser: Any, page_file: Path, width: int) -> None:
    page = browser.new_page(viewport={"width": width, "height": 900})
    page.goto(page_file.as_uri())
    assert page.get_by_role("table").count() == 2
    assert page.get_by_role("table", name="Long run").get_by_role("columnheader").count() == 6
    assert page.get_by_role("rowheader", name="Loose on entry").count() == 2
    assert page.get_by_role("cell", name="Cross weight").count() > 0
    page.close()
