"""The charts of guide and test laps in a browser: large enough, whole, as wide as we say, and for every reader."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from producer.outputs import guide, stints
from producer.render.charts.measuring import width
from producer.render.fonts import font_documents
from producer.render.kit import Kit
from tests.browser.test_guide_page import FLAGS
from tests.outputs.dossiers import sample_dossier
from tests.outputs.driven import driven
from tests.outputs.thinking import thinking

pytestmark = pytest.mark.browser
LEAST = 11.9  # pixels; nothing in a chart is smaller on a phone of 390 pixels or a desktop
SHOWN = "[...document.querySelectorAll('.picture svg')].filter((one) => one.getBoundingClientRect().width)"
SIZES = f"""{SHOWN}.flatMap((one) => [...one.querySelectorAll('text')]
  .map((text) => text.getAttribute('font-size') * one.getBoundingClientRect().width / one.viewBox.baseVal.width))"""
CUT = f"""{SHOWN}.flatMap((one) => [...one.querySelectorAll('text, rect')].filter((part) => {{
  const sheet = one.getBoundingClientRect(), box = part.getBoundingClientRect();
  return box.left < sheet.left - 1 || box.right > sheet.right + 1 || box.bottom > sheet.bottom + 1;
}}).map((part) => part.textContent || part.tagName))"""
WIDTHS = """[...document.querySelectorAll('.wide text')].map((one) => [one.textContent,
  Number(one.getAttribute('font-size')), one.getAttribute('font-weight') === '600', one.getComputedTextLength()])"""
INK = """[...new Set([...document.querySelectorAll('.picture svg text')].map((one) => getComputedStyle(one).fill))]"""


@pytest.fixture(scope="module")
def build(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("build")
    whole, kit = driven(thinking(sample_dossier())), Kit()
    found = [one for module in (guide, stints) for one in module.documents(whole, kit) if one.path.endswith(".html")]
    for one in font_documents():
        (folder / one.path).parent.mkdir(exist_ok=True)
        (folder / one.path).write_bytes(one.data)
    (folder / "episode").mkdir()
    for one in found:
        (folder / "episode" / one.path).write_bytes(one.data)
    return folder / "episode"


@pytest.fixture(scope="module")
def page_file(build: Path) -> Path:
    return build / "guide.html"


@pytest.fixture(scope="module")
def browser(chromium: str) -> Iterator[Any]:
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=chromium, args=FLAGS)
        yield started
        started.close()


def opened(browser: Any, page_file: Path, wide: int, scheme: str = "light") -> Any:
    page = browser.new_page(viewport={"width": wide, "height": 900}, color_scheme=scheme)
    page.goto(page_file.as_uri())
    page.evaluate("document.fonts.ready")
    return page


@pytest.mark.parametrize(("name", "charts"), [("guide.html", 3), ("stints.html", 1)])
@pytest.mark.parametrize("wide", [320, 390, 768, 820, 1280])
def test_one_form_of_each_is_shown_whole_and_large_enough(
    browser: Any, build: Path, wide: int, name: str, charts: int
) -> None:
    page = opened(browser, build / name, wide)
    assert page.evaluate(f"{SHOWN}.length") == charts
    assert min(page.evaluate(SIZES)) >= LEAST
    assert page.evaluate(CUT) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= wide
    page.close()


@pytest.mark.parametrize(
    ("scheme", "ink"),
    [("light", {"rgb(32, 38, 46)", "rgb(86, 96, 107)"}), ("dark", {"rgb(236, 232, 223)", "rgb(167, 176, 186)"})],
)
def test_they_take_the_page_s_colours(browser: Any, page_file: Path, scheme: str, ink: set[str]) -> None:
    page = opened(browser, page_file, 1280, scheme)
    assert set(page.evaluate(INK)) == ink
    page.close()


@pytest.mark.parametrize(("name", "least"), [("guide.html", 50), ("stints.html", 10)])
def test_letters_are_as_wide_as_we_reckoned(browser: Any, build: Path, name: str, least: int) -> None:
    page = opened(browser, build / name, 1280)
    found = page.evaluate(WIDTHS)
    assert len(found) > least
    for text, size, strong, wide in found:
        assert wide == pytest.approx(width(text, size, strong=strong), rel=0.03), text
    page.close()


def test_every_reader_gets_the_finding_and_the_figures(browser: Any, page_file: Path) -> None:
    page = opened(browser, page_file, 390)
    images = page.get_by_role("img", name="What one click up does at Marrow Creek")
    assert images.count() == 2
    assert page.get_by_role("img", name="Long run is tighter than Short run").count() == 1
    page.get_by_text("The same in words").nth(1).click()
    assert page.get_by_text("Brake bias (63 to 64").first.is_visible()
    page.close()


def test_a_touch_shows_what_a_click_does(browser: Any, page_file: Path) -> None:
    page = opened(browser, page_file, 390)
    page.get_by_role("link", name="one click up").nth(1).click()
    box = page.locator("#clicks-long").bounding_box()
    assert 0 <= box["y"] < 200
    page.close()


def test_test_laps_are_a_picture_and_tables_for_a_screen_reader(browser: Any, build: Path) -> None:
    page = opened(browser, build / "stints.html", 390)
    assert page.get_by_role("img", name="Long run is ahead from lap 19").count() == 1
    assert page.get_by_role("table", name="Short run").get_by_role("columnheader").count() == 6
    assert page.get_by_role("rowheader", name="RF").count() == 2
    page.close()


def test_printed_it_is_dark_on_white_and_the_wide_form(browser: Any, page_file: Path) -> None:
    page = opened(browser, page_file, 1280, "dark")
    page.emulate_media(media="print", color_scheme="dark")
    assert set(page.evaluate(INK)) == {"rgb(32, 38, 46)", "rgb(86, 96, 107)"}
    assert page.evaluate(f"{SHOWN}.map((one) => one.parentElement.className)") == ["wide"] * 3
    page.close()
