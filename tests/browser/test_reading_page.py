"""The page to read from, in Chromium: keys, pace, no network, nothing too wide."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from producer.jobs.deliver import deliver
from producer.jobs.dossier import dossier
from producer.library.load import load
from producer.outputs import script
from producer.render.fonts import font_documents
from producer.render.kit import Kit

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Page

pytestmark = pytest.mark.browser
EPISODE = "marrow-creek-grand-sedan"
FLAGS = (
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
)  # fmt: skip
# Where the reading line stands, worked out from the page's layout and its words: spoken minutes at 150 words.
PLACE = """() => {
  const line = window.scrollY + window.innerHeight * 0.34;
  const blocks = [...document.querySelectorAll('section h2, .told')];
  const tops = blocks.map((one) => one.getBoundingClientRect().top + window.scrollY);
  const index = tops.findLastIndex((top) => top <= line + 0.5);
  const end = blocks[index].getBoundingClientRect().bottom + window.scrollY;
  const bottom = index + 1 < tops.length ? tops[index + 1] : end;
  const words = blocks.slice(0, index).reduce((sum, one) => sum + Number(one.dataset.words || 0), 0);
  const own = Number(blocks[index].dataset.words || 0);
  const pauses = blocks.slice(0, index).reduce((sum, one) => sum + Number(one.dataset.pause || 0), 0);
  const done = (line - tops[index]) / (bottom - tops[index]);
  return { words: words + own * done, pauses: pauses + Number(blocks[index].dataset.pause || 0) * done };
}"""


@dataclass
class Reading:
    """An open page and everything it asked for or complained about."""

    page: Page
    requests: list[str] = field(default_factory=list)
    complaints: list[str] = field(default_factory=list)

    def press(self, *keys: str) -> None:
        for key in keys:
            self.page.keyboard.press(key)

    def text(self, name: str) -> str:
        return self.page.locator(f"#{name}").inner_text()

    def pass_time(self, seconds: float) -> None:
        self.page.clock.run_for(seconds * 1000)

    def line_at(self) -> float:
        return float(self.page.evaluate("window.scrollY"))

    def place(self) -> dict[str, float]:
        return dict(self.page.evaluate(PLACE))


@pytest.fixture(scope="session")
def address(tmp_path_factory: pytest.TempPathFactory, demo: Path) -> str:
    folder = tmp_path_factory.mktemp("build")
    library, _ = load(demo)
    whole = dossier(library.case(library.episodes[EPISODE]))
    assert whole is not None
    deliver(font_documents(), folder)
    deliver(script.documents(whole, Kit()), folder / EPISODE)
    return (folder / EPISODE / "script.html").as_uri()


@pytest.fixture(scope="module")
def browser(chromium: str) -> Iterator[Browser]:
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        running = playwright.chromium.launch(executable_path=chromium, args=list(FLAGS))
        yield running
        running.close()


def open_page(browser: Browser, address: str, width: int = 1280, **options: str) -> Reading:
    context = browser.new_context(viewport={"width": width, "height": 800}, **options)  # type: ignore[arg-type]  # names are playwright's
    page = context.new_page()
    reading = Reading(page)
    page.on("request", lambda request: reading.requests.append(request.url))
    page.on("console", lambda message: reading.complaints.append(message.text))
    page.on("pageerror", lambda error: reading.complaints.append(str(error)))
    page.clock.install()
    page.goto(address)
    page.evaluate("document.fonts.ready")
    return reading


@pytest.fixture
def reading(browser: Browser, address: str) -> Iterator[Reading]:
    opened = open_page(browser, address)
    yield opened
    opened.page.context.close()
    assert opened.complaints == []


def test_it_asks_only_for_itself_and_its_fonts(reading: Reading) -> None:
    reading.press("Space", "n", "n")
    reading.pass_time(20)
    assert reading.requests
    assert all(one.startswith("file:") for one in reading.requests)
    assert reading.page.evaluate("document.fonts.check('600 20px \"Fira Sans\"')")


@pytest.mark.parametrize("pace", [150, 100, 180])
def test_it_moves_at_the_stated_pace(reading: Reading, pace: int) -> None:
    steps = (pace - 150) // 5
    reading.press("3", *(["ArrowRight"] * steps if steps > 0 else ["ArrowLeft"] * -steps), "Space")
    assert reading.text("pace").startswith(str(pace))
    reading.pass_time(1)
    before = reading.place()
    reading.pass_time(30)
    after = reading.place()
    spoken = 30 - (after["pauses"] - before["pauses"]) / 1000
    assert after["words"] - before["words"] == pytest.approx(spoken * pace / 60, rel=0.02)


def test_it_ends_when_it_says(reading: Reading) -> None:
    reading.press(*["ArrowRight"] * 30, "9")
    minutes, seconds = reading.text("left").removesuffix(" left").split(":")
    whole = int(minutes) * 60 + int(seconds)
    reading.press("Space")
    reading.page.clock.run_for((whole - 5) * 1000)
    assert reading.text("go") == "Stop"
    reading.pass_time(8)
    assert reading.text("go") == "Start"
    assert reading.text("left") == "0:00 left"
    assert reading.text("where").endswith("Closing")


def test_space_starts_and_stops(reading: Reading) -> None:
    go = reading.page.locator("#go")
    assert (reading.text("go"), go.get_attribute("aria-pressed")) == ("Start", "false")
    reading.press("Space")
    reading.pass_time(5)
    assert (reading.text("go"), go.get_attribute("aria-pressed")) == ("Stop", "true")
    reading.press("Space")
    moved = reading.line_at()
    reading.pass_time(5)
    assert reading.text("go") == "Start"
    assert reading.line_at() == moved > 0


def test_remaining_time_runs_down_by_the_second(reading: Reading) -> None:
    def left() -> int:
        minutes, seconds = reading.text("left").removesuffix(" left").split(":")
        return int(minutes) * 60 + int(seconds)

    reading.press("Space")
    reading.pass_time(2)
    before = left()
    reading.pass_time(20)
    assert before - left() == pytest.approx(20, abs=1)


def test_sections_by_number_and_one_by_one(reading: Reading) -> None:
    reading.press("3")
    assert reading.text("where").startswith("3/")
    reading.press("n")
    assert reading.text("where").startswith("4/")
    reading.press("p", "p")
    assert reading.text("where").startswith("2/")
    reading.pass_time(1)
    reading.press("1", "2")
    assert reading.text("where").startswith("12/")
    reading.pass_time(1)
    reading.press("9", "9")
    assert reading.text("where").startswith("9/")
    reading.press("End")
    assert reading.text("left") == "0:00 left"
    reading.press("Home")
    assert reading.line_at() == 0


def test_lines_up_and_down(reading: Reading) -> None:
    reading.press("3")
    start = reading.line_at()
    reading.press("ArrowDown", "ArrowDown")
    assert reading.line_at() > start + 60
    reading.press("ArrowUp", "ArrowUp")
    assert reading.line_at() == pytest.approx(start, abs=2)


def test_type_grows_and_shrinks_and_the_place_is_kept(reading: Reading) -> None:
    size = "Number.parseFloat(getComputedStyle(document.querySelector('.told')).fontSize)"
    reading.press("5", "Space")
    reading.pass_time(20)
    reading.press("Space")
    usual, place = reading.page.evaluate(size), reading.place()["words"]
    reading.press("+", "+")
    assert reading.page.evaluate(size) == pytest.approx(usual * 1.21, rel=0.01)
    assert reading.place()["words"] == pytest.approx(place, abs=1.5)
    reading.press("-", "-", "-")
    assert reading.page.evaluate(size) < usual
    assert reading.place()["words"] == pytest.approx(place, abs=1.5)


def test_pace_has_limits_and_a_way_back(reading: Reading) -> None:
    reading.press(*["ArrowRight"] * 40)
    assert reading.text("pace").startswith("300")
    reading.press(*["ArrowLeft"] * 60)
    assert reading.text("pace").startswith("60")
    reading.press("r")
    assert reading.text("pace").startswith("150")


def test_keys_are_shown_and_closed(reading: Reading) -> None:
    dialog = reading.page.locator("#keys")
    reading.press("?")
    assert dialog.is_visible()
    before = reading.line_at()
    reading.press("ArrowDown", "PageDown", "n")
    reading.page.mouse.wheel(0, 300)
    reading.page.wait_for_timeout(300)
    assert reading.line_at() == before
    reading.press("Escape")
    assert not dialog.is_visible()


def test_every_control_is_reached_by_tab_and_shows_its_focus(reading: Reading) -> None:
    seen: list[str] = []
    for _ in range(40):
        reading.press("Tab")
        seen.append(str(reading.page.evaluate("document.activeElement.id || document.activeElement.tagName")))
        outline = reading.page.evaluate("getComputedStyle(document.activeElement).outlineStyle")
        if seen[-1] != "BODY":
            assert outline == "solid", seen[-1]
    assert {"back", "slower", "go", "faster", "on", "help", "A"} <= set(seen)
    names = reading.page.evaluate(
        "[...document.querySelectorAll('#controls button')]"
        ".map((one) => one.getAttribute('aria-label') || one.textContent)"
    )
    assert all(names)


def test_a_focused_button_keeps_its_space(reading: Reading) -> None:
    reading.page.locator("#on").focus()
    reading.press("Space")
    assert reading.text("go") == "Start"
    assert reading.text("where").startswith("1/")


def test_a_link_of_the_list_goes_to_its_section(reading: Reading) -> None:
    reading.page.locator(".contents a").nth(3).click()
    assert reading.text("where").startswith("4/")
    reading.press("Space")
    assert reading.text("go") == "Stop"


def test_a_hand_on_the_page_moves_the_place(reading: Reading) -> None:
    reading.press("3")
    reading.page.mouse.wheel(0, 600)
    reading.page.wait_for_function("window.scrollY > 100")
    reading.pass_time(0.2)
    reading.press("Space")
    where = reading.line_at()
    reading.pass_time(2)
    assert where <= reading.line_at() < where + 300


def test_pace_and_size_are_remembered_here_and_only_here(browser: Browser, address: str) -> None:
    first = open_page(browser, address)
    first.press("ArrowRight", "+")
    second = Reading(first.page.context.new_page())
    second.page.goto(address)
    assert second.text("pace").startswith("155")
    assert second.page.evaluate("Object.keys(localStorage).sort()") == ["reading.pace", "reading.size"]
    first.page.context.close()


def test_it_works_where_nothing_may_be_remembered(browser: Browser, address: str) -> None:
    context = browser.new_context()
    page = context.new_page()
    page.add_init_script("Object.defineProperty(window, 'localStorage', { get() { throw new Error('no'); } });")
    errors: list[str] = []
    page.on("pageerror", lambda error: errors.append(str(error)))
    page.goto(address)
    page.keyboard.press("ArrowRight")
    assert page.locator("#pace").inner_text().startswith("155")
    assert errors == []
    context.close()


def test_without_motion_the_page_is_turned_and_not_rolled(browser: Browser, address: str) -> None:
    reading = open_page(browser, address, reduced_motion="reduce")
    reading.press("3", "Space")
    places = []
    for _ in range(60):
        reading.pass_time(0.5)
        places.append(reading.line_at())
    turns = [after - before for before, after in pairwise(places) if after != before]
    assert 1 <= len(turns) <= 8
    assert min(turns) > 150
    reading.page.context.close()


@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_nothing_is_too_wide_in_any_light(browser: Browser, address: str, width: int, scheme: str) -> None:
    reading = open_page(browser, address, width, color_scheme=scheme)
    for _ in range(2):
        wide = reading.page.evaluate(
            "[...document.querySelectorAll('body *')].filter((one) => !one.closest('.unseen')"
            " && one.getBoundingClientRect().right > innerWidth + 1)"
            ".map((one) => one.id || one.className || one.tagName)"
        )
        assert wide == []
        assert reading.page.evaluate("document.documentElement.scrollWidth") <= width
        reading.press(*["+"] * 8)
    assert reading.complaints == []
    paper = reading.page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert paper == {"light": "rgb(250, 248, 243)", "dark": "rgb(23, 27, 32)"}[scheme]
    reading.page.context.close()


def test_type_can_be_read_from_a_distance(browser: Browser, address: str) -> None:
    sizes = {
        width: open_page(browser, address, width).page.evaluate(
            "Number.parseFloat(getComputedStyle(document.querySelector('.told')).fontSize)"
        )
        for width in (390, 1280)
    }
    assert sizes[390] >= 24
    assert sizes[1280] >= 40
